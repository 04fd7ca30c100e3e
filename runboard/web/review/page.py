"""The Review screen: a run's log as a table of time elements, its hours by operation, as CSV; noise and dust by day."""

from datetime import datetime
from itertools import groupby

from flask import Blueprint, Flask, Response

from runboard.floor.looking.look_back import exposures_of_days, study_run
from runboard.floor.warm import catch_up
from runboard.review.dust_limits import DUST_LIMITS
from runboard.review.exposure import noise_rule
from runboard.review.hours import hours_by_step, is_helper
from runboard.review.table_text import csv_text
from runboard.review.time_study import ASSUMED, FROM_PAPER, MEASURED, Element
from runboard.run.fold.state import RunState, ShopState
from runboard.shop.book import ZERO, Book
from runboard.web.door.pages import page, shop_zone, workshop

HEAD = (
    "run", "product", "operation", "load", "station", "trays", "pieces", "element", "person", "hours_of", "began", "ended",
    "minutes", "known",
)  # fmt: skip
EXPOSURE_DAYS = 7

part = Blueprint("review", __name__)


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_blueprint(part)
    app.jinja_env.filters.update(percent=percent, figure=figure)


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
    names = _Names(workshop().book, workshop().ledger.state)
    sums = hours_by_step(found, elements, {one.person for one in elements if names.is_helper(one.person)})
    good = sum(tray.good for tray in found.trays.values())
    hands = sum((one.hands for one in sums), ZERO)
    return page(
        "review/run.html",
        run=found,
        sums=sums,
        elements=elements,
        good=good,
        hands=hands,
        helpers=sum((one.helpers for one in sums), ZERO),
        a_piece=hands / good if good else None,
        machine=sum((one.machine for one in sums), ZERO),
        unmeasured=sum((one.unmeasured for one in sums), ZERO),
        names=names,
        measured=MEASURED,
        filled_in=(ASSUMED, FROM_PAPER),
    )


@part.get("/review/days")
def days() -> Response:
    """Noise and dust of each person on the last days, as information."""
    shop = workshop()
    found = exposures_of_days(shop, EXPOSURE_DAYS)
    return page(
        "review/days.html",
        days=[(day, list(here)) for day, here in groupby(found, key=lambda one: one.day)],
        rule=noise_rule(shop.book),
        limits=DUST_LIMITS,
        names=_Names(shop.book, shop.ledger.state),
    )


@part.get("/review/runs/<key>.csv")
def as_csv(key: str) -> Response:
    """The same table for a spreadsheet (RFC 4180, UTF-8)."""
    found, elements = _study(key)
    names = _Names(workshop().book, workshop().ledger.state)
    text = csv_text(HEAD, (_row(found, one, names) for one in elements))
    response = Response(text, content_type="text/csv; charset=utf-8; header=present")
    response.headers.set("Content-Disposition", "attachment", filename=f"run-{found.id}.csv")
    response.headers["Cache-Control"] = "no-store"
    return response


def _study(key: str) -> tuple[RunState, list[Element]]:
    return study_run(workshop(), key)


class _Names:
    """Names for what the log keeps by its key. A guest, who is in no book, has the name they gave, else 'helper'; who was
    removed is 'somebody'."""

    def __init__(self, book: Book, state: ShopState) -> None:
        self._book = book
        self._people = {one.key: one.name or "helper" for one in state.people.values()}
        self._people |= {one.key: one.name for one in book.people}
        self._stations = {one.key: one.name for one in book.stations}

    def person(self, key: str) -> str:
        return self._people.get(key, "somebody") if key else ""

    def is_helper(self, key: str) -> bool:
        return is_helper(self._book, key)

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
        ("helper" if names.is_helper(one.person) else "lead") if one.person else "",
        _moment(one.began_at),
        _moment(one.ended_at),
        minutes,
        one.known,
    ]


def _moment(moment: datetime | None) -> str:
    """In the shop's time, with its offset, so that a clock change loses nothing."""
    return "" if moment is None else moment.astimezone(shop_zone()).isoformat(sep=" ", timespec="seconds")


def percent(share: float) -> str:
    """A dose in whole per cent; one that is too small for it is 'under 1 %', never nothing."""
    return "under 1 %" if share < 1 else f"{share:,.0f} %"


def figure(number: float) -> str:
    """A number without a decimal that says nothing: 85, 0.5."""
    return f"{number:g}"
