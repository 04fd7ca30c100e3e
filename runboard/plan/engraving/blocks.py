"""Blocks: what is swept in one go, line after line, and into which blocks a row of marks is best parted.

One block over two marks sweeps the gap between them at every line; two blocks run up and brake twice as often. With gap g, the
block is better while g/v < 2·v/a + 2·√(d/a). Along a row that rule is made exact by dynamic programming over all ways to part
it (Bellman 1957, from memory), since marks of one row may have different lines.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import numpy as np

from runboard.plan.engraving.marks import Marks
from runboard.plan.engraving.sweep import Sweep

# Blocks that are tried over all rows together: some four thousand a second.
_TRIED = 1_500
_LEAST_UNITS, _MOST_UNITS = 4, 40


@dataclass(frozen=True)
class Block:
    """Lines swept in one go: ``lines`` int64 of n, each from ``left`` to ``right``, float64 of n, in mm, to and fro."""

    lines: Any
    left: Any
    right: Any

    def steps(self, spacing: float) -> Any:
        """How far it is from the end of each line to the beginning of the next, float64 of n; the last steps on by one line."""
        ends = np.where(np.arange(len(self.lines)) % 2 == 0, self.right, self.left)
        starts = np.where(np.arange(len(self.lines)) % 2 == 0, self.left, self.right)
        across = np.abs(starts[1:] - ends[:-1])
        return np.append(np.hypot(across, np.diff(self.lines) * spacing), spacing)

    def seconds(self, sweep: Sweep) -> float:
        return sweep.seconds(self.right - self.left, self.steps(sweep.spacing))

    def ends(self, sweep: Sweep) -> tuple[tuple[float, float], tuple[float, float]]:
        """(x, line) of where the head begins, and of where it stands after the last line."""
        back = len(self.lines) % 2 == 0
        end = self.left[-1] - sweep.overscan if back else self.right[-1] + sweep.overscan
        return (float(self.left[0] - sweep.overscan), float(self.lines[0])), (float(end), float(self.lines[-1]))


@dataclass(frozen=True)
class Row:
    """Marks on lines without a blank one between: units side by side, each with its ``left`` and ``right`` on each line, float64
    of (units, lines), infinite where it has nothing there."""

    first: int
    left: Any
    right: Any

    def block(self, start: int, stop: int, trims: bool) -> Block:
        """The units from ``start`` to before ``stop`` in one block; its lines as wide as all of it, or as what is on each."""
        left, right = self.left[start:stop].min(axis=0), self.right[start:stop].max(axis=0)
        some = np.flatnonzero(right > left)
        left, right = left[some], right[some]
        if not trims:
            left, right = np.full(len(some), left.min()), np.full(len(some), right.max())
        return Block(some + self.first, left, right)


def block_of(marks: Marks, chosen: Any, trims: bool) -> Block:
    """All marks at these indexes in one block."""
    line, left, right = marks.line[chosen], marks.left[chosen], marks.right[chosen]
    return _row(line, left, right, np.zeros(len(line), np.int64), 1).block(0, 1, trims)


def rows_of(marks: Marks) -> list[Row]:
    """The rows, from the top."""
    order = np.argsort(marks.line, kind="stable")
    line, left, right = marks.line[order], marks.left[order], marks.right[order]
    cuts = np.flatnonzero(np.diff(line) > 1) + 1
    bounds = [0, *cuts.tolist(), len(line)]
    most = min(_MOST_UNITS, max(_LEAST_UNITS, int(math.sqrt(2 * _TRIED / (len(bounds) - 1)))))
    return [_row(line[a:b], left[a:b], right[a:b], *_units(left[a:b], right[a:b], most)) for a, b in pairwise(bounds)]


def _units(left: Any, right: Any, most: int) -> tuple[Any, int]:
    """(the unit of each span, how many there are), parted where no line has anything. Of more than ``most`` the narrowest gaps
    are closed."""
    order = np.argsort(left, kind="stable")
    gaps = left[order][1:] - np.maximum.accumulate(right[order])[:-1]
    widest = np.argsort(-gaps, kind="stable")[: most - 1]
    parts = np.zeros(len(left), np.int64)
    parts[widest[gaps[widest] > 0] + 1] = 1
    unit = np.empty(len(left), np.int64)
    unit[order] = np.cumsum(parts)
    return unit, int(unit.max()) + 1


def _row(line: Any, left: Any, right: Any, unit: Any, units: int) -> Row:
    first = int(line.min())
    lefts = np.full((units, int(line.max()) - first + 1), np.inf)
    rights = np.full(lefts.shape, -np.inf)
    np.minimum.at(lefts, (unit, line - first), left)
    np.maximum.at(rights, (unit, line - first), right)
    return Row(first, lefts, rights)


def parted(row: Row, sweep: Sweep, trims: bool) -> list[Block]:
    """The blocks of a row that take least, the way between two with the beam off counted in."""
    count = len(row.left)
    best: list[tuple[float, int]] = [(0.0, 0)]
    for stop in range(1, count + 1):
        tried = (
            (best[start][0] + (between(row, start, sweep) if start else 0.0)
             + row.block(start, stop, trims).seconds(sweep), start)
            for start in range(stop)
        )  # fmt: skip
        best.append(min(tried))
    return list(_blocks(row, best, trims))[::-1]


def between(row: Row, at: int, sweep: Sweep) -> float:
    """Seconds from a block that ends before unit ``at`` to one that begins there: over the gap, and back up the row."""
    gap = float(row.left[at].min() - row.right[:at].max()) + 2 * sweep.overscan
    return float(sweep.moved(math.hypot(gap, row.left.shape[1] * sweep.spacing)))


def _blocks(row: Row, best: Sequence[tuple[float, int]], trims: bool) -> Iterator[Block]:
    stop = len(best) - 1
    while stop:
        start = best[stop][1]
        yield row.block(start, stop, trims)
        stop = start
