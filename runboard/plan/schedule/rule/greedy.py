"""Priority rules, for each a number for every block, the lower the earlier; and a plan at once: some twenty of them, then a short
search around the best."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from random import Random
from typing import Any

from runboard.plan.schedule.problem.nouns import FAR, Plan, Problem
from runboard.plan.schedule.problem.worth import Worth
from runboard.plan.schedule.rule.rule import Knobs, NoPlace, Rule

# Ranks lie so far apart that a walk can be weighed against them.
STEP = 1000


@dataclass(frozen=True)
class Features:
    """What priority rules look at, block by block."""

    problem: Problem

    @cached_property
    def tail(self) -> list[int]:
        """Ticks from a block's start to the end of all that waits for it, waits included."""
        found = [block.length for block in self.problem.blocks]
        for block in reversed(self.problem.blocks):
            for earlier, least in block.waits:
                found[earlier] = max(found[earlier], self.problem.blocks[earlier].length + least + found[block.index])
        return found

    @cached_property
    def depth(self) -> list[int]:
        """How many blocks lie before one, on the longest way."""
        found = [0] * len(self.problem.blocks)
        for block in self.problem.blocks:
            found[block.index] = max((found[earlier] + 1 for earlier in block.waits_for), default=0)
        return found

    @cached_property
    def lot(self) -> list[int]:
        """The first block of all that leads to one: what came from one board stays together."""
        found = list(range(len(self.problem.blocks)))
        for block in self.problem.blocks:
            found[block.index] = min((found[earlier] for earlier in block.waits_for), default=block.index)
        return found

    @cached_property
    def load(self) -> list[int]:
        """The ticks of all the work at a block's station."""
        total = [0] * len(self.problem.stations)
        for block in self.problem.blocks:
            total[block.station] += block.length
        return [total[block.station] for block in self.problem.blocks]

    @cached_property
    def due(self) -> list[int]:
        """When a block's run is due first."""
        first = {}
        for order in reversed([order for order in self.problem.orders if order.by_then > 0]):
            first[order.run] = FAR if order.due is None else order.due
        return [first.get(block.run, FAR) for block in self.problem.blocks]

    @cached_property
    def machine(self) -> list[int]:
        """0 for what a machine does, its loading and unloading; 1 for hand work."""
        return [
            int(block.unloads is None and all(stretch.attendance == "hands-on" for stretch in block.stretches))
            for block in self.problem.blocks
        ]


Key = Callable[[Features, int], tuple[int, ...]]

RULES: dict[str, Key] = {
    "longest way to the end": lambda f, b: (-f.tail[b],),
    "nearest the end": lambda f, b: (-f.depth[b], -f.tail[b]),
    "from the front": lambda f, b: (f.depth[b], -f.tail[b]),
    "machines, then nearest the end": lambda f, b: (f.machine[b], -f.depth[b]),
    "machines, then the longest way": lambda f, b: (f.machine[b], -f.tail[b]),
    "lot by lot": lambda f, b: (f.lot[b], -f.depth[b]),
    "lot by lot, machines first": lambda f, b: (f.lot[b], f.machine[b], -f.tail[b]),
    "busiest station": lambda f, b: (-f.load[b], -f.depth[b]),
    "least slack": lambda f, b: (f.due[b] - f.tail[b], -f.depth[b]),
    "first due, nearest the end": lambda f, b: (f.due[b], -f.depth[b]),
    "shortest work": lambda f, b: (f.problem.blocks[b].hands, -f.tail[b]),
}


def ranked(features: Features, key: Key) -> list[int]:
    """A priority for each block: its rank by a rule, blocks in their own order where the rule sees no difference."""
    return by_start([key(features, block) for block in range(len(features.problem.blocks))])


def by_start(starts: Sequence[Any]) -> list[int]:
    """A priority for each block as a plan begins them."""
    found = [0] * len(starts)
    for rank, block in enumerate(sorted(range(len(starts)), key=lambda block: (starts[block], block))):
        found[block] = rank * STEP
    return found


# a plan

# Goes of the rule for each answer: so many blocks placed, which is some 50 ms compiled.
_BLOCKS_COMPILED = 36_000
_BLOCKS_PLAIN = 1_500
# Walking is dear beside any priority, or is weighed against some ranks.
_STAYS = (10**7, 0)


@dataclass(frozen=True)
class Greedy:
    """A plan with the priorities and knobs that made it."""

    plan: Plan
    priority: tuple[int, ...]
    knobs: Knobs
    goes: int


Value = tuple[int, int, int, int, int]


def greedy_plan(problem: Problem, goes: int | None = None) -> Plan:
    """The best plan that some rules and a short search find, by ``value_of``.

    ``goes`` is how often the rule may be run, by default as many as take about 50 ms. The same problem gives the same
    plan. Raises ``NoPlace`` where some block fits nowhere.
    """
    return greedy(problem, goes).plan


