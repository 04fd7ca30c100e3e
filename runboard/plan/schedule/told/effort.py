"""What a plan asks: hours of hands and of presence, evenings, walks, each station's load."""

from dataclasses import dataclass

from runboard.plan.schedule.problem.hours import common, joined, open_spans
from runboard.plan.schedule.problem.nouns import Plan, Problem, Span
from runboard.plan.schedule.problem.people import hands_of, walks_of, watching_of, work_of


@dataclass(frozen=True)
class PersonLoad:
    """Ticks of one person. ``presence`` is from the first to the last thing of each of their ``sessions``, which are
    windows in which there is something to do, cut to that. A walk is of the run whose work it leads to."""

    person: int
    hands: int
    watching: int
    walks: int
    sessions: tuple[Span, ...]

    @property
    def presence(self) -> int:
        return sum(end - start for start, end in self.sessions)


@dataclass(frozen=True)
class StationLoad:
    """Ticks in which a station works, and in which it only holds an ended load; ``hours`` are those in which it could
    have worked before the plan's finish: somebody there, and no quiet hours."""

    station: int
    works: int
    held: int
    hours: int

    @property
    def share(self) -> float:
        return self.works / self.hours if self.hours else 0.0


def hands_ticks(problem: Problem, plan: Plan, run: str = "") -> int:
    """Hands-on ticks, of one run where it is named, summed over the people."""
    return sum(one.end - one.start for one in hands_of(problem, plan) if _is_of(problem, one.block, run))


def finish_of(problem: Problem, plan: Plan, run: str = "") -> int:
    """The tick at which all of a run is done, or all there is: 0 where nothing is left."""
    return max((plan.end(problem, at) for at in range(len(problem.blocks)) if _is_of(problem, at, run)), default=0)


def person_loads(problem: Problem, plan: Plan, run: str = "") -> list[PersonLoad]:
    """What is asked of each person, by one run where it is named, whether or not anything is."""
    return [_person(problem, plan, at, run) for at in range(len(problem.people))]


def _person(problem: Problem, plan: Plan, person: int, run: str) -> PersonLoad:
    work = [one for one in work_of(problem, plan, person) if _is_of(problem, one.block, run)]
    by_kind = {"watching": 0, "hands": 0}
    for one in work:
        by_kind["watching" if one.kind == "watching" else "hands"] += one.end - one.start
    sessions = []
    for opens, closes in joined(problem.people[person].windows):
        inside = [one for one in work if opens <= one.start < closes]
        if inside:
            sessions.append((min(one.start for one in inside), max(one.end for one in inside)))
    walks = sum(_is_of(problem, walk.block, run) for walk in walks_of(problem, plan, person))
    return PersonLoad(person, by_kind["hands"], by_kind["watching"], walks, tuple(sessions))


def holds(problem: Problem, plan: Plan, station: int) -> tuple[Span, ...]:
    """The spans in which a station is held: at work, or by an ended load until it is unloaded."""
    found = []
    for placed in plan.placed:
        block = problem.blocks[placed.block]
        if block.station == station:
            after = problem.unloaded_by.get(block.index)
            ends = plan.end(problem, block.index) if after is None else plan.placed[after].start
            found.append((placed.start, max(ends, plan.end(problem, block.index))))
    return joined(found)


def works(problem: Problem, plan: Plan, station: int) -> tuple[Span, ...]:
    """The spans in which hands or the machine are at work at a station."""
    return joined(
        (placed.start, plan.end(problem, placed.block))
        for placed in plan.placed
        if problem.blocks[placed.block].station == station
    )


def station_loads(problem: Problem, plan: Plan) -> list[StationLoad]:
    """The load of each station that has something to do, the busiest first."""
    finish, there = plan.finish(problem), open_spans(problem)
    found = []
    for at, station in enumerate(problem.stations):
        worked = works(problem, plan, at)
        if not worked:
            continue
        could = common(common(there, joined(station.runs)), ((0, finish),) if finish else ())
        hours = max(_sum(could), _sum(worked))
        found.append(StationLoad(at, _sum(worked), _sum(holds(problem, plan, at)) - _sum(worked), hours))
    return sorted(found, key=lambda one: (-one.share, -one.works))


def watched_ticks(problem: Problem, plan: Plan) -> int:
    """Ticks of watching, summed over the people."""
    return sum(one.end - one.start for one in watching_of(problem, plan))


def _sum(spans: tuple[Span, ...]) -> int:
    return sum(end - start for start, end in spans)


def _is_of(problem: Problem, block: int, run: str) -> bool:
    return not run or problem.blocks[block].run == run
