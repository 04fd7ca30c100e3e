"""The whole book as a file: saved from here, or read from one after a look at what it would be."""

from typing import Any, BinaryIO, cast

from flask import Blueprint, Response, request
from werkzeug.datastructures import FileStorage

from runboard.floor.changing.file_taken import BookComing, RunComing, look_at_file, take_file
from runboard.floor.changing.pictures import with_pictures
from runboard.floor.changing.shop_book import book_record
from runboard.run.refusal import Refused
from runboard.shop.book_json import BookError
from runboard.shop.problem import Unreadable
from runboard.web.door.pages import json_file, page, refusal, said, see_other, shop_zone, workshop
from runboard.web.door.pictures import shelf
from runboard.web.fittings import fittings
from runboard.web.forms.saving import seen

part = Blueprint("shop_file", __name__)


@part.get("/shop/book.json")
def download() -> Response:
    """The book with its pictures, as ``runboard export`` writes it."""
    return json_file(
        with_pictures(shelf(), book_record(workshop())), f"shop-{workshop().clock.now().date().isoformat()}.json"
    )


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
            key = take_file(workshop(), fittings().incoming, shelf(), fittings().settings, name, seen())
            return see_other(f"/plan/runs/{key}" if key else "/shop")
        return _look(name)
    except (Refused, Unreadable, BookError) as error:
        if isinstance(error, Refused) and error.code == "book outdated":  # it is shown again beside the newer book
            return _look(name, 422, _problems(error))
        fittings().incoming.drop(name)
        return _page(422, problems=_problems(error))


def _look(name: str, status: int = 200, problems: tuple[str, ...] = ()) -> Response:
    found = look_at_file(workshop(), fittings().incoming, name)
    if isinstance(found, BookComing):
        return _page(status, kept=name, problems=problems, book=found)
    return _page(status, kept=name, problems=problems, run=found.run, **_run_words(found))


def _kept(file: FileStorage) -> str:
    try:
        return fittings().incoming.keep(cast(BinaryIO, file.stream))
    finally:
        file.close()


def _problems(error: Refused | Unreadable | BookError) -> tuple[str, ...]:
    if isinstance(error, BookError):
        return tuple(problem.sentence for problem in error.problems)
    return (refusal(error) if isinstance(error, Refused) else str(error),)


def _run_words(found: RunComing) -> dict[str, Any]:
    run, file, left_out = found.run, found.coming.file, found.coming.left_out
    moments = [event.moment.astimezone(shop_zone()) for event in file.own]
    return {
        "is_new": found.coming.is_new,
        "fresh": len(found.coming.fresh),
        "wanted": sum(order.pieces for order in run.orders),
        "started": sum(tray.started for tray in run.trays.values()),
        "between": [(moment.date(), moment) for moment in (min(moments), max(moments))],
        "people": found.people,
        "stations": found.stations,
        "left_out": [(said("kind", kind), count) for kind, count in sorted(left_out.items())],
        "changes": found.changes,
    }


def _page(status: int = 200, **context: Any) -> Response:
    filled = {"problems": [], "book": None, "run": None, "kept": "", "seen": book_record(workshop())["revision"]}
    return page("shop/import.html", status=status, **(filled | context))
