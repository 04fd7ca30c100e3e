"""A problem with some of its work alone."""

from collections.abc import Iterable
from dataclasses import replace

from runboard.plan.schedule.problem.nouns import Block, Problem


def of_run(problem: Problem, run: str) -> Problem:
    """The problem with only the blocks, orders and left-out work of ``run``: no plan of everything can finish the run
    before the best plan of this."""
    orders = tuple(one for one in problem.orders if one.run == run)
    left_out = tuple(one for one in problem.left_out if one.run == run)
    return replace(only(problem, (one for one in problem.blocks if one.run == run)), orders=orders, left_out=left_out)


def leading_to(problem: Problem, wanted: Iterable[int]) -> list[Block]:
    """The blocks that must be through before these are, and these, in order."""
    left = list(wanted)
    reached = set(left)
    while left:
        block = problem.blocks[left.pop()]
        before = {lag.before for lag in block.lags} | ({block.unloads} if block.unloads is not None else set())
        left += before - reached
        reached |= before
    return [problem.blocks[at] for at in sorted(reached)]


def only(problem: Problem, kept: Iterable[Block]) -> Problem:
    """The problem with no other blocks than these, which wait for none that is left out; no orders."""
    return replace(problem, blocks=numbered_anew(kept), orders=(), left_out=())


def numbered_anew(kept: Iterable[Block]) -> tuple[Block, ...]:
    """Blocks as those of a problem that has no others; what they wait for is among them."""
    some = list(kept)
    number = {block.index: at for at, block in enumerate(some)}
    return tuple(
        replace(
            block,
            index=number[block.index],
            lags=tuple(replace(lag, before=number[lag.before]) for lag in block.lags),
            unloads=None if block.unloads is None else number[block.unloads],
        )
        for block in some
    )
