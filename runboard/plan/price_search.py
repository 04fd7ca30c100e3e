"""What moves cost, searched for: in a child process, since the solver is loaded for it."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from typing import Any

from runboard.plan.begun_now import Begun, BegunNow, begun
from runboard.plan.prices import Asked, Price, price_of
from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.problem.worth import worth
from runboard.plan.schedule.rule.priorities import by_start
from runboard.plan.schedule.rule.rule import Knobs, Rule

Clock = Callable[[], float]


def search_prices(
    problem: Problem,
    plan: Plan,
    asked: Sequence[Asked],
    seconds: float,
    *,
    clock: Clock | None = None,
    stopped: Any = None,
) -> Mapping[Asked, Price]:
    """For each (block, person) what it costs beside ``plan`` that somebody begins the block now, after at most so many seconds
    each; sooner where it is found to cost nothing. Not among them is what no plan was found for, nor what comes after the
    search was ``stopped``."""
    found: dict[Asked, Price] = {}
    for one in asked:
        best = search_begun(problem, plan, one, seconds, clock=clock, stopped=stopped)
        if stopped is not None and stopped.asked:
            break
        if best is not None:
            found[one] = price_of(problem, plan, best.problem, best.plan)
    return found


def search_begun(
    problem: Problem, plan: Plan, asked: Asked, seconds: float, *, clock: Clock | None = None, stopped: Any = None
) -> Begun | None:
    """The best plan found in which somebody begins a block now: ``plan`` itself where it does that; None where the rule, by
    which the search begins, finds none."""
    block, person = asked
    there, limit = begun(problem, block, person), worth(problem, plan)
    stands = Plan(
        tuple(replace(one, start=0, setup=0) if one.block == block else one for one in plan.placed), plan.source
    )
    if plan.placed[block].hands == person and not broken(there, stands) and worth(there, stands) <= limit:
        return Begun(there, stands)
    by_rule = BegunNow(Rule(problem), plan, by_start([one.start for one in plan.placed]), Knobs()).best(block, person)
    if by_rule is None:
        return None
    return Begun(there, _searched(there, by_rule.plan, limit, seconds, clock, stopped))


class _Enough(Exception):
    """A plan was found that loses nothing."""


def _searched(problem: Problem, plan: Plan, enough: Any, seconds: float, clock: Clock | None, stopped: Any) -> Plan:
    from runboard.plan.schedule.search.improve import improve

    best = plan

    def hear(done: int, total: int, latest: Any = None) -> None:
        nonlocal best
        if latest is not None:
            best = latest.plan
        if worth(problem, best) <= enough:
            raise _Enough

    try:
        return improve(problem, plan, seconds, hear, clock=clock, stopped=stopped).plan
    except _Enough:
        return best
