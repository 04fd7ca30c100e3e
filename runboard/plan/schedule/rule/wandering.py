"""A longer search for the dispatch rule's priorities: some work sooner or later, kept while it is no worse than a while ago.

A move shifts a step or two of a stretch of trays, for what a long plan needs is that one step of some trays yields to
another; or it brings what somebody does in a stay in a room to another of their stays there, so that they walk less. A move
is kept where it is as good as the plan at hand, or as the one so many goes ago (late acceptance: Burke and Bykov 2017),
which leads out of what no single move makes better.
"""

from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass
from itertools import cycle
from random import Random
from typing import Any

import numpy

from runboard.plan.schedule.problem.nouns import Block, Plan, Problem
from runboard.plan.schedule.problem.people import walks_in
from runboard.plan.schedule.problem.worth import WALK, Worth, ends_of
from runboard.plan.schedule.rule.greedy import STEP, Value, by_start, greedy, has_wet_dust, turned, value_of
from runboard.plan.schedule.rule.rule import Knobs, NoPlace, Rule

# How many goes ago a plan is compared with, and goes between two answers.
_LATE = 20
_GOES = 25
# Goes without a better plan after which the search begins again: chance leads elsewhere.
_STUCK = 800
# By turns a walk counts as it does, and as so many: what is calm may lead to what is soon, and is worth knowing.
_WEIGHTS = (1, 4)
# The rules' own goes before the search begins.
_RULES = 60
# How often a move gathers, how far it looks for another stay, and how often it goes by the plan's own order.
_GATHER, _STAYS, _AS_BEGUN = 0.3, 6, 0.5
# How often a move is of what was just touched, while that is asked for.
_NEAR = 0.5
# A plan is clearly calmer with so many walks fewer, at a finish no more than so much later.
_FEWER, _LATER = 2, 1.05


@dataclass(frozen=True)
class _At:
    value: Value
    walks: int
    priority: Any
    knobs: Knobs
    starts: Any
    hands: Any

    def weighed(self, weight: int) -> Value:
        """Its value where a walk counts more."""
        late, effort, *rest = self.value
        return (late, effort + (weight - 1) * WALK * self.walks, *rest)  # type: ignore[return-value]


