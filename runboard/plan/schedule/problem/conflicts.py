"""What one person cannot do at the same time: hands at a station, or watching one, each against each."""

from collections.abc import Iterable
from typing import Literal

from runboard.plan.schedule.problem.nouns import Problem

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


def doings(problem: Problem) -> list[Doing]:
    """Everything of the kind that is still to be done."""
    found: dict[Doing, None] = {}
    for block in problem.blocks:
        for one in block.attended:
            found[block.station, "watched" if one.attendance == "watched" else "hands-on"] = None
        if block.setup:
            found[block.station, "hands-on"] = None
    return list(found)


def cliques(problem: Problem) -> list[frozenset[Doing]]:
    """Sets of doings of which a person does one at a time; every pair that excludes each other is in one of them."""
    known = doings(problem)
    against = {one: {other for other in known if other != one and exclude(problem, one, other)} for one in known}
    found: list[frozenset[Doing]] = []
    _largest(set(), set(known), set(), against, found)
    if len(found) > MOST:
        hands = frozenset(one for one in known if one[1] == "hands-on")
        watched = [one for one in known if one[1] == "watched"]
        found = [hands, *(frozenset({one, *(against[one] & hands)}) for one in watched)]
        found += [frozenset({one, other}) for one in watched for other in against[one] if other > one]
    return sorted((one for one in found if one), key=lambda one: (-len(one), sorted(one)))


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
    pivot = max(free | done, key=lambda one: len(against[one] & free))
    for one in sorted(free - against[pivot]):
        _largest(taken | {one}, free & against[one], done & against[one], against, found)
        free = free - {one}
        done = done | {one}


def ticks_of(problem: Problem, block: int, clique: Iterable[Doing]) -> int:
    """The ticks of a block, its setup aside, that are doings of a clique."""
    one = problem.blocks[block]
    kinds = {kind for station, kind in clique if station == one.station}
    return sum(stretch.length for stretch in one.stretches if stretch.attendance in kinds)
