"""Identical rectangles laid by blocks, at once and with plain arithmetic: what is found is a layout, most often the best one.

A board is cut from edge to edge, and its parts again, down to blocks in which all pieces lie alike (F below, every cut at a sum
of sides). Then one cut into five that no straight cut makes, as round a pinwheel, each part by F again (Bischoff and Dowsland
1982, from memory). Where a board holds too many small pieces for that, strips are taken off it one after another.
"""

import math
from bisect import bisect_right
from collections.abc import Callable, Iterable, Iterator
from functools import cache

from runboard.plan.stock.bounds import most, most_sums, raster, reach, sums
from runboard.plan.stock.nest import Nest, Spot

# So many looks at a cut are made at most: a few tenths of a second.
_CUTS, _FIVES = 300_000, 150_000
# How many strips are tried, where there are no more places for one than so many.
_STRIPS = ((70, 3), (400, 2), (math.inf, 1))

Part = tuple[int, int, int, int]  # x, y of its corner, its width along x and y
Count = Callable[[int, int], int]
Lay = Callable[[int, int, int, int], Iterator[Spot]]


def laid(nest: Nest) -> tuple[Spot, ...]:
    """As many pieces as are found at once."""
    if not nest.fits:
        return ()
    if not nest.turned or nest.long == nest.wide:
        return tuple(_alike(nest, (0, 0, nest.x, nest.y), turned=False))
    known_x, known_y = most_sums(nest.x, nest.long, nest.wide), most_sums(nest.y, nest.long, nest.wide)
    if known_x * known_y * (known_x + known_y) > 2 * _CUTS:
        return tuple(_by_strips(nest))
    cuts = _Cuts(nest)
    return tuple(_in_five(nest, cuts) or cuts.lay((0, 0, nest.x, nest.y)))


def _across(nest: Nest, turned: bool) -> tuple[int, int]:
    return (nest.wide, nest.long) if turned else (nest.long, nest.wide)


