"""The path of a program from above, of so few points that a page can draw it and so many that the eye sees no other path.

Arcs are lines that leave them by less than ``_FINE`` of the drawing's larger side. Then points are dropped that lie so near the line between their
neighbours, and of lines that begin and end in the same small squares one is kept. Where that is still more than ``MOST_POINTS``, the squares are
made larger; a sketch says by ``fineness`` how large they became (mm), and by ``is_whole`` whether it had to leave out lines in the end.
"""

from dataclasses import dataclass

import numpy as np

from runboard.plan.program.moves import FEED, NO_ARC, PLANES, RAPID, Array, Moves
from runboard.plan.program.reach import Extent

Point = tuple[float, float]
Line = tuple[Point, ...]
# Of cuts, and as many again of travel.
MOST_POINTS = 6000
_FINE = 1 / 1500
_COARSE = 1 / 100
# A circle is drawn by so many lines at most.
_MOST_CHORDS = 96
_PASSES = 40
_PIECE = 100_000


@dataclass(frozen=True)
class Sketch:
    """``cuts`` and ``travel`` as lines of points in mm, one point where the tool only goes up and down; ``box`` is (least, greatest) of x and
    y, empty where nothing moves."""

    cuts: tuple[Line, ...]
    travel: tuple[Line, ...]
    box: tuple[Extent, ...]
    fineness: float
    is_whole: bool


def sketch(moves: Moves, extent: tuple[Extent, ...]) -> Sketch:
    """The path within its ``extent``, of which only x and y matter."""
    if not extent:
        return Sketch((), (), (), 0.0, True)
    side = max(high - low for low, high in extent[:2]) or 1.0
    cuts, at_first, cuts_whole = _drawn(moves, FEED, side)
    travel, other, travel_whole = _drawn(moves, RAPID, side)
    return Sketch(cuts, travel, extent[:2], max(at_first, other), cuts_whole and travel_whole)


def _drawn(moves: Moves, kind: int, side: float) -> tuple[tuple[Line, ...], float, bool]:
    fine = side * _FINE
    thin, of = _without_doubles(*_first_thinned(moves, kind, fine), fine)
    while len(thin) > MOST_POINTS and fine < side * _COARSE:
        fine *= 2
        thin, of = _without_doubles(*_thinned(thin, of, fine), fine)
    is_whole = len(thin) <= MOST_POINTS
    if not is_whole:
        numbers, counts = np.unique(of, return_counts=True)
        share = np.cumsum(counts) * (MOST_POINTS / len(thin))  # lines are left out evenly
        kept = numbers[np.floor(share) > np.floor(np.concatenate([[0.0], share[:-1]]))]
        keep = np.isin(of, kept)
        thin, of = thin[keep][:MOST_POINTS], of[keep][:MOST_POINTS]
    starts = np.flatnonzero(np.diff(of, prepend=-1))
    lines = tuple(
        tuple((float(x), float(y)) for x, y in rows) for rows in np.split(np.round(thin, 3), starts[1:]) if len(rows)
    )
    return lines, fine, is_whole


def _first_thinned(moves: Moves, kind: int, fine: float) -> tuple[Array, Array]:
    """Piece by piece, so that a long program takes little memory."""
    at = np.flatnonzero(moves.kind == kind)
    found, count = [(np.zeros((0, 2)), np.zeros(0, int))], 0
    for first in range(0, len(at), _PIECE):
        piece = at[first : first + _PIECE]
        is_new = (
            np.diff(piece, prepend=at[first - 1] if first else -2) > 1
        )  # what does not go on from a block of the kind
        found.append(_thinned(*_points(moves, piece, is_new, count, fine), fine))
        count += int(is_new.sum())
    points, lines = zip(*found, strict=True)
    return np.concatenate(points), np.concatenate(lines)


def _points(moves: Moves, at: Array, is_new: Array, before: int, fine: float) -> tuple[Array, Array]:
    """(float64 of (n, 2), int of n): the points of these blocks, and the number of the line that each belongs to, after so many before."""
    begins = moves.to[np.maximum(at - 1, 0)]
    begins[at == 0] = moves.start
    chords = np.where(moves.plane[at] == NO_ARC, 1, _chords(moves, at, begins, fine))
    counts = chords + is_new
    starts = np.cumsum(counts) - counts
    points = np.empty((int(counts.sum()), 2))
    points[starts[is_new]] = begins[is_new, :2]
    straight = moves.plane[at] == NO_ARC
    points[(starts + is_new)[straight]] = moves.to[at[straight], :2]
    for place in np.flatnonzero(~straight).tolist():
        first = starts[place] + is_new[place]
        points[first : first + chords[place]] = _arc(moves, int(at[place]), begins[place], int(chords[place]))
    return points, np.repeat(np.cumsum(is_new) - 1 + before, counts)


