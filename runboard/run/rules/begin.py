"""May this load begin here, now, by this person? The one answer: a press asks it by ``decide``, Now before it offers, the plan
for what no waiting changes.

Two things are no refusals: what is *not offered* may still be pressed, since whoever stands there may know better (the
hose is on the other machine by now, the neighbours are away, they agreed to swap). What is refused is in ``rules.py``.
"""

from collections.abc import Callable, Mapping, Sequence

from runboard.run.fold.draft import Draft
from runboard.run.fold.hands import busy
from runboard.run.fold.names import pieces_wanted
from runboard.run.fold.route import Step
from runboard.run.fold.state import Load, RunState
from runboard.run.fold.table import load_at_hand
from runboard.run.log.event import Event
from runboard.run.refusal import Refused
from runboard.run.rules.air import at_work_in, coat_of
from runboard.run.rules.rules import RULES, check_load
from runboard.run.rules.services import Services
from runboard.shop.book import Station
from runboard.shop.hours import is_open

# Rules, with the code, that a load breaks however long it waits, until somebody says something else. The others pass with
# time, or hold for one person only; the plan knows them as windows, lags and who is able.
LASTING = {
    "operation allowed": "first piece failed",
    "supplies there": "supply out",
    "material allowed": "material forbidden",
}

# Refusals that say the same of whatever trays go on at a step: they are of its station, its operation, whoever asks, the room.
OF_ANY_TRAY = frozenset(
    (
        "station busy",
        "station out",
        "first piece failed",
        "supply out",
        "skill",
        "not shown",
        "watch first",
        "air not clear",
        "solvent beside heat",
    )
)


def may_begin(draft: Draft, event: Event) -> Refused | None:
    """Why an up-to-date ``event`` about a load would be refused, or None where it would be taken. It may be asked again and
    again of one ``draft``, in which nothing has changed."""
    try:
        load, step = load_at_hand(draft, event)
        held_by = draft.station(load.station).load
        if held_by is not None and held_by != (load.run, load.id):
            raise busy(draft, held_by)
        check_load(draft, event, load, step)
    except Refused as refusal:
        return refusal
    return None


def never_begins(draft: Draft, run: RunState, step: Step, load: str, trays: Sequence[str]) -> Refused | None:
    """Why these trays may not go on at a step whatever the hour and whoever does it; None where they may."""
    event = Event("", "load started", run.opened_at, run=run.id, load=load, body={"pieces": dict.fromkeys(trays, 1)})
    asked = Load(load, run.id, step.key, step.operation.station, "none", dict.fromkeys(trays, 1))
    for rule, code in LASTING.items():
        try:
            RULES[rule](draft, event, asked, step)
        except Refused as refusal:
            if refusal.code == code and not refusal.facts.get("until"):
                return refusal
    return None


def not_offered(draft: Draft, event: Event) -> str:
    """Why a load that may begin is offered to nobody, or not to this person; '' where it is."""
    load, step = load_at_hand(draft, event)
    station = draft.book.station(load.station)
    if step is None or station is None:
        return "no station"
    return next((name for name, holds in NOT_OFFERED.items() if holds(draft, event, step, station)), "")


def _in_quiet_hours(draft: Draft, event: Event, step: Step, station: Station) -> bool:
    return bool(station.quiet) and is_open(station.quiet, draft.book.time_zone, event.moment)


def _service_taken(draft: Draft, event: Event, step: Step, station: Station) -> bool:
    load, _ = load_at_hand(draft, event)
    services: Services = draft.once("services", lambda: Services(draft.base, draft.book))
    pieces = load.pieces or pieces_wanted(draft, event, load, step)
    return not services.suffice(draft.run(event.run), load, step, pieces)


def _dust_there(draft: Draft, event: Event, step: Step, station: Station) -> bool:
    """Whether a finish would be brought on where somebody sands: with solvent in it, the press itself is refused."""
    run = draft.run(event.run)
    load, _ = load_at_hand(draft, event)
    coat = coat_of(draft.book, run.route_at(run.revision_of(load)), step)
    return coat is not None and any(
        coat.keeps_off(station) is not None for station in at_work_in(draft.base, draft.book, station.room)
    )


def _given_to_others(draft: Draft, event: Event, step: Step, station: Station) -> bool:
    given = draft.run(event.run).given
    if not given:
        return False
    load, _ = load_at_hand(draft, event)
    trays = load.pieces or pieces_wanted(draft, event, load, step)
    to = {given[key]["to"] for tray in trays if (key := f"{step.key}|{tray}") in given}
    return bool(to) and event.person not in to


def _said_to_run(draft: Draft, event: Event, step: Step, station: Station) -> bool:
    return any(load.station == station.key for load in draft.base.said_running.values())


NOT_OFFERED: Mapping[str, Callable[[Draft, Event, Step, Station], bool]] = {
    "quiet hours": _in_quiet_hours,
    "service taken": _service_taken,
    "dust there": _dust_there,
    "given to others": _given_to_others,
    "said to run": _said_to_run,
}
