"""The dispatch rule in simpy: people's hours, ends and waits are processes, and whatever ends asks the rule what begins."""

from collections.abc import Iterator, Sequence
from typing import Any

import simpy

from runboard.plan.schedule.rule.kernel.dispatch import begin_afresh, begin_one, is_over
from runboard.plan.schedule.rule.kernel.limits import forget
from runboard.plan.schedule.rule.kernel.records import BIG
from runboard.plan.schedule.rule.rule import Knobs, Rule


class SimpyShop:
    """One problem, to be worked through again and again with other lengths."""

    def __init__(self, rule: Rule, priority: Sequence[int], knobs: Knobs) -> None:
        self.shop = rule.shop
        self.problem = rule.problem
        self.priority = list(priority)
        rule.finish(priority, knobs)  # leaves the knobs in the shop

    def finish(self, real: list[int]) -> int:
        """The tick at which all is done."""
        self.env = simpy.Environment()
        self.wake = self.env.event()
        self.told: set[int] = set()
        begin_afresh(self.shop, self.priority, real)
        for worker in self.problem.people:
            self.env.process(self._at_each(opens for opens, _ in worker.windows))
        for station in self.problem.stations:
            self.env.process(self._at_each(opens for opens, _ in station.runs))
        self.env.run(self.env.process(self._works()))
        return max(block.end for block in self.shop.blocks)

    def _at_each(self, ticks: Any) -> Iterator[Any]:
        for tick in ticks:
            if tick > self.env.now:
                yield self.env.timeout(tick - self.env.now)
                self._ask()

    def _ask(self) -> None:
        if not self.wake.triggered:
            self.wake.succeed()

    def _works(self) -> Iterator[Any]:
        is_new = True
        while True:
            tick = int(self.env.now)
            forget(self.shop, tick)
            while begin_one(self.shop, tick):
                is_new = True
            if is_over(self.shop):
                return
            # Only what was begun brings new ends.
            for end in self._ends() if is_new else ():
                if end > tick and end not in self.told:
                    self.told.add(end)
                    self.env.process(self._at_each([end]))
            is_new = False
            yield self.wake
            self.wake = self.env.event()

    def _ends(self) -> Iterator[int]:
        """When what is under way ends: spans of people, draws, what is in the air, waits."""
        shop, go = self.shop, self.shop.go
        for person in shop.people:
            yield from (span.end for span in shop.spans[person.index][person.span_from : person.span_to])
        yield from (use.end for use in shop.taken[: go.taken_count])
        yield from (station.free for station in shop.stations if station.free < BIG)
        yield from (shop.blocks[at].ready for at in shop.waiting[: go.waiting_count])
