"""How long a head takes that follows lines: the time of a machine program of the same moves (``plan/program/motion``)."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Any

import numpy as np

from runboard.plan.engraving.question import HeadStroke, Method
from runboard.plan.outlines.outline import Outline, Points
from runboard.plan.program.motion import timed
from runboard.plan.program.moves import FEED, RAPID, Moves, no_moves
from runboard.shop.machines import Motion

# What a drawing shows of the lines.
_MOST_STROKES = 3_000


def traced(outlines: Sequence[Outline], speed: float, rapid: float, accel: float, motion: Motion) -> Method:
    """Along every line in the drawing's order, with the beam off from one to the next. ``speed`` and ``rapid`` mm/s, ``accel``
    mm/s² of both axes; the machine rounds a corner as its ``motion`` says."""
    lines = [_closed(one) for one in outlines]
    points = np.concatenate(lines)
    starts = np.cumsum([0, *(len(line) for line in lines[:-1])])
    arrays: dict[str, Any] = no_moves(len(points))
    arrays["kind"][:] = FEED
    arrays["kind"][starts] = RAPID
    arrays["speed"][:] = speed
    arrays["speed"][starts] = 0.0
    arrays["to"][:, :2] = points
    moves = Moves(**arrays, start=(float(points[0, 0]), float(points[0, 1]), 0.0), lines=len(points), units="mm")
    machine = replace(motion, rapid=max(1.0, rapid * 60), accel_x=accel, accel_y=accel)
    seconds = timed(moves, machine, is_compiled=False).total
    ways = np.hypot(*np.diff(points, axis=0, prepend=points[:1]).T)
    off = float(ways[starts].sum())
    strokes, shown = _strokes(lines)
    return Method("trace", seconds, len(lines), len(lines), float(ways.sum()) - off, off, strokes, shown)


def _closed(one: Outline) -> Points:
    is_open = one.closed and not np.array_equal(one.points[0], one.points[-1])
    return np.concatenate([one.points, one.points[:1]]) if is_open else one.points


def _strokes(lines: Sequence[Points]) -> tuple[list[HeadStroke], int]:
    """The lines with fewer points, in their order, and how many of them are drawn."""
    shown = lines[: _MOST_STROKES // 4]
    each = max(12, _MOST_STROKES // max(1, len(shown)))
    found: list[HeadStroke] = []
    at: tuple[float, float] | None = None
    for line in shown:
        kept = line[np.unique(np.linspace(0, len(line) - 1, min(each, len(line))).round().astype(int))].tolist()
        if at is not None:
            found.append(HeadStroke(at[0], at[1], kept[0][0], kept[0][1], False))
        found += [HeadStroke(one[0], one[1], after[0], after[1], True) for one, after in pairwise(kept)]
        at = (kept[-1][0], kept[-1][1])
    return found, len(shown)
