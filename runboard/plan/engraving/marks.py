"""What of a drawing burns, line by line: the spans of each line of a sweep that lie within a shape or on its line."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from runboard.plan.outlines.outline import Outline
from runboard.run.refusal import Refused

MOST_LINES = 200_000
MOST_CROSSINGS = 4_000_000
_OWN_PART = 1 << 40  # above all parts of drawings


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
    edges.add_filled([(one, piece_of(at)) for at, one in enumerate(outlines) if one.filled])
    edges.add_lines(
        [(one, _width(one, spacing), piece_of(at)) for at, one in enumerate(outlines) if not one.filled or one.stroke]
    )
    return edges.marks()


def _width(one: Outline, hairline: float) -> float:
    """How wide a line burns: at least as wide as lines lie apart, as it burns on one of them."""
    return max(one.stroke, hairline) if one.stroke or not one.filled else 0.0


def _closed(points: Any) -> Any:
    return points if np.array_equal(points[0], points[-1]) else np.concatenate([points, points[:1]])


def _stretches(lines: Sequence[Any]) -> tuple[Any, Any, Any]:
    """(start, end) of each stretch of lines of points, and how many each line has."""
    count = [len(line) - 1 for line in lines]
    return np.concatenate([line[:-1] for line in lines]), np.concatenate([line[1:] for line in lines]), count


class _Edges:
    """Edges of closed lines, and where they cross the lines of a sweep."""

    def __init__(self, top: float, spacing: float, lines: int) -> None:
        self.top, self.spacing, self.count = top, spacing, lines
        self.found: list[tuple[Any, ...]] = []
        self.crossings = 0

    def add_filled(self, some: Sequence[tuple[Outline, int]]) -> None:
        """Outlines with the piece of each: what lies inside."""
        if some:
            start, end, count = _stretches([_closed(one.points) for one, _ in some])
            part = np.repeat([one.part for one, _ in some], count)
            even_odd = np.repeat([one.even_odd for one, _ in some], count)
            self._edges(start, end, part, even_odd, np.repeat([piece for _, piece in some], count))

    def add_lines(self, some: Sequence[tuple[Outline, float, int]]) -> None:
        """Outlines with the width and piece of each: each stretch as a box of that width, and a part by itself."""
        if not some:
            return
        start, end, count = _stretches([_closed(one.points) if one.closed else one.points for one, _, _ in some])
        width, piece = (
            np.repeat([wide for _, wide, _ in some], count),
            np.repeat([piece for _, _, piece in some], count),
        )
        way = end - start
        long = np.hypot(way[:, 0], way[:, 1])
        kept = long > 0
        start, end, piece, width = start[kept], end[kept], piece[kept], width[kept]
        way = way[kept] / long[kept, None]
        side = np.column_stack([-way[:, 1], way[:, 0]]) * (width[:, None] / 2)
        corners = [start + side, end + side, end - side, start - side]
        parts, neither = _OWN_PART + np.arange(len(start)), np.zeros(len(start), np.bool_)
        for first, second in zip(corners, corners[1:] + corners[:1], strict=True):
            self._edges(first, second, parts, neither, piece)

    def _edges(self, start: Any, end: Any, part: Any, even_odd: Any, piece: Any) -> None:
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
        self.found.append((line, x, turn, part[edge], even_odd[edge], piece[edge]))

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