def greedy(problem: Problem, goes: int | None = None, rule: Rule | None = None) -> Greedy:
    """As ``greedy_plan``, with what made the plan. ``rule`` is the problem's, where it is built already."""
    search = _Search(rule or Rule(problem))
    if goes is None:
        goes = usual_goes(len(problem.blocks), is_compiled=search.rule.is_compiled)
    for priority, knobs in _rules(Features(problem), search.has_wet_dust):
        if search.goes < goes:
            search.try_(priority, knobs)
    search.around(goes)
    if search.best is None:
        raise search.failed or NoPlace(())
    _, priority, knobs = search.best
    return Greedy(search.rule_plan(priority, knobs), tuple(priority), knobs, search.goes)


def usual_goes(blocks: int, *, is_compiled: bool) -> int:
    """How often the rule is run for an answer of some 50 ms."""
    return max(4, min(400, (_BLOCKS_COMPILED if is_compiled else _BLOCKS_PLAIN) // max(1, blocks)))


def value_of(rule: Rule, worth: Worth, priority: Sequence[int], knobs: Knobs) -> Value | None:
    """What plans are compared by: their worth, by how little the tightest order line is in time (the first due first: Jackson
    1955), and the sum of all ends, so that nothing waits only because the finish does not mind; None where there is none."""
    if rule.finish(priority, knobs) < 0:
        return None
    ends = rule.all_ends()
    return *worth.of(ends, rule.walks()), max(worth.margins(ends), default=0), sum(ends)


def turned(problem: Problem, knobs: Knobs, random: Random, *, has_wet_dust: bool) -> Knobs:
    """Other knobs, by chance."""
    late_wet = random.choice((0, 20, 60, 120)) if has_wet_dust else 0
    others = len(problem.people) > 1 and random.random() < 0.5
    return replace(knobs, stay=random.choice((0, 10 * STEP, 100 * STEP, 10**7)), others_watch=others, late_wet=late_wet)


def has_wet_dust(problem: Problem) -> bool:
    """Whether a finish is wet in a room where dust is made, or heat."""
    at = [(block, problem.stations[block.station]) for block in problem.blocks]
    spoiled = {station.room for _, station in at if station.heats or station.dusty}
    return any(block.wet and station.room in spoiled for block, station in at)


def _rules(features: Features, has_wet_dust: bool) -> Iterator[tuple[list[int], Knobs]]:
    """Each rule with walks dear and not; where wet finishes and dust share a room, with finishes kept late and not: only
    the rule that keeps nothing back is sure to find a place for all."""
    rankings = [ranked(features, key) for key in RULES.values()]
    for stay in _STAYS:
        for ranking in rankings:
            for late_wet in (60, 0) if has_wet_dust else (0,):
                yield ranking, Knobs(stay, late_wet=late_wet)


class _Search:
    """The best plan so far, and the search for a better one."""

    def __init__(self, rule: Rule) -> None:
        self.rule, self.worth = rule, Worth(rule.problem)
        self.goes = 0
        self.best: tuple[Value, list[int], Knobs] | None = None
        self.failed: NoPlace | None = None
        self.random = Random(1)  # noqa: S311 - chance that is the same each time, for no secret
        self.has_wet_dust = has_wet_dust(rule.problem)

    def try_(self, priority: list[int], knobs: Knobs) -> bool:
        """Run the rule once; whether what it made is at least as good as the best."""
        self.goes += 1
        value = value_of(self.rule, self.worth, priority, knobs)
        if value is None:
            try:
                self.rule.plan()
            except NoPlace as none:
                if self.failed is None or len(none.blocks) < len(self.failed.blocks):
                    self.failed = none
            return False
        if self.best is not None and value > self.best[0]:
            return False
        self.best = (value, priority, knobs)
        return True

    def rule_plan(self, priority: list[int], knobs: Knobs) -> Plan:
        """The plan that these priorities make."""
        self.rule.finish(priority, knobs)
        return self.rule.plan()

    def around(self, goes: int) -> None:
        """Change the best a little, over and over, and keep what is no worse."""
        steps = sorted({block.step for block in self.rule.problem.blocks})
        trays = sorted({block.trays for block in self.rule.problem.blocks})
        while self.goes < goes and self.best is not None and steps:
            _, priority, knobs = self.best
            chance = self.random.random()
            if chance < 0.2:
                self.try_(priority, turned(self.rule.problem, knobs, self.random, has_wet_dust=self.has_wet_dust))
            elif chance < 0.7:
                chosen = set(self.random.sample(steps, min(len(steps), self.random.randint(1, 2))))
                self.try_(self._moved(priority, [block.step in chosen for block in self.rule.problem.blocks]), knobs)
            else:
                some = set(self.random.sample(trays, min(len(trays), self.random.randint(1, 3))))
                self.try_(self._moved(priority, [block.trays in some for block in self.rule.problem.blocks]), knobs)

    def _moved(self, priority: list[int], chosen: list[bool]) -> list[int]:
        reach = len(priority) * STEP
        by = int(self.random.gauss(0, 0.4) * reach)
        return [rank + by if is_chosen else rank for rank, is_chosen in zip(priority, chosen, strict=True)]
