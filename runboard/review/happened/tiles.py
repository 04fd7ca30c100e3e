"""Spans laid over one another so that each moment has one thing, and spans found again by where they lie."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta
from heapq import heappop, heappush
from itertools import pairwise
from typing import Generic, TypeVar

from runboard.shop.hours import Span, merged

T = TypeVar("T")
Tile = tuple[datetime, datetime, T]


def tiled(opens: datetime, closes: datetime, layers: Iterable[Iterable[Tile[T]]], rest: T) -> list[Tile[T]]:
    """All from ``opens`` to ``closes`` without gap or overlap: at each moment what the first layer says that says anything,
    of two of one layer what began last; ``rest`` where none does."""
    if opens >= closes:
        return []
    some = [
        (began, min(ended, closes), rank, what)
        for rank, layer in enumerate(layers)
        for began, ended, what in layer
        if began < closes and ended > opens and began < ended
    ]
    if not some:
        return [(opens, closes, rest)]
    some.sort(key=lambda tile: tile[0])
    turns = sorted({opens, closes, *(max(tile[0], opens) for tile in some), *(tile[1] for tile in some)})
    found: list[Tile[T]] = []
    here: list[tuple[int, int]] = []
    shown, at = None, 0
    for began, ended in pairwise(turns):
        while at < len(some) and some[at][0] <= began:
            heappush(here, (some[at][2], -at))
            at += 1
        while here and some[-here[0][1]][1] <= began:
            heappop(here)
        top = -here[0][1] if here else -1
        if found and top == shown:
            found[-1] = (found[-1][0], ended, found[-1][2])
        else:
            found.append((began, ended, some[top][3] if here else rest))
        shown = top
    return found


class Spans:
    """Spans put together where they touch, to be asked for between two moments."""

    def __init__(self, spans: Iterable[Span]) -> None:
        self.all = merged(spans)
        self._ends = [ended for _, ended in self.all]

    def between(self, began: datetime, ended: datetime) -> Sequence[Span]:
        """Those that reach into a stretch, whole."""
        first = bisect_right(self._ends, began)
        return self.all[first : bisect_left(self._ends, ended) + 1]

    def as_tiles(self, began: datetime, ended: datetime, what: T) -> list[Tile[T]]:
        """The same, each with ``what``."""
        return [(start, end, what) for start, end in self.between(began, ended)]


class Marked(Generic[T]):
    """Tiles in the order of their beginnings that overlap little, to be asked for between two moments."""

    def __init__(self, tiles: Iterable[Tile[T]]) -> None:
        self.all = sorted(tiles, key=lambda tile: tile[0])
        self._begins = [began for began, _, _ in self.all]
        self._ends: list[datetime] = []
        for _, ended, _ in self.all:
            self._ends.append(max(ended, self._ends[-1]) if self._ends else ended)

    def between(self, began: datetime, ended: datetime) -> list[Tile[T]]:
        """Those that reach into a stretch, whole."""
        some = self.all[bisect_right(self._ends, began) : bisect_left(self._begins, ended)]
        return [tile for tile in some if tile[1] > began]


class Sums(Generic[T]):
    """How much of a stretch each thing has, asked of tiles that follow one another."""

    def __init__(self, tiles: Sequence[Tile[T]]) -> None:
        self._tiles, self._begins = tiles, [began for began, _, _ in tiles]
        self._before: dict[T, list[timedelta]] = {what: [] for _, _, what in tiles}
        sums = dict.fromkeys(self._before, timedelta(0))
        for began, ended, what in tiles:
            for known, row in self._before.items():
                row.append(sums[known])
            sums[what] += ended - began

    def between(self, began: datetime, ended: datetime) -> dict[T, timedelta]:
        """The length of each thing in a stretch that the tiles cover."""
        until, before = self._up_to(ended), self._up_to(began)
        return {what: until[what] - before[what] for what in until if until[what] > before[what]}

    def _up_to(self, moment: datetime) -> dict[T, timedelta]:
        at = max(0, bisect_right(self._begins, moment) - 1)
        found = {what: row[at] for what, row in self._before.items()}
        if self._tiles:
            found[self._tiles[at][2]] += moment - self._begins[at]
        return found


NO_SPANS = Spans(())
