"""The places at which a program works, found from its moves alone.

A **visit** is what lies between two rapid moves across at a safe height: above the top of the stock, Z0, or, where Z0 cannot be that
(nothing is cut below it, or nothing rises above it), above the highest feed move across. A change of tools or a stop ends a **part** of the
program: the order of parts stays. Two visits are at one **place** where their boxes are nearly the same: half of what they cover
together, or more, is covered by both.
"""

from dataclasses import dataclass, replace

import numpy as np

from runboard.plan.program.moves import FEED, RAPID, STOP, TOOL, Array, Moves
from runboard.plan.program.reach import begins, reach

Point = tuple[float, float]
# More visits than this are counted, not compared.
MOST_VISITS = 2000
# A box is taken this much larger all round (mm): a hole's has no size of its own.
_ROUND = 0.5
_SAME = 1e-3


@dataclass(frozen=True)
class Visit:
    """``part`` counts changes of tools and stops before it; ``entry`` is where it comes down, ``exit`` where it goes up; ``box`` of
    its feed moves is (x least, y least, x greatest, y greatest), ``lowest`` their lowest Z; ``place`` counts from 1, in the order of first
    visits. ``first`` and ``last`` are its lines, ``blocks`` the first and the last block of its stretch."""

    tool: int
    part: int
    first: int
    last: int
    blocks: tuple[int, int]
    entry: Point
    exit: Point
    box: tuple[float, float, float, float]
    lowest: float
    place: int = 0


@dataclass(frozen=True)
class Part:
    """What stays together in its place: where the machine is as it begins, and where it goes at its end; None where it ends wherever
    the last visit does."""

    visits: tuple[Visit, ...]
    start: Point
    end: Point | None


def parts(moves: Moves) -> tuple[Part, ...]:
    """Every visit of a program, by its parts; a part that cuts nothing is none."""
    visits = _visits(moves)
    numbers = sorted({visit.part for visit in visits})
    ends = np.flatnonzero((moves.kind == TOOL) | (moves.kind == STOP))
    found = []
    for number in numbers:
        own = tuple(visit for visit in visits if visit.part == number)
        start = _at(moves, int(ends[number - 1])) if number else (moves.start[0], moves.start[1])
        end = _at(moves, int(ends[number]) if number < len(ends) else len(moves) - 1)
        found.append(Part(own, start, None if _is_same(end, own[-1].exit) else end))
    return tuple(found)


def _visits(moves: Moves) -> list[Visit]:
    fed = np.flatnonzero(moves.kind == FEED)
    if not len(fed):
        return []
    ends_part = (moves.kind == TOOL) | (moves.kind == STOP)
    splits = np.flatnonzero(_hops(moves) | ends_part)
    stretch, first = np.unique(np.searchsorted(splits, fed), return_index=True)
    boxes = [each for axis in (0, 1) for each in _within(moves, axis, fed, first)]
    lowest = _within(moves, 2, fed, first)[0]
    of_part = np.cumsum(ends_part)
    found = []
    for row, number in enumerate(stretch.tolist()):
        begin = int(splits[number - 1]) + 1 if number else 0
        end = int(splits[number]) - 1 if number < len(splits) else len(moves) - 1
        box = (float(boxes[0][row]), float(boxes[2][row]), float(boxes[1][row]), float(boxes[3][row]))
        found.append(
            Visit(
                int(moves.tool[begin]),
                int(of_part[begin]),
                int(moves.line[begin]),
                int(moves.line[end]),
                (begin, end),
                _at(moves, begin - 1),
                _at(moves, end),
                box,
                float(lowest[row]),
            )
        )
    return _at_places(found)


def _within(moves: Moves, axis: int, fed: Array, first: Array) -> tuple[Array, Array]:
    least, greatest = reach(moves, axis)
    return np.minimum.reduceat(least[fed], first), np.maximum.reduceat(greatest[fed], first)


def _hops(moves: Moves) -> Array:
    """bool of n: rapid moves across at a safe height."""
    begin, end = begins(moves, 2), moves.to[:, 2]
    across = np.hypot(moves.to[:, 0] - begins(moves, 0), moves.to[:, 1] - begins(moves, 1)) > _SAME
    fed = moves.kind == FEED
    lowest, highest = float(end[fed].min()), float(np.maximum(begin, end).max())
    top = 0.0
    if lowest >= -_SAME or highest <= _SAME:
        cuts = fed & across
        top = float(np.maximum(begin, end)[cuts if cuts.any() else fed].max()) if cuts.any() else lowest
    found: Array = (moves.kind == RAPID) & across & (np.minimum(begin, end) > top + _SAME)
    return found


def _at(moves: Moves, block: int) -> Point:
    """Where the machine is behind a block; before the first one for -1."""
    x, y = moves.to[block, :2] if block >= 0 else moves.start[:2]
    return float(x), float(y)


def _is_same(one: Point, other: Point) -> bool:
    return abs(one[0] - other[0]) <= _SAME and abs(one[1] - other[1]) <= _SAME


def _at_places(visits: list[Visit]) -> list[Visit]:
    """The visits with their places, each place taken by its first visit."""
    if len(visits) > MOST_VISITS:
        return [replace(visit, place=number) for number, visit in enumerate(visits, 1)]
    boxes = np.array([visit.box for visit in visits])
    boxes[:, :2] -= _ROUND
    boxes[:, 2:] += _ROUND
    firsts: list[int] = []
    found = []
    for number, visit in enumerate(visits):
        both = _common(boxes[firsts], boxes[number]) if firsts else np.zeros(0)
        alike = both / (_area(boxes[firsts]) + _area(boxes[number]) - both) if firsts else both
        at = int(np.argmax(alike)) if len(alike) and alike.max() >= 0.5 else len(firsts)
        if at == len(firsts):
            firsts.append(number)
        found.append(replace(visit, place=at + 1))
    return found


def _area(box: Array) -> Array:
    found: Array = (box[..., 2] - box[..., 0]) * (box[..., 3] - box[..., 1])
    return found


def _common(boxes: Array, box: Array) -> Array:
    width = np.minimum(boxes[:, 2], box[2]) - np.maximum(boxes[:, 0], box[0])
    height = np.minimum(boxes[:, 3], box[3]) - np.maximum(boxes[:, 1], box[1])
    found: Array = np.clip(width, 0.0, None) * np.clip(height, 0.0, None)
    return found
