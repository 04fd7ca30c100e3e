"""What is to be known of a program before it runs: its times, lengths, extents, tools, and what is doubtful in it.

**Cutting** is every feed move but a plunge, which is a feed straight down; lengths and times of the two stand apart. **In the air** a
machine is while it travels, and while it feeds above the top of the stock: Z0, unless the stock's top is told. Of a move that
goes through the top, the part above it counts (arcs in other planes than XY by their ends). The share is of the time in which the machine
moves: dwells and changes of tools are left out of it. Where no cut goes below the top, or nothing rises above it, Z0 is not the
top of the stock: then only travel counts as air, and a doubt says so.

**A load in a row** is what the times are of: where the program ends with another tool than the one it begins by putting in, each load after
the first begins with that change, and it counts. Before the very first load it is the machine's setup; a program that runs once has none.
"""

from dataclasses import dataclass, replace

import numpy as np

from runboard.plan.program.motion import Timed, timed
from runboard.plan.program.moves import DWELL, FEED, RAPID, STOP, TOOL, Array, Doubt, Moves
from runboard.plan.program.reach import Extent, begins, is_move, is_upright, reach
from runboard.plan.program.sketch import Sketch, sketch
from runboard.plan.program.slow_cuts import slow_cuts
from runboard.plan.program.suspects import Stock, suspects
from runboard.plan.program.visits import VisitOrder, visit_order
from runboard.shop.machines import Motion

# What the seconds of a block are: places in ``_parts``.
_RAPID, _CUTTING, _PLUNGE, _DWELL, _CHANGE, _PARTS = range(6)


@dataclass(frozen=True)
class Seconds:
    """``total`` is the sum of the others."""

    cutting: float = 0.0
    rapid: float = 0.0
    plunge: float = 0.0
    dwell: float = 0.0
    tool_change: float = 0.0

    @property
    def total(self) -> float:
        return self.cutting + self.rapid + self.plunge + self.dwell + self.tool_change


@dataclass(frozen=True)
class Lengths:
    """In mm along the path."""

    cutting: float = 0.0
    rapid: float = 0.0
    plunge: float = 0.0


@dataclass(frozen=True)
class ToolRow:
    """What one tool does, ``number`` 0 where the program names none. ``lowest`` is the Z it cuts down to, None where it cuts nothing."""

    number: int
    seconds: Seconds
    length: Lengths
    lowest: float | None


@dataclass(frozen=True)
class ProgramReport:
    """``extent`` of all that moves, ``cut_extent`` of what is fed, each as (least, greatest) of x, y and z in mm, empty where
    nothing moves. ``air_share`` from 0 to 1. ``stops`` are the lines at which it waits for a person. ``back_to`` is the tool that
    the next load begins by putting in, None where it is in the spindle already; ``change`` is how long that takes (s)."""

    lines: int
    units: str
    seconds: Seconds
    length: Lengths
    extent: tuple[Extent, ...]
    cut_extent: tuple[Extent, ...]
    air_share: float
    tools: tuple[ToolRow, ...]
    stops: tuple[int, ...]
    doubts: tuple[Doubt, ...]
    visits: VisitOrder
    sketch: Sketch
    back_to: int | None = None
    change: float = 0.0

    @property
    def changes_time(self) -> bool:
        """Whether some doubt may change the time."""
        return any(doubt.changes_time for doubt in self.doubts)


def report(
    moves: Moves,
    motion: Motion,
    stock: Stock | None = None,
    found: Timed | None = None,
    search: float = 1.0,
    runs_once: bool = False,
) -> ProgramReport:
    """All of it for a machine; ``found`` is its time where that is known already; a better order of visits is looked for for about
    ``search`` seconds, where there are more than a few."""
    stock, found = stock or Stock(), found or timed(moves, motion)
    again = -1 if runs_once else _changes_back(moves)
    change = motion.tool_change.total_seconds() if again >= 0 else 0.0
    found = _with_change(found, again, change)
    part = _part(moves)
    extent, cut = _extent(moves, is_move(moves)), _extent(moves, moves.kind == FEED)
    return ProgramReport(
        moves.lines,
        moves.units,
        _seconds(part, found.seconds),
        _lengths(part, found.length),
        extent,
        cut,
        _air_share(moves, found, stock.top, cut, extent),
        _tools(moves, part, found),
        tuple(int(line) for line in moves.line[moves.kind == STOP]),
        _in_order([*moves.doubts, *suspects(moves, motion, found, stock, extent, cut), *slow_cuts(moves, found)]),
        visit_order(moves, motion, search),
        sketch(moves, extent),
        int(moves.tool[again]) if again >= 0 else None,
        change,
    )


