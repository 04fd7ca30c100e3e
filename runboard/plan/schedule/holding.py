"""What holds a plan: the longest chain back from its finish, and what most of the chain's hours in the shop go to."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from runboard.plan.schedule.attending import work_of
from runboard.plan.schedule.presence import Presence, open_spans
from runboard.plan.schedule.problem import Placed, Plan, Problem

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
    found: list[Link] = []
    while True:
        earlier = _holding_back(problem, plan, plan.placed[at])
        if earlier is None:
            found.append(Link(at, "now" if plan.placed[at].start == 0 else "hours"))
            return found[::-1]
        ended, why, before = earlier
        tight = ended >= plan.placed[at].start
        found.append(Link(at, why if tight else "hours"))
        at = before


def _holding_back(problem: Problem, plan: Plan, placed: Placed) -> tuple[int, str, int] | None:
    """(until when, why, by which block): of all that must be over before it, what is over last."""
    order = ("hands", "station", "before", "wait")
    earlier = [
        one for one in _before(problem, plan, placed) if one[0] <= placed.start and _starts(plan, one) < placed.start
    ]
    return max(earlier, key=lambda one: (one[0], order.index(one[1]), -one[2]), default=None)


def _starts(plan: Plan, one: tuple[int, str, int]) -> int:
    return plan.placed[one[2]].start


def _before(problem: Problem, plan: Plan, placed: Placed) -> Iterator[tuple[int, str, int]]:
    block = problem.blocks[placed.block]
    for lag in block.lags:
        yield plan.end(problem, lag.before) + lag.least, "wait" if lag.least else "before", lag.before
    if block.unloads is not None:
        yield plan.end(problem, block.unloads), "before", block.unloads
    else:
        for other in plan.placed:
            if other.block != block.index and problem.blocks[other.block].station == block.station:
                yield plan.end(problem, other.block), "station", other.block
    people = {one for one in (placed.hands, *(who for who, _ in placed.watchers)) if one is not None}
    room = problem.stations[block.station].room
    for person in people:
        for one in work_of(problem, plan, person):
            if one.block != block.index:
                walk = problem.walks[problem.stations[one.station].room][room]
                yield one.end + walk, "hands", one.block


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
