"""What moves cost, searched for: in a child process, since the solver is loaded for it."""

from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from dataclasses import replace
from typing import Any, NamedTuple

from runboard.plan.begun_now import Begun, BegunNow, begun
from runboard.plan.prices import Asked, Price, price_of
from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.problem.worth import worth
from runboard.plan.schedule.rule.greedy import by_start, greedy_plan
from runboard.plan.schedule.rule.rule import Knobs, NoPlace, Rule

Clock = Callable[[], float]


class Priced(NamedTuple):
    """``plan`` is the one at hand, or a better one that was found while prices were searched for; ``prices`` what it costs
    beside it that somebody begins a block now."""

    plan: Plan
    prices: Mapping[Asked, Price]


def search_prices(
    problem: Problem,
    plan: Plan,
    asked: Sequence[Asked],
    seconds: float,
    *,
    clock: Clock | None = None,
    stopped: Any = None,
) -> Priced:
    """For each (block, person) what it costs that somebody begins the block now, after at most so many seconds each; sooner
    where it is found to cost nothing. Not among them is what no plan was found for, nor what comes after the search was
    ``stopped``. A plan in which something else is begun now may be better than the one at hand: then it takes its place."""
    found: list[tuple[Asked, Begun]] = []
    for begun_by in asked:
        best = search_begun(problem, plan, begun_by, seconds, clock=clock, stopped=stopped)
        if stopped is not None and stopped.asked:
            break
        if best is not None:
            found.append((begun_by, best))
            made = not_begun(problem, best, begun_by)
            plan = plan if made is None or worth(problem, made) >= worth(problem, plan) else made
    return Priced(plan, {begun_by: price_of(problem, plan, best.problem, best.plan) for begun_by, best in found})


def not_begun(problem: Problem, found: Begun, asked: Asked) -> Plan | None:
    """The same plan while nothing is begun yet: it begins once the walk is done. None where it waits for something then."""
    block, person = asked
    before = {
        stretch.kind: stretch.length
        for stretch in found.problem.blocks[block].stretches
        if stretch.kind in ("walk", "setup")
    }
    own = problem.blocks[block]
    setup = before.get("setup", 0) if all(stretch.kind != "setup" for stretch in own.stretches) else 0
    hands = person if setup or own.hands else None
    placed = (
        replace(placed, start=before.get("walk", 0), setup=setup, hands=hands) if placed.block == block else placed
        for placed in found.plan.placed
    )
    made = Plan(tuple(placed), found.plan.source)
    return None if broken(problem, made) else made


def search_begun(
    problem: Problem, plan: Plan, asked: Asked, seconds: float, *, clock: Clock | None = None, stopped: Any = None
) -> Begun | None:
    """The best plan found in which somebody begins a block now: ``plan`` itself where it does that; None where the rule, by
    which the search begins, finds none."""
    block, person = asked
    there, limit = begun(problem, block, person), worth(problem, plan)
    stands = Plan(
        tuple(replace(placed, start=0, setup=0) if placed.block == block else placed for placed in plan.placed),
        plan.source,
    )
    if plan.placed[block].hands == person and not broken(there, stands) and worth(there, stands) <= limit:
        return Begun(there, stands)
    first = _by_rule(problem, plan, block, person)
    if first is None:
        return None

    def is_enough(made: Plan) -> bool:
        return worth(there, made) <= limit

    return Begun(there, search_until(there, first.plan, is_enough, seconds, clock=clock, stopped=stopped))


def _by_rule(problem: Problem, plan: Plan, block: int, person: int) -> Begun | None:
    """The better of what comes of the plan at hand, and of nothing."""
    like = BegunNow(Rule(problem), plan, by_start([placed.start for placed in plan.placed]), Knobs()).best(
        block, person
    )
    there = begun(problem, block, person)
    found = [] if like is None else [like]
    with suppress(NoPlace):
        found.append(Begun(there, greedy_plan(there)))
    return min(found, key=lambda made: made.worth, default=None)


class _Enough(Exception):
    """What was looked for is found."""


def search_until(
    problem: Problem,
    plan: Plan,
    is_enough: Callable[[Plan], bool],
    seconds: float,
    *,
    clock: Clock | None = None,
    stopped: Any = None,
) -> Plan:
    """The best plan that is found within so many seconds, or the first that is good enough."""
    from runboard.plan.schedule.search.improve import improve

    best = plan

    def hear(done: int, total: int, latest: Any = None) -> None:
        nonlocal best
        if latest is not None:
            best = latest.plan
        if is_enough(best):
            raise _Enough

    try:
        return improve(problem, plan, seconds, hear, clock=clock, stopped=stopped).plan
    except _Enough:
        return best
