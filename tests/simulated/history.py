"""Several runs of a made-up shop one after another: one log, and the book that its people would have written."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from functools import cached_property

from runboard.run.fold.fold import fold
from runboard.run.fold.state import RunState, ShopState
from runboard.run.log.event import Event
from runboard.shop.book import Book
from runboard.shop.book_json import book_from_json
from tests.simulated.log import Log
from tests.simulated.luck import Luck
from tests.simulated.working import Course, worked
from tests.simulated.world import WEEK, World, book_of, moment


@dataclass(frozen=True)
class History:
    """What a shop's log says of some runs, r1 the first, and how each really went."""

    world: World
    book: Book
    events: Sequence[Event]
    courses: Sequence[Course]

    @cached_property
    def state(self) -> ShopState:
        return fold(self.book, self.events)

    def state_with(self, runs: Mapping[str, RunState]) -> ShopState:
        """The state with these runs alone."""
        return replace(self.state, runs=runs)

    @property
    def now(self) -> datetime:
        """An hour after the last piece."""
        return moment(self.courses[-1].finished) + timedelta(hours=1)


def history(
    world: World, seed: int, runs: int = 1, weeks: int = 1, extras: int = 0, look_every: float | None = None
) -> History:
    """So many runs, each from a Monday on, so many ``weeks`` after the one before; the same seed meets the same luck."""
    return history_of([world] * runs, seed, weeks, extras, look_every)


def history_of(
    worlds: Sequence[World], seed: int, weeks: int = 1, extras: int = 0, look_every: float | None = None
) -> History:
    """A run of each world; they have the stations and people of the first."""
    events: list[Event] = []
    courses: list[Course] = []
    for number, world in enumerate(worlds, 1):
        start = (courses[-1].finished // WEEK + weeks) * WEEK if courses else 0.0
        log = Log(f"r{number}", f"Key rails {number}", extras, look_every)
        courses.append(worked(world, Luck(1000 * seed + number), start, log))
        events += log.events
    return History(worlds[0], book_from_json(book_of(worlds[0])), events, courses)
