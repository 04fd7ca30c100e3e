"""A button at a station: a cheap Wi-Fi button or a foot switch that presses Now's big button for whose hands are there.

It ends what they are at, all good, and begins what Now says next. It does less than Now: it starts no machine that asks
for a list, says no list for anybody, answers no alert and no reminder of care, and where two people are at the station it
does nothing. A second press within five seconds takes the first back.
"""

import uuid
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Any

from runboard.floor.keeping.signals import Ears, make_sensor
from runboard.floor.letting_in.helper import is_open, list_of, since
from runboard.floor.planning.plans import latest
from runboard.floor.pressing.taps import record_events
from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.plan.move import Move
from runboard.plan.offers import lines
from runboard.run.calls.signals import PRESSES, Sensor
from runboard.run.fold.route import Step
from runboard.run.fold.state import EMPTY, Load, RunState
from runboard.run.log.ahead import after_all
from runboard.run.log.event import write_moment
from runboard.run.log.form import check_form
from runboard.run.refusal import Refused
from runboard.run.rules.rules import tray_to_show

# A switch that bounces, or a message that a broker brings twice, is one press.
BOUNCE = timedelta(milliseconds=500)
TAKES_BACK = timedelta(seconds=5)
# What may follow with the same press, by whether its load is begun.
_BEGINS, _GOES_ON = ("start", "wipe"), {"go on": ("loading", "working", "unloading"), "unload": ("running", "ended")}

Draft = dict[str, Any]


@dataclass(frozen=True)
class Pressed:
    """What a press of a button did: 'done', 'started', 'taken back', or 'nothing' with the ``code`` and ``facts`` of why.
    ``press`` is the id of its events, ``person`` whose hands they were."""

    station: str
    at: datetime
    did: str
    person: str = ""
    press: str = ""
    code: str = ""
    facts: Mapping[str, Any] = field(default_factory=lambda: EMPTY)


@dataclass(frozen=True)
class _Hands:
    """Whose hands are at a load at the station."""

    person: str
    station: str
    run: RunState
    load: Load
    step: Step


def make_button(ears: Ears, station: str, name: str) -> tuple[str, Sensor]:
    """(token, button) for one station. The token is kept nowhere, so it is shown once. Refused 'station unknown'."""
    return make_sensor(ears, station, name, PRESSES)


def press_button(ears: Ears, station: str) -> Pressed:
    """Press Now's big button for whose hands are at the station, or take back what was pressed there just before.

    Open pages are told what it did, also where that is nothing. Refused 'station unknown'.
    """
    workshop = ears.workshop
    with workshop.lock:
        catch_up(workshop)
        if workshop.book.station(station) is None:
            raise Refused("station unknown", station=station)
        now, last = workshop.clock.now(), _last(workshop).get(station)
        if last is not None and now - last.at < BOUNCE:
            return last
        try:
            pressed = _press(workshop, station, last, now)
        except Refused as refused:
            pressed = Pressed(station, now, "nothing", code=refused.code, facts=refused.facts)
        _last(workshop)[station] = workshop.kept["pressed"] = pressed
        seq = workshop.ledger.last_seq
    workshop.tell.changed(seq)
    return pressed


def _last(workshop: Workshop) -> dict[str, Pressed]:
    found: dict[str, Pressed] = workshop.kept.setdefault("buttons", {})
    return found


def _press(workshop: Workshop, station: str, last: Pressed | None, now: datetime) -> Pressed:
    if last is not None and last.press and now - last.at <= TAKES_BACK:
        _record(workshop, last.person, [{"kind": "event undone", "run": "", "body": {"event": last.press}}])
        return Pressed(station, now, "taken back", last.person)
    at = _hands_at(workshop, station)
    first = _big(workshop, at)
    then = _next(workshop, at, now) if first["kind"] == "load done" else []
    try:
        press = _record(workshop, at.person, [first, *then])
    except Refused:
        if not then:
            raise
        press = _record(workshop, at.person, [first])  # what should follow does not fit: what is done is done
    return Pressed(station, now, "done" if first["kind"] == "load done" else "started", at.person, press)


