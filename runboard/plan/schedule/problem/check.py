"""An independent checker of plans: it knows the rules and the problem, and nothing of what makes a plan.

Slow and plain on purpose. What has happened has happened: where only begun blocks are in each other's way, or somebody is at
a begun block beyond their hours, nothing is broken.
"""

from collections.abc import Iterator
from itertools import combinations

from runboard.plan.schedule.problem.broken import Broken
from runboard.plan.schedule.problem.check_people import people_broken
from runboard.plan.schedule.problem.nouns import Block, Plan, Problem

__all__ = ["Broken", "broken"]


def broken(problem: Problem, plan: Plan) -> tuple[Broken, ...]:
    """Every rule that the plan breaks, with the blocks that break it; () where it keeps them all."""
    if [placed.block for placed in plan.placed] != list(range(len(problem.blocks))):
        return (Broken("not each block once", (), {"placed": len(plan.placed), "blocks": len(problem.blocks)}),)
    checks = (_begun, _setups, _stations, _lags, people_broken, _services, _air)
    return tuple(one for check in checks for one in check(problem, plan))


def _begun(problem: Problem, plan: Plan) -> Iterator[Broken]:
    for block, placed in zip(problem.blocks, plan.placed, strict=True):
        if block.begun and (placed.start or placed.setup):
            yield Broken("begun block moved", (block.index,), {"start": placed.start})


def _setups(problem: Problem, plan: Plan) -> Iterator[Broken]:
    for at, station in enumerate(problem.stations):
        here = [block for block in problem.blocks if block.station == at]
        stands_on = station.stands_on
        # An unload belongs to what it unloads; blocks without length lie before those that begin with them.
        for block in sorted(
            here, key=lambda one: (plan.placed[one.index].start, plan.end(problem, one.index), one.index)
        ):
            setup = plan.placed[block.index].setup
            changes = bool(block.family) and block.family != stands_on
            wanted = block.setup if changes and block.unloads is None and not block.begun else 0
            if setup != wanted:
                yield Broken("setup", (block.index,), {"setup": setup, "wanted": wanted})
            stands_on = block.family or stands_on


def _holds(problem: Problem, plan: Plan) -> Iterator[tuple[Block, int, int]]:
    """(first block, from, to) of each time that a station is held: a machine's load to the end of its unloading."""
    for block in problem.blocks:
        if block.unloads is None:
            last = block.index
            while last in problem.unloaded_by:
                last = problem.unloaded_by[last]
            yield block, plan.placed[block.index].start, plan.end(problem, last)


def _stations(problem: Problem, plan: Plan) -> Iterator[Broken]:
    for (one, start, end), (other, starts, ends) in combinations(_holds(problem, plan), 2):
        if one.station == other.station and start < ends and starts < end and not (one.begun and other.begun):
            yield Broken("station held twice", (one.index, other.index), {"station": one.station})
    for block in problem.blocks:
        start, end = plan.placed[block.index].start, plan.end(problem, block.index)
        runs = problem.stations[block.station].runs
        if not block.begun and not any(opens <= start and end <= closes for opens, closes in runs):
            yield Broken("station may not run", (block.index,), {"station": block.station})


def _lags(problem: Problem, plan: Plan) -> Iterator[Broken]:
    for block in problem.blocks:
        start = plan.placed[block.index].start
        if block.begun:
            continue
        if start < block.release:
            yield Broken("before its release", (block.index,), {"release": block.release})
        if block.unloads is not None and start < plan.end(problem, block.unloads):
            yield Broken("unloaded before its end", (block.index, block.unloads), {})
        for lag in block.lags:
            if start < plan.end(problem, lag.before) + lag.least:
                yield Broken("too early", (block.index, lag.before), {"least": lag.least})
            if lag.latest is not None and start > plan.placed[lag.before].begins() + lag.latest:
                yield Broken("too late", (block.index, lag.before), {"latest": lag.latest})


def _draws(problem: Problem, plan: Plan) -> Iterator[tuple[int, int, int, int, int]]:
    """(service, block, from, to, how many): what blocks draw on, and what their pieces hold until they are taken off."""
    for block in problem.blocks:
        begins = plan.placed[block.index].begins()
        for stretch in block.stretches:
            for service, count in stretch.draws:
                yield service, block.index, begins + stretch.offset, begins + stretch.offset + stretch.length, count
        taken_off = [
            plan.placed[one.index].start for one in problem.blocks for lag in one.lags if lag.before == block.index
        ]
        for service, count in block.holds if taken_off else ():
            yield service, block.index, plan.end(problem, block.index), max(taken_off), count


def _services(problem: Problem, plan: Plan) -> Iterator[Broken]:
    draws = list(_draws(problem, plan))
    for service, (key, capacity) in enumerate(problem.services):
        here = [one for one in draws if one[0] == service]
        for tick in sorted({start for _, _, start, _, _ in here}):
            at_once = [(block, count) for _, block, start, end, count in here if start <= tick < end]
            blocks = tuple(sorted({block for block, _ in at_once}))
            if sum(count for _, count in at_once) > capacity and not all(problem.blocks[one].begun for one in blocks):
                yield Broken("service beyond its capacity", blocks, {"service": key, "tick": tick})


def _air(problem: Problem, plan: Plan) -> Iterator[Broken]:
    """While a finish is brought on and wet: no dust there. While its solvent is in the air: nothing that heats or sparks
    either."""
    for coat in problem.blocks:
        room = problem.stations[coat.station].room
        start, end = plan.placed[coat.index].begins(), plan.end(problem, coat.index)
        for other in problem.blocks:
            station = problem.stations[other.station]
            if coat is other or station.room != room or (coat.begun and other.begun):
                continue
            clear = []
            if station.dusty and (coat.wet or coat.airs is not None):
                clear += [end + coat.wet, end + (coat.airs or 0)]
            if station.heats and coat.airs is not None:
                clear.append(end + coat.airs)
            begins, ends = plan.placed[other.index].begins(), plan.end(problem, other.index)
            if clear and start < ends and begins < max(clear) and begins < ends:
                yield Broken("in wet air", (other.index, coat.index), {"room": room})