def _alike(nest: Nest, part: Part, turned: bool) -> Iterator[Spot]:
    """All that a part holds of pieces that lie alike."""
    left, low, width, height = part
    long, wide = _across(nest, turned)
    for row in range(height // wide):
        for column in range(width // long):
            yield Spot(left + column * long, low + row * wide, turned)


def _most_alike(nest: Nest, x: int, y: int) -> tuple[int, bool]:
    """How many alike, and whether turned."""
    plain = (x // nest.long) * (y // nest.wide)
    turned = (x // nest.wide) * (y // nest.long)
    return (turned, True) if turned > plain else (plain, False)


class _Cuts:
    """F: the most by cuts from edge to edge, for every part that ends at sums of sides."""

    def __init__(self, nest: Nest) -> None:
        self._nest = nest
        self._xs = sums(nest.x, nest.long, nest.wide)
        self._ys = sums(nest.y, nest.long, nest.wide)
        self._best: list[list[tuple[int, int, int]]] = []
        for x_at in range(len(self._xs)):
            self._best.append([])
            for y_at in range(len(self._ys)):
                self._best[x_at].append(self._cut(x_at, y_at))

    def count(self, x: int, y: int) -> int:
        if x <= 0 or y <= 0:
            return 0
        return self._best[bisect_right(self._xs, x) - 1][bisect_right(self._ys, y) - 1][0]

    def _cut(self, x_at: int, y_at: int) -> tuple[int, int, int]:
        """(how many, where cut along x, where along y): both 0 where all lie alike."""
        x, y, best = self._xs[x_at], self._ys[y_at], self._best
        found = (_most_alike(self._nest, x, y)[0], 0, 0)
        at_most = (x * y) // (self._nest.long * self._nest.wide)
        if found[0] == at_most:
            return found
        column = best[x_at]
        for cut in self._xs[1 : bisect_right(self._xs, x // 2)]:
            there = best[bisect_right(self._xs, cut) - 1][y_at][0]
            some = there + best[bisect_right(self._xs, x - cut) - 1][y_at][0]
            if some > found[0]:
                found = (some, cut, 0)
        for cut in self._ys[1 : bisect_right(self._ys, y // 2)]:
            there = column[bisect_right(self._ys, cut) - 1][0]
            some = there + column[bisect_right(self._ys, y - cut) - 1][0]
            if some > found[0]:
                found = (some, 0, cut)
        return found

    def lay(self, part: Part) -> Iterator[Spot]:
        left, low, width, height = part
        if width <= 0 or height <= 0:
            return
        x_at, y_at = bisect_right(self._xs, width) - 1, bisect_right(self._ys, height) - 1
        _, along_x, along_y = self._best[x_at][y_at]
        if along_x:
            yield from self.lay((left, low, along_x, height))
            yield from self.lay((left + along_x, low, width - along_x, height))
        elif along_y:
            yield from self.lay((left, low, width, along_y))
            yield from self.lay((left, low + along_y, width, height - along_y))
        else:
            yield from _alike(self._nest, part, _most_alike(self._nest, self._xs[x_at], self._ys[y_at])[1])


def _in_five(nest: Nest, cuts: _Cuts) -> list[Spot]:
    """The best layout of five parts round a middle; nothing where none has more than F."""
    best, at_most, chosen = cuts.count(nest.x, nest.y), most(nest), None
    xs, ys = raster(nest.x, nest.long, nest.wide), raster(nest.y, nest.long, nest.wide)
    if best >= at_most or len(xs) ** 2 * len(ys) ** 2 > 4 * _FIVES:
        return []
    for x1, x2 in _pairs(xs):
        tops = [cuts.count(x1, y) + cuts.count(x2, nest.y - y) for y in ys]
        bottoms = [cuts.count(nest.x - x1, y) + cuts.count(nest.x - x2, nest.y - y) for y in ys]
        highest = cuts.count(x2 - x1, nest.y) + max(tops)
        for at, y1 in enumerate(ys):
            if not y1 or highest + bottoms[at] <= best:
                continue
            for top, y2 in zip(tops[at:], ys[at:], strict=True):
                some = top + bottoms[at] + cuts.count(x2 - x1, y2 - y1)
                if some > best:
                    best, chosen = some, (x1, x2, y1, y2)
            if best >= at_most:
                return _laid_in(chosen, nest, cuts)
    return _laid_in(chosen, nest, cuts)


def _pairs(some: list[int]) -> Iterator[tuple[int, int]]:
    return ((one, two) for at, one in enumerate(some) for two in some[at:] if one)


def _laid_in(chosen: tuple[int, int, int, int] | None, nest: Nest, cuts: _Cuts) -> list[Spot]:
    return [spot for part in five(nest.x, nest.y, *chosen) for spot in cuts.lay(part)] if chosen else []


def five(x: int, y: int, x1: int, x2: int, y1: int, y2: int) -> Iterable[Part]:
    """The parts of a board round its middle from (x1, y1) to (x2, y2), x1 ≤ x2, y1 ≤ y2."""
    return (
        (0, 0, x1, y2),
        (x1, 0, x - x1, y1),
        (x1, y1, x2 - x1, y2 - y1),
        (0, y2, x2, y - y2),
        (x2, y1, x - x2, y - y1),
    )


def _by_strips(nest: Nest) -> list[Spot]:
    """Strips of pieces that lie alike, taken off one side or the other, at most so many."""

    @cache
    def best(x: int, y: int, more: int) -> tuple[int, tuple[int, int]]:
        found, how = _most_alike(nest, x, y)[0], (0, 0)
        if not more or not found:
            return found, how
        for cut in _ends(x, nest):
            some = _most_alike(nest, cut, y)[0] + best(reach(x - cut, nest.long, nest.wide), y, more - 1)[0]
            found, how = (some, (cut, 0)) if some > found else (found, how)
        for cut in _ends(y, nest):
            some = _most_alike(nest, x, cut)[0] + best(x, reach(y - cut, nest.long, nest.wide), more - 1)[0]
            found, how = (some, (0, cut)) if some > found else (found, how)
        return found, how

    spots: list[Spot] = []
    strips = next(strips for cuts, strips in _STRIPS if len([*_ends(nest.x, nest), *_ends(nest.y, nest)]) <= cuts)
    left, low, x, y = 0, 0, reach(nest.x, nest.long, nest.wide), reach(nest.y, nest.long, nest.wide)
    for more in range(strips, -1, -1):
        _, (along_x, along_y) = best(x, y, more)
        if along_x:
            spots += _alike(nest, (left, low, along_x, y), _most_alike(nest, along_x, y)[1])
            left, x = left + along_x, reach(x - along_x, nest.long, nest.wide)
        elif along_y:
            spots += _alike(nest, (left, low, x, along_y), _most_alike(nest, x, along_y)[1])
            low, y = low + along_y, reach(y - along_y, nest.long, nest.wide)
        else:
            break
    return [*spots, *_alike(nest, (left, low, x, y), _most_alike(nest, x, y)[1])]


def _ends(room: int, nest: Nest) -> Iterable[int]:
    """Where blocks of lengths or of widths end, the whole of it apart."""
    return (at for side in (nest.long, nest.wide) for at in range(side, room, side))
