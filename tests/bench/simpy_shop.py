"""The dispatch rule in simpy: people's hours, ends and waits are processes, and whatever ends asks the rule what begins."""

from collections.abc import Iterator, Sequence
from typing import Any

import simpy

from runboard.plan.schedule.rule.kernel import dispatch, front, layout
from runboard.plan.schedule.rule.kernel.attending import forget_spans
from runboard.plan.schedule.rule.kernel.limits import forget_draws
from runboard.plan.schedule.rule.rule import Knobs, Rule


class SimpyShop:
    """One problem, to be worked through again and again with other lengths."""

    def __init__(self, rule: Rule, priority: Sequence[int], knobs: Knobs) -> None:
        self.t, self.fresh = [int(one) for one in rule.table], [int(one) for one in rule.fresh]
        self.problem = rule.problem
        self.priority = list(priority)
        self.knobs = [knobs.stay, int(knobs.others_watch), knobs.late_wet]
        self.s = list(self.fresh)

    def finish(self, real: list[int]) -> int:
        """The tick at which all is done."""
        self.env = simpy.Environment()
        self.wake = self.env.event()
        self.real = real
        self.told: set[int] = set()
        dispatch.begin_afresh(self.t, self.s, self.fresh, self.priority)
        for block in self.problem.blocks:
            if block.begun:
                dispatch.place_begun(self.t, self.s, real, self.priority, block.index)
        for worker in self.problem.people:
            self.env.process(self._at_each(opens for opens, _ in worker.windows))
        for station in self.problem.stations:
            self.env.process(self._at_each(opens for opens, _ in station.runs))
        self.env.run(self.env.process(self._works()))
        return max(self.s[self.s[layout.END] + block.index] for block in self.problem.blocks)

    def _at_each(self, ticks: Any) -> Iterator[Any]:
        for tick in ticks:
            if tick > self.env.now:
                yield self.env.timeout(tick - self.env.now)
                self._ask()

    def _ask(self) -> None:
        if not self.wake.triggered:
            self.wake.succeed()

    def _works(self) -> Iterator[Any]:
        t, s, is_new = self.t, self.s, True
        while True:
            tick = int(self.env.now)
            forget_spans(t, s, tick)
            forget_draws(t, s, tick)
            while dispatch.begin_one(t, s, self.real, self.priority, self.knobs, tick):
                is_new = True
            if front.is_over(s):
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
        s = self.s
        for person in range(len(self.problem.people)):
            base = s[layout.SPANS] + person * s[layout.SPAN_ROOM] * layout.SPAN_WIDTH
            for at in range(s[s[layout.SPAN_COUNT] + person]):
                yield s[base + at * layout.SPAN_WIDTH + 1]
        for at in range(s[layout.DRAW_COUNT]):
            yield s[s[layout.TAKEN] + 4 * at + 2]
        for at in range(s[layout.AIR_COUNT]):
            yield s[s[layout.AIR] + 4 * at + 1]
        for at in range(len(self.problem.stations)):
            if s[s[layout.FREE] + at] < layout.BIG:
                yield s[s[layout.FREE] + at]
        for at in range(s[layout.UNREADY], s[layout.WAITING_COUNT]):
            yield s[s[layout.READY] + s[s[layout.WAITING] + at]]
