"""The whole book as a file: saved from here, or read from one after a look at what it would be."""

import json
from typing import Any

from flask import Blueprint, Flask, Response, request
from werkzeug.datastructures import FileStorage

from runboard.floor.exchange import import_run
from runboard.floor.kept_changes import changes_in, take_changes
from runboard.floor.pictures import with_pictures, without_pictures
from runboard.floor.shop_book import book_record, save_book
from runboard.run.refusal import Refused
from runboard.shop.book_json import BookError, book_from_json
from runboard.shop.care import check_watch_intervals
from runboard.shop.json_text import read_json_text
from runboard.shop.problem import Unreadable
from runboard.web.pages_support import page, said, see_other, workshop
from runboard.web.pictures import shelf
from runboard.web.plan_try import list_settings
from runboard.web.saving import seen

MOST_BYTES = 200_000_000
MOST_TEXT_BYTES = 20_000_000

part = Blueprint("shop_file", __name__)


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_blueprint(part)


def _today() -> str:
    return workshop().clock.now().date().isoformat()


@part.get("/shop/book.json")
def download() -> Response:
    """The book with its pictures, as ``runboard export`` writes it."""
    return json_file(with_pictures(shelf(), book_record(workshop())), f"shop-{_today()}.json")


def json_file(record: dict[str, Any], name: str) -> Response:
    """A record as a file to keep."""
    response = Response(json.dumps(record, indent=1, ensure_ascii=False) + "\n", content_type="application/json")
    response.headers.set("Content-Disposition", "attachment", filename=name)
    response.headers["Cache-Control"] = "no-store"
    return response


@part.get("/shop/import")
def choose() -> Response:
    """Which file?"""
    return _page()


@part.post("/shop/import")
def look() -> Response:
    """A file came, or the text of one that was looked at: say what is in it, or take it.

    Its pictures are kept at once: nothing shows them before the book that names them is taken.
    """
    request.max_content_length, request.max_form_memory_size = MOST_BYTES, MOST_TEXT_BYTES
    file = request.files.get("file")
    raw = _content(file) if file else request.form.get("text", "").encode()
    problems: list[str] = []
    record = _with_its_pictures_kept(read_file(raw, problems), problems)
    if record is not None and "runboard_run" in record:
        return _take_run(record)
    if record is not None and request.form.get("take"):
        try:
            save_book(workshop(), record, seen())
            return see_other("/shop")
        except Refused as refused:
            problems.append(said("refused", refused.code, refused.facts))
    here = book_record(workshop())
    changes = book_changes(here, record) if record else []
    text = json.dumps(record, ensure_ascii=False) if record else ""
    return _page(422 if problems else 200, problems=problems, found=record, changes=changes, text=text)


def _content(file: FileStorage) -> bytes:
    try:
        return bytes(file.read())
    finally:
        file.close()


def _with_its_pictures_kept(record: dict[str, Any] | None, problems: list[str]) -> dict[str, Any] | None:
    try:
        return record and without_pictures(shelf(), record)
    except Refused as refused:
        problems.append(said("refused", refused.code, refused.facts))
        return None


def _take_run(record: dict[str, Any]) -> Response:
    try:
        changes = changes_in(record)
        import_run(workshop(), record)
    except Refused as refused:
        return _page(422, problems=[said("refused", refused.code, refused.facts)])
    take_changes(workshop(), list_settings(), record["run"], changes)
    return see_other(f"/plan/runs/{record['run']}")


def _page(status: int = 200, **context: Any) -> Response:
    filled = {"problems": [], "found": None, "changes": [], "text": "", "seen": book_record(workshop())["revision"]}
    return page("shop/import.html", status=status, **(filled | context))


def read_file(raw: bytes, problems: list[str]) -> dict[str, Any] | None:
    """The record in a file; None with the problems said where it is neither a book nor a run."""
    try:
        record = read_json_text(raw, "the file")
    except Unreadable as error:
        problems.append(str(error) if raw.strip() else "Choose a file first.")
        return None
    if not isinstance(record, dict) or not {"runboard_book", "runboard_run"} & record.keys():
        problems.append("The file is neither a shop's book nor a run: save one here to see what it looks like.")
        return None
    if "runboard_book" in record:
        try:
            check_watch_intervals(book_from_json(record))
        except BookError as error:
            problems += [problem.sentence for problem in error.problems]
            return None
    return record


_PARTS = ("rooms", "services", "stations", "people", "jobs", "finishes", "products")


def book_changes(here: dict[str, Any], there: dict[str, Any]) -> list[tuple[str, list[str], list[str], list[str]]]:
    """For each part of the book: (part, names that come, names that go, names that change)."""
    found = []
    for part_name in _PARTS:
        now = {one["key"]: one for one in here.get(part_name, ())}
        then = {one["key"]: one for one in there.get(part_name, ())}
        come = [one["name"] for key, one in then.items() if key not in now]
        go = [one["name"] for key, one in now.items() if key not in then]
        change = [one["name"] for key, one in then.items() if key in now and one != now[key]]
        found.append((part_name.replace("jobs", "small jobs"), come, go, change))
    return found
