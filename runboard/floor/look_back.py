"""Looking back on a run: its time elements, and what happened to a tray."""

from runboard.floor.warm import find_run
from runboard.floor.workshop import Workshop
from runboard.review.history import Entry, tray_history
from runboard.review.time_study import Element, loads_after_a_change, time_elements
from runboard.run.refusal import Refused
from runboard.run.state import RunState


def study_run(workshop: Workshop, run: str) -> tuple[RunState, list[Element]]:
    """The run and its time elements. Refused 'run unknown'."""
    with workshop.lock:
        found = find_run(workshop, run)
        ledger = workshop.ledger
        changed = loads_after_a_change(ledger.state, run, ledger.held)
        return found, time_elements(found, ledger.arrived, workshop.clock.now(), changed)


def history_of(workshop: Workshop, run: str, tray: str) -> list[Entry]:
    """What happened to a tray. Refused 'run unknown', 'tray unknown'."""
    with workshop.lock:
        found = find_run(workshop, run)
        if tray not in found.trays:
            raise Refused("tray unknown", tray=tray)
        return tray_history(found, tray, workshop.ledger.arrived, workshop.ledger.state.unsettled)
