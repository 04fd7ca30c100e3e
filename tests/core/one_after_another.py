"""The plainest plan: one block after the other in a given order, the first person always there, nothing side by side."""

from collections.abc import Sequence

from runboard.plan.schedule.problem.nouns import FAR, Placed, Plan, Problem


def one_after_another(problem: Problem, order: Sequence[int]) -> Plan:
    """Each block as soon as it may be, of those that may be the first in the order; hands or eyes busy to its end."""
    ends: dict[int, int] = {}
    placed: dict[int, Placed] = {}
    free = 0
    for block in problem.blocks:
        if block.begun:
            ends[block.index], placed[block.index] = block.length, Placed(block.index, 0, 0, block.by)
            free = max(free, block.hands)
    left = [one for one in dict.fromkeys(order) if one not in placed]
    while left:
        able = {one: soonest for one in left if (soonest := _soonest(problem, one, ends, free)) < FAR}
        now = max(free, min(able.values()))
        chosen = next(one for one in left if able.get(one, FAR) <= now)
        block = problem.blocks[chosen]
        start = _in_hours(problem, max(able[chosen], free), block.length)
        placed[chosen] = Placed(chosen, start, 0, 0, ((0, start),) if block.watched else ())
        ends[chosen] = free = start + block.length
        left.remove(chosen)
    return Plan(tuple(placed[at] for at in range(len(problem.blocks))))


def _soonest(problem: Problem, at: int, ends: dict[int, int], free: int) -> int:
    block = problem.blocks[at]
    waits_for = [*((lag.before, lag.least) for lag in block.lags)]
    waits_for += [] if block.unloads is None else [(block.unloads, 0)]
    if any(before not in ends for before, _ in waits_for):
        return FAR
    return _in_hours(problem, max([block.release, *(ends[one] + least for one, least in waits_for)]), block.length)


def _in_hours(problem: Problem, tick: int, length: int) -> int:
    windows = problem.people[0].windows
    return next((max(tick, opens) for opens, closes in windows if max(tick, opens) + length <= closes), FAR - 1)
