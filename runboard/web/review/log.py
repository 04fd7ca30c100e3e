"""A run's log as a table of time elements with its hours by operation, and the same table for a spreadsheet."""

from datetime import datetime
from typing import Any

from flask import Blueprint, Response

from runboard.floor.looking.at_hand import Called
from runboard.floor.looking.look_back import Study, look_back_at
from runboard.floor.looking.review import past_of
from runboard.review.happened.lost import yields_of
from runboard.review.table_text import csv_text
from runboard.review.time_study import ASSUMED, FROM_PAPER, MEASURED, Element
from runboard.web.door.pages import page, shop_zone, unkept, workshop
from runboard.words.review_things import piece_time
from runboard.words.sentences import say

HEAD = (
    "run", "product", "operation", "load", "station", "trays", "pieces", "element", "person", "hours_of", "began", "ended",
    "minutes", "known",
)  # fmt: skip

part = Blueprint("review_log", __name__)


@part.get("/review/runs/<key>/log")
def log(key: str) -> Response:
    """Hours by operation, and every element with its time."""
    study = look_back_at(workshop(), key)
    sums: dict[str, Any] = {name: study.hours.all(name) for name in ("hands", "helpers", "machine", "unmeasured")}
    return page(
        "review/log.html",
        run=study.run,
        sums=study.hours.steps,
        elements=[(element, say("element", element.kind), *_names(study.names, element)) for element in study.elements],
        again=_again(study),
        good=study.hours.good,
        a_piece=piece_time(study.hours.a_piece) if study.hours.a_piece else 0,
        measured=MEASURED,
        filled_in=(ASSUMED, FROM_PAPER),
        **sums,
    )


@part.get("/review/runs/<key>.csv")
def as_csv(key: str) -> Response:
    """The same table for a spreadsheet (RFC 4180, UTF-8)."""
    study = look_back_at(workshop(), key)
    text = csv_text(HEAD, (_row(study, element) for element in study.elements))
    response = Response(text, content_type="text/csv; charset=utf-8; header=present")
    response.headers.set("Content-Disposition", "attachment", filename=f"run-{study.run.id}.csv")
    return unkept(response)


def _again(study: Study) -> dict[str, int]:
    """By step the pieces that were done again: its loads had them more than once. Of a run that goes on nobody can tell yet."""
    if study.run.state == "open":
        return {}
    into = {each.step: each.into for each in yields_of(past_of(workshop(), study.run.id))}
    return {each.step: max(0, each.pieces - into.get(each.step, each.pieces)) for each in study.hours.steps}


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
