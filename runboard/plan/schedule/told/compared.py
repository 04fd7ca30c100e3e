"""Two plans side by side, as things are and with a change: made with the same effort, met by the same luck.

Each is also offered what the other found, wherever it fits: so a change that only allows more is never shown as worse, and
a difference is one of the shop, not of the search.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from runboard.plan.schedule.problem.nouns import LeftOut, Plan, Problem
from runboard.plan.schedule.problem.one_run import of_run
from runboard.plan.schedule.problem.worth import lateness_of, worth
from runboard.plan.schedule.rule.greedy import Greedy, NoPlace, greedy, is_warm, usual_goes
from runboard.plan.schedule.rule.rule import Rule
from runboard.plan.schedule.search.bounds import bound
from runboard.plan.schedule.told.draws import Spread
from runboard.plan.schedule.told.effort import finish_of, hands_ticks
from runboard.plan.schedule.told.forecast import Forecast, forecast
from runboard.plan.schedule.told.kept import kept


@dataclass(frozen=True)
class Side:
    """One of the two: when the run is done and its hands-on ticks; how that may turn out, where it was asked for. No plan
    of it is done before ``bound``."""

    problem: Problem
    plan: Plan
    finish: int
    hands: int
    outlook: Forecast | None = None
    bound: int = 0


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
    effort = _effort(now, changed)
    first, second = _greedy(now, effort), _greedy(changed, effort)
    before = _best(now, run, _plans(now, first, second))
    after = _best(changed, run, _plans(changed, second, first), _kept(changed, now, before))
    before = _best(now, run, [] if before is None else [before], _kept(now, changed, after))
    return Compared(
        _side(now, before, run, spread, goes),
        _side(changed, after, run, spread, goes),
        _only_in(changed, now),
        tuple(one for one in _only_in(now, changed) if one.run == run),
    )


def _only_in(problem: Problem, other: Problem) -> tuple[LeftOut, ...]:
    known = {(one.run, one.step, one.code) for one in other.left_out}
    return tuple(one for one in problem.left_out if (one.run, one.step, one.code) not in known)


def _effort(*problems: Problem) -> int:
    """How often the rule is run, the same for both."""
    return usual_goes(max(len(one.blocks) for one in problems), is_compiled=is_warm())


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


def _kept(problem: Problem, other: Problem, plan: Plan | None) -> Plan | None:
    return None if plan is None else kept(problem, other, plan)


def _best(problem: Problem, run: str, plans: Iterable[Plan], other: Plan | None = None) -> Plan | None:
    """The best of some plans; where the other's fits here, none that is later than that, for the run or for what is due."""
    if other is not None:
        most = lateness_of(problem, other), finish_of(problem, other, run)
        plans = [
            other,
            *(one for one in plans if lateness_of(problem, one) <= most[0] and finish_of(problem, one, run) <= most[1]),
        ]
    return min(plans, key=lambda plan: worth(problem, plan), default=None)


def _side(problem: Problem, plan: Plan | None, run: str, spread: Spread, goes: int | None) -> Side | None:
    if plan is None:
        return None
    outlook = None
    if goes != 0 and any(block.run == run for block in problem.blocks):
        outlook = forecast(problem, plan, goes, spread, run=run)
    finish, hands = finish_of(problem, plan, run), hands_ticks(problem, plan, run)
    return Side(problem, plan, finish, hands, outlook, bound(of_run(problem, run)).tick)
