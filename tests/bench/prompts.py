"""How often each person's phone prompts in an evening of the demo's shop: every phone for all, or a look's watcher first.

Two people work four hours on the demo's key rails and look at a machine 20 seconds after they are asked to; they keep
their page in sight. A prompt is a due moment that begins to ring on that phone; both ways are counted on the same evening.
"""

from collections import Counter, defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from random import Random
from typing import Any
from unittest.mock import patch

from runboard.demo.book import CREW, LEAD, demo_book
from runboard.demo.phone import Draft, Shopfloor
from runboard.demo.story import play
from runboard.demo.worker import DemoWorker, Spans
from runboard.floor.changing.runs import Wish, open_run
from runboard.run.calls.climb import asked_first
from runboard.run.calls.dues import MISSED_AFTER, dues
from tests.floor.fakes import MONDAY, FakeClock, workshop

SESSION = timedelta(hours=4)
HOUR = timedelta(hours=1)
PEOPLE = (LEAD, CREW)


@dataclass
class Counting(Shopfloor):
    """A shop floor that notes before each press what has begun to ring since the last, on whose phone, either way."""

    rung: set[tuple[str, str, str]] = field(default_factory=set)
    every: dict[str, list[tuple[datetime, str]]] = field(default_factory=lambda: defaultdict(list))
    first: dict[str, list[tuple[datetime, str]]] = field(default_factory=lambda: defaultdict(list))

    def press(self, person: str, *drafts: Draft) -> str:
        self.note()
        return super().press(person, *drafts)

    def note(self) -> None:
        """The due moments that have passed while the state stood as it stands."""
        here = [one for one in PEOPLE if (seen := self.state.people.get(one)) and seen.came_at is not None]
        for due in dues(self.state, self.book).values():
            first = asked_first(self.state, due, here)
            for one in here:
                if due.kind == "session end" and due.person != one:
                    continue
                self._ring(self.every, "every", one, due.due_at, due)
                alone = timedelta(0) if first in ("", one) else MISSED_AFTER
                self._ring(self.first, "first", one, due.due_at + alone, due)

    def _ring(self, to: dict[str, list[tuple[datetime, str]]], way: str, person: str, at: datetime, due: Any) -> None:
        if at <= self.now and (way, person, due.id) not in self.rung:
            self.rung.add((way, person, due.id))
            to[person].append((at, due.kind))


def evening(seed: int = 5) -> Counting:
    """The evening, worked."""
    made = workshop(demo_book(MONDAY, "UTC") | {"jobs": []})
    assert isinstance(made.clock, FakeClock)
    floor = Counting(made, made.clock, Random(seed))  # type: ignore[arg-type]
    begins = made.clock.now()
    orders = [{"line": str(line), "pieces": 1, "text": str(line)} for line in range(1, 31)]
    open_run(made, Wish("rails", orders, start=30), LEAD)
    with patch("runboard.demo.watching.LOOK_BEFORE", timedelta(seconds=-20)):
        play(floor, [(begins, _stays(DemoWorker(floor, one), begins + SESSION)) for one in PEOPLE])
    floor.note()
    return floor


def _stays(worker: DemoWorker, until: datetime) -> Spans:
    """Somebody who works whenever there is something to do, and stays to the end of the evening."""
    yield from worker.arrive(until)
    while worker.floor.now < until - timedelta(minutes=15):
        yield from worker.work()
        yield timedelta(minutes=3)


def busiest(rings: list[tuple[datetime, str]]) -> Counter[str]:
    """The prompts of the sixty minutes that hold most, by kind."""
    found: Counter[str] = Counter()
    for begins, _ in rings:
        hour = Counter(kind for at, kind in rings if begins <= at < begins + HOUR)
        found = max(found, hour, key=lambda one: one.total())
    return found


def table(floor: Counting) -> Iterator[str]:
    """The lines to print."""
    yield "Prompts on each phone in an evening of four hours, key rails, two people"
    yield f"{'':<10}{'way':<16}{'in all':>8}{'an hour':>9}{'busiest':>9}{'of them looks':>15}"
    for person in PEOPLE:
        for way, rings in (("every phone", floor.every[person]), ("watcher first", floor.first[person])):
            most = busiest(rings)
            hours = len(rings) / (SESSION / HOUR)
            yield f"{person:<10}{way:<16}{len(rings):8}{hours:9.1f}{most.total():9}{most['watch check']:15}"
