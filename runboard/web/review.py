"""The Review screen, first version: a run's log as a table of time elements, its hours by operation, and as CSV."""

from datetime import datetime

from flask import Blueprint, Flask, Response

from runboard.floor.look_back import study_run
from runboard.floor.warm import catch_up
from runboard.review.hours import hours_by_step
from runboard.review.table_text import csv_text
from runboard.review.time_study import ASSUMED, FROM_PAPER, MEASURED, Element
from runboard.run.state import RunState
from runboard.shop.book import ZERO, Book
from runboard.web.pages_support import page, shop_zone, workshop

HEAD = (
    "run", "product", "operation", "load", "station", "trays", "pieces", "element", "person", "began", "ended",
    "minutes", "known",
)  # fmt: skip

part = Blueprint("review", __name__)


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_blueprint(part)


@part.get("/review")
def review() -> Response:
    """Every run, the newest first."""
    shop = workshop()
    catch_up(shop)
    return page("review/review.html", runs=list(shop.ledger.state.runs.values())[::-1])


@part.get("/review/runs/<key>")
def run(key: str) -> Response:
    """One run: hours by operation, and every element with its time."""
    found, elements = _study(key)
    sums = hours_by_step(found, elements)
    good = sum(tray.good for tray in found.trays.values())
    hands = sum((one.hands for one in sums), ZERO)
    return page(
        "review/run.html",
        run=found,
        sums=sums,
        elements=elements,
        good=good,
        hands=hands,
        a_piece=hands / good if good else None,
        machine=sum((one.machine for one in sums), ZERO),
        unmeasured=sum((one.unmeasured for one in sums), ZERO),
        person=_Names(workshop().book).person,
        station=_Names(workshop().book).station,
        measured=MEASURED,
        filled_in=(ASSUMED, FROM_PAPER),
    )


@part.get("/review/runs/<key>.csv")
def as_csv(key: str) -> Response:
    """The same table for a spreadsheet (RFC 4180, UTF-8)."""
    found, elements = _study(key)
    names = _Names(workshop().book)
    text = csv_text(HEAD, (_row(found, one, names) for one in elements))
    response = Response(text, content_type="text/csv; charset=utf-8; header=present")
    response.headers.set("Content-Disposition", "attachment", filename=f"run-{found.id}.csv")
    response.headers["Cache-Control"] = "no-store"
    return response


def _study(key: str) -> tuple[RunState, list[Element]]:
    return study_run(workshop(), key)


class _Names:
    """Names of the book for what the log keeps by its key. Who is no longer in the book is 'somebody'."""

    def __init__(self, book: Book) -> None:
        self._people = {one.key: one.name for one in book.people}
        self._stations = {one.key: one.name for one in book.stations}

    def person(self, key: str) -> str:
        return self._people.get(key, "somebody") if key else ""

    def station(self, key: str) -> str:
        return self._stations.get(key, key)


def _row(run: RunState, one: Element, names: _Names) -> list[object]:
    minutes = None if one.length is None else round(one.length.total_seconds() / 60, 2)
    return [
        run.name,
        run.product_name,
        one.step_name,
        one.load,
        names.station(one.station),
        " ".join(one.trays),
        one.pieces,
        one.kind,
        names.person(one.person),
        _moment(one.began_at),
        _moment(one.ended_at),
        minutes,
        one.known,
    ]


def _moment(moment: datetime | None) -> str:
    """In the shop's time, with its offset, so that a clock change loses nothing."""
    return "" if moment is None else moment.astimezone(shop_zone()).isoformat(sep=" ", timespec="seconds")
