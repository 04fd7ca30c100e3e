"""The best plan there is of a small shop, where it can be proved: what statements about optima are tried on."""

from dataclasses import dataclass

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.rule.greedy import greedy_plan
from runboard.plan.schedule.rule.rule import NoPlace
from runboard.plan.schedule.search.bounds import bound
from runboard.plan.schedule.search.model import Model
from runboard.plan.schedule.search.solving import Aim, SolveLimits

# The solver's own measure of work, the same on every computer; a wall-clock limit that nothing here comes near.
LIMITS = SolveLimits(60, workers=1, seed=1, work=1)
# Later than any plan of these shops need end.
_LATE = 6000


@dataclass(frozen=True)
class Best:
    """A plan that the checker finds nothing broken in, and that ends as early as any can."""

    plan: Plan
    finish: int


def best_of(problem: Problem) -> Best | None:
    """The best plan, or None where none was found or none was proved."""
    plan = _at_once(problem)
    finish = _LATE if plan is None else plan.finish(problem)
    least = min(bound(problem).tick, finish)
    for watching in ("named", "anyone"):
        if least >= finish:
            break
        model = Model(problem, Aim(finish, least, watching=watching))
        answer = model.solve(LIMITS)
        if answer.plan is not None and model.is_plan and not broken(problem, answer.plan):
            plan, finish = answer.plan, answer.plan.finish(problem)
        if model.is_bound:
            least = max(least, min(answer.bound, finish))
    return Best(plan, finish) if plan is not None and least >= finish else None


def _at_once(problem: Problem) -> Plan | None:
    try:
        return greedy_plan(problem, 20)
    except NoPlace:
        return None
