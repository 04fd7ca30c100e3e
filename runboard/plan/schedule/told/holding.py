"""What holds a plan: the longest chain back from its finish, and what most of the chain's hours in the shop go to."""

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from runboard.plan.schedule.problem.hours import Presence, open_spans
from runboard.plan.schedule.problem.nouns import FAR, Placed, Plan, Problem
from runboard.plan.schedule.problem.people import hands_of, watching_of

# The same under every problem: ('hands', person), ('station', station), ('wait', run, step).
Name = tuple[str, ...]

KINDS = ("hands", "station", "wait")
# What held it last is said until another has so much more of the chain.
CLEARLY = 0.1


@dataclass(frozen=True)
class Link:
    """A block of the chain and why it starts no earlier: ``wait`` and ``before`` (its pieces), ``station`` and ``hands``
    (what else is done there, or by that person), ``hours`` (nobody is there before), ``now``."""

    block: int
    why: str


@dataclass(frozen=True)
class Holder:
    """``what`` holds the plan: ``hands``, ``station`` (its machine) or ``wait``; ``which`` is the person, the station, or
    the block that is waited after. ``share`` of the chain's hours in the shop go to it. ``name`` outlives the problem."""

    what: str
    which: int
    share: float
    name: Name = ()


def chain(problem: Problem, plan: Plan, run: str = "") -> list[Link]:
    """The longest chain, of all or to the end of one run, first things first; () where nothing is left."""
    some = [block.index for block in problem.blocks if not run or block.run == run]
    if not some:
        return []
    at = max(some, key=lambda one: (plan.end(problem, one), one))
    before = _Before(problem, plan)
    found: list[Link] = []
    while True:
        earlier = before.last_of(plan.placed[at])
        if earlier is None:
            found.append(Link(at, "now" if plan.placed[at].start == 0 else "hours"))
            return found[::-1]
        ended, why, other = earlier
        tight = ended >= plan.placed[at].start
        found.append(Link(at, why if tight else "hours"))
        at = other


# (until when, why, by which block)
Earlier = tuple[int, str, int]
_ORDER = ("hands", "station", "before", "wait")


def _rank(one: Earlier) -> tuple[int, int, int]:
    return one[0], _ORDER.index(one[1]), -one[2]


class _Before:
    """What must be over before a block may start: its pieces', its station's and its people's, each kept by its end, so that
    of the thousands that a long plan has only the last are looked at."""

    def __init__(self, problem: Problem, plan: Plan) -> None:
        self.problem, self.plan = problem, plan
        self.stations: dict[int, list[tuple[int, int]]] = {}
        self.people: dict[tuple[int, int], list[tuple[int, int]]] = {}
        for block in problem.blocks:
            self.stations.setdefault(block.station, []).append((plan.end(problem, block.index), block.index))
        for one in (*hands_of(problem, plan), *watching_of(problem, plan)):
            room = problem.stations[one.station].room
            self.people.setdefault((one.person, room), []).append((one.end, one.block))
        for row in (*self.stations.values(), *self.people.values()):
            row.sort()

    def last_of(self, placed: Placed) -> Earlier | None:
        """Of all that must be over before a block: what is over last, and begun before it."""
        return max(self._all(placed), key=_rank, default=None)

    def _all(self, placed: Placed) -> Iterator[Earlier]:
        block = self.problem.blocks[placed.block]
        for lag in block.lags:
            ended = self.plan.end(self.problem, lag.before) + lag.least
            yield from self._if_before(placed, ended, "wait" if lag.least else "before", lag.before)
        if block.unloads is not None:
            yield from self._if_before(placed, self.plan.end(self.problem, block.unloads), "before", block.unloads)
        else:
            yield from self._last_in(self.stations.get(block.station, []), placed, "station")
        yield from self._of_people(placed, self.problem.stations[block.station].room)

    def _of_people(self, placed: Placed, room: int) -> Iterator[Earlier]:
        for person in {one for one in (placed.hands, *(who for who, _ in placed.watchers)) if one is not None}:
            for other in range(len(self.problem.walks)):
                row = self.people.get((person, other), [])
                yield from self._last_in(row, placed, "hands", self.problem.walks[other][room])

    def _if_before(self, placed: Placed, ended: int, why: str, other: int) -> Iterator[Earlier]:
        if ended <= placed.start and self.plan.placed[other].start < placed.start:
            yield ended, why, other

    def _last_in(self, row: list[tuple[int, int]], placed: Placed, why: str, walk: int = 0) -> Iterator[Earlier]:
        """Of a row by its ends the last that are over ``walk`` before the block: all that end together."""
        at, last = bisect_right(row, (placed.start - walk, FAR)), -1
        while at and row[at - 1][0] >= last:
            at -= 1
            ended, other = row[at]
            if other != placed.block and self.plan.placed[other].start < placed.start:
                last = ended
                yield ended + walk, why, other


def holder(problem: Problem, plan: Plan, run: str = "", before: Name = ()) -> Holder | None:
    """Who or what most of the chain's hours in the shop go to; None where nothing is left. ``before`` is what held it last:
    it stays unless another has clearly more, so that plans that are as good are said alike."""
    sums: dict[Name, int] = {}
    which: dict[Name, int] = {}
    for what, at, ticks in _hours(problem, plan, chain(problem, plan, run)):
        name = _name(problem, what, at)
        sums[name] = sums.get(name, 0) + ticks
        which[name] = min(which.get(name, at), at)
    whole = sum(sums.values())
    if not whole:
        return None
    most = min(sums, key=lambda one: (-sums[one], KINDS.index(one[0]), one))
    if before in sums and sums[most] - sums[before] <= CLEARLY * whole:
        most = before
    return Holder(most[0], which[most], sums[most] / whole, most)


def _hours(problem: Problem, plan: Plan, links: Sequence[Link]) -> Iterator[tuple[str, int, int]]:
    """(what, which, ticks in which somebody is there) along a chain."""
    there = Presence.of([open_spans(problem)])
    for link in links:
        placed, block = plan.placed[link.block], problem.blocks[link.block]
        at = placed.begins()
        if placed.hands is not None:
            yield "hands", placed.hands, placed.setup + block.hands
        for one in block.stretches:
            if one.attendance != "hands-on":
                yield "station", block.station, there.between(at + one.offset, at + one.offset + one.length)
        for lag in block.lags if link.why == "wait" else ():
            ended = plan.end(problem, lag.before)
            if ended + lag.least == placed.start:
                yield "wait", lag.before, there.between(ended, placed.start)


def _name(problem: Problem, what: str, which: int) -> Name:
    if what == "wait":
        return what, problem.blocks[which].run, problem.blocks[which].step
    return what, (problem.people if what == "hands" else problem.stations)[which].key
