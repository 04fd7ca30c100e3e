"""What a plan asks: hours of hands and of presence, evenings, walks, each station's load."""

from collections.abc import Iterable
from dataclasses import dataclass

from runboard.plan.schedule.problem.hours import common, joined, open_spans
from runboard.plan.schedule.problem.nouns import Plan, Problem, Span
from runboard.plan.schedule.problem.people import hands_of, walks_of, work_of


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
        return ticks(self.sessions)


@dataclass(frozen=True)
class StationLoad:
    """Ticks in which a station works; ``hours`` are those in which it could have worked before the plan's finish: somebody
    there, and no quiet hours."""

    station: int
    works: int
    hours: int

    @property
    def share(self) -> float:
        return self.works / self.hours if self.hours else 0.0


def hands_ticks(problem: Problem, plan: Plan, run: str = "") -> int:
    """Hands-on ticks, of one run where it is named, summed over the people."""
    return sum(at.end - at.start for at in hands_of(problem, plan) if _is_of(problem, at.block, run))


def finish_of(problem: Problem, plan: Plan, run: str = "") -> int:
    """The tick at which all of a run is done, or all there is: 0 where nothing is left."""
    return max((plan.end(problem, at) for at in range(len(problem.blocks)) if _is_of(problem, at, run)), default=0)


def person_loads(problem: Problem, plan: Plan, run: str = "") -> list[PersonLoad]:
    """What is asked of each person, by one run where it is named, whether or not anything is."""
    return [_person(problem, plan, at, run) for at in range(len(problem.people))]


def _person(problem: Problem, plan: Plan, person: int, run: str) -> PersonLoad:
    work = [at for at in work_of(problem, plan, person) if _is_of(problem, at.block, run)]
    watching = sum(at.end - at.start for at in work if at.kind == "watching")
    hands = sum(at.end - at.start for at in work) - watching
    windows = joined(problem.people[person].windows)
    inside = [[at for at in work if opens <= at.start < closes] for opens, closes in windows]
    sessions = tuple((some[0].start, max(at.end for at in some)) for some in inside if some)
    walks = sum(_is_of(problem, walk.block, run) for walk in walks_of(problem, plan, person))
    return PersonLoad(person, hands, watching, walks, sessions)


def works(problem: Problem, plan: Plan, station: int, run: str = "") -> tuple[Span, ...]:
    """The spans in which hands or the machine are at work at a station, for one run where it is named."""
    mine = [block for block in problem.blocks if block.station == station and _is_of(problem, block.index, run)]
    return joined((plan.placed[block.index].start, plan.end(problem, block.index)) for block in mine)


def station_loads(problem: Problem, plan: Plan) -> list[StationLoad]:
    """The load of each station that has something to do, the busiest first."""
    finish, there = plan.finish(problem), open_spans(problem)
    found = []
    for at, station in enumerate(problem.stations):
        if worked := ticks(works(problem, plan, at)):
            could = common(common(there, joined(station.runs)), ((0, finish),))
            found.append(StationLoad(at, worked, max(ticks(could), worked)))
    return sorted(found, key=lambda at: (-at.share, -at.works))


def ticks(spans: Iterable[Span]) -> int:
    """How long some spans are, all together."""
    return sum(end - start for start, end in spans)


def _is_of(problem: Problem, block: int, run: str) -> bool:
    return not run or problem.blocks[block].run == run
