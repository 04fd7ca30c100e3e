"""A change as somebody typed it into a form: tried on the Plan page before a run, in its review after it."""

from datetime import date, datetime, time, tzinfo
from typing import Any

from werkzeug.datastructures import MultiDict

from runboard.plan.change import (
    KINDS_OF_TIME,
    Capacity,
    Change,
    Helper,
    HoursAdded,
    Instead,
    LoadSize,
    OnePersonMore,
    OneVisit,
    Rested,
    Swapped,
    Times,
    TraySize,
)
from runboard.plan.changed_route import check_rate
from runboard.run.refusal import Refused
from runboard.shop.book import Book

MOST_DIGITS = 6
MEANS = ("tool", "abrasive", "wood")


def change_asked(given: MultiDict[str, str], run: str, zone: tzinfo) -> Change:
    """The change that a form says for a run; whether it can be is asked by who tries it. Refused with what to write instead."""

    def said(name: str) -> str:
        return given.get(name, "")

    match said("what"):
        case "hours":
            return HoursAdded(said("person"), *_hours(said("day"), said("opens"), said("closes")))
        case "person":
            return OnePersonMore(said("like"), tuple(given.getlist("skills")), _start(said("from"), zone))
        case "helper":
            start = _start(said("from"), zone)
            return Helper(run, said("operation"), said("like"), number_in(said("minutes")), start)
        case "capacity":
            return Capacity(said("service"), number_in(said("capacity")))
        case "trays":
            return TraySize(run, number_in(said("pieces")))
        case "load":
            return LoadSize(run, said("step"), number_in(said("pieces")), said("grows") == "on")
        case "times":
            kind = said("kind") if said("kind") in KINDS_OF_TIME else ""
            return Times(run, said("operation"), kind, number_in(said("per_cent")))
        case "instead":
            return _instead(given, run)
        case "wait":
            return Rested(run, said("operation"), number_in(said("minutes")))
        case "order":
            return Swapped(run, said("first"))
        case "visit":
            return OneVisit(run, said("first"))
    raise Refused("try unknown")


def choices(book: Book) -> dict[str, Any]:
    """What the forms of a change offer of the book."""
    everybody = [person for person in book.people if not person.removed]
    return {
        "book": book,
        "everybody": everybody,
        "people": [person for person in everybody if person.hours],
        "kinds": KINDS_OF_TIME,
        "means": MEANS,
    }


def number_in(text: str) -> int:
    """Refused 'try number'."""
    text = text.strip()
    if not (text.isascii() and text.isdigit()) or len(text) > MOST_DIGITS:
        raise Refused("try number")
    return int(text)


def _instead(given: MultiDict[str, str], run: str) -> Instead:
    rate = given.get("good", "").strip()
    means = next((means for means in MEANS if means == given.get("means")), "tool")
    good = number_in(rate) / 100 if rate else None
    check_rate(good)
    return Instead(
        run,
        given.get("operation", ""),
        means,  # type: ignore[arg-type]
        given.get("name", "").strip(),
        number_in(given.get("per_cent", "")),
        good,
    )


def _hours(*text: str) -> tuple[date, time, time]:
    try:
        day, opens, closes = (part.strip() for part in text)
        return date.fromisoformat(day), _clock(opens), _clock(closes)
    except (ValueError, Refused):
        raise Refused("try hours") from None


def _clock(text: str) -> time:
    """'9:00' or '09:00'; the end of the day is '24:00' or '00:00'."""
    hours, minutes = map(number_in, text.split(":")[:2])
    return time(hours % 24 if minutes == 0 else hours, minutes)


def _start(text: str, zone: tzinfo) -> datetime | None:
    """The first moment of a day where the shop is; None for at once."""
    if not text.strip():
        return None
    try:
        return datetime.combine(date.fromisoformat(text.strip()), time(), zone)
    except ValueError:
        raise Refused("try day") from None
