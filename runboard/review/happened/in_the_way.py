"""What kept a load from being begun before it was: its pieces, a wait, something out or held, its station, what is shared.

Each moment has one reason, the first in this order that holds then. What none holds of, the load was ready.
"""

from collections.abc import Iterator
from datetime import datetime

from runboard.review.happened.said import Said
from runboard.review.happened.shared import Shared
from runboard.review.happened.tiles import NO_SPANS, Marked, Spans, Tile, tiled
from runboard.review.happened.why import (
    AIR,
    DRYING,
    FIRST_PIECE,
    HELD,
    MACHINE,
    NO_LOAD,
    OTHER_TRAYS,
    OUT_OF_USE,
    QUIET,
    RESTING,
    SERVICE_TAKEN,
    STATION_TAKEN,
    SUPPLY,
    because_of,
)
from runboard.review.happened.worked import Work, Worked
from runboard.run.rules.resting import DRIES
from runboard.shop.hours import open_windows

READY = ""
_Layer = list[Tile[str]]


class InTheWay:
    """Asked of a load and a moment since when; ``tray`` asks for one tray's sake, which had arrived by then itself."""

    def __init__(self, work: Work) -> None:
        self.work, self.said = work, Said(work.past.events, work.closes)
        self.shared = Shared(work)
        self._machines = {
            number: Spans((one.began_at, one.ended_at) for one in some if one.kind == "machine")
            for number, some in work.of_load.items()
        }
        self._holds = {
            station: Marked((worked.began_at, worked.ended_at, worked) for worked in some)
            for station, some in work.at_station.items()
        }

    def before(self, worked: Worked, since: datetime, tray: str = "") -> list[Tile[str]]:
        """From ``since`` until the load was begun."""
        until = min(worked.began_at, self.work.closes)
        if since >= until:
            return []
        layers = [
            *self._pieces(worked, since, until, tray),
            self._rests(worked),
            *self._kept_off(worked, since, until),
            *self._at_its_station(worked, since, until, tray),
            *(
                taken.as_tiles(since, until, because_of(SERVICE_TAKEN, service))
                for service, taken in self.shared.taken(worked)
            ),
            [tile for off in self.shared.off_air(worked) for tile in off.as_tiles(since, until, AIR)],
        ]
        return tiled(since, until, layers, READY)

    def machine_of(self, worked: Worked) -> Spans:
        """When a load's machine ran."""
        return self._machines.get(worked.number, NO_SPANS)

    def stopped(self, worked: Worked) -> Spans:
        """When a load had stopped early and nobody had said what to do with it."""
        return self.said.stopped.get((worked.run.id, worked.load.id), NO_SPANS)

    def came_at(self, worked: Worked, tray: str) -> datetime:
        """When a tray came into its run."""
        return self.said.came.get((worked.run.id, tray), worked.run.opened_at)

    def _pieces(self, worked: Worked, since: datetime, until: datetime, tray: str) -> Iterator[_Layer]:
        others = [other for other in worked.trays if other != tray]
        before = [one for other in others if (one := self._load_before(worked, other)) is not None]
        last = max(before, key=lambda one: one.ended_at, default=None)
        came = max((self.came_at(worked, other) for other in others), default=since)
        there = max(came, last.ended_at) if last is not None else came
        if there <= since:
            return
        if last is not None and not tray:
            yield self.machine_of(last).as_tiles(since, until, MACHINE)
        yield [(since, there, OTHER_TRAYS if tray else NO_LOAD)]

    def _load_before(self, worked: Worked, tray: str) -> Worked | None:
        """The last load of a tray that was through before this one at the nearest step before: the other half of a tray may
        be further back."""
        if worked.step is None:
            return None
        before = worked.step.index
        some = [
            (one.step.index, one)
            for one in self.work.of_tray.get((worked.run.id, tray), ())
            if one.step is not None and one.step.index < before and one.is_over and one.ended_at <= worked.began_at
        ]
        return max(some, key=lambda found: (found[0], found[1].ended_at))[1] if some else None

    def _rests(self, worked: Worked) -> _Layer:
        found: _Layer = []
        for tray in worked.trays:
            route = worked.run.route_at(worked.run.revision_of(worked.load))
            for key, rest in worked.run.trays[tray].rests.items():
                step = route.step(key)
                if step is None or worked.step is None or step.index >= worked.step.index:
                    continue
                # A wait that was over, or ended, before another load of the tray was begun kept off that one.
                ended = worked.began_at if rest.ended_at is None else rest.ended_at
                found.append((rest.began_at, min(rest.ready_at, ended), DRYING if rest.why in DRIES else RESTING))
        return found

    def _kept_off(self, worked: Worked, since: datetime, until: datetime) -> Iterator[_Layer]:
        said, run, station = self.said, worked.run.id, worked.station
        for tray in worked.trays:
            yield _tiles(said.held.get((run, tray)), since, until, HELD)
        yield _tiles(said.failed.get((run, worked.load.step)), since, until, FIRST_PIECE)
        for use in worked.step.operation.uses if worked.step else ():
            yield _tiles(said.supplies.get((run, use.supply)), since, until, SUPPLY)
        yield _tiles(said.outs.get(worked.load.station), since, until, OUT_OF_USE)
        if station is not None and station.quiet:
            quiet = open_windows(station.quiet, self.work.past.book.time_zone, since, until)
            yield [(began, ended, QUIET) for began, ended in quiet]

    def _at_its_station(self, worked: Worked, since: datetime, until: datetime, tray: str) -> Iterator[_Layer]:
        held = self._holds.get(worked.load.station)
        there = [tile for tile in held.between(since, until) if tile[2] is not worked] if held else []
        if not tray:
            yield [tile for _, _, one in there for tile in self.machine_of(one).as_tiles(since, until, MACHINE)]
        yield [(began, ended, STATION_TAKEN) for began, ended, _ in there]


def _tiles(spans: Spans | None, since: datetime, until: datetime, why: str) -> _Layer:
    return spans.as_tiles(since, until, why) if spans is not None else []
