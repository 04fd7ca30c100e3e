"""The ways to engrave a jig-full: all of it in one sweep, row by row, each piece by itself, or along the lines alone."""

import math
from collections.abc import Sequence
from itertools import pairwise

import numpy as np

from runboard.plan.engraving.blocks import Block, block_of, parted, rows_of
from runboard.plan.engraving.marks import Marks
from runboard.plan.engraving.question import HeadStroke, Method, Way
from runboard.plan.engraving.sweep import Sweep

# So many lines of a method are drawn.
SHOWN = 36
# And no nearer to one another than this share of its width.
_APART = 0.02


def whole(marks: Marks, sweep: Sweep, trims: bool) -> Method:
    """Every line of the whole, blank ones too, over its whole width."""
    left, right = float(marks.left.min()), float(marks.right.max())
    every = np.arange(marks.lines)
    return _method("whole", marks, sweep, [Block(every, np.full(len(every), left), np.full(len(every), right))])


def row_by_row(marks: Marks, sweep: Sweep, trims: bool) -> Method:
    """Only lines with something on them, each row in the blocks that take least."""
    return _method("rows", marks, sweep, [block for row in rows_of(marks) for block in parted(row, sweep, trims)])


def unsplit(marks: Marks, sweep: Sweep, trims: bool) -> float:
    """Seconds of the lines with something on them, over the whole width."""
    return block_of(marks, np.arange(len(marks)), trims).seconds(sweep)


def piece_by_piece(marks: Marks, sweep: Sweep, trims: bool) -> Method:
    """Each piece as a block of its own."""
    order = np.argsort(marks.piece, kind="stable")
    some = np.split(order, np.flatnonzero(np.diff(marks.piece[order])) + 1)
    return _method("pieces", marks, sweep, [block_of(marks, chosen, trims) for chosen in some])


def _method(name: Way, marks: Marks, sweep: Sweep, blocks: Sequence[Block]) -> Method:
    ways = _ways(blocks, sweep)
    seconds = sum(block.seconds(sweep) for block in blocks) + float(np.sum(sweep.moved(ways)))
    gone = sum(
        float((block.right - block.left).sum() + block.steps(sweep.spacing).sum())
        + 2 * sweep.overscan * len(block.lines)
        for block in blocks
    )
    strokes, shown = _strokes(marks, sweep, blocks)
    lines = sum(len(block.lines) for block in blocks)
    off = gone + float(np.sum(ways)) - marks.length
    return Method(name, seconds, lines, len(blocks), marks.length, off, strokes, shown)


def _ways(blocks: Sequence[Block], sweep: Sweep) -> list[float]:
    """How far it is from each block to the next, in mm."""
    ends = [block.ends(sweep) for block in blocks]
    return [
        math.hypot(start[0] - end[0], (start[1] - end[1]) * sweep.spacing) for (_, end), (start, _) in pairwise(ends)
    ]


def _strokes(marks: Marks, sweep: Sweep, blocks: Sequence[Block]) -> tuple[list[HeadStroke], int]:
    """Some lines of some blocks as the head goes them, and how many lines those are."""
    by_line = np.argsort(marks.line, kind="stable")
    lines = marks.line[by_line]
    shown = blocks[:: math.ceil(len(blocks) / SHOWN)]
    wide = float(marks.right.max() - marks.left.min()) + 2 * sweep.overscan
    apart = max(1.0, wide * _APART / sweep.spacing)  # lines from one that is drawn to the next
    strokes: list[HeadStroke] = []
    at: tuple[float, float] | None = None
    count = 0
    for block in shown:
        for number, pick in enumerate(_picked(len(block.lines), _each(block, len(shown), apart))):
            line, ends = int(block.lines[pick]), (float(block.left[pick]), float(block.right[pick]))
            y = marks.top + (line + 0.5) * marks.spacing
            here = by_line[np.searchsorted(lines, line) : np.searchsorted(lines, line, "right")]
            spans = [
                (float(marks.left[one]), float(marks.right[one]))
                for one in here
                if marks.left[one] >= ends[0] - 1e-9 and marks.right[one] <= ends[1] + 1e-9
            ]
            path = _line((ends[0] - sweep.overscan, ends[1] + sweep.overscan), sorted(spans), y, number % 2 == 1)
            if at is not None:
                strokes.append(HeadStroke(*at, path[0].x1, path[0].y1, False))
            strokes += path
            at, count = (path[-1].x2, path[-1].y2), count + 1
    return strokes, count


def _each(block: Block, blocks: int, apart: float) -> int:
    room = int((block.lines[-1] - block.lines[0]) / apart) + 1
    return max(1, min(SHOWN // blocks, max(2, room)))


def _picked(count: int, most: int) -> list[int]:
    if count <= most:
        return list(range(count))
    return [round((at + 0.5) * count / most - 0.5) for at in range(most)]


def _line(ends: tuple[float, float], spans: list[tuple[float, float]], y: float, back: bool) -> list[HeadStroke]:
    """One line of a sweep from end to end, on over its spans."""
    at, found = ends[0], []
    for left, right in spans:
        if left > at:
            found.append(HeadStroke(at, y, left, y, False))
        found.append(HeadStroke(max(at, left), y, right, y, True))
        at = max(at, right)
    found.append(HeadStroke(at, y, ends[1], y, False))
    if not back:
        return found
    return [HeadStroke(one.x2, y, one.x1, y, one.on) for one in reversed(found)]