def _hands_at(workshop: Workshop, station: str) -> _Hands:
    """Whose hands are at the station. Refused 'button nobody', 'button two people'."""
    state = workshop.ledger.state
    found = []
    for key, person in state.people.items():
        run = state.runs.get(person.hands[0]) if person.hands and not person.away else None
        load = run.loads.get(person.hands[1]) if run is not None and person.hands else None
        if run is not None and load is not None and load.station == station:
            found.append((key, run, load))
    name = getattr(workshop.book.station(station), "name", station)
    if not found:
        raise Refused("button nobody", station=name)
    if len(found) > 1:
        raise Refused("button two people", station=name)
    key, run, load = found[0]
    step = run.route_of(run.trays[next(iter(load.pieces))]).step(load.step)
    if step is None:
        raise Refused("button nothing", station=name)
    return _Hands(key, name, run, load, step)


def _big(workshop: Workshop, at: _Hands) -> Draft:
    """What Now's big button would say first. Refused where it asks for a list or the lead's look, or where there is none."""
    wanted = list_of(workshop.book, at.step)
    if at.load.state == "loading" and not wanted:
        return _about(at.run, at.load) | {
            "kind": "machine started",
            "body": {"minutes": max(1, round(at.step.pass_.machine.total_seconds() / 60))},
        }
    if at.load.state == "loading" or (at.load.state == "working" and wanted and not _listed(workshop, at.load)):
        raise Refused("button list", station=at.station)
    if at.load.state not in ("working", "unloading"):
        raise Refused("button nothing", station=at.station)
    if tray_to_show(at.run, at.load, at.person):
        raise Refused("button look", station=at.station)
    return _about(at.run, at.load) | {"kind": "load done", "body": {}}


def _listed(workshop: Workshop, load: Load) -> bool:
    """Whether its start list was said for this load by hand at a cutter, in full or once more."""
    said = since(workshop.ledger.held, load.started_at)
    return any(event.kind == "checklist ticked" and (event.run, event.load) == (load.run, load.id) for event in said)


def _next(workshop: Workshop, at: _Hands, now: datetime) -> list[Draft]:
    """What Now says next, where it begins something; nothing where that asks for a list by hand at a cutter."""
    planned = latest(workshop)
    offer = planned.answer.offers.get(at.person) if planned is not None else None
    state, book = workshop.ledger.state, workshop.book
    for move in lines(state, book, at.person, now, offer):
        run = state.runs.get(move.run)
        if run is not None and _is_open_move(run, move, at.load):
            return list(_begin(workshop, run, move))
    return []


def _is_open_move(run: RunState, move: Move, mine: Load) -> bool:
    load = run.loads.get(move.load)
    if move.code in _BEGINS:
        return load is None or not is_open(load)
    return load is not None and load is not mine and load.state in _GOES_ON.get(move.code, ())


def _begin(workshop: Workshop, run: RunState, move: Move) -> Iterator[Draft]:
    if move.code == "unload":
        yield _about(run, run.loads[move.load]) | {"kind": "unloading started", "body": {}}
        return
    step = run.route_of(run.trays[move.trays[0]]).step(move.step)
    if step is None or (not step.has_machine and list_of(workshop.book, step)):
        return
    load = Load(move.load, run.id, move.step, move.station, "", move.pieces)
    places = {"places": dict(move.places)} if move.places else {}
    yield _about(run, load) | {"kind": "load started", "body": {"pieces": dict(move.pieces), **places}}


def _about(run: RunState, load: Load) -> Draft:
    tray = run.trays.get(next(iter(load.pieces), ""))
    revision = tray.revision if tray is not None else 0
    return {"run": run.id, "load": load.id, "operation": load.step, "station": load.station, "revision": revision}


def _record(workshop: Workshop, person: str, drafts: Sequence[Draft]) -> str:
    """Record the events of one press, and answer its id."""
    press, at = uuid.uuid4().hex, write_moment(after_all(workshop.ledger.held, workshop.clock.now()))
    made = [
        {"id": press if number == 1 else f"{press}.{number}", "at": at, "person": person, "device": "button", **draft}
        for number, draft in enumerate(drafts, 1)
    ]
    record_events(workshop, [check_form(record) for record in made])
    return press
