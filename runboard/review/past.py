"""What a run is looked back at with: the run, what the log says from its opening to its end, and the times that were
believed before it."""

from bisect import bisect_left, bisect_right
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from functools import cached_property

from runboard.plan.estimates import Estimates
from runboard.review.time_study import Element, loads_after_a_change, time_elements
from runboard.run.fold.state import RunState, ShopState
from runboard.run.log.event import Event
from runboard.shop.book import Book
from runboard.shop.hours import day_bounds, local_day

# From one moment until another.
Days = tuple[datetime, datetime]


@dataclass(frozen=True)
class Past:
    """A run and all that is known of it. Pure data, and no more of a long log than the run needs.

    ``state`` has only the runs that were open at some time while this one was; ``events`` are those of the whole shop that
    hold, in the fold's order, from the morning of the day on which the run was opened until the end of the day on which it
    was closed; ``arrived`` are these as they arrived, by id, for their basis, with those that one of them takes back or amends. ``believed`` are the times as they were learned before the run was opened, ``estimates`` as they are learned
    by now.
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

    @property
    def days(self) -> Days:
        """From the beginning of the day of the opening until the end of that of ``until``."""
        return days_of(self.run, self.book, self.now)

    @cached_property
    def elements(self) -> Sequence[Element]:
        """Every time element of the run, in the order of beginning."""
        return time_elements(self.run, self.arrived, self.now, loads_after_a_change(self.run))


def days_of(run: RunState, book: Book, now: datetime) -> Days:
    """The whole days of the shop in which a run was open."""
    begins, _ = day_bounds(local_day(run.opened_at, book.time_zone), book.time_zone)
    _, ends = day_bounds(local_day(run.closed_at or now, book.time_zone), book.time_zone)
    return begins, ends


def beside(state: ShopState, run: RunState, days: Days) -> ShopState:
    """The state with no other runs than those that were open at some time in these days, and this one."""
    begins, ends = days
    return replace(
        state,
        runs={
            key: other
            for key, other in state.runs.items()
            if other is run or (other.opened_at < ends and (other.closed_at is None or other.closed_at > begins))
        },
    )


def within(events: Sequence[Event], days: Days) -> Sequence[Event]:
    """Of events in the fold's order those of some days."""
    first = bisect_left(events, days[0], key=lambda event: event.moment)
    return events[first : bisect_right(events, days[1], first, key=lambda event: event.moment)]
