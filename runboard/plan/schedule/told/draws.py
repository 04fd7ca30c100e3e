"""How long everything might really take: many draws of each time element, the same ones for every plan and every idea.

A length is lognormal about its estimate, which is its mean: with a middle m and a spread s of the logarithm a lognormal's
mean is m·exp(s²/2) (Johnson, Kotz & Balakrishnan, Continuous Univariate Distributions, 14), so its middle lies that much
below. What makes it longer or shorter is drawn apart for all loads of an element, since its estimate may be off; for
those of one session, since a bad evening makes all times long; and for the load itself.

Chance is named by run, step, kind, and day or load: so two plans, or a run with and without a change, meet the same luck,
and what differs between them is the plan.
"""

import hashlib
import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from runboard.plan.schedule.problem.hours import open_spans
from runboard.plan.schedule.problem.nouns import Block, Problem

HAND_SPREAD = 0.27
MACHINE_SPREAD = 0.025
# A gap in everybody's hours that makes a day of what lies before it: six hours.
_NIGHT = 6 * 60 * 2


@dataclass(frozen=True)
class Scatter:
    """How much a time differs from its estimate, as standard deviations of logarithms: what all loads of the ``element``
    share, what those of a ``session`` share, and what each ``load`` has to itself."""

    element: float = 0.0
    session: float = 0.0
    load: float = 0.0

    @property
    def total(self) -> float:
        """The standard deviation of the logarithm of one time."""
        return math.sqrt(self.element**2 + self.session**2 + self.load**2)


# How much a time element scatters: one block's, of one kind.
Spread = Callable[[Block, str], Scatter]


def usual_spread(block: Block, kind: str) -> Scatter:
    """How much times by hand and by machine usually differ from load to load, where the estimate is right."""
    return Scatter(load=MACHINE_SPREAD if kind == "machine" else HAND_SPREAD)


@dataclass(frozen=True)
class SpreadTable:
    """The same by (run, step, kind), as plain records: it can be sent to a child process."""

    scatter: Mapping[tuple[str, str, str], Scatter]

    def __call__(self, block: Block, kind: str) -> Scatter:
        return self.scatter[block.run, block.step, kind]


def spread_table(spread: Spread, *problems: Problem) -> SpreadTable:
    """The spread of every time element of some problems."""
    found: dict[tuple[str, str, str], Scatter] = {}
    for block in (block for problem in problems for block in problem.blocks):
        for kind in (*(one.kind for one in block.stretches), "setup"):
            at = (block.run, block.step, kind)
            if at not in found:
                found[at] = spread(block, kind)
    return SpreadTable(found)


def day_ends(problem: Problem) -> list[int]:
    """The ticks at which somebody's hours end and nobody's begin before the next day."""
    spans = open_spans(problem)
    return [
        closes for at, (_, closes) in enumerate(spans) if at + 1 == len(spans) or spans[at + 1][0] - closes >= _NIGHT
    ]


def drawn_lengths(
    problem: Problem, goes: int, spread: Spread = usual_spread, seed: int = 1, days: Sequence[str] = ()
) -> Any:
    """An array of goes × (stretches, then each block's setup), in whole ticks: lognormal, their mean what is estimated.
    ``days`` says for each block in which session it is meant to be; without them all is one session."""
    import numpy

    luck = _Luck(goes, seed)
    parts = [(block, one.kind, one.length) for block in problem.blocks for one in block.stretches]
    parts += [(block, "setup", block.setup) for block in problem.blocks]
    columns = numpy.zeros((len(parts), goes), dtype=numpy.int32)
    for column, (block, kind, length) in zip(columns, parts, strict=True):
        if length > 0:
            day = days[block.index] if days else ""
            factor = luck.factor(spread(block, kind), f"{block.run}|{block.step}", kind, day, block.load)
            column[:] = numpy.maximum(1, numpy.rint(length * factor))
    return numpy.ascontiguousarray(columns.T)


class _Luck:
    """Chance numbers by their names; those that several loads share are drawn once."""

    def __init__(self, goes: int, seed: int) -> None:
        self.goes, self.seed = goes, seed
        self.shared: dict[str, Any] = {}

    def factor(self, scatter: Scatter, step: str, kind: str, day: str, load: str) -> Any:
        """For each go by how much a time differs from its estimate; 1 on average."""
        import numpy

        found = scatter.load * self._normal(f"{step}|{load}|{kind}") - scatter.total**2 / 2
        for wide, name in ((scatter.element, f"element|{step}|{kind}"), (scatter.session, f"day|{step}|{day}|{kind}")):
            if wide > 0:
                if name not in self.shared:
                    self.shared[name] = self._normal(name)
                found += wide * self.shared[name]
        return numpy.exp(found)

    def _normal(self, name: str) -> Any:
        import numpy

        key = int.from_bytes(hashlib.blake2b(f"{self.seed}|{name}".encode(), digest_size=16).digest(), "big")
        return numpy.random.Generator(numpy.random.Philox(key=key)).standard_normal(self.goes)
