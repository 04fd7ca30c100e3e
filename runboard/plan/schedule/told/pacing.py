"""How fast a plan goes: takt against pace, what a machine's hands would do for, and trays in work.

Spans are ticks of the hours in which somebody is there: what a machine does alone beyond them is not reckoned with, so a
station is never said to be faster than it is, and a night in which oil dries is no longer than the work around it.
"""

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from fractions import Fraction

from runboard.plan.pace import PersonMachine, takt_time
from runboard.plan.schedule.problem.hours import Presence, common, everybody, joined, open_spans, open_ticks
from runboard.plan.schedule.problem.nouns import Block, OrderDue, Plan, Problem, Span
from runboard.plan.schedule.problem.people import Doing, cliques, ticks_of
from runboard.plan.schedule.problem.worth import there_at
from runboard.plan.schedule.told.effort import finish_of, ticks, works


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
    paces = (_of_run(problem, plan, run) for run, made in problem.last.items() if any(pieces for _, pieces in made))
    return [pace for pace in paces if pace.by_station]


def _of_run(problem: Problem, plan: Plan, run: str) -> RunPace:
    pieces = sum(pieces for _, pieces in problem.last[run])
    order = _asks_most(problem, run) or OrderDue(run, "", pieces, pieces)
    until = finish_of(problem, plan, run) if order.due is None else order.due

    def pace(stations: tuple[int, ...], work: int, left: int) -> Pace:
        return Pace(stations, Fraction(work, pieces), takt_time(Fraction(max(0, left)), order.by_then))

    there = there_at(problem, [plan.end(problem, at) for at in range(len(problem.blocks))], order)
    stations = [pace(*station) for station in _stations(problem, plan, run, until)]
    by_station = tuple(sorted(stations, key=lambda pace: pace.tightness, reverse=True))
    people = max((pace(*person) for person in _people(problem, plan, run, until)), key=lambda pace: pace.tightness)
    return RunPace(run, order.by_then, until, order.due is not None, there, people, by_station)


def _asks_most(problem: Problem, run: str) -> OrderDue | None:
    """The order line with the shortest takt; None where no line has a due moment."""
    hours = {order: Fraction(open_ticks(problem, order.due)) for order in problem.orders
             if order.run == run and order.by_then > 0 and order.due is not None}  # fmt: skip
    return min(hours, key=lambda order: takt_time(hours[order], order.by_then), default=None)


def _stations(problem: Problem, plan: Plan, run: str, until: int) -> Iterator[tuple[tuple[int, ...], int, int]]:
    """(station, what the run takes of it, what the others leave of its hours until then)."""
    there = common(open_spans(problem), ((0, until),) if until > 0 else ())
    for at, station in enumerate(problem.stations):
        mine, could = works(problem, plan, at, run), common(there, joined(station.runs))
        if mine:
            others = ticks(common(could, works(problem, plan, at))) - ticks(common(could, mine))
            yield (at,), ticks(mine), ticks(could) - others


def _people(problem: Problem, plan: Plan, run: str, until: int) -> Iterator[tuple[tuple[int, ...], int, int]]:
    """The same of each set of what one person does one at a time; ``stations`` are those that somebody must stay at."""
    hours, ours = everybody(problem).between(0, until), {block.station for block in problem.blocks if block.run == run}
    for row in cliques(problem) or [frozenset[Doing]()]:
        work, others = 0, 0
        for placed in plan.placed:
            block = problem.blocks[placed.block]
            asked = ticks_of(problem, block.index, row) + placed.setup * ((block.station, "hands-on") in row)
            work += asked * (block.run == run)
            others += asked * (block.run != run and plan.end(problem, block.index) <= until)
        stayed_at = {station for station, kind in row if kind == "watched"} & ours
        yield tuple(sorted(stayed_at)), work, hours - others


# machines


def machines_served(problem: Problem) -> dict[int, PersonMachine[Fraction]]:
    """For each station with a machine and loads still to be begun, the average load as the person-and-machine chart sees
    it: nothing counts but hands. Who must stay and watch, and in which room, is not in it."""
    found = {}
    for at in range(len(problem.stations)):
        loads = [block for block in problem.blocks if block.station == at and not block.begun and _machine(block)]
        unloads = [
            problem.blocks[problem.unloaded_by[block.index]] for block in loads if block.index in problem.unloaded_by
        ]
        if hands := sum(block.hands for block in (*loads, *unloads)):
            a_load = Fraction(hands, len(loads)), Fraction(0), Fraction(sum(map(_machine, loads)), len(loads))
            found[at] = PersonMachine(*a_load)
    return found


def _machine(block: Block) -> int:
    return sum(stretch.length for stretch in block.stretches if stretch.kind == "machine")


# trays


@dataclass(frozen=True)
class InWork:
    """Trays between their first step and their last: how many until the last is done, and the hours until then; how many
    there are on ``average`` at any of these, how many come off in a tick (``rate``), and the ticks that each takes
    (``time_through``). By Little's law the first is the product of the others; each is counted by itself."""

    trays: int
    hours: int
    average: Fraction
    rate: Fraction
    time_through: Fraction


def trays_in_work(problem: Problem, plan: Plan, begun: Collection[tuple[str, str]] = ()) -> InWork | None:
    """How many trays are in work until the last of them is done; ``begun`` are those (run, tray) that are already. None
    where nothing is left, or nobody is there meanwhile."""
    spans: dict[tuple[str, str], Span] = {}
    for placed in plan.placed:
        block, start, end = problem.blocks[placed.block], placed.start, plan.end(problem, placed.block)
        for key in ((block.run, tray) for tray in block.trays):
            first, last = spans.get(key, (0 if key in begun else start, end))
            spans[key] = (min(first, start), max(last, end))
    there = Presence.of([open_spans(problem)])
    hours = there.passed(max((end for _, end in spans.values()), default=0))
    if not hours:
        return None
    at_once, through = (
        Presence.of([span] for span in spans.values()),
        sum(there.between(*span) for span in spans.values()),
    )
    area = sum(at_once.between(opens, closes) for opens, closes in open_spans(problem))
    many = len(spans)
    return InWork(many, hours, Fraction(area, hours), Fraction(many, hours), Fraction(through, many))
