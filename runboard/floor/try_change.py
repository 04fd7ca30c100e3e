"""Trying a change before it is made: nothing of the run is touched."""

from runboard.floor.warm import catch_up, find_run
from runboard.floor.workshop import Workshop
from runboard.plan.estimates import estimates_from, spread_in
from runboard.plan.schedule.changed import Change, changed_problem
from runboard.plan.schedule.compared import Compared, compared
from runboard.plan.schedule.from_state import problem_for
from runboard.run.refusal import Refused


def try_change(workshop: Workshop, run: str, change: Change) -> Compared:
    """The run as things are now, beside the run with the change. Refused where the change makes no sense."""
    found = find_run(workshop, run)
    if found.state != "open":
        raise Refused("run closed", run=run, state=found.state)
    with workshop.lock:
        catch_up(workshop)
        state, book = workshop.ledger.state, workshop.book
        estimates = estimates_from(state, book, workshop.kept.setdefault("measured", {}))
    now = workshop.clock.now()
    before = problem_for(state, book, now, estimates)
    after = changed_problem(state, book, now, estimates, change)
    return compared(before, after, run, spread_in(state, estimates), None)
