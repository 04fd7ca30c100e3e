"""What holds a plan: the longest chain back from its finish, and what most of the chain's hours in the shop go to."""

from collections.abc import Iterator
from dataclasses import dataclass

from runboard.plan.schedule.attending import work_of
from runboard.plan.schedule.presence import Presence, open_spans
from runboard.plan.schedule.problem import Placed, Plan, Problem


@dataclass(frozen=True)
class Link:
    """A block of the chain and why it starts no earlier: ``wait`` and ``before`` (its pieces), ``station`` and ``hands``
    (what else is done there, or by that person), ``hours`` (nobody is there before), ``now``."""

    block: int
    why: str


@dataclass(frozen=True)
class Holder:
    """``what`` holds the plan: ``hands``, ``station`` (its machine) or ``wait``; ``which`` is the person, the station, or
    the block that is waited after. ``share`` of the chain's hours in the shop go to it."""

    what: str
    which: int
    share: float


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
    return max(earlier, key=lambda one: (one[0], order.index(one[1])), default=None)


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


def holder(problem: Problem, plan: Plan, run: str = "") -> Holder | None:
    """Who or what most of the chain's hours in the shop go to; None where nothing is left."""
    links = chain(problem, plan, run)
    there = Presence.of([open_spans(problem)])
    sums: dict[tuple[str, int], int] = {}
    for link in links:
        placed, block = plan.placed[link.block], problem.blocks[link.block]
        at = placed.begins()
        if placed.hands is not None:
            key = ("hands", placed.hands)
            sums[key] = sums.get(key, 0) + placed.setup + block.hands
        machine = sum(there.between(at + one.offset, at + one.offset + one.length)
                      for one in block.stretches if one.attendance != "hands-on")  # fmt: skip
        sums["station", block.station] = sums.get(("station", block.station), 0) + machine
        for lag in block.lags if link.why == "wait" else ():
            ended = plan.end(problem, lag.before)
            if ended + lag.least == placed.start:
                waits = ("wait", lag.before)
                sums[waits] = sums.get(waits, 0) + there.between(ended, placed.start)
    whole = sum(sums.values())
    if not whole:
        return None
    what, which = max(sums, key=lambda one: sums[one])
    return Holder(what, which, sums[what, which] / whole)