class Wandering:
    """The search on one problem: from the order of ``plan``, where there is one, and the rules'; first ``near`` some blocks,
    where a change was."""

    def __init__(self, problem: Problem, seed: int, plan: Plan | None = None, near: Collection[int] = ()) -> None:
        self.problem, self.rule, self.worth = problem, Rule(problem), Worth(problem)
        self.random = Random(seed)  # noqa: S311 - chance that is the same each time, for no secret
        self.given, self.weights = plan, cycle(_WEIGHTS)
        self.has_wet_dust = has_wet_dust(problem)
        self.rooms = numpy.array([problem.stations[block.station].room for block in problem.blocks])
        self.steps = _chosen_by(problem, lambda block: [(block.run, block.step)])
        self.trays = _chosen_by(problem, lambda block: [(block.run, tray) for tray in block.trays])
        self.near = [at for at, tray in enumerate(self.trays) if any(tray[block] for block in near)]
        self.calm: dict[int, _At] = {}
        self.goes = self.stuck = 0
        self.weight = 1
        self.late: list[Value] = []
        self.first: _At
        self.best: _At
        self.at: _At
        self.at_value: Value
        self.lowest: Value

    def answers(self) -> Iterator[tuple[int, Plan | None]]:
        """For ever: (goes of the rule since the last answer, a better plan where they found one). The caller ends it. Raises
        ``NoPlace`` where neither the rules nor the plan's own order finds a plan to begin at."""
        self.first = self.best = self._first()
        self._begin_again()
        yield _RULES, self._plan(self.best)
        while True:
            best = self.best
            for _ in range(_GOES):
                self._go()
            yield _GOES, self._plan(self.best) if self.best.value < best.value else None

    def calmer(self, plan: Plan) -> Plan | None:
        """A plan with clearly fewer walks than ``plan``, no later for the order lines, though done later; None where none
        was seen."""
        walks = walks_in(self.problem, plan)
        late, _, finish = self.worth.of(ends_of(self.problem, plan), walks)
        some = [
            at
            for few, at in self.calm.items()
            if few <= walks - _FEWER and at.value[0] <= late and finish < at.value[2] <= finish * _LATER
        ]
        calmest = min(some, key=lambda at: at.weighed(_WEIGHTS[-1]), default=None)
        return None if calmest is None else self._plan(calmest)

    def _first(self) -> _At:
        some = []
        if self.given is not None:
            own = numpy.array(by_start([placed.start for placed in self.given.placed]))
            some = [self._tried(own, knobs) for knobs in (Knobs(), Knobs(others_watch=True), Knobs(10**7))]
        try:
            rules = greedy(self.problem, _RULES, self.rule)
            some.append(self._tried(numpy.array(rules.priority), rules.knobs))
        except NoPlace:
            if not any(some):
                raise
        return min((at for at in some if at is not None), key=lambda at: at.value)

    def _plan(self, at: _At) -> Plan:
        self._tried(at.priority, at.knobs)
        return self.rule.plan("rules")

    def _go(self) -> None:
        """Try a move, and keep it or not."""
        if self.stuck >= _STUCK:
            self._begin_again()
        new = self._tried(*self._moved())
        if new is not None and new.weighed(self.weight) <= max(self.at_value, self.late[self.goes % _LATE]):
            self.at, self.at_value = new, new.weighed(self.weight)
        if self.at.value < self.best.value:
            self.best = self.at
        self.stuck = 0 if self.at_value < self.lowest else self.stuck + 1
        self.lowest = min(self.lowest, self.at_value)
        self.late[self.goes % _LATE] = self.at_value
        self.goes += 1

    def _begin_again(self) -> None:
        self.weight = next(self.weights)
        self.at = self.first if self.weight == 1 else self.best
        self.at_value = self.lowest = self.at.weighed(self.weight)
        self.late, self.stuck = [self.at_value] * _LATE, 0

    def _tried(self, priority: Any, knobs: Knobs) -> _At | None:
        value = value_of(self.rule, self.worth, priority if self.rule.is_compiled else priority.tolist(), knobs)
        if value is None:
            return None
        walks = (value[1] - self.worth.hours.passed(value[2])) // WALK
        found = _At(value, walks, priority, knobs, *self.rule.begun())
        if walks not in self.calm or value < self.calm[walks].value:
            self.calm[walks] = found
        return found

    def _moved(self) -> tuple[Any, Knobs]:
        chance = self.random.random()
        if self.problem.people and chance < _GATHER and (gathered := self._gathered()) is not None:
            return gathered, self.at.knobs
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
        if self.near and self.goes < _STUCK and self.random.random() < _NEAR:
            first = self.random.choice(self.near)
        last = len(self.trays) if self.random.random() < 0.5 else first + 1 + self.random.randrange(8)
        return numpy.logical_or.reduce(self.trays[first:last])

    def _gathered(self) -> Any | None:
        """Priorities by which some of what somebody does in a stay in a room comes with another of their stays there; None
        where there is none near."""
        stays = self._stays(self.random.randrange(len(self.problem.people)))
        if len(stays) < 3:
            return None
        at = self.random.randrange(len(stays))
        room, near = self.rooms[stays[at][0]], range(max(0, at - _STAYS), min(len(stays), at + _STAYS + 1))
        others = [stay for stay in near if stay != at and self.rooms[stays[stay][0]] == room]
        if not others:
            return None
        other, some = self.random.choice(others), self._some_of(stays[at])
        found = self.at.priority.copy()
        if self.random.random() < _AS_BEGUN:
            found[numpy.argsort(self.at.starts, kind="stable")] = numpy.arange(len(found)) * STEP
        places = numpy.arange(len(some))
        found[some] = (
            found[stays[other][-1]] + 1 + places if other < at else found[stays[other][0]] - len(some) + places
        )
        return found

    def _stays(self, person: int) -> list[Any]:
        """Somebody's blocks in the plan at hand by their start, split where they change rooms."""
        mine = numpy.flatnonzero(self.at.hands == person)
        mine = mine[numpy.argsort(self.at.starts[mine], kind="stable")]
        rooms = self.rooms[mine]
        return numpy.split(mine, numpy.flatnonzero(rooms[1:] != rooms[:-1]) + 1) if len(mine) else []

    def _some_of(self, stay: Any) -> Any:
        """All of a stay, its first or its last."""
        cut = self.random.randrange(len(stay))
        return self.random.choice((stay, stay[cut:], stay[: cut + 1]))


def _chosen_by(problem: Problem, names: Callable[[Block], list[tuple[str, str]]]) -> list[Any]:
    """For each name, in the order in which they first come, which blocks it is one of."""
    found: dict[tuple[str, str], Any] = {}
    for block in problem.blocks:
        for name in names(block):
            found.setdefault(name, numpy.zeros(len(problem.blocks), bool))[block.index] = True
    return list(found.values())
