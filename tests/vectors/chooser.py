"""Somebody at a moment in a state, who chooses by chance: mostly what is possible, sometimes what is not."""

from collections.abc import Callable, Sequence
from datetime import datetime, timedelta
from random import Random
from typing import Any

from runboard.run.fold.state import Load, RunState, ShopState, Tray
from runboard.run.log.event import write_moment
from runboard.shop.book import Book

Press = tuple[str, dict[str, Any], dict[str, Any]]
WHY = ("tear-out", "knot", "burnt")


class Chooser:
    """Somebody at a moment in a state. ``wild`` is the share of presses that need not make sense."""

    def __init__(self, state: ShopState, book: Book, random: Random, now: datetime, wild: float = 0.1) -> None:
        self.state, self.book, self.random, self.now, self.wild = state, book, random, now, wild

    def choose(self, makers: "Sequence[tuple[Maker, int]]") -> Press:
        """A press that one of the makers makes; each has its weight."""
        weighed = [one for one, weight in makers for _ in range(weight)]
        while True:
            press = self.random.choice(weighed)(self)
            if press is not None:
                return press

    # what there is

    def is_wild(self) -> bool:
        return self.random.random() < self.wild

    def one(self, some: Any) -> Any:
        return self.random.choice(list(some))

    def in_minutes(self, minutes: float) -> str:
        return write_moment(self.now + timedelta(minutes=minutes))

    def run(self) -> RunState | None:
        runs = [run for run in self.state.runs.values() if run.state == "open" or self.is_wild()]
        return self.one(runs) if runs else None

    def tray(self, run: RunState) -> Tray:
        return self.one(run.trays.values())

    def load(self, *states: str) -> Load | None:
        """An open load in one of these states; any where the press is a wild one."""
        loads = [load for run in self.state.runs.values() if run.state == "open" for load in run.loads.values()]
        fit = [load for load in loads if load.state in states]
        return self.one(fit or loads) if fit or (loads and self.is_wild()) else None

    def is_station_free(self, key: str) -> bool:
        station = self.state.stations.get(key)
        return station is None or (station.load is None and station.out is None) or self.is_wild()

    def counted(self, there: int) -> dict[str, Any]:
        """A count of ``there`` pieces: mostly all good."""
        scrap = min(there, 1) if self.random.random() < 0.3 else 0
        short = 1 if self.random.random() < 0.1 else 0
        over = 3 if self.is_wild() and self.is_wild() else 0
        found: dict[str, Any] = {"good": max(0, there - scrap - short) + over}
        if scrap:
            found["scrap"] = [{"pieces": scrap, "why": self.one(WHY), "positions": [self.one((1, 2, 3))]}]
        return found


Maker = Callable[[Chooser], Press | None]


def about(load: Load) -> dict[str, Any]:
    return {"run": load.run, "load": load.id, "operation": load.step, "station": load.station}


def free_pieces(it: Chooser, run: RunState) -> list[tuple[Tray, Any, int]]:
    """(tray, step, free pieces) wherever pieces of a run wait for somebody."""
    found = []
    for tray in run.trays.values():
        for step in run.route_of(tray).steps:
            if tray.free(step.key):
                found.append((tray, step, tray.free(step.key)))
    return found
