"""What happened to one tray, press by press: a readable list, with what was undone marked as such."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from runboard.run.fold.names import trays_of
from runboard.run.fold.state import RunState, Tray
from runboard.run.log.corrections import voided
from runboard.run.log.event import Event

_OF_EVERY_TRAY = ("run opened", "run finished", "run abandoned")
_CORRECTING = ("event amended", "entry settled")
_TEXTS = ("why", "note", "until", "waiting_for", "wood", "board", "result", "how", "supply")


@dataclass(frozen=True)
class HistoryEntry:
    """One press. ``code`` names its sentence, which for a load done with counts is another, ``facts`` fill it: ``step`` is the step's name, ``good`` and ``scrap``
    the counts of this tray where there are any, ``pieces`` how many were meant."""

    at: datetime
    event: str
    kind: str
    person: str
    code: str
    facts: Mapping[str, Any]
    basis: str
    undone: bool


def tray_history(
    run: RunState, tray: str, events: Mapping[str, Event], unsettled: Collection[str] = ()
) -> list[HistoryEntry]:
    """Everything that concerns a tray, oldest first. ``events`` are all that arrived, by id."""
    void = voided(events)
    about = {key for key, event in events.items() if event.run == run.id and _concerns(event, run, tray)}
    named = {key for key, event in events.items() if event.kind in _CORRECTING and str(event.get("event")) in about}
    found = [_entry(events[key], run, tray, void, unsettled) for key in about | named]
    return sorted(found, key=lambda entry: (entry.at, entry.event))


def _concerns(event: Event, run: RunState, tray: str) -> bool:
    body = event.body or {}
    if event.kind in _OF_EVERY_TRAY or event.tray == tray:
        return True
    if event.kind == "pieces moved":
        return bool(body["to"] == tray)
    if event.kind == "route revised":
        return _holds_for(str(body["from_tray"]), run, tray)
    if any(_names(body.get(name), tray) for name in ("pieces", "counts", "trays")):
        return True
    named = body.get("board") or event.load
    return bool(named) and tray in _trays_of(str(named), run)


def _names(said: object, tray: str) -> bool:
    """Whether a field of a body names the tray: by tray, or in a list; a number of pieces names none."""
    return isinstance(said, (Mapping, list, tuple)) and tray in said


def _holds_for(first: str, run: RunState, tray: str) -> bool:
    keys = list(run.trays)
    return first in keys and tray in keys[keys.index(first) :]


def _trays_of(load: str, run: RunState) -> Collection[str]:
    if load in run.boards:
        return run.boards[load]
    known = run.loads.get(load) or run.past.get(load)
    return known.pieces if known and known.pieces else trays_of(load)


def _entry(event: Event, run: RunState, tray: str, void: Collection[str], unsettled: Collection[str]) -> HistoryEntry:
    facts = _facts(event, run, run.trays.get(tray))
    if event.id in unsettled:
        facts["to_settle"] = True
    code = "load done counted" if event.kind == "load done" and "good" in facts else event.kind
    return HistoryEntry(event.moment, event.id, event.kind, event.person, code, facts, event.basis, event.id in void)


def _facts(event: Event, run: RunState, tray: Tray | None) -> dict[str, Any]:
    body = event.body or {}
    route = run.route_of(tray) if tray else run.route
    facts: dict[str, Any] = {name: body[name] for name in _TEXTS if isinstance(body.get(name), str) and body[name]}
    key = event.operation or str(event.load).split("/", 1)[0]
    if key:
        facts["step"] = route.step_name(key)
    if event.station:
        facts["station"] = event.station
    if tray is not None:
        facts |= _counted(event, tray.id)
    if event.kind == "pieces moved":
        facts |= {"from": event.tray, "to": body["to"], "pieces": body["pieces"]}
        facts["to_step"] = route.step_name(str(body["to_operation"]))
    return facts


def _counted(event: Event, tray: str) -> dict[str, Any]:
    """The counts that an event says of this tray."""
    body = event.body or {}
    said = body if event.kind == "pieces counted" else (body.get("counts") or {}).get(tray)
    if said and "good" in said:
        scrap = said.get("scrap") or ()
        why = ", ".join(dict.fromkeys(str(reason["why"]) for reason in scrap if reason.get("why")))
        return {
            "good": said["good"],
            "scrap": sum(reason["pieces"] for reason in scrap),
            **({"why": why} if why else {}),
        }
    pieces = body.get("pieces")
    if isinstance(pieces, Mapping) and tray in pieces:
        return {"pieces": pieces[tray]}
    return {"pieces": pieces} if isinstance(pieces, int) else {}
