"""What a run is looked back at with, of a run that a test wrote down."""

from typing import Any

from runboard.plan.estimates import Estimates, estimates_from
from runboard.review.past import Past
from tests.core.pressing import Floor


def past_of(floor: Floor, run: str = "r1", **more: Any) -> Past:
    """A run of a floor looked back at now, nothing having been measured before it."""
    known = floor.state.runs[run]
    until = known.closed_at or floor.now
    events = [event for event in floor.ledger.held if known.opened_at <= event.moment <= until]
    fields = {"believed": Estimates(), "estimates": estimates_from(floor.state, floor.book)}
    return Past(
        **{
            "book": floor.book,
            "state": floor.state,
            "run": known,
            "events": events,
            "arrived": floor.ledger.arrived,
            "now": floor.now,
            **fields,
            **more,
        }
    )
