"""What a person's page sees: the state as JSON, and the tag that says whether it changed."""

from bisect import bisect_right
from collections.abc import Mapping
from datetime import datetime, timedelta
from typing import Any

from runboard.floor.looking.listening import listening
from runboard.floor.planning.plans import Planned, latest, plan_record
from runboard.floor.pressing.access import LEAD
from runboard.floor.pressing.ahead import told_ahead
from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.plan.move import Move
from runboard.plan.offers import lines
from runboard.run.calls.climb import Steps, asked_first, stage_of, stages
from runboard.run.calls.dues import Due, dues
from runboard.run.fold.record import (
    Cache,
    book_record,
    due_record,
    dump,
    load_record,
    people_record,
    plain,
    record,
    run_text,
    stations_record,
    unsettled_record,
)
from runboard.run.fold.said import still_asked
from runboard.run.fold.shop_answers import alert_id
from runboard.run.fold.shown import MOST_SHOWN, newest
from runboard.run.fold.state import ShopState
from runboard.run.log.ahead import ahead
from runboard.run.log.corrections import press_ids, press_of
from runboard.run.log.event import parse_moment
from runboard.shop.book import Book
from runboard.shop.hours import DAYS

CARE_SHOWN = timedelta(days=2)


def state_for(workshop: Workshop, person: str) -> tuple[str, str]:
    """(tag, JSON text) of the shop for ``person``, with every open run. The tag changes with the log, the book, the person and
    due moments passed."""
    with workshop.lock:
        catch_up(workshop)
        now = workshop.clock.now()
        first = _first(workshop, now)
        tag = _tag(workshop, person, now, first)
        texts: dict[str, tuple[str, str]] = workshop.kept.setdefault("texts", {})
        kept = texts.get(person)
        if kept is None or kept[0] != tag:
            if len(texts) > 64:
                texts.clear()
            kept = texts[person] = (tag, _text(workshop, person, now, first))
        return kept


def _tag(workshop: Workshop, person: str, now: datetime, first: Mapping[str, str]) -> str:
    passed = bisect_right(_moments(workshop), now)
    steps = hash(workshop.steps) % 10_000
    planned = latest(workshop)
    version = planned.version if planned else 0
    asked = ",".join(first.values())
    return (
        f"{workshop.ledger.last_seq}.{workshop.book.revision}.{version}.{passed}.{steps}.{asked}"
        f".{len(ahead(workshop.ledger.held, now))}.{_pressed_at(workshop)}.{person}"
    )


def _first(workshop: Workshop, now: datetime) -> dict[str, str]:
    """Who is asked alone at first, by the due moment's id."""
    found, heard = _dues(workshop), listening(workshop, now)
    if not heard:
        return {}
    state = workshop.ledger.state
    return {due.id: first for due in found.values() if (first := asked_first(state, due, heard))}


def _dues(workshop: Workshop) -> dict[str, Due]:
    """The due moments of the state at hand, made once for each state."""
    state = workshop.ledger.state
    kept = workshop.kept.get("dues")
    if kept is None or kept[0] is not state or kept[3] is not workshop.steps:
        found, steps = dues(state, workshop.book), workshop.steps
        passing = sorted(begins for due in found.values() for begins in stages(due, steps).values())
        kept = workshop.kept["dues"] = (state, found, passing, steps)
    return kept[1]


def _moments(workshop: Workshop) -> list[datetime]:
    _dues(workshop)
    return workshop.kept["dues"][2]  # type: ignore[no-any-return]


def _text(workshop: Workshop, person: str, now: datetime, first: Mapping[str, str]) -> str:
    state, book = workshop.ledger.state, workshop.book
    cache: Cache = workshop.kept.setdefault("cache", Cache())
    runs = ",".join(f"{dump(run.id)}:{run_text(run, cache, book)}" for run in state.open_runs())
    told = _dues(workshop)
    rest: dict[str, Any] = {
        "dues": [
            _due(due, workshop.since, workshop.steps, now, first.get(due.id, ""))
            for due in sorted(told.values(), key=lambda due: due.due_at)
        ],
        "answers": _answers(workshop),
        "unsettled": [unsettled_record(entry) for entry in newest(state.unsettled).values()],
        **({"more": {"unsettled": more}} if (more := len(state.unsettled) - MOST_SHOWN) > 0 else {}),
        "asks": plain(newest(state.asks)),
        **_ahead(workshop, person),
        **_care(state, now),
        **(
            {"said_running": {key: load_record(load) for key, load in still_asked(state.said_running).items()}}
            if state.said_running
            else {}
        ),
        "calls": plain(state.calls),
        **_pressed(workshop),
        **_last_press(workshop, person),
        **_moves(state, book, latest(workshop), person, now),
    }
    head: dict[str, Any] = {
        "seq": workshop.ledger.last_seq,
        "book": book.revision,
        "person": person,
        "people": people_record(state, book),
        "stations": stations_record(state, book),
        "usual_ends": _usual_ends(book, person),
    }
    fixed = _book_text(workshop)
    return f'{dump(head)[:-1]},{fixed[1:-1]},{dump(rest)[1:-1]},"runs":{{{runs}}}}}'


