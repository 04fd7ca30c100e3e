"""The checker's rules about people: hours, hands, eyes, rooms and walks."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from runboard.plan.schedule.problem.broken import Broken
from runboard.plan.schedule.problem.nouns import Plan, Problem


@dataclass(frozen=True)
class There:
    """A span in which somebody's hands or eyes are at a station."""

    person: int
    block: int
    station: int
    start: int
    end: int
    watches: bool


def people_broken(problem: Problem, plan: Plan) -> Iterator[Broken]:
    """Every rule about people that the plan breaks."""
    there = list(_hands(problem, plan)) + list(_watched(problem, plan))
    yield from _who(problem, plan)
    yield from _unwatched(problem, plan)
    for one in there:
        windows = problem.people[one.person].windows
        if not _is_there(problem, one) and not any(
            opens <= one.start and one.end <= closes for opens, closes in windows
        ):
            yield Broken("outside hours", (one.block,), {"person": one.person, "start": one.start, "end": one.end})
    for person in range(len(problem.people)):
        yield from _one_person(problem, person, [one for one in there if one.person == person])


def _hands(problem: Problem, plan: Plan) -> Iterator[There]:
    for block, placed in zip(problem.blocks, plan.placed, strict=True):
        if placed.hands is None:
            continue
        spans = [(placed.start, placed.begins())] if placed.setup else []
        for stretch in block.stretches:
            if stretch.attendance == "hands-on":
                start = placed.begins() + stretch.offset
                spans.append((start, start + stretch.length))
        for start, end in _joined(spans):
            yield There(placed.hands, block.index, block.station, start, end, False)


def _joined(spans: list[tuple[int, int]]) -> list[tuple[int, int]]:
    found: list[tuple[int, int]] = []
    for start, end in sorted(spans):
        if found and found[-1][1] == start:
            found[-1] = (found[-1][0], end)
        else:
            found.append((start, end))
    return found


def _watched(problem: Problem, plan: Plan) -> Iterator[There]:
    for block, placed in zip(problem.blocks, plan.placed, strict=True):
        stretch = block.watched
        if stretch is None:
            continue
        until = placed.begins() + stretch.offset + stretch.length
        ends = [tick for _, tick in placed.watchers[1:]] + [until]
        for (person, tick), end in zip(placed.watchers, ends, strict=False):
            yield There(person, block.index, block.station, tick, end, True)


def _who(problem: Problem, plan: Plan) -> Iterator[Broken]:
    for block, placed in zip(problem.blocks, plan.placed, strict=True):
        needed = block.hands > 0 or placed.setup > 0
        if needed != (placed.hands is not None):
            yield Broken("hands", (block.index,), {"needed": needed})
        elif placed.hands is not None and block.begun and block.by not in (None, placed.hands):
            yield Broken("somebody else's hands", (block.index,), {"person": placed.hands, "by": block.by})
        elif placed.hands is not None and not block.begun and placed.hands not in block.people:
            yield Broken("may not do it", (block.index,), {"person": placed.hands})


def _unwatched(problem: Problem, plan: Plan) -> Iterator[Broken]:
    for block, placed in zip(problem.blocks, plan.placed, strict=True):
        stretch = block.watched
        if stretch is None or (block.begun and block.by is None and not placed.watchers):
            if placed.watchers:
                yield Broken("nothing to watch", (block.index,))
            continue
        start = placed.begins() + stretch.offset
        ticks = [tick for _, tick in placed.watchers]
        if not ticks or ticks[0] != start or ticks != sorted(set(ticks)) or ticks[-1] >= start + stretch.length:
            yield Broken("not watched throughout", (block.index,), {"ticks": ticks, "start": start})


def _one_person(problem: Problem, person: int, there: list[There]) -> Iterator[Broken]:
    for one, other in combinations(there, 2):
        both_begun = problem.blocks[one.block].begun and problem.blocks[other.block].begun
        if one.start < other.end and other.start < one.end and not both_begun and not _together(problem, one, other):
            code = "hands twice" if not one.watches and not other.watches else "out of sight"
            yield Broken(code, (one.block, other.block), {"person": person})
    yield from _walks(problem, person, there)


def _together(problem: Problem, one: There, other: There) -> bool:
    """Whether one person may do both at once."""
    first, second = problem.stations[one.station], problem.stations[other.station]
    if one.watches and other.watches:
        in_sight = other.station in first.watched_from or one.station in second.watched_from
        return first.room == second.room or in_sight
    if one.watches:
        return one.station == other.station or other.station in first.watched_from
    return other.watches and (one.station == other.station or one.station in second.watched_from)


def _walks(problem: Problem, person: int, there: list[There]) -> Iterator[Broken]:
    """Rooms: whoever watches is in the machine's room except while their hands are where it may be watched from."""
    stays = [stay for one in there for stay in _stays(problem, one, there)]
    for (one, start, end), (other, starts, ends) in combinations(stays, 2):
        rooms = problem.stations[one.station].room, problem.stations[other.station].room
        if rooms[0] == rooms[1] or _in_reach(problem, one, other):
            continue
        gap = max(starts - end, start - ends)
        if gap < problem.walks[rooms[0]][rooms[1]]:
            yield Broken("walk", (one.block, other.block), {"person": person, "gap": gap})
    room = problem.people[person].room
    for one, start, _ in stays:
        to = problem.stations[one.station].room
        if room >= 0 and not _is_there(problem, one) and start < problem.walks[room][to]:
            yield Broken("walk", (one.block,), {"person": person, "gap": start})


def _is_there(problem: Problem, one: There) -> bool:
    """Whether they are at it already: whoever takes over what was begun has to come first, like anybody."""
    block = problem.blocks[one.block]
    return block.begun and block.by == one.person


def _stays(problem: Problem, one: There, there: list[There]) -> list[tuple[There, int, int]]:
    if not one.watches:
        return [(one, one.start, one.end)]
    left = [(one.start, one.end)]
    for other in there:
        if not other.watches and problem.stations[other.station].room != problem.stations[one.station].room:
            cut = [((a, min(b, other.start)), (max(a, other.end), b)) for a, b in left]
            left = [span for pair in cut for span in pair if span[0] < span[1]]
    return [(one, start, end) for start, end in left]


def _in_reach(problem: Problem, one: There, other: There) -> bool:
    """Whether one of them is watched from the other meanwhile, so that no walk lies between; or both were begun."""
    if problem.blocks[one.block].begun and problem.blocks[other.block].begun:
        return True
    return one.start < other.end and other.start < one.end and (one.watches or other.watches)
