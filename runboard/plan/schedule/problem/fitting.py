"""Whether work fits into the hours of a shop at all, whatever else there is to do."""

from collections import defaultdict
from collections.abc import Hashable, Iterable, Sequence
from dataclasses import replace
from datetime import datetime

from runboard.plan.schedule.problem.hours import starts_of
from runboard.plan.schedule.problem.nouns import Block, Problem, Span, Station, Stretch, Worker

# Two weeks of ticks: what fits into no hours that begin before is looked for in all of them.
_SOON = 14 * 24 * 60 * 2


class Fitting:
    """The hours of stations and people, asked about block by block; equal questions are answered once."""

    def __init__(self, now: datetime, stations: tuple[Station, ...], people: tuple[Worker, ...]) -> None:
        self.stations, self.people = stations, people
        whole = Problem(now, stations, people, (), (), (), ())
        self._hours = (_soon(whole), whole)
        self._longest: dict[tuple[int, ...], int] = {}
        self._fits: dict[Hashable, bool] = {}

    def longest_hours(self, people: tuple[int, ...]) -> int:
        """The longest window, in ticks, that any of some people has."""
        if people not in self._longest:
            windows = (window for one in people for window in self.people[one].windows)
            self._longest[people] = max((closes - opens for opens, closes in windows), default=0)
        return self._longest[people]

    def longest_run(self, station: int) -> int:
        """The ticks for which a station may run without a break, at most."""
        return max((closes - opens for opens, closes in self.stations[station].runs), default=0)

    def fits(self, block: Block) -> bool:
        """Whether a block can begin at any tick, its release aside."""
        key = (block.station, block.people, block.stretches)
        if key not in self._fits:
            self._fits[key] = any(starts_of(hours, replace(block, release=0)) for hours in self._hours)
        return self._fits[key]

    def with_setup(self, block: Block) -> Block:
        """The block with its setup as its first stretch."""
        later = (replace(one, offset=one.offset + block.setup) for one in block.stretches)
        return replace(block, stretches=(Stretch("setup", 0, block.setup, "hands-on"), *later))

    def families(self, blocks: Iterable[Block]) -> Sequence[Sequence[Block]]:
        """Blocks of one station and family of which the first has to be set up for: its station stands on another."""
        found: dict[tuple[int, str], list[Block]] = defaultdict(list)
        for block in blocks:
            if block.family and block.unloads is None and block.family != self.stations[block.station].stands_on:
                found[block.station, block.family].append(block)
        return [some for some in found.values() if all(one.setup and not one.begun for one in some)]


def _soon(problem: Problem) -> Problem:
    people = tuple(replace(one, windows=_early(one.windows)) for one in problem.people)
    stations = tuple(replace(one, runs=_early(one.runs)) for one in problem.stations)
    return replace(problem, people=people, stations=stations)


def _early(spans: tuple[Span, ...]) -> tuple[Span, ...]:
    return tuple(span for span in spans if span[0] < _SOON)
