"""Two plans side by side, as things are and with a change: made with the same effort, met by the same luck.

Each is also offered what the other found, wherever it fits: so a change that only allows more is never shown as worse, and
a difference is one of the shop, not of the search.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import timedelta

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import TICK, Block, LeftOut, Placed, Plan, Problem, of_run
from runboard.plan.schedule.problem.people import walks_in
from runboard.plan.schedule.problem.worth import dated, late_lines, lateness_of, worth
from runboard.plan.schedule.rule.greedy import Greedy, greedy, usual_goes
from runboard.plan.schedule.rule.rule import NoPlace, Rule, is_warm
from runboard.plan.schedule.search.bounds import bound
from runboard.plan.schedule.told.effort import finish_of, hands_ticks, person_loads
from runboard.plan.schedule.told.forecast import Forecast, Spread, forecast


@dataclass(frozen=True)
class Side:
    """One of the two: when the run is done and its hands-on ticks; how that may turn out, where it was asked for. No plan
    of it is done before ``bound``. Of all that is open: how many of the ``lines`` with a due moment are ``in_time``, the
    ticks of ``presence`` of everybody together, and the walks."""

    problem: Problem
    plan: Plan
    finish: int
    hands: int
    outlook: Forecast | None = None
    bound: int = 0
    lines: int = 0
    in_time: int = 0
    presence: int = 0
    walks: int = 0


@dataclass(frozen=True)
class Compared:
    """``after`` is None where no plan fits any more; ``left_out`` is what only the change keeps out of the plan, ``let_in``
    what only the change lets into it."""

    before: Side | None
    after: Side | None
    left_out: tuple[LeftOut, ...] = ()
    let_in: tuple[LeftOut, ...] = ()


def compared(now: Problem, changed: Problem, run: str, spread: Spread, goes: int | None) -> Compared:
    """Both plans of one run. ``goes`` is how often each is worked through by chance; 0 leaves that out."""
    effort = usual_goes(max(len(now.blocks), len(changed.blocks)), is_compiled=is_warm())
    first, second = _greedy(now, effort), _greedy(changed, effort)
    before = _best(now, run, _plans(now, first, second))
    after = _best(changed, run, _plans(changed, second, first), before and kept(changed, now, before))
    before = _best(now, run, [] if before is None else [before], after and kept(now, changed, after))
    return Compared(
        _side(now, before, run, spread, goes),
        _side(changed, after, run, spread, goes),
        _only_in(changed, now),
        tuple(left_out for left_out in _only_in(now, changed) if left_out.run == run),
    )


def _only_in(problem: Problem, other: Problem) -> tuple[LeftOut, ...]:
    known = {(left_out.run, left_out.step, left_out.code) for left_out in other.left_out}
    return tuple(left_out for left_out in problem.left_out if (left_out.run, left_out.step, left_out.code) not in known)


def _greedy(problem: Problem, goes: int) -> Greedy | None:
    try:
        return greedy(problem, goes) if problem.blocks else None
    except NoPlace:
        return None


def _plans(problem: Problem, own: Greedy | None, other: Greedy | None) -> list[Plan]:
    """Its own plan, and the one that the other's priorities make here."""
    if not problem.blocks:
        return [Plan(())]
    plans = [] if own is None else [own.plan]
    if other is not None and len(other.plan.placed) == len(problem.blocks):
        rule = Rule(problem)
        if rule.finish(other.priority, other.knobs) >= 0:
            plans.append(rule.plan())
    return plans


def _best(problem: Problem, run: str, plans: Iterable[Plan], other: Plan | None = None) -> Plan | None:
    """The best of some plans; where the other's fits here, none that is later than that, for the run or for what is due."""

    def late(plan: Plan) -> tuple[int, int]:
        return lateness_of(problem, plan), finish_of(problem, plan, run)

    if other is not None:
        most = late(other)
        plans = [
            other,
            *(calm for calm in plans if all(mine <= its for mine, its in zip(late(calm), most, strict=True))),
        ]
    return min(plans, key=lambda plan: worth(problem, plan), default=None)


def _side(problem: Problem, plan: Plan | None, run: str, spread: Spread, goes: int | None) -> Side | None:
    if plan is None:
        return None
    is_any = any(block.run == run for block in problem.blocks)
    outlook = forecast(problem, plan, goes, spread, run=run) if goes != 0 and is_any else None
    loads, lines = person_loads(problem, plan), len(list(dated(problem)))
    return Side(
        problem,
        plan,
        finish_of(problem, plan, run),
        hands_ticks(problem, plan, run),
        outlook,
        bound(of_run(problem, run)).tick,
        lines,
        lines - len(late_lines(problem, plan)),
        sum(person.presence for person in loads),
        sum(person.walks for person in loads),
    )


# a plan with fewer walks


@dataclass(frozen=True)
class Calmer:
    """What walking less costs: with so many ``walks`` fewer all is done so many ``minutes`` later."""

    walks: int
    minutes: int


def calmer_than(problem: Problem, plan: Plan, other: Plan | None) -> Calmer | None:
    """What the walks of ``plan`` that ``other`` does without cost; None where it does without none, is done no later, or is
    later for an order line: then it is another plan, and no calmer one."""
    if other is None or lateness_of(problem, other) > lateness_of(problem, plan):
        return None
    walks = walks_in(problem, plan) - walks_in(problem, other)
    minutes = round((other.finish(problem) - plan.finish(problem)) * TICK / timedelta(minutes=1))
    return Calmer(walks, minutes) if walks > 0 and minutes > 0 else None


# a plan of the one in the other


def kept(problem: Problem, other: Problem, plan: Plan) -> Plan | None:
    """The plan of ``other`` as one of ``problem``; None where it breaks a rule of that, or their loads differ.

    Each block's work stays where it was, so that what got shorter is begun or ended where it was. A plan that kept every
    rule does so still where ``problem`` only allows more, or asks less time; but for work that must begin by a latest end
    and is followed by a wait that holds a place, which can move to neither side.
    """
    named = [
        who for placed in plan.placed for who in (placed.hands, *(who for who, _ in placed.watchers)) if who is not None
    ]
    if len(problem.blocks) != len(other.blocks) or max(named, default=-1) >= len(problem.people):
        return None
    holding = {block.index for block in problem.blocks if block.holds and problem.waiting[block.index]}
    placed = []
    for there, block, was in zip(plan.placed, problem.blocks, other.blocks, strict=True):
        begins = 0 if block.begun else there.begins() + _later(block, was, block.index in holding)
        setup = block.setup if there.setup else 0
        placed.append(replace(there, start=begins - setup, setup=setup, watchers=_watchers(there, block, begins)))
    found = Plan(tuple(placed), plan.source)
    return None if broken(problem, found) else found


def _later(block: Block, was: Block, holds: bool) -> int:
    """By how much a block's own work begins later than it did: so that its machine starts when it did, or that what its
    wait holds is held from when it was."""
    machine, before = (
        next((stretch for stretch in some.stretches if stretch.kind == "machine"), None) for some in (block, was)
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
    later = ((who, tick) for who, tick in placed.watchers[1:] if starts < tick < ends)
    return ((placed.watchers[0][0], starts), *later)
