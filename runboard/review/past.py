"""What a run is looked back at with: the run, what the log says from its opening to its end, and the times that were
believed before it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from functools import cached_property

from runboard.plan.estimates import Estimates
from runboard.review.time_study import Element, loads_after_a_change, time_elements
from runboard.run.fold.state import RunState, ShopState
from runboard.run.log.event import Event
from runboard.shop.book import Book


@dataclass(frozen=True)
class Past:
    """A run and all that is known of it. Pure data, and no more of a long log than the run needs.

    ``state`` has only the runs that were open at some time while this one was; ``events`` are those of the whole shop that
    hold, in the fold's order, from the run's opening until ``until``; ``arrived`` are those by their id, and those that were
    taken back or amended, for their basis. ``believed`` are the times as they were learned before the run was opened,
    ``estimates`` as they are learned by now.
    """

    book: Book
    state: ShopState
    run: RunState
    events: Sequence[Event]
    arrived: Mapping[str, Event]
    now: datetime
    believed: Estimates
    estimates: Estimates

    @property
    def until(self) -> datetime:
        """When the run was closed; now where it is open."""
        return self.run.closed_at or self.now

    @property
    def is_open(self) -> bool:
        return self.run.state == "open"

    @cached_property
    def elements(self) -> Sequence[Element]:
        """Every time element of the run, in the order of beginning."""
        changed = loads_after_a_change(self.state, self.run.id, self.events)
        return time_elements(self.run, self.arrived, self.now, changed)
