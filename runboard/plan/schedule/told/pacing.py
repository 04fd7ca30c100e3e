"""Takt against pace: how often a piece of each run is needed, and how often each station, and people, can give one.

Hours are those in which somebody is there. What a machine does alone beyond them is not reckoned with, so a station is
never said to be faster than it is. Spans are ticks.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from runboard.plan.pace import takt_time
from runboard.plan.schedule.problem.hours import common, everybody, joined, open_spans, open_ticks
from runboard.plan.schedule.problem.nouns import Order, Placed, Plan, Problem, Span
from runboard.plan.schedule.problem.people import Doing, cliques, ticks_of
from runboard.plan.schedule.problem.worth import there_at
from runboard.plan.schedule.told.effort import finish_of


@dataclass(frozen=True)
class Pace:
    """``each`` is what one piece still to make takes of a station or of people, ``takt`` how much there is of it for each
    piece that is wanted. ``stations`` are the station, or those that somebody must stay at."""

    stations: tuple[int, ...]
    each: Fraction
    takt: Fraction

    @property
    def is_too_slow(self) -> bool:
        return self.each > self.takt

    @property
    def tightness(self) -> tuple[bool, Fraction]:
        """What is larger is the sooner too slow."""
        return not self.takt, self.each / (self.takt or 1)


@dataclass(frozen=True)
class RunPace:
    """One run: ``wanted`` pieces by the tick ``until``, which is the order line's that asks most, or where none has a due
    moment the plan's finish (``is_due`` is False). In the plan they are there at ``there``; None where it makes fewer.
    ``people`` is what no two of can be done by one person at once; ``by_station`` has the tightest first."""

    run: str
    wanted: int
    until: int
    is_due: bool
    there: int | None
    people: Pace
    by_station: tuple[Pace, ...]

    @property
    def is_held_by_people(self) -> bool:
        """Whether people's time is tighter than any station's."""
        return self.people.tightness >= self.by_station[0].tightness

    @property
    def is_late_all_the_same(self) -> bool:
        """Whether the plan is too late for that order line though neither a station nor people are too slow for it."""
        is_late = self.is_due and (self.there is None or self.there > self.until)
        return is_late and not self.by_station[0].is_too_slow and not self.people.is_too_slow


def run_paces(problem: Problem, plan: Plan) -> list[RunPace]:
    """Every run of which the plan makes pieces."""
    runs = dict.fromkeys(block.run for block in problem.blocks if block.last and block.pieces)
    return [pace for run in runs if (pace := _of_run(problem, plan, run)).by_station]


def _of_run(problem: Problem, plan: Plan, run: str) -> RunPace:
    pieces = sum(block.pieces for block in problem.blocks if block.last and block.run == run)
    order = _asks_most(problem, run) or Order(run, "", pieces, pieces)
    until = finish_of(problem, plan, run) if order.due is None else order.due
    there = there_at(problem, [plan.end(problem, at) for at in range(len(problem.blocks))], order)
    mine = [placed for placed in plan.placed if problem.blocks[placed.block].run == run]
    others = [placed for placed in plan.placed if problem.blocks[placed.block].run != run]
    made = _Made(problem, mine, others, pieces, order.by_then, until)
    by_station = sorted(made.stations(), key=lambda one: one.tightness, reverse=True)
    return RunPace(run, order.by_then, until, order.due is not None, there, made.people(), tuple(by_station))


def _asks_most(problem: Problem, run: str) -> Order | None:
    """The order line with the shortest takt; None where no line has a due moment."""
    hours = {one: Fraction(open_ticks(problem, one.due)) for one in problem.orders
             if one.run == run and one.by_then > 0 and one.due is not None}  # fmt: skip
    return min(hours, key=lambda one: takt_time(hours[one], one.by_then), default=None)


@dataclass(frozen=True)
class _Made:
    """What the blocks of one run take, and what those of the others leave until then."""

    problem: Problem
    mine: list[Placed]
    others: list[Placed]
    pieces: int
    wanted: int
    until: int

    def stations(self) -> Iterator[Pace]:
        there = common(open_spans(self.problem), ((0, self.until),) if self.until > 0 else ())
        for at, station in enumerate(self.problem.stations):
            work = sum(_ticks([_span(self.problem, one)]) for one in self._at(self.mine, at))
            if work:
                could = common(there, joined(station.runs))
                taken = common(could, joined(_span(self.problem, one) for one in self._at(self.others, at)))
                yield self._pace((at,), work, _ticks(could) - _ticks(taken))

    def people(self) -> Pace:
        """Of all that one person does one at a time: the most. What others take of it is theirs."""
        hours = everybody(self.problem).between(0, max(0, self.until))
        others = [one for one in self.others if _span(self.problem, one)[1] <= self.until]
        rows = cliques(self.problem) or [frozenset[Doing]()]
        found = [(self._of(row, self.mine), max(0, hours - self._of(row, others)), row) for row in rows]
        paces = [self._pace(self._stayed_at(row), work, left) for work, left, row in found]
        return max(paces, key=lambda one: one.tightness)

    def _stayed_at(self, row: frozenset[Doing]) -> tuple[int, ...]:
        ours = {self.problem.blocks[one.block].station for one in self.mine}
        return tuple(sorted(station for station, kind in row if kind == "watched" and station in ours))

    def _of(self, row: frozenset[Doing], some: Iterable[Placed]) -> int:
        return sum(_asked(self.problem, one, row) for one in some)

    def _at(self, some: Iterable[Placed], station: int) -> list[Placed]:
        return [one for one in some if self.problem.blocks[one.block].station == station]

    def _pace(self, stations: tuple[int, ...], work: int, hours: int) -> Pace:
        return Pace(stations, Fraction(work, self.pieces), takt_time(Fraction(hours), self.wanted))


def _asked(problem: Problem, placed: Placed, row: frozenset[Doing]) -> int:
    at_setup = (problem.blocks[placed.block].station, "hands-on") in row
    return ticks_of(problem, placed.block, row) + (placed.setup if at_setup else 0)


def _span(problem: Problem, placed: Placed) -> Span:
    return placed.start, placed.begins() + problem.blocks[placed.block].length


def _ticks(spans: Iterable[Span]) -> int:
    return sum(end - start for start, end in spans)
