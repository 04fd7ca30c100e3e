"""The server comes back: due moments are made again from the fold, and the first question is what was running."""

from typing import Any

from runboard.floor.changing.runs import new_event
from runboard.floor.pressing.taps import record_events
from runboard.floor.workshop import Workshop
from runboard.floor.writing import writing
from runboard.run.fold.state import ShopState
from runboard.run.log.ahead import last_known
from runboard.run.log.event import write_moment


def come_back(workshop: Workshop, was_served: bool = True) -> bool:
    """Make the due moments again from the fold; if work was left open by a server before, ask what was running.

    Returns whether the question was asked. Nobody pressed meanwhile, so what ran on, ended or stopped is not known.
    """
    with workshop.lock:
        workshop.since = workshop.clock.now()
        with writing(workshop):  # nothing is appended: the due moments are stored
            pass
        state = workshop.ledger.state
        left_open = open_work(state)
        if not was_served or not left_open or state.asks:
            return False
        body: dict[str, Any] = {"open": left_open}
        last = last_known(workshop.ledger.held, workshop.since)
        if last is not None:
            body["last_at"] = write_moment(last)
        record_events(workshop, [new_event(workshop, "server restarted", body, device="server", basis="sensor")])
        return True


def open_work(state: ShopState) -> list[str]:
    """``run|load`` for every load whose machine ran or at which somebody's hands were."""
    return [f"{run.id}|{load.id}" for run, load in state.open_loads() if load.state == "running" or load.people]
