"""A longer search for the dispatch rule's priorities: some work sooner or later, kept while it is no worse than a while ago.

What a long plan needs is that one step of some trays yields to another: fit tomorrow what is dry, oil today what must dry.
So most moves shift a step or two of a stretch of trays. A move is kept where it is as good as the plan at hand, or as the
one so many goes ago (late acceptance: Burke and Bykov 2017), which leads out of what no single move makes better.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from random import Random
from typing import Any

import numpy

from runboard.plan.schedule.problem.nouns import Block, Plan, Problem
from runboard.plan.schedule.problem.worth import Worth
from runboard.plan.schedule.rule.greedy import NoPlace, Value, greedy, has_wet_dust, turned, value_of
from runboard.plan.schedule.rule.priorities import STEP
from runboard.plan.schedule.rule.rule import Knobs, Rule

# How many goes ago a plan is compared with, and goes between two answers.
_LATE = 20
_GOES = 25
# Goes without a better plan after which the search begins again: chance leads elsewhere.
_STUCK = 800
# The rules' own goes before the search begins.
_RULES = 60


@dataclass(frozen=True)
class _At:
    value: Value
    priority: Any
    knobs: Knobs


def wander(problem: Problem, seed: int = 1) -> Iterator[tuple[int, Plan | None]]:
    """For ever: (goes of the rule since the last answer, a better plan where they found one). The caller ends it. Raises
    ``NoPlace`` where the rules find no plan to begin at."""
    search = _Search(problem, seed)
    yield _RULES, search.plan()
    while True:
        best = search.best
        for _ in range(_GOES):
            search.go()
        yield _GOES, search.plan() if search.best.value < best.value else None


class _Search:
    def __init__(self, problem: Problem, seed: int) -> None:
        self.problem, self.rule, self.worth = problem, Rule(problem), Worth(problem)
        self.random = Random(seed)  # noqa: S311 - chance that is the same each time, for no secret
        first = greedy(problem, _RULES, self.rule)
        self.has_wet_dust = has_wet_dust(problem)
        self.steps = _chosen_by(problem, lambda block: [(block.run, block.step)])
        self.trays = _chosen_by(problem, lambda block: [(block.run, tray) for tray in block.trays])
        begin = self._tried(numpy.array(first.priority), first.knobs)
        if begin is None:
            raise NoPlace(())
        self.first = self.best = self.at = begin
        self.late = [self.at.value] * _LATE
        self.goes = self.stuck = 0
        self.near = self.at.value

    def plan(self) -> Plan:
        """The best so far."""
        self._tried(self.best.priority, self.best.knobs)
        return self.rule.plan("rules")

    def go(self) -> None:
        """Try a move, and keep it or not."""
        if self.stuck >= _STUCK:
            self._begin_again()
        new = self._tried(*self._moved())
        if new is not None and new.value <= max(self.at.value, self.late[self.goes % _LATE]):
            self.at = new
        if self.at.value < self.best.value:
            self.best = self.at
        self.stuck = 0 if self.at.value < self.near else self.stuck + 1
        self.near = min(self.near, self.at.value)
        self.late[self.goes % _LATE] = self.at.value
        self.goes += 1

    def _begin_again(self) -> None:
        self.at = self.first
        self.late, self.stuck, self.near = [self.at.value] * _LATE, 0, self.at.value

    def _tried(self, priority: Any, knobs: Knobs) -> _At | None:
        value = value_of(self.rule, self.worth, priority if self.rule.is_compiled else priority.tolist(), knobs)
        return None if value is None else _At(value, priority, knobs)

    def _moved(self) -> tuple[Any, Knobs]:
        chance = self.random.random()
        if chance < 0.1:
            return self.at.priority, turned(self.problem, self.at.knobs, self.random, has_wet_dust=self.has_wet_dust)
        chosen = self._some_trays() if chance >= 0.3 else numpy.ones(len(self.problem.blocks), bool)
        if chance < 0.3 or chance >= 0.5:
            chosen = chosen & self._some_steps()
        far = self.random.choice((0.4, 0.08)) * len(self.problem.blocks) * STEP
        return self.at.priority + chosen * int(self.random.gauss(0, far)), self.at.knobs

    def _some_steps(self) -> Any:
        return numpy.logical_or.reduce(self.random.sample(self.steps, min(len(self.steps), self.random.randint(1, 2))))

    def _some_trays(self) -> Any:
        """A stretch of trays: a few, or all from one on."""
        first = self.random.randrange(len(self.trays))
        last = len(self.trays) if self.random.random() < 0.5 else first + 1 + self.random.randrange(8)
        return numpy.logical_or.reduce(self.trays[first:last])


def _chosen_by(problem: Problem, names: Callable[[Block], list[tuple[str, str]]]) -> list[Any]:
    """For each name, in the order in which they first come, which blocks it is one of."""
    found: dict[tuple[str, str], Any] = {}
    for block in problem.blocks:
        for name in names(block):
            found.setdefault(name, numpy.zeros(len(problem.blocks), bool))[block.index] = True
    return list(found.values())
