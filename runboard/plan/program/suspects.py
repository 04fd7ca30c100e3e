"""What of a program may not be meant, though the language allows it: too fast, too deep, farther than the machine or the stock."""

from dataclasses import dataclass

import numpy as np

from runboard.plan.program.language.doubts import Doubts
from runboard.plan.program.motion import Timed
from runboard.plan.program.moves import FEED, RAPID, Doubt, Moves
from runboard.plan.program.reach import Extent, begins, reach
from runboard.shop.machines import Motion

# mm/min below which nobody feeds on purpose. Common practice, no source.
SLOW = 5.0
# Less than this (mm) is no difference.
_SAME = 1e-3
# So many blocks back it is looked whether a hole was drilled before.
_BACK = 64


@dataclass(frozen=True)
class Stock:
    """What is cut: how long along x, wide along y and thick, in mm, and the Z of its top; None what nobody said."""

    length: float | None = None
    width: float | None = None
    thickness: float | None = None
    top: float = 0.0


def suspects(
    moves: Moves, motion: Motion, found: Timed, stock: Stock, extent: tuple[Extent, ...], cut: tuple[Extent, ...]
) -> tuple[Doubt, ...]:
    """In no order."""
    doubts = Doubts()
    if cut:
        _heights(moves, stock.top, extent, cut, doubts)
        _feeds(moves, motion, found, doubts)
    _too_far(moves, motion, extent, doubts)
    if cut:
        _of_stock(moves, stock, cut, doubts)
    return doubts.all()


def _heights(moves: Moves, top: float, extent: tuple[Extent, ...], cut: tuple[Extent, ...], doubts: Doubts) -> None:
    first = _first_line(moves, FEED)
    if cut[2][0] >= top - _SAME:
        doubts.add(first, "nothing-below-top", z=cut[2][0])
    elif extent[2][1] <= top + _SAME:
        doubts.add(first, "nothing-above-top", z=extent[2][1])
    else:
        _fast_below(moves, top, doubts)


def _fast_below(moves: Moves, top: float, doubts: Doubts) -> None:
    """Travel within the stock: across it, or down into what no cut has opened before."""
    begin, end = begins(moves, 2), moves.to[:, 2]
    fast = (moves.kind == RAPID) & (np.minimum(begin, end) < top - _SAME)
    across = np.hypot(moves.to[:, 0] - begins(moves, 0), moves.to[:, 1] - begins(moves, 1)) > _SAME
    for at in np.flatnonzero(fast & across).tolist():
        doubts.add(int(moves.line[at]), "fast-across", z=float(min(begin[at], end[at])))
    for at in np.flatnonzero(fast & ~across & (end < begin - _SAME)).tolist():
        if not _is_open(moves, at):
            doubts.add(int(moves.line[at]), "fast-down", z=float(end[at]))


def _is_open(moves: Moves, at: int) -> bool:
    """Whether a feed went as deep just before, at the same place."""
    x, y, z = moves.to[at]
    for before in range(at - 1, max(-1, at - _BACK), -1):
        if abs(moves.to[before, 0] - x) > _SAME or abs(moves.to[before, 1] - y) > _SAME:
            return False
        if moves.kind[before] == FEED and moves.to[before, 2] <= z + _SAME:
            return True
    return False


def _feeds(moves: Moves, motion: Motion, found: Timed, doubts: Doubts) -> None:
    fed = (moves.kind == FEED) & (found.length > 0)
    if not any(doubt.code.startswith("feed-") for doubt in moves.doubts):  # the reader names those that it finds
        for at in np.flatnonzero(fed & (moves.speed <= 0)).tolist():
            doubts.add(int(moves.line[at]), "feed-nought", changes_time=True)
    fast = np.flatnonzero(fed & (moves.speed > motion.rapid / 60 * (1 + 1e-9)))
    if len(fast):
        doubts.add(
            int(moves.line[fast[0]]), "feed-fast", feed=float(moves.speed[fast[0]]) * 60, most=float(motion.rapid)
        )
    slow = np.flatnonzero(fed & (moves.speed < SLOW / 60) & (moves.speed > 0))
    if len(slow):
        doubts.add(int(moves.line[slow[0]]), "feed-slow", feed=float(moves.speed[slow[0]]) * 60)


def _too_far(moves: Moves, motion: Motion, extent: tuple[Extent, ...], doubts: Doubts) -> None:
    travels = (motion.travel_x, motion.travel_y, motion.travel_z)
    for axis, (travel, (low, high)) in enumerate(zip(travels, extent, strict=False)):
        if travel is not None and high - low > travel + _SAME:
            line = _line_of_reach(moves, axis, high)
            doubts.add(line, "beyond-travel", axis="XYZ"[axis], reach=high - low, travel=float(travel))


def _line_of_reach(moves: Moves, axis: int, high: float) -> int:
    return int(moves.line[int(np.argmax(reach(moves, axis)[1] >= high))])


def _of_stock(moves: Moves, stock: Stock, cut: tuple[Extent, ...], doubts: Doubts) -> None:
    """Against the stock's size: where on it the program's zero lies is the person's, who clamps it."""
    for axis, size in enumerate((stock.length, stock.width)):
        low, high = cut[axis]
        if size is not None and high - low > size + _SAME:
            doubts.add(_line_of_reach(moves, axis, high), "beyond-stock", axis="XYZ"[axis], reach=high - low, size=size)
    if stock.thickness is not None and cut[2][0] < stock.top - stock.thickness - _SAME:
        lowest = int(np.argmin(np.where(moves.kind == FEED, reach(moves, 2)[0], np.inf)))
        doubts.add(
            int(moves.line[lowest]),
            "through-stock",
            z=cut[2][0],
            by=stock.top - stock.thickness - cut[2][0],
            size=stock.thickness,
        )


def _first_line(moves: Moves, kind: int) -> int:
    return int(moves.line[int(np.argmax(moves.kind == kind))])
