"""A plan made by hand, for tests of what plans are shown as: one thing after the other, each by whoever may do it first."""

from runboard.plan.schedule.problem.nouns import Block, Placed, Plan, Problem


def by_hand(problem: Problem) -> Plan:
    """Slow and right: nothing beside anything, blocks in their order, each inside a window and after its waits."""
    placed: dict[int, Placed] = {}
    stands_on = {at: station.stands_on for at, station in enumerate(problem.stations)}
    free = 0
    for block in problem.blocks:
        changes = bool(block.family) and stands_on[block.station] != block.family and block.unloads is None
        free = _put(problem, placed, block, free, block.setup if changes else 0)
        stands_on[block.station] = block.family or stands_on[block.station]
    return Plan(tuple(placed[at] for at in range(len(problem.blocks))), "by hand")


def _put(problem: Problem, placed: dict[int, Placed], block: Block, free: int, setup: int) -> int:
    if block.begun:
        placed[block.index] = Placed(block.index, 0, 0, block.by, _watchers(block, block.by, 0))
        return max(free, block.length)
    who = block.people[0] if block.attended else None
    earliest = max([free, block.release, *(placed[lag.before].begins() + problem.blocks[lag.before].length + lag.least
                                           for lag in block.lags)])  # fmt: skip
    earliest += max((walk for row in problem.walks for walk in row), default=0)
    start = earliest if who is None else _inside(problem, who, earliest, setup + block.length)
    placed[block.index] = Placed(block.index, start, setup, who, _watchers(block, who, start + setup))
    return start + setup + block.length


def _inside(problem: Problem, who: int, earliest: int, length: int) -> int:
    return next(
        max(opens, earliest) for opens, closes in problem.people[who].windows if max(opens, earliest) + length <= closes
    )


def _watchers(block: Block, who: int | None, begins: int) -> tuple[tuple[int, int], ...]:
    return () if block.watched is None or who is None else ((who, begins + block.watched.offset),)
