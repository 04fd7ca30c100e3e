"""What people are at: what one person cannot do at once, and in a plan each one's hands, watching and walks."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from runboard.plan.schedule.problem.hours import joined
from runboard.plan.schedule.problem.nouns import Placed, Plan, Problem, Span

# Hands at a station, or eyes on it.
Doing = tuple[int, Literal["hands-on", "watched"]]

# More cliques than this are not looked for: each station's own rule says as much, less tightly.
MOST = 60


def exclude(problem: Problem, one: Doing, other: Doing) -> bool:
    """Whether one person cannot do both at once."""
    if one[1] == other[1] == "hands-on" or one[0] == other[0]:
        return True
    if one[1] == other[1]:
        here, there = problem.stations[one[0]], problem.stations[other[0]]
        return not (here.room == there.room or other[0] in here.watched_from or one[0] in there.watched_from)
    watched, hands = (one[0], other[0]) if one[1] == "watched" else (other[0], one[0])
    return hands not in problem.stations[watched].watched_from


def _doings(problem: Problem) -> Iterator[Doing]:
    """Everything of the kind that is still to be done."""
    for block in problem.blocks:
        for stretch in block.attended:
            yield block.station, "watched" if stretch.attendance == "watched" else "hands-on"
        if block.setup:
            yield block.station, "hands-on"


def cliques(problem: Problem) -> list[frozenset[Doing]]:
    """Sets of doings of which a person does one at a time; every pair that excludes each other is in one of them."""
    known = list(dict.fromkeys(_doings(problem)))
    against = {one: {other for other in known if other != one and exclude(problem, one, other)} for one in known}
    found: list[frozenset[Doing]] = []
    _largest(set(), set(known), set(), against, found)
    if len(found) > MOST:
        hands = frozenset(doing for doing in known if doing[1] == "hands-on")
        watched = [doing for doing in known if doing[1] == "watched"]
        found = [hands, *(frozenset({doing, *(against[doing] & hands)}) for doing in watched)]
        found += [frozenset({one, other}) for one in watched for other in against[one] if other > one]
    return sorted((clique for clique in found if clique), key=lambda clique: (-len(clique), sorted(clique)))


def _largest(
    taken: set[Doing],
    free: set[Doing],
    done: set[Doing],
    against: dict[Doing, set[Doing]],
    found: list[frozenset[Doing]],
) -> None:
    """Every largest set of doings that exclude each other (Bron and Kerbosch 1973, with a pivot)."""
    if len(found) > MOST:
        return
    if not free and not done:
        found.append(frozenset(taken))
        return
    pivot = max(free | done, key=lambda doing: len(against[doing] & free))
    for doing in sorted(free - against[pivot]):
        _largest(taken | {doing}, free & against[doing], done & against[doing], against, found)
        free = free - {doing}
        done = done | {doing}


def ticks_of(problem: Problem, block: int, clique: Iterable[Doing]) -> int:
    """The ticks of a block, its setup aside, that are doings of a clique."""
    there = problem.blocks[block]
    kinds = {kind for station, kind in clique if station == there.station}
    return sum(stretch.length for stretch in there.stretches if stretch.attendance in kinds)


# in a plan


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
class WalkMade:
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
    for stretch in block.stretches:
        if stretch.attendance == "hands-on":
            start = placed.begins() + stretch.offset
            yield At(start, start + stretch.length, stretch.kind, placed.hands, block.index, block.station)


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
    return _work_in([*hands_of(problem, plan), *watching_of(problem, plan)], person)


def _work_in(every: Iterable[At], person: int) -> list[At]:
    return sorted((at for at in every if at.person == person), key=lambda at: (at.start, at.end))


def walks_of(problem: Problem, plan: Plan, person: int) -> list[WalkMade]:
    """The walks of a person: where their hands are needed they are there; while they only watch they are in that room."""
    room, found = problem.people[person].room, []
    for start, place, block in places_of(problem, plan, person):
        if room not in (-1, place):
            found.append(WalkMade(max(0, start - problem.walks[room][place]), start, person, place, block))
        room = place
    return found


def walks_in(problem: Problem, plan: Plan) -> int:
    """How often somebody goes from a room to another."""
    every, found = [*hands_of(problem, plan), *watching_of(problem, plan)], 0
    for at, person in enumerate(problem.people):
        rooms = [room for _, room, _ in _places(problem, _work_in(every, at))]
        found += sum(one not in (-1, other) for one, other in pairwise([person.room, *rooms]))
    return found


def places_of(problem: Problem, plan: Plan, person: int) -> list[tuple[int, int, int]]:
    """Where a person is, in order: (from when, in which room, at which block), one for each thing that they are at; of
    watching what the hands leave of it."""
    return _places(problem, work_of(problem, plan, person))


def _places(problem: Problem, work: Sequence[At]) -> list[tuple[int, int, int]]:
    hands = joined((at.start, at.end) for at in work if at.kind != "watching")
    found = []
    for at in work:
        starts = [at.start] if at.kind != "watching" else _left(at, hands)
        found += [(start, problem.stations[at.station].room, at.block) for start in starts]
    return sorted(found)


def _left(watch: At, hands: tuple[Span, ...]) -> Iterator[int]:
    """When each stretch of watching begins in which no hands are at anything."""
    start = watch.start
    for opens, closes in hands:
        if closes > watch.start and opens < watch.end:
            if opens > start:
                yield start
            start = max(start, closes)
    if start < watch.end:
        yield start
