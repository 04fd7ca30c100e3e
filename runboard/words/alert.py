"""An alert as a message that leaves the building: the same words as on the pages."""

from collections.abc import Mapping
from datetime import datetime
from typing import Any

from runboard.run.calls.climb import subject_kind
from runboard.run.calls.dues import Due, is_missed
from runboard.run.care.cautions import REMINDERS
from runboard.run.fold.state import RunState, ShopState
from runboard.run.log.one_line import one_line
from runboard.shop.book import Book
from runboard.words.facts import zone_of
from runboard.words.sentences import say

LONGEST_TITLE = 250


def alert_words(state: ShopState, book: Book, due: Due, now: datetime) -> tuple[str, str]:
    """(title, body): 'The laser has ended', since when, and how to answer. It never says what may be left alone.

    The title is one line, whatever stations, people and trays are called: it goes into headers and onto lock screens.
    """
    family, code = _sentence(due, state, now)
    zone = zone_of(book.time_zone)
    alert = say(family, code, _facts(due, state, book), zone=zone)
    return one_line(alert, LONGEST_TITLE), say("outside", "body", {"at": due.due_at}, zone=zone)


def _sentence(due: Due, state: ShopState, now: datetime) -> tuple[str, str]:
    """The family and code of an alert's sentence; an unanswered look and somebody who is hurt have their own."""
    call = _call(due, state)
    if call is not None and call["why"] == "hurt":
        return "alert", "hurt"
    if due.said:
        return "alert", "said running"
    if due.kind == "watch check" and is_missed(due, now):
        return "alert", "watch missed"
    if due.kind in REMINDERS:
        return "care", REMINDERS[due.kind][due.id.split("|")[1]]
    return "alert", subject_kind(due)


def _call(due: Due, state: ShopState) -> Mapping[str, Any] | None:
    return state.calls.get(due.id.removeprefix("call|"))


def _facts(due: Due, state: ShopState, book: Book) -> dict[str, Any]:
    station, call = book.station(due.station), _call(due, state)
    step, following = _step_names(due, state.runs.get(due.run))
    return {
        "station": station.name if station else due.station,
        "tray": due.tray,
        "step": step,
        "next": following,
        "person": _person_name(due.person, state, book),
        "room": next((room.name for room in book.rooms if station and room.key == station.room), ""),
        "supply": due.id.split("|")[2] if due.kind == "supply due" else "",
        "why": say("call", f"why {call['why']}") if call is not None else _held_for(due, state.runs.get(due.run)),
    }


def _held_for(due: Due, run: RunState | None) -> str:
    """Why pieces of a tray are on hold at the step: 'knot, new blank'."""
    tray = run.trays.get(due.tray) if run else None
    held = [hold for hold in tray.holds if hold.step == due.step] if tray else []
    return "; ".join(", ".join(filter(None, (hold.why, hold.waiting_for))) for hold in held)


def _step_names(due: Due, run: RunState | None) -> tuple[str, str]:
    """The names of the step and of the one after it."""
    route = run.route_of(run.trays[due.tray]) if run and due.tray in run.trays else run.route if run else None
    names = [step.name for step in route.steps] if route else []
    keys = [step.key for step in route.steps] if route else []
    at = keys.index(due.step) if due.step in keys else None
    if at is None:
        return due.step, ""
    return names[at], "" if at + 1 == len(names) else names[at + 1]


def _person_name(key: str, state: ShopState, book: Book) -> str:
    """Who is meant: a guest is in no book, and has the name that they gave."""
    known, seen = book.person(key), state.people.get(key)
    return known.name if known else (seen.name if seen else "") or say("ui", "somebody")


def words_of_a_test(shop: str) -> tuple[str, str]:
    """(title, body) of a test, which cannot be taken for an alert. ``shop`` is what the shop is called."""
    return one_line(say("outside", "test title", {"shop": shop}), LONGEST_TITLE), say("outside", "test body")
