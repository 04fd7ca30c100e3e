"""When all pieces of a tray waited, and why."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta

from runboard.review.happened.in_the_way import READY, InTheWay
from runboard.review.happened.tiles import Spans, Sums, Tile, tiled
from runboard.review.happened.why import (
    NEEDS_UNLOADING,
    NO_PERSON,
    NOBODY_THERE,
    NOT_SAID,
    OTHER_ROOM,
    PUT_ASIDE,
    STOPPED,
)
from runboard.review.happened.worked import Work, Worked
from runboard.run.fold.state import Load, Tray


@dataclass(frozen=True)
class Waited:
    """A stretch in which a tray waited before a load, or on one that nobody was at."""

    tray: str
    load: Worked
    began_at: datetime
    ended_at: datetime
    why: str

    @property
    def step(self) -> str:
        return self.load.load.step


class Trays:
    """The waits of the run's own trays, as far as the trays alone tell: ``READY`` where nothing was in the way."""

    def __init__(self, work: Work, way: InTheWay) -> None:
        self._work, self._way = work, way
        self.waits = [wait for tray in work.past.run.trays.values() for wait in self._of(tray)]

    def _of(self, tray: Tray) -> Iterator[Waited]:
        run, work = self._work.past.run, self._work
        loads = work.of_tray.get((run.id, tray.id), [])
        busy = Spans((one.began_at, one.ended_at) for load in loads for one in work.of_load.get(load.number, ()))
        since = self._way.said.came.get((run.id, tray.id), run.opened_at)
        ends = self._ends(tray, loads)
        for began, ended in busy.all:
            if since < began:
                yield from self._before(tray, loads, since, began)
            since = max(since, ended)
        if since < ends:
            yield from self._before(tray, loads, since, ends)

    def _ends(self, tray: Tray, loads: list[Worked]) -> datetime:
        """Until when a tray has pieces that are not through."""
        if tray.in_process:
            return self._work.past.until
        return max((load.ended_at for load in loads), default=self._work.opens)

    def _before(self, tray: Tray, loads: list[Worked], since: datetime, until: datetime) -> Iterator[Waited]:
        """A stretch in which nobody and no machine was at a tray: on a load that is begun, or before the next."""
        on = next((load for load in loads if load.began_at <= since and load.ended_at >= until), None)
        if on is not None:
            for began, ended, why in self._on(on, since, until):
                yield Waited(tray.id, on, began, ended, why)
            return
        next_ = next((load for load in loads if load.began_at >= until), None) or self._next(tray, until)
        if next_ is None:
            return
        for began, ended, why in self._way.before(next_, since, tray.id):
            yield Waited(tray.id, next_, began, ended, why)

    def _on(self, load: Worked, since: datetime, until: datetime) -> list[Tile[str]]:
        ran = self._way.machine_of(load).all
        layers = [self._way.stopped(load).as_tiles(since, until, STOPPED)]
        if ran:
            layers.append([(ran[-1][1], until, NEEDS_UNLOADING)])
        return tiled(since, until, layers, PUT_ASIDE)

    def _next(self, tray: Tray, until: datetime) -> Worked | None:
        """The load that a tray waits for still: of the first step at which it has pieces."""
        run = self._work.past.run
        route = run.route_of(tray)
        steps = [step for key in tray.at if (step := route.step(key)) is not None]
        step = min(steps, key=lambda step: step.index, default=None)
        if step is None:
            return None
        load = Load("", run.id, step.key, step.operation.station, "none", {tray.id: tray.at[step.key]},
                    revision=tray.revision)  # fmt: skip
        station = self._work.past.book.station(load.station)
        return Worked(-1, run, load, step, station, until, until, False)


class Presence:
    """Who was there and had nothing in hand, and where: why trays that were ready waited all the same."""

    def __init__(self, work: Work, there: Spans, free: Mapping[str, Spans]) -> None:
        self._work, self._there, self._free = work, there, free
        self._anybody = Spans(span for spans in free.values() for span in spans.all)
        self._sums: dict[str, Sums[str]] = {}

    def why(self, wait: Waited) -> Mapping[str, timedelta]:
        """A wait by its reasons, of which one that is ``READY`` may have several."""
        if wait.why != READY:
            return {wait.why: wait.ended_at - wait.began_at}
        room = wait.load.room
        if room not in self._sums:
            self._sums[room] = Sums(self._in(room))
        return self._sums[room].between(wait.began_at, wait.ended_at)

    def _in(self, room: str) -> list[Tile[str]]:
        opens, closes = self._work.opens, self._work.closes
        here = self._free.get(room)
        layers = [
            here.as_tiles(opens, closes, NOT_SAID) if here else [],
            self._anybody.as_tiles(opens, closes, OTHER_ROOM),
            self._there.as_tiles(opens, closes, NO_PERSON),
        ]
        return tiled(opens, closes, layers, NOBODY_THERE)
