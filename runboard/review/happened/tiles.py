"""Spans laid over one another so that each moment has one thing, and spans found again by where they lie."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from datetime import datetime
from heapq import heappop, heappush
from itertools import pairwise
from typing import Generic, TypeVar

from runboard.shop.hours import Span, without

T = TypeVar("T")
Tile = tuple[datetime, datetime, T]


def tiled(opens: datetime, closes: datetime, layers: Iterable[Iterable[Tile[T]]], rest: T) -> list[Tile[T]]:
    """All from ``opens`` to ``closes`` without gap or overlap: at each moment what the first layer says that says anything,
    of two of one layer what began last; ``rest`` where none does."""
    some = [
        (max(began, opens), min(ended, closes), rank, what)
        for rank, layer in enumerate(layers)
        for began, ended, what in layer
        if began < closes and ended > opens and began < ended
    ]
    some.sort(key=lambda tile: tile[0])
    turns = sorted({opens, closes, *(tile[0] for tile in some), *(tile[1] for tile in some)})
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
        self.all = without(spans, ())
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
