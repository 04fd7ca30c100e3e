"""What a run is looked back at with, of a run that a test wrote down."""

from typing import Any

from runboard.plan.estimates import Estimates, estimates_from
from runboard.review.past import Past, beside, days_of, within
from tests.core.pressing import Floor


def past_of(floor: Floor, run: str = "r1", **more: Any) -> Past:
    """A run of a floor looked back at now, nothing having been measured before it."""
    known = floor.state.runs[run]
    days = days_of(known, floor.book, floor.now)
    fields = {"believed": Estimates(), "estimates": estimates_from(floor.state, floor.book)}
    return Past(
        **{
            "book": floor.book,
            "state": beside(floor.state, known, days),
            "run": known,
            "events": within(floor.ledger.held, days),
            "arrived": floor.ledger.arrived,
            "now": floor.now,
            **fields,
            **more,
        }
    )
