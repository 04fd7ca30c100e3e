"""Each station's day, from its first to its last use within each day of the shop, tiled by work and waiting."""

from collections.abc import Iterator, Sequence
from datetime import datetime

from runboard.review.happened.in_the_way import READY, InTheWay
from runboard.review.happened.nouns import DayPart
from runboard.review.happened.tiles import NO_SPANS, Marked, Spans, Tile, tiled
from runboard.review.happened.trays import Waited
from runboard.review.happened.why import (
    NEEDS_UNLOADING,
    NO_PERSON,
    NOBODY_THERE,
    NOT_KNOWN,
    OUT_OF_USE,
    PUT_ASIDE,
    STOPPED,
    parts_of,
)
from runboard.review.happened.worked import Stretch, Work, Worked
from runboard.shop.hours import Span, day_bounds, local_day

# What a station does, and of it why it waits or the stretch of work.
_What = Stretch | str


class Stations:
    """The days of every station that the run used."""

    def __init__(self, work: Work, way: InTheWay, there: Spans, waits: Sequence[Waited]) -> None:
        self._work, self._way, self._there = work, way, there
        ready: dict[str, list[Span]] = {}
        for wait in waits:
            if wait.why == READY:
                ready.setdefault(wait.load.load.station, []).append((wait.began_at, wait.ended_at))
        self._ready = {station: Spans(spans) for station, spans in ready.items()}
        self._stretches: dict[str, list[Stretch]] = {}
        used = {stretch.load.load.station for stretch in work.stretches if stretch.load.run.id == work.past.run.id}
        for stretch in work.stretches:
            if stretch.load.load.station in used:
                self._stretches.setdefault(stretch.load.load.station, []).append(stretch)

    def days(self) -> Iterator[DayPart]:
        """All of them, station by station."""
        for station in sorted(self._stretches):
            layers = [Marked(layer) for layer in self._layers(station)]
            for opens, closes in self._uses(station):
                near = [layer.between(opens, closes) for layer in layers]
                for began, ended, what in tiled(opens, closes, near, NOT_KNOWN):
                    yield self._part(station, began, ended, what)

    def _uses(self, station: str) -> list[Span]:
        """From the first to the last use on each day of the shop that has one."""
        zone = self._work.past.book.time_zone
        found: list[Span] = []
        midnight: datetime | None = None
        for began, ended in Spans((one.began_at, one.ended_at) for one in self._stretches[station]).all:
            while began < ended:
                if midnight is None or began >= midnight:
                    midnight = day_bounds(local_day(began, zone), zone)[1]
                    found.append((began, began))
                until = min(ended, midnight)
                found[-1] = (found[-1][0], until)
                began = until
        return found

    def _layers(self, station: str) -> list[list[Tile[_What]]]:
        some = self._stretches[station]
        machine = [(one.began_at, one.ended_at, one) for one in some if one.kind == "machine"]
        hands = [(one.began_at, one.ended_at, one) for one in some if one.kind != "machine"]
        loads = self._work.at_station.get(station, ())
        outs = self._way.said.outs.get(station)
        out: list[Tile[_What]] = [(*span, OUT_OF_USE) for span in outs.all] if outs else []
        held: list[Tile[_What]] = [tile for load in loads for tile in self._held(load)]
        return [[*machine], [*hands], held, out, [*self._unmanned(station)], [*self._between(loads)]]

    def _unmanned(self, station: str) -> Iterator[Tile[_What]]:
        """When some tray was ready for it, whichever was taken first."""
        for began, ended in self._ready.get(station, NO_SPANS).all:
            yield from self._hands_missing(began, ended)

    def _hands_missing(self, began: datetime, ended: datetime) -> list[Tile[str]]:
        return tiled(began, ended, [self._there.as_tiles(began, ended, NO_PERSON)], NOBODY_THERE)

    def _held(self, load: Worked) -> Iterator[Tile[_What]]:
        """A load that holds its station with nobody at it: stopped, to be taken off, or put aside."""
        ran = self._way.machine_of(load).all
        layers: list[list[Tile[str]]] = [self._way.stopped(load).as_tiles(load.began_at, load.ended_at, STOPPED)]
        if ran:
            layers.append([(ran[-1][1], load.ended_at, NEEDS_UNLOADING)])
        yield from tiled(load.began_at, load.ended_at, layers, PUT_ASIDE)

    def _between(self, loads: Sequence[Worked]) -> Iterator[Tile[_What]]:
        """Why it had no load: what kept the next one off; once that one was ready, that nobody's hands were free."""
        free_since: datetime | None = None
        for load in loads:
            if free_since is not None and load.began_at > free_since:
                for began, ended, why in self._way.before(load, free_since):
                    if why != READY:
                        yield began, ended, why
                    else:
                        yield from self._hands_missing(began, ended)
            free_since = max(free_since or load.ended_at, load.ended_at)

    def _part(self, station: str, began: datetime, ended: datetime, what: _What) -> DayPart:
        if isinstance(what, str):
            why, of = parts_of(what)
            return DayPart("station", station, began, ended, "waiting", why=why, of=of)
        load = what.load
        other = "" if load.run.id == self._work.past.run.id else load.run.id
        return DayPart("station", station, began, ended, "work", what.kind, run=other, step=load.load.step,
                       load=load.load.id)  # fmt: skip
