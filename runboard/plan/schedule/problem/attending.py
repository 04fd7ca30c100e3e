"""What each person is at in a plan: hands, watching, and the walks between rooms."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from runboard.plan.schedule.problem.nouns import Placed, Plan, Problem, Span
from runboard.plan.schedule.problem.presence import joined


@dataclass(frozen=True)
class At:
    """A person at one thing: ``kind`` is setup, watching, or the kind of the stretch that their hands are at."""

    start: int
    end: int
    kind: str
    person: int
    block: int
    station: int


@dataclass(frozen=True)
class Walk:
    """From room to room, just in time for what is next there: ``block``."""

    start: int
    end: int
    person: int
    room: int
    block: int


def hands_of(problem: Problem, plan: Plan) -> list[At]:
    """All that hands are at, setups too, in the order of the blocks."""
    return [at for placed in plan.placed for at in _hands(problem, placed)]


def _hands(problem: Problem, placed: Placed) -> Iterator[At]:
    block = problem.blocks[placed.block]
    if placed.hands is None:
        return
    if placed.setup:
        yield At(placed.start, placed.begins(), "setup", placed.hands, block.index, block.station)
    for one in block.stretches:
        if one.attendance == "hands-on":
            start = placed.begins() + one.offset
            yield At(start, start + one.length, one.kind, placed.hands, block.index, block.station)


def watching_of(problem: Problem, plan: Plan) -> list[At]:
    """All watching; a change of watcher makes two of one."""
    found = []
    for placed in plan.placed:
        block = problem.blocks[placed.block]
        if block.watched is None or not placed.watchers:
            continue
        ends = placed.begins() + block.watched.offset + block.watched.length
        for (who, start), (_, until) in pairwise((*placed.watchers, (-1, ends))):
            if start < until:
                found.append(At(start, until, "watching", who, block.index, block.station))
    return found


def work_of(problem: Problem, plan: Plan, person: int) -> list[At]:
    """Hands and watching of a person, by their start."""
    every = [*hands_of(problem, plan), *watching_of(problem, plan)]
    return sorted((one for one in every if one.person == person), key=lambda one: (one.start, one.end))


def walks_of(problem: Problem, plan: Plan, person: int) -> list[Walk]:
    """The walks of a person: where their hands are needed they are there; while they only watch they are in that room."""
    room, found = problem.people[person].room, []
    for start, place, block in places_of(problem, plan, person):
        if room not in (-1, place):
            found.append(Walk(max(0, start - problem.walks[room][place]), start, person, place, block))
        room = place
    return found


def walks_in(problem: Problem, plan: Plan) -> int:
    """How often somebody goes from a room to another."""
    return sum(len(walks_of(problem, plan, person)) for person in range(len(problem.people)))


def places_of(problem: Problem, plan: Plan, person: int) -> list[tuple[int, int, int]]:
    """Where a person is, in order: (from when, in which room, at which block), one for each thing that they are at."""
    return sorted(_places(problem, work_of(problem, plan, person)))


def _places(problem: Problem, work: list[At]) -> Iterator[tuple[int, int, int]]:
    """(from when, in which room, at which block): of watching what the hands leave of it."""
    hands = [one for one in work if one.kind != "watching"]
    for one in hands:
        yield one.start, problem.stations[one.station].room, one.block
    for one in work:
        if one.kind == "watching":
            for start, _ in _left(one, hands):
                yield start, problem.stations[one.station].room, one.block


def _left(watch: At, hands: list[At]) -> Iterator[Span]:
    start = watch.start
    for opens, closes in joined((one.start, one.end) for one in hands if one.end > watch.start):
        if opens >= watch.end:
            break
        if opens > start:
            yield start, opens
        start = max(start, closes)
    if start < watch.end:
        yield start, watch.end
