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
        elements=[(one, say("element", one.kind), *_names(study.names, one)) for one in study.elements],
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
            (date_in_words(day, with_year=True), list(here)) for day, here in groupby(found, key=lambda one: one.day)
        ],
        who={one.person: names.person(one.person) for one in found},
        stations={key: names.station(key) for one in found for key in one.unknown},
        doses={one.dose: percent(one.dose) for one in found if one.dose is not None},
        levels={one.level: round(one.level) for one in found if one.level is not None},
        rule=(figure(rule.limit_db), figure(rule.exchange_db)),
        limits=[(one, figure(one.mg_m3), _host(one.source)) for one in DUST_LIMITS],
        sources={one.source: _host(one.source) for one in DUST_LIMITS},
    )


@part.get("/review/runs/<key>.csv")
def as_csv(key: str) -> Response:
    """The same table for a spreadsheet (RFC 4180, UTF-8)."""
    study = look_back_at(workshop(), key)
    text = csv_text(HEAD, (_row(study, one) for one in study.elements))
    response = Response(text, content_type="text/csv; charset=utf-8; header=present")
    response.headers.set("Content-Disposition", "attachment", filename=f"run-{study.run.id}.csv")
    return unkept(response)


def _names(names: Called, one: Element) -> tuple[str, str]:
    return names.station(one.station), names.person(one.person)


def _row(study: Study, one: Element) -> list[object]:
    minutes = None if one.length is None else round(one.length.total_seconds() / 60, 2)
    station, person = _names(study.names, one)
    return [
        study.run.name,
        study.run.product_name,
        one.step_name,
        one.load,
        station,
        " ".join(one.trays),
        one.pieces,
        one.kind,
        person,
        ("helper" if study.names.is_helper(one.person) else "lead") if one.person else "",
        _moment(one.began_at),
        _moment(one.ended_at),
        minutes,
        one.known,
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