def _in_order(doubts: list[Doubt]) -> tuple[Doubt, ...]:
    """By their lines, what is the same of one line once."""
    once = {(doubt.line, doubt.code, *sorted(doubt.facts.items())): doubt for doubt in doubts}
    return tuple(sorted(once.values(), key=lambda doubt: doubt.line))


def _changes_back(moves: Moves) -> int:
    """The block before the first cut at which a load after the first puts another tool in; -1 for none."""
    if not len(moves) or not (moves.kind == FEED).any():
        return -1
    changes = np.flatnonzero(moves.kind[: int(np.argmax(moves.kind == FEED))] == TOOL)
    if not len(changes) or moves.tool[changes[-1]] == moves.tool[-1]:
        return -1
    return int(changes[-1])


def _with_change(found: Timed, at: int, change: float) -> Timed:
    if at < 0:
        return found
    seconds = found.seconds.copy()
    seconds[at] += change
    return replace(found, seconds=seconds)


def _part(moves: Moves) -> Array:
    """uint8 of n: which part of the time each block belongs to, ``_PARTS`` for none."""
    part = np.full(len(moves), _PARTS, np.uint8)
    for kind, meant in ((RAPID, _RAPID), (FEED, _CUTTING), (DWELL, _DWELL), (TOOL, _CHANGE)):
        part[moves.kind == kind] = meant
    plunges = (moves.kind == FEED) & is_upright(moves) & (moves.to[:, 2] < begins(moves, 2))
    part[plunges] = _PLUNGE
    return part


def _seconds(part: Array, seconds: Array) -> Seconds:
    sums = np.bincount(part, seconds, _PARTS).tolist()
    return Seconds(sums[_CUTTING], sums[_RAPID], sums[_PLUNGE], sums[_DWELL], sums[_CHANGE])


def _lengths(part: Array, length: Array) -> Lengths:
    sums = np.bincount(part, length, _PARTS).tolist()
    return Lengths(sums[_CUTTING], sums[_RAPID], sums[_PLUNGE])


def _extent(moves: Moves, which: Array) -> tuple[Extent, ...]:
    if not which.any():
        return ()
    found = []
    for axis in range(3):
        least, greatest = reach(moves, axis)
        found.append((float(least[which].min()), float(greatest[which].max())))
    return tuple(found)


def _air_share(moves: Moves, found: Timed, top: float, cut: tuple[Extent, ...], extent: tuple[Extent, ...]) -> float:
    moving = float(found.seconds[is_move(moves)].sum())
    if moving == 0:
        return 0.0
    air = float(found.seconds[moves.kind == RAPID].sum())
    if cut and cut[2][0] < top < extent[2][1]:
        fed = moves.kind == FEED
        begin, end = begins(moves, 2)[fed], moves.to[fed, 2]
        high = np.maximum(begin, end)
        through = np.abs(end - begin)
        above = np.clip(high - top, 0.0, None) / np.where(through > 0, through, 1.0)
        share = np.where(through > 0, np.minimum(above, 1.0), high > top)
        air += float((found.seconds[fed] * share).sum())
    return air / moving


def _tools(moves: Moves, part: Array, found: Timed) -> tuple[ToolRow, ...]:
    """In the order in which they are first used; a tool that does nothing is in no row."""
    numbers, first = np.unique(moves.tool, return_index=True)
    rows = []
    for number in numbers[np.argsort(first)].tolist():
        own = moves.tool == number
        fed = own & (moves.kind == FEED)
        lowest = float(moves.to[fed, 2].min()) if fed.any() else None
        row = ToolRow(number, _seconds(part[own], found.seconds[own]), _lengths(part[own], found.length[own]), lowest)
        if row.length != Lengths() or row.seconds.total:
            rows.append(row)
    return tuple(rows)
