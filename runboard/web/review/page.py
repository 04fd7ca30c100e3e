"""The Review screen: a run's log as a table of time elements, its hours by operation, as CSV; noise and dust by day."""

from datetime import datetime
from itertools import groupby
from typing import Any
from urllib.parse import urlsplit

from flask import Blueprint, Response

from runboard.floor.changing.kept_changes import kept_changes
from runboard.floor.looking.at_hand import Called, names_now, runs_now
from runboard.floor.looking.look_back import Study, exposures_of_days, look_back_at
from runboard.review.dust_limits import DUST_LIMITS
from runboard.review.exposure import noise_rule
from runboard.review.table_text import csv_text
from runboard.review.time_study import ASSUMED, FROM_PAPER, MEASURED, Element
from runboard.web.door.pages import page, shop_zone, unkept, workshop
from runboard.web.fittings import fittings
from runboard.words.facts import date_in_words, number_in_words
from runboard.words.sentences import say

HEAD = (
    "run", "product", "operation", "load", "station", "trays", "pieces", "element", "person", "hours_of", "began", "ended",
    "minutes", "known",
)  # fmt: skip
EXPOSURE_DAYS = 7

part = Blueprint("review", __name__)


@part.get("/review")
def review() -> Response:
    """Every run, the newest first."""
    return page("review/review.html", runs=runs_now(workshop())[::-1])


@part.get("/review/runs/<key>")
def run(key: str) -> Response:
    """One run: hours by operation, and every element with its time."""
    study = look_back_at(workshop(), key)
    sums: dict[str, Any] = {name: study.hours.all(name) for name in ("hands", "helpers", "machine", "unmeasured")}
    return page(
        "review/run.html",
        run=study.run,
        sums=study.hours.steps,
        elements=[(element, say("element", element.kind), *_names(study.names, element)) for element in study.elements],
        good=study.hours.good,
        a_piece=study.hours.a_piece,
        measured=MEASURED,
        filled_in=(ASSUMED, FROM_PAPER),
        to_try=kept_changes(fittings().settings, key),
        **sums,
    )


@part.get("/review/days")
def days() -> Response:
    """Noise and dust of each person on the last days, as information."""
    found, names = exposures_of_days(workshop(), EXPOSURE_DAYS), names_now(workshop())
    rule = noise_rule(names.book)
    return page(
        "review/days.html",
        days=[
            (date_in_words(day, with_year=True), list(here)) for day, here in groupby(found, key=lambda each: each.day)
        ],
        who={exposure.person: names.person(exposure.person) for exposure in found},
        stations={key: names.station(key) for exposure in found for key in exposure.unknown},
        doses={exposure.dose: percent(exposure.dose) for exposure in found if exposure.dose is not None},
        levels={exposure.level: round(exposure.level) for exposure in found if exposure.level is not None},
        rule=(figure(rule.limit_db), figure(rule.exchange_db)),
        limits=[
            (say("dust-limit-of", limit.of), say("dust-limit", limit.dust), figure(limit.mg_m3), _host(limit.source))
            for limit in DUST_LIMITS
        ],
        sources={limit.source: _host(limit.source) for limit in DUST_LIMITS},
    )


@part.get("/review/runs/<key>.csv")
def as_csv(key: str) -> Response:
    """The same table for a spreadsheet (RFC 4180, UTF-8)."""
    study = look_back_at(workshop(), key)
    text = csv_text(HEAD, (_row(study, element) for element in study.elements))
    response = Response(text, content_type="text/csv; charset=utf-8; header=present")
    response.headers.set("Content-Disposition", "attachment", filename=f"run-{study.run.id}.csv")
    return unkept(response)


def _names(names: Called, element: Element) -> tuple[str, str]:
    return names.station(element.station), names.person(element.person)


def _row(study: Study, element: Element) -> list[object]:
    minutes = None if element.length is None else round(element.length.total_seconds() / 60, 2)
    station, person = _names(study.names, element)
    return [
        study.run.name,
        study.run.product_name,
        element.step_name,
        element.load,
        station,
        " ".join(element.trays),
        element.pieces,
        element.kind,
        person,
        ("helper" if study.names.is_helper(element.person) else "lead") if element.person else "",
        _moment(element.began_at),
        _moment(element.ended_at),
        minutes,
        element.known,
    ]


def _moment(moment: datetime | None) -> str:
    """In the shop's time, with its offset, so that a clock change loses nothing."""
    return "" if moment is None else moment.astimezone(shop_zone()).isoformat(sep=" ", timespec="seconds")


def _host(address: str) -> str:
    return urlsplit(address).netloc


def percent(share: float) -> str:
    """A dose in whole per cent; one that is too small for it is 'under 1 %', never nothing."""
    return "under 1 %" if share < 1 else f"{share:,.0f} %"


def figure(number: float) -> str:
    """A number without a decimal that says nothing: 85, 0.5."""
    return number_in_words(number)
