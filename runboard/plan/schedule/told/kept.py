"""A plan of one problem kept in another that has the same loads: the shop with a change tried on it.

Each block's work stays where it was, so that what got shorter is begun or ended where it was. A plan that kept every rule
does so still where the other problem only allows more, or asks less time; but for work that must begin by a latest end and
is followed by a wait that holds a place, which can move to neither side.
"""

from dataclasses import replace

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import Block, Placed, Plan, Problem


def kept(problem: Problem, other: Problem, plan: Plan) -> Plan | None:
    """The plan of ``other`` as one of ``problem``; None where it breaks a rule of that, or their loads differ."""
    if len(problem.blocks) != len(other.blocks) or not _has_all(problem, plan):
        return None
    holding = {block.index for block in problem.blocks if block.holds and problem.waiting[block.index]}
    placed = []
    for one, block, was in zip(plan.placed, problem.blocks, other.blocks, strict=True):
        begins = 0 if block.begun else one.begins() + _later(block, was, block.index in holding)
        setup = block.setup if one.setup else 0
        placed.append(replace(one, start=begins - setup, setup=setup, watchers=_watchers(one, block, begins)))
    found = Plan(tuple(placed), plan.source)
    return None if broken(problem, found) else found


def _has_all(problem: Problem, plan: Plan) -> bool:
    """Whether everybody whom a plan names is there."""
    named = [who for one in plan.placed for who in (one.hands, *(who for who, _ in one.watchers)) if who is not None]
    return all(who < len(problem.people) for who in named)


def _later(block: Block, was: Block, holds: bool) -> int:
    """By how much a block's own work begins later than it did: so that its machine starts when it did, or that what its
    wait holds is held from when it was."""
    machine, before = (
        next((stretch for stretch in one.stretches if stretch.kind == "machine"), None) for one in (block, was)
    )
    if machine is not None and before is not None:
        return before.offset - machine.offset
    is_bound = any(lag.latest is not None for lag in block.lags)
    return was.length - block.length if holds and not is_bound else 0


def _watchers(placed: Placed, block: Block, begins: int) -> tuple[tuple[int, int], ...]:
    """Who watches: from when the machine starts, and no longer than it runs."""
    if block.watched is None or not placed.watchers:
        return placed.watchers
    starts = begins + block.watched.offset
    ends = starts + block.watched.length
    later = tuple((who, tick) for who, tick in placed.watchers[1:] if starts < tick < ends)
    return ((placed.watchers[0][0], starts), *later)
