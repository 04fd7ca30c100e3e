"""What of a drawing burns, line by line: the spans of each line of a sweep that lie within a shape or on its line."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from runboard.plan.outlines.outline import Outline
from runboard.run.refusal import Refused

MOST_LINES = 200_000
MOST_CROSSINGS = 8_000_000


@dataclass(frozen=True)
class Marks:
    """Spans of lines: ``line`` int64 of n, from 0 at the top; ``left`` and ``right`` float64 of n in mm; ``piece`` int64 of n.
    Spans of one line and piece do not touch. Line k runs at ``top`` + (k + ½)·``spacing``; there are ``lines`` of them."""

    line: Any
    left: Any
    right: Any
    piece: Any
    top: float
    lines: int
    spacing: float

    def __len__(self) -> int:
        return len(self.line)

    @property
    def length(self) -> float:
        """How far the beam is on, in mm."""
        return float((self.right - self.left).sum())


def box_of(outlines: Sequence[Outline], hairline: float) -> tuple[float, float, float, float]:
    """(left, top, right, bottom) of what is marked, the width of lines with it, a line without one as wide as ``hairline``."""
    boxes = boxes_of(outlines, hairline)
    return (float(boxes[:, 0].min()), float(boxes[:, 1].min()), float(boxes[:, 2].max()), float(boxes[:, 3].max()))


def boxes_of(outlines: Sequence[Outline], hairline: float) -> Any:
    """float64 of (n, 4): left, top, right, bottom of each."""
    found = np.empty((len(outlines), 4))
    for at, one in enumerate(outlines):
        half = _width(one, hairline) / 2
        found[at, :2], found[at, 2:] = one.points.min(axis=0) - half, one.points.max(axis=0) + half
    return found


def marks_of(outlines: Sequence[Outline], spacing: float, piece_of: Callable[[int], int]) -> Marks:
    """The marks of outlines. ``piece_of`` says of the outline at an index to which piece it belongs. Refused where lines lie so
    close, or shapes are so many, that there would be no end to it."""
    _, top, _, bottom = box_of(outlines, spacing)
    lines = max(1, int(np.ceil((bottom - top) / spacing - 1e-9)))
    if lines > MOST_LINES:
        raise Refused("engraving-too-fine", lines=lines, most=MOST_LINES)
    edges = _Edges(top, spacing, lines)
    for at, one in enumerate(outlines):
        if one.filled:
            edges.add(_closed(one.points), part=one.part, even_odd=one.even_odd, piece=piece_of(at))
    for at, one in enumerate(outlines):
        if not one.filled or one.stroke:
            edges.add_line(one, _width(one, spacing), piece_of(at))
    return edges.marks()


def _width(one: Outline, hairline: float) -> float:
    """How wide a line burns: at least as wide as lines lie apart, as it burns on one of them."""
    return max(one.stroke, hairline) if one.stroke or not one.filled else 0.0


def _closed(points: Any) -> Any:
    return points if np.array_equal(points[0], points[-1]) else np.concatenate([points, points[:1]])


class _Edges:
    """Edges of closed lines, and where they cross the lines of a sweep."""

    def __init__(self, top: float, spacing: float, lines: int) -> None:
        self.top, self.spacing, self.count = top, spacing, lines
        self.found: list[tuple[Any, ...]] = []
        self.crossings = 0
        self.strokes = 1 << 40  # each stretch of a line is a part by itself

    def add(self, points: Any, part: int, even_odd: bool, piece: int) -> None:
        self._edges(points[:-1], points[1:], np.full(len(points) - 1, part), even_odd, piece)

    def add_line(self, one: Outline, width: float, piece: int) -> None:
        """Each stretch as a box of that width, a little longer than it so that no corner stays open."""
        points = _closed(one.points) if one.closed else one.points
        start, end = points[:-1], points[1:]
        way = end - start
        long = np.hypot(way[:, 0], way[:, 1])
        kept = long > 0
        start, end, way = start[kept], end[kept], way[kept] / long[kept, None]
        side = np.column_stack([-way[:, 1], way[:, 0]]) * (width / 2)
        corners = [start + side, end + side, end - side, start - side]
        parts = self.strokes + np.arange(len(start))
        self.strokes += len(start)
        for first, second in zip(corners, corners[1:] + corners[:1], strict=True):
            self._edges(first, second, parts, False, piece)

    def _edges(self, start: Any, end: Any, part: Any, even_odd: bool, piece: int) -> None:
        down = end[:, 1] > start[:, 1]
        high, low = np.where(down[:, None], start, end), np.where(down[:, None], end, start)
        first = np.ceil((high[:, 1] - self.top) / self.spacing - 0.5).astype(np.int64).clip(0, self.count)
        after = np.ceil((low[:, 1] - self.top) / self.spacing - 0.5).astype(np.int64).clip(0, self.count)
        count = after - first
        self.crossings += int(count.sum())
        if self.crossings > MOST_CROSSINGS:
            raise Refused("engraving-too-much", most=MOST_CROSSINGS)
        edge = np.repeat(np.arange(len(count)), count)
        line = first[edge] + np.arange(len(edge)) - np.repeat(np.cumsum(count) - count, count)
        y = self.top + (line + 0.5) * self.spacing
        share = (y - high[edge, 1]) / (low[edge, 1] - high[edge, 1])
        x = high[edge, 0] + share * (low[edge, 0] - high[edge, 0])
        turn = np.where(down[edge], 1, -1)
        self.found.append(
            (line, x, turn, part[edge], np.full(len(edge), even_odd), np.full(len(edge), piece, np.int64))
        )

    def marks(self) -> Marks:
        line, x, turn, part, even_odd, piece = (np.concatenate(one) for one in zip(*self.found, strict=True))
        order = np.lexsort((x, line, part))
        # Each part's turns over a line sum to nought, so that one sum runs through all of them.
        inside = np.cumsum(turn[order])
        inside = np.where(even_odd[order], inside % 2, inside)
        opens = np.flatnonzero(inside[:-1] != 0)
        left, right = order[opens], order[opens + 1]
        return self._joined(line[left], x[left], x[right], piece[left])

    def _joined(self, line: Any, left: Any, right: Any, piece: Any) -> Marks:
        """Spans of one piece and line that touch are one."""
        order = np.lexsort((left, line, piece))
        line, left, right, piece = line[order], left[order], right[order], piece[order]
        if len(line):
            group = np.cumsum(np.concatenate([[0], (np.diff(line) != 0) | (np.diff(piece) != 0)]))
            low = float(left.min())
            shift = group * (float(right.max()) - low + 1.0)
            reach = np.maximum.accumulate(right - low + shift)
            starts = np.concatenate([[True], left[1:] - low + shift[1:] > reach[:-1]])
            first = np.flatnonzero(starts)
            last = np.concatenate([first[1:], [len(line)]]) - 1
            right = (reach - shift + low)[last]
            line, left, piece = line[first], left[first], piece[first]
        return Marks(line, left, right, piece, self.top, self.count, self.spacing)