def _usual_ends(book: Book, person: str) -> dict[str, str]:
    """When the person usually leaves, by the day of the week: 'mon' to '22:00', '00:00' at its end."""
    known = book.person(person)
    found: dict[str, str] = {}
    for window in known.hours if known is not None else ():
        last, closes = found.get(DAYS[window.weekday]), f"{window.closes:%H:%M}"
        if last is None or closes == "00:00" or last < closes != "00:00":
            found[DAYS[window.weekday]] = closes
    return found


def _pressed_at(workshop: Workshop) -> str:
    """When a button at a station was last pressed; '' where none was since the server came up."""
    last = workshop.kept.get("pressed")
    return "" if last is None else f"{last.at.timestamp():.3f}"


def _pressed(workshop: Workshop) -> dict[str, Any]:
    """What the last press of a button at a station did, for open pages to sound."""
    last = workshop.kept.get("pressed")
    return {} if last is None else {"pressed": record(last, ("press",))}


def _last_press(workshop: Workshop, person: str) -> dict[str, Any]:
    """What the person's last press said: a page names it where it came from another phone."""
    seen, arrived = workshop.ledger.state.people.get(person), workshop.ledger.arrived
    found = [arrived[key] for key in press_ids(seen.last) if key in arrived] if seen is not None and seen.last else []
    if not found:
        return {}
    event = found[-1]
    of = {"run": event.run, "load": event.load, "step": event.operation}
    return {"last_press": {"id": press_of(event.id), "kind": event.kind, **of}}


def _ahead(workshop: Workshop, person: str) -> dict[str, Any]:
    """What is dated after now, told to a lead, who can put it right."""
    known = workshop.book.person(person)
    found = told_ahead(workshop) if known is not None and known.access == LEAD else {}
    return {"ahead": found} if found else {}


def _moves(state: ShopState, book: Book, planned: Planned | None, person: str, now: datetime) -> dict[str, Any]:
    """What ``person`` could do, with the prices of the newest plan, which may be older than the log: nobody waits for it."""
    found = lines(state, book, person, now, planned.answer.offers.get(person) if planned is not None else None)
    if planned is None:
        return {"moves": [move_record(move) for move in found]}
    late, known = planned.answer.late.get(person, ()), book.person(person)
    return {
        "moves": [move_record(move) for move in found],
        "plan": plain(plan_record(planned, known is not None and known.access == LEAD)),
        **({"too_late": plain(late)} if late else {}),
    }


def _due(due: Due, since: datetime | None, steps: Steps, now: datetime, first: str) -> dict[str, Any]:
    """A due moment; ``late`` where it came while the server was away, ``stage`` where it has climbed, ``first`` whoever
    is asked alone until it is missed."""
    found = due_record(due)
    if first:
        found["first"] = first
    stage = stage_of(due, steps, now)
    if stage:
        found["stage"] = stage
    if since is not None and due.due_at < since:
        found["late"] = True
    return found


def _book_text(workshop: Workshop) -> str:
    cache: Cache = workshop.kept.setdefault("cache", Cache())
    return cache.text(workshop.book, book_record)


def _care(state: ShopState, now: datetime) -> dict[str, Any]:
    """What happened lately that must not be forgotten, or is still asked about, and what was said of it."""
    care = {
        key: entry
        for key, entry in state.care.items()
        if parse_moment(entry["began_at"]) > now - CARE_SHOWN
        or alert_id("care morning", key, entry["last_by"]) not in state.reminders
    }
    said = {key: reminder for key, reminder in state.reminders.items() if "|".join(key.split("|")[1:4]) in care}
    return {"care": plain(care), "reminders": said}


def _answers(workshop: Workshop) -> dict[str, Any]:
    """The last answers; older ones are of alerts that no page shows any more."""
    answers = workshop.ledger.state.answers
    return {key: answers[key] for key in list(answers)[-50:]}


def move_record(move: Move) -> dict[str, Any]:
    """A move as the page gets it."""
    return record(move, ("rank",))
