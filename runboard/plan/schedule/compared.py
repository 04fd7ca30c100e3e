"""Two plans side by side, as things are and with a change: made with the same effort, met by the same luck.

Each is also offered what the other found, wherever it fits: so a change that only allows more is never shown as worse, and
a difference is one of the shop, not of the search.
"""

from dataclasses import dataclass, replace

from runboard.plan.schedule.check import broken
from runboard.plan.schedule.draws import Spread
from runboard.plan.schedule.effort import finish_of, hands_ticks
from runboard.plan.schedule.forecast import Forecast, forecast
from runboard.plan.schedule.greedy import Greedy, NoPlace, greedy
from runboard.plan.schedule.lateness import lateness
from runboard.plan.schedule.problem import LeftOut, Plan, Problem
from runboard.plan.schedule.rule import Rule

_BLOCKS_COMPILED, _BLOCKS_PLAIN = 36_000, 1_500


@dataclass(frozen=True)
class Side:
    """One of the two: when the run is done and its hands-on ticks; how that may turn out, where it was asked for."""

    problem: Problem
    plan: Plan
    finish: int
    hands: int
    outlook: Forecast | None = None


@dataclass(frozen=True)
class Compared:
    """``after`` is None where no plan fits any more; ``left_out`` is what only the change keeps out of the plan."""

    before: Side | None
    after: Side | None
    left_out: tuple[LeftOut, ...] = ()


def compared(now: Problem, changed: Problem, run: str, spread: Spread, goes: int | None) -> Compared:
    """Both plans of one run. ``goes`` is how often each is worked through by chance; 0 leaves that out."""
    effort = _effort(now, changed)
    first, second = _greedy(now, effort), _greedy(changed, effort)
    before = _best(now, first, second)
    after = _best(changed, second, first)
    known = {(one.run, one.step, one.code) for one in now.left_out}
    left_out = tuple(one for one in changed.left_out if (one.run, one.step, one.code) not in known)
    return Compared(_side(now, before, run, spread, goes), _side(changed, after, run, spread, goes), left_out)


def _effort(*problems: Problem) -> int:
    blocks = max(1, *(len(one.blocks) for one in problems))
    whole = _BLOCKS_COMPILED if Rule(problems[0]).is_compiled else _BLOCKS_PLAIN
    return max(4, min(400, whole // blocks))


def _greedy(problem: Problem, goes: int) -> Greedy | None:
    try:
        return greedy(problem, goes) if problem.blocks else None
    except NoPlace:
        return None


def _best(problem: Problem, own: Greedy | None, other: Greedy | None) -> Plan | None:
    """The better of its own plan, the other's, and the one that the other's priorities make here."""
    if not problem.blocks:
        return Plan(())
    plans = [] if own is None else [own.plan]
    if other is not None and len(other.plan.placed) == len(problem.blocks):
        rule = Rule(problem)
        if rule.finish(other.priority, other.knobs) >= 0:
            plans.append(rule.plan())
        begun_alike = _begun_alike(problem, other.plan)
        if _fits(problem, begun_alike):
            plans.append(begun_alike)
    return min(plans, key=lambda plan: _value(problem, plan), default=None)


def _begun_alike(problem: Problem, plan: Plan) -> Plan:
    """The plan with each block's own work beginning when it did there; setups end and watching starts with it."""
    placed = []
    for one, block in zip(plan.placed, problem.blocks, strict=True):
        setup = block.setup if one.setup else 0
        watchers = one.watchers
        if block.watched is not None and watchers:
            starts = one.begins() + block.watched.offset
            ends = starts + block.watched.length
            later = tuple((who, tick) for who, tick in watchers[1:] if starts < tick < ends)
            watchers = ((watchers[0][0], starts), *later)
        placed.append(replace(one, start=one.begins() - setup, setup=setup, watchers=watchers))
    return Plan(tuple(placed), plan.source)


def _fits(problem: Problem, plan: Plan) -> bool:
    """Whether a plan of another problem keeps the rules of this one, too."""
    people = len(problem.people)
    named = [who for one in plan.placed for who in (one.hands, *(who for who, _ in one.watchers)) if who is not None]
    return all(who < people for who in named) and not broken(problem, plan)


def _value(problem: Problem, plan: Plan) -> tuple[int, int]:
    ends = [plan.end(problem, at) for at in range(len(problem.blocks))]
    return lateness(problem, ends), plan.finish(problem)


def _side(problem: Problem, plan: Plan | None, run: str, spread: Spread, goes: int | None) -> Side | None:
    if plan is None:
        return None
    outlook = None
    if goes != 0 and any(block.run == run for block in problem.blocks):
        outlook = forecast(problem, plan, goes, spread, run=run)
    return Side(problem, plan, finish_of(problem, plan, run), hands_ticks(problem, plan, run), outlook)