def _chords(moves: Moves, at: Array, begins: Array, fine: float) -> Array:
    found = np.ones(len(at), int)
    for plane, (first, second, _) in enumerate(PLANES):
        own = np.flatnonzero(moves.plane[at] == plane)
        away = begins[own][:, [first, second]] - moves.centre[at[own]]
        radius = np.maximum(np.hypot(away[:, 0], away[:, 1]), fine)
        angle = 2 * np.arccos(np.clip(1 - fine / radius, -1, 1))
        turns = np.maximum(1.0, np.abs(moves.sweep[at[own]]) / (2 * np.pi))
        found[own] = np.clip(
            np.ceil(np.abs(moves.sweep[at[own]]) / angle), 1, np.ceil(_MOST_CHORDS * np.minimum(turns, 20))
        )
    return found


def _arc(moves: Moves, at: int, begin: Array, chords: int) -> Array:
    """The ends of an arc's chords, from above."""
    first, second, third = PLANES[moves.plane[at]]
    share = np.arange(1, chords + 1) / chords
    turned = moves.sweep[at] * share
    away = begin[[first, second]] - moves.centre[at]
    found = np.empty((chords, 3))
    found[:, first] = moves.centre[at, 0] + away[0] * np.cos(turned) - away[1] * np.sin(turned)
    found[:, second] = moves.centre[at, 1] + away[0] * np.sin(turned) + away[1] * np.cos(turned)
    found[:, third] = begin[third] + (moves.to[at, third] - begin[third]) * share
    found[-1] = moves.to[at]
    across: Array = found[:, :2]
    return across


def _thinned(points: Array, line: Array, fine: float) -> tuple[Array, Array]:
    points, line = _without_repeats(points, line, fine)
    idle = 0  # passes that dropped nothing, one after another: the odd points, and the even ones
    for turn in range(_PASSES):
        count = len(points)
        if count < 3 or idle == 2:
            break
        middle = np.arange(1 + turn % 2, count - 1, 2)
        middle = middle[(line[middle - 1] == line[middle]) & (line[middle + 1] == line[middle])]
        drop = middle[_off(points[middle - 1], points[middle], points[middle + 1]) < fine / 4]
        idle = 0 if len(drop) else idle + 1
        keep = np.ones(count, bool)
        keep[drop] = False
        points, line = points[keep], line[keep]
    return points, line


def _off(one: Array, middle: Array, other: Array) -> Array:
    """How far each point in the middle lies from the line between the others."""
    way, to = other - one, middle - one
    length = np.einsum("ij,ij->i", way, way)
    along = np.clip(np.einsum("ij,ij->i", way, to) / np.where(length > 0, length, 1.0), 0.0, 1.0)
    rest = to - way * along[:, None]
    found: Array = np.hypot(rest[:, 0], rest[:, 1])
    return found


def _without_repeats(points: Array, line: Array, fine: float) -> tuple[Array, Array]:
    """Of points of one line that follow one another in one square, the first; the last point of a line stays."""
    if not len(points):
        return points, line
    cell = np.floor(points / (fine / 2)).astype(np.int64)
    is_new = np.concatenate([[True], (np.diff(cell, axis=0) != 0).any(axis=1) | (np.diff(line) != 0)])
    is_last = np.concatenate([np.diff(line) != 0, [True]])
    starts = np.concatenate([[True], np.diff(line) != 0])
    begins = points[np.flatnonzero(starts)][np.cumsum(starts) - 1]
    is_away = np.hypot(*(points - begins).T) > fine / 2
    keep = is_new | (is_last & is_away)
    return points[keep], line[keep]


def _without_doubles(points: Array, line: Array, fine: float) -> tuple[Array, Array]:
    """Of lines of one or two points with the same ends, the first."""
    numbers, starts, counts = np.unique(line, return_index=True, return_counts=True)
    short = counts <= 2
    ends = (
        np.floor(np.stack([points[starts], points[starts + counts - 1]], axis=1) / fine).astype(np.int64).reshape(-1, 4)
    )
    _, first = np.unique(ends, axis=0, return_index=True)
    is_first = np.zeros(len(numbers), bool)
    is_first[first] = True
    keep = np.isin(line, numbers[~short | is_first])
    return points[keep], line[keep]
