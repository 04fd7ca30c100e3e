"""How far each block of a program reaches along an axis, an arc with its bulge; and where it begins."""

import numpy as np

from runboard.plan.program.moves import FEED, NO_ARC, PLANES, RAPID, Array, Moves

# (least, greatest) along an axis, mm.
Extent = tuple[float, float]
_TURN = 2.0 * np.pi


def begins(moves: Moves, axis: int) -> Array:
    """float64 of n: the coordinate along the axis at which each block begins."""
    found = np.empty(len(moves))
    if len(moves):
        found[0], found[1:] = moves.start[axis], moves.to[:-1, axis]
    return found


def is_move(moves: Moves) -> Array:
    """bool of n: whether the block is a move at all."""
    found: Array = (moves.kind == RAPID) | (moves.kind == FEED)
    return found


def reach(moves: Moves, axis: int) -> tuple[Array, Array]:
    """(least, greatest): float64 of n, the coordinates along the axis between which each block stays."""
    begin, end = begins(moves, axis), moves.to[:, axis]
    least, greatest = np.minimum(begin, end), np.maximum(begin, end)
    for plane, axes in enumerate(PLANES):
        if axis in axes[:2]:
            _bulge(moves, plane, axes[:2].index(axis), least, greatest)
    return least, greatest


def _bulge(moves: Moves, plane: int, which: int, least: Array, greatest: Array) -> None:
    """Widen what the arcs of a plane reach along its first or second axis to where they pass its greatest and least."""
    at = np.flatnonzero((moves.plane == plane) & (moves.kind == FEED))
    if not len(at):
        return
    first, second, _ = PLANES[plane]
    before = np.maximum(at - 1, 0)
    from_first = np.where(at > 0, moves.to[before, first], moves.start[first]) - moves.centre[at, 0]
    from_second = np.where(at > 0, moves.to[before, second], moves.start[second]) - moves.centre[at, 1]
    radius, angle, sweep = np.hypot(from_first, from_second), np.arctan2(from_second, from_first), moves.sweep[at]
    top = np.pi / 2 * which  # where the axis is at its greatest
    for turned, reached, widen in ((top, radius, np.maximum), (top + np.pi, -radius, np.minimum)):
        passed = np.mod(np.where(sweep > 0, turned - angle, angle - turned), _TURN) <= np.abs(sweep)
        array = greatest if widen is np.maximum else least
        array[at[passed]] = widen(array[at[passed]], (moves.centre[at, which] + reached)[passed])


def is_upright(moves: Moves) -> Array:
    """bool of n: whether the block goes straight up or down, or nowhere."""
    still: Array = (begins(moves, 0) == moves.to[:, 0]) & (begins(moves, 1) == moves.to[:, 1])
    still &= moves.plane == NO_ARC
    return still
