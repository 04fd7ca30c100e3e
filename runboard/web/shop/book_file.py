"""The whole book as a file: saved from here, or read from one after a look at what it would be."""

import json
from typing import Any, BinaryIO, cast

from flask import Blueprint, Flask, Response, request
from werkzeug.datastructures import FileStorage

from runboard.floor.changing.exchange import import_run, look_at_run
from runboard.floor.changing.file_in import Record, Take, nothing, read_file
from runboard.floor.changing.kept_changes import changes_in, take_changes
from runboard.floor.changing.pictures import with_pictures
from runboard.floor.changing.shop_book import book_record, check_book, save_book
from runboard.run.refusal import Refused
from runboard.shop.book_json import BookError, book_from_json
from runboard.shop.limits import check_limits
from runboard.shop.problem import Unreadable
from runboard.web.door.pages import page, said, see_other, shop_zone, workshop
from runboard.web.door.pictures import shelf
from runboard.web.fittings import fittings
from runboard.web.forms.saving import seen
from runboard.web.plan.trying import list_settings

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
    """A file came: say what is in it. Or it was looked at: take it, pictures and all.

    Between the two it is kept in the data folder, where nothing reads it; nothing of it is stored before it is taken.
    """
    file = request.files.get("file")
    name = _kept(file) if file else request.form.get("kept", "")
    try:
        if request.form.get("take"):
            return _take(name)
        record = _read(name)
        if "runboard_run" in record:
            return _page(kept=name, run=_run_words(record))
        return _page(kept=name, book=_book_words(record))
    except (Refused, Unreadable, BookError) as error:
        if isinstance(error, Refused) and error.code == "book outdated":  # it is shown again beside the newer book
            return _page(422, kept=name, problems=_problems(error), book=_book_words(_read(name)))
        fittings().incoming.drop(name)
        return _page(422, problems=_problems(error))


def _kept(file: FileStorage) -> str:
    try:
        return fittings().incoming.keep(cast(BinaryIO, file.stream))
    finally:
        file.close()


def _read(name: str, take: Take = nothing) -> Record:
    """The record of a file that is kept; a book is checked."""
    stream = fittings().incoming.open(name)
    if stream is None:
        raise Refused("file gone")
    with stream:
        record = read_file(stream, take)
    if "runboard_book" in record:
        book = book_from_json(record)
        check_limits(book)
    return record


def _take(name: str) -> Response:
    """All of it, or nothing; pictures only once nothing else is wrong, and before anything names them."""
    record, key = _read(name), ""
    if "runboard_run" in record:
        look_at_run(workshop(), record)
        changes = changes_in(record)
        _read(name, shelf().keep)
        import_run(workshop(), record)
        key = str(record["run"])
        take_changes(workshop(), list_settings(), key, changes)
    else:
        check_book(workshop(), record, seen())
        _read(name, shelf().keep)
        save_book(workshop(), record, seen())
    fittings().incoming.drop(name)
    return see_other(f"/plan/runs/{key}" if key else "/shop")


def _problems(error: Refused | Unreadable | BookError) -> list[str]:
    if isinstance(error, BookError):
        return [problem.sentence for problem in error.problems]
    return [said("refused", error.code, error.facts) if isinstance(error, Refused) else str(error)]


def _run_words(record: Record) -> dict[str, Any]:
    """What taking a run would do, in words."""
    coming, changes = look_at_run(workshop(), record), changes_in(record)
    run, names = coming.run, {one.key: one.name for one in workshop().book.people}
    moments = [one.moment for one in coming.file.own]
    return {
        "run": run,
        "is_new": coming.is_new,
        "fresh": len(coming.fresh),
        "wanted": sum(one.pieces for one in run.orders),
        "started": sum(one.started for one in run.trays.values()),
        "people": sorted({names.get(one.person, one.person) for one in coming.file.own if one.person}),
        "first": min(moments).astimezone(shop_zone()),
        "last": max(moments).astimezone(shop_zone()),
        "stations": sorted({_station(load.station) for load in run.loads.values()}),
        "left_out": [(said("kind", kind), count) for kind, count in sorted(coming.left_out.items())],
        "changes": len(changes),
    }


def _station(key: str) -> str:
    found = workshop().book.station(key)
    return found.name if found else key


def _book_words(record: Record) -> dict[str, Any]:
    """What taking a book would change."""
    return {"name": record.get("name") or "My shop", "changes": book_changes(book_record(workshop()), record)}


def _page(status: int = 200, **context: Any) -> Response:
    filled = {"problems": [], "book": None, "run": None, "kept": "", "seen": book_record(workshop())["revision"]}
    return page("shop/import.html", status=status, **(filled | context))


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
