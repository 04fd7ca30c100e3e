"""Looking back: a run's time elements, the times learned from them, what happened to a tray, and what people's ears and lungs met on the last days."""

from dataclasses import dataclass
from datetime import timedelta
from typing import Any

from runboard.floor.looking.at_hand import Called, names_now
from runboard.floor.warm import catch_up, find_run
from runboard.floor.workshop import Workshop
from runboard.plan.estimates import Estimates, estimates_from
from runboard.review.exposure import Exposure, exposures
from runboard.review.history import HistoryEntry, tray_history
from runboard.review.hours import HoursOfRun, hours_of
from runboard.review.time_study import Element, loads_after_a_change, time_elements
from runboard.run.fold.record import plain
from runboard.run.fold.state import RunState
from runboard.run.log.event import write_moment
from runboard.run.refusal import Refused
from runboard.shop.hours import local_day


def study_run(workshop: Workshop, run: str) -> tuple[RunState, list[Element]]:
    """The run and its time elements. Refused 'run unknown'."""
    with workshop.lock:  # what is read goes on being written; what is reckoned of it holds up nobody
        found, arrived = find_run(workshop, run), dict(workshop.ledger.arrived)
    return found, time_elements(found, arrived, workshop.clock.now(), loads_after_a_change(found))


def estimates_now(workshop: Workshop) -> Estimates:
    """The times as they are learned by now."""
    with workshop.lock:
        kept = workshop.kept.setdefault("measured", {})
        state, book = workshop.ledger.state, workshop.book
    return estimates_from(state, book, kept)


@dataclass(frozen=True)
class Study:
    """A run looked back at: its time elements, its hours by step, and what everybody in it is called."""

    run: RunState
    elements: list[Element]
    hours: HoursOfRun
    names: Called


def look_back_at(workshop: Workshop, run: str) -> Study:
    """What the Review shows of a run. Refused 'run unknown'."""
    found, elements = study_run(workshop, run)
    names = names_now(workshop)
    return Study(found, elements, hours_of(found, elements, names.book), names)


def history_of(workshop: Workshop, run: str, tray: str) -> list[HistoryEntry]:
    """What happened to a tray. Refused 'run unknown', 'tray unknown'."""
    with workshop.lock:
        found = find_run(workshop, run)
        arrived, unsettled = dict(workshop.ledger.arrived), workshop.ledger.state.unsettled
    if tray not in found.trays:
        raise Refused("tray unknown", tray=tray)
    return tray_history(found, tray, arrived, unsettled)


def history_record(workshop: Workshop, run: str, tray: str) -> list[dict[str, Any]]:
    """The same as plain records, with who it was by name."""
    names = {person.key: person.name for person in workshop.book.people}
    return [
        {
            "at": write_moment(entry.at),
            "event": entry.event,
            "kind": entry.kind,
            "person": entry.person,
            "code": entry.code,
            "facts": plain({**entry.facts, "who": names.get(entry.person, "somebody")}),
            "basis": entry.basis,
            "undone": entry.undone,
        }
        for entry in history_of(workshop, run, tray)
    ]


def exposures_of_days(workshop: Workshop, days: int) -> list[Exposure]:
    """Noise and dust of each person on the last so many days of the shop, today among them, the newest first."""
    with workshop.lock:
        catch_up(workshop)
        book, state, events = workshop.ledger.book, workshop.ledger.state, list(workshop.ledger.held)
    now = workshop.clock.now()
    today = local_day(now, book.time_zone)
    return exposures(book, state, events, [today - timedelta(days=back) for back in range(days)], now)
