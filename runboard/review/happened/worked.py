"""Every load that was worked on in a run's days, of whatever run: what hands and machines did at it, and what it held."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from functools import cached_property

from runboard.review.hours import HANDS
from runboard.review.past import Past
from runboard.run.fold.route import Step
from runboard.run.fold.state import Load, RunState
from runboard.shop.book import Station

WORK = (*HANDS, "machine")


@dataclass(frozen=True)
class Stretch:
    """A stretch of somebody's hands or of a machine on a load."""

    load: "Worked"
    kind: str
    person: str
    began_at: datetime
    ended_at: datetime


@dataclass(frozen=True)
class Worked:
    """A load as it went: it held its station from ``began_at`` until ``ended_at``, which is the end of the time looked at
    where it is not through (``is_over``). ``number`` tells it from all others."""

    number: int
    run: RunState
    load: Load
    step: Step | None
    station: Station | None
    began_at: datetime
    ended_at: datetime
    is_over: bool

    @property
    def room(self) -> str:
        return self.station.room if self.station else ""

    @property
    def trays(self) -> list[str]:
        """The run's own trays that it holds."""
        return [tray for tray in self.load.pieces if tray in self.run.trays]


class Work:
    """All loads of the runs that were open in a run's days, with their stretches, cut to these days."""

    def __init__(self, past: Past) -> None:
        self.past = past
        self.opens, self.closes = past.days[0], min(past.days[1], past.now)
        self.loads = [
            worked
            for number, (run, load) in enumerate(_loads(past))
            if (worked := self._worked(number, run, load)) is not None
        ]
        self.by_id = {(worked.run.id, worked.load.id): worked for worked in self.loads}

    def _worked(self, number: int, run: RunState, load: Load) -> Worked | None:
        begins = [span.began_at for span in load.spans]
        over = load.id in run.past
        ends = [span.ended_at or self.closes for span in load.spans]
        if over and load.done_at is not None:
            begins, ends = begins or [load.done_at], [*ends, load.done_at]
        began = min(begins, default=load.started_at)
        if began is None:
            return None
        if began > self.closes:
            return None
        # What was through before these days may lie on the rack in them.
        ended = min(max(ends, default=self.closes), self.closes) if over else self.closes
        station = self.past.book.station(load.station)
        return Worked(number, run, load, run.step_of(load), station, began, max(began, ended), over)

    @cached_property
    def stretches(self) -> list[Stretch]:
        """What hands and machines did, by beginning. Of the run itself setup is told from loading."""
        found = [*self._own(), *self._others()]
        cut = (self._cut(stretch) for stretch in found)
        return sorted((s for s in cut if s.began_at < s.ended_at), key=lambda s: (s.began_at, s.load.number))

    def _own(self) -> Iterator[Stretch]:
        for one in self.past.elements:
            worked = self.by_id.get((self.past.run.id, one.load))
            if worked is not None and one.kind in WORK and one.began_at is not None:
                yield Stretch(worked, one.kind, one.person, one.began_at, one.ended_at or self.closes)

    def _others(self) -> Iterator[Stretch]:
        for worked in self.loads:
            if worked.run.id != self.past.run.id:
                for span in worked.load.spans:
                    yield Stretch(worked, span.kind, span.person, span.began_at, span.ended_at or self.closes)

    def _cut(self, stretch: Stretch) -> Stretch:
        began, ended = max(stretch.began_at, self.opens), min(stretch.ended_at, self.closes)
        return Stretch(stretch.load, stretch.kind, stretch.person, began, ended)

    @cached_property
    def of_load(self) -> Mapping[int, list[Stretch]]:
        """The stretches of each load by its number."""
        found: dict[int, list[Stretch]] = {}
        for stretch in self.stretches:
            found.setdefault(stretch.load.number, []).append(stretch)
        return found

    @cached_property
    def at_station(self) -> Mapping[str, list[Worked]]:
        """The loads of each station, by beginning."""
        found: dict[str, list[Worked]] = {}
        for worked in sorted(self.loads, key=lambda worked: (worked.began_at, worked.number)):
            found.setdefault(worked.load.station, []).append(worked)
        return found

    @cached_property
    def of_tray(self) -> Mapping[tuple[str, str], list[Worked]]:
        """The loads that each tray (run, tray) was in, by beginning."""
        found: dict[tuple[str, str], list[Worked]] = {}
        for worked in sorted(self.loads, key=lambda worked: (worked.began_at, worked.number)):
            for tray in worked.trays:
                found.setdefault((worked.run.id, tray), []).append(worked)
        return found


def _loads(past: Past) -> Iterator[tuple[RunState, Load]]:
    runs = {**past.state.runs, past.run.id: past.run}
    return ((run, load) for run in runs.values() for load in (*run.past.values(), *run.loads.values()))
