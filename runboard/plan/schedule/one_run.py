"""A problem with the work of one run alone: no plan of everything can finish the run before the best plan of this."""

from dataclasses import replace

from runboard.plan.schedule.problem import Problem


def of_run(problem: Problem, run: str) -> Problem:
    """The problem with only the blocks, orders and left-out work of ``run``."""
    kept = [block for block in problem.blocks if block.run == run]
    number = {block.index: at for at, block in enumerate(kept)}
    blocks = tuple(
        replace(
            block,
            index=number[block.index],
            lags=tuple(replace(lag, before=number[lag.before]) for lag in block.lags),
            unloads=None if block.unloads is None else number[block.unloads],
        )
        for block in kept
    )
    orders = tuple(one for one in problem.orders if one.run == run)
    left_out = tuple(one for one in problem.left_out if one.run == run)
    return replace(problem, blocks=blocks, orders=orders, left_out=left_out)
