"""Priority rules: for each a number for every block, the lower the earlier."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property

from runboard.plan.schedule.problem.nouns import FAR, Block, Problem

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
            for lag in block.lags:
                before = self.problem.blocks[lag.before]
                found[lag.before] = max(found[lag.before], before.length + lag.least + found[block.index])
            if block.unloads is not None:
                before = self.problem.blocks[block.unloads]
                found[before.index] = max(found[before.index], before.length + found[block.index])
        return found

    @cached_property
    def depth(self) -> list[int]:
        """How many blocks lie before one, on the longest way."""
        found = [0] * len(self.problem.blocks)
        for block in self.problem.blocks:
            before = [lag.before for lag in block.lags] + ([] if block.unloads is None else [block.unloads])
            found[block.index] = max((found[one] + 1 for one in before), default=0)
        return found

    @cached_property
    def lot(self) -> list[int]:
        """The first block of all that leads to one: what came from one board stays together."""
        found = list(range(len(self.problem.blocks)))
        for block in self.problem.blocks:
            before = [lag.before for lag in block.lags] + ([] if block.unloads is None else [block.unloads])
            found[block.index] = min((found[one] for one in before), default=block.index)
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
        for order in reversed([one for one in self.problem.orders if one.by_then > 0]):
            first[order.run] = FAR if order.due is None else order.due
        return [first.get(block.run, FAR) for block in self.problem.blocks]

    @cached_property
    def machine(self) -> list[int]:
        """0 for what a machine does, its loading and unloading; 1 for hand work."""
        return [int(not self._is_machine(block)) for block in self.problem.blocks]

    def _is_machine(self, block: Block) -> bool:
        return block.unloads is not None or any(one.attendance != "hands-on" for one in block.stretches)


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
    order = sorted(range(len(features.problem.blocks)), key=lambda one: (key(features, one), one))
    found = [0] * len(order)
    for rank, block in enumerate(order):
        found[block] = rank * STEP
    return found


def by_start(starts: Sequence[int]) -> list[int]:
    """A priority for each block as a plan begins them."""
    found = [0] * len(starts)
    for rank, block in enumerate(sorted(range(len(starts)), key=lambda one: (starts[one], one))):
        found[block] = rank * STEP
    return found
