"""The planner's proved optimum of a problem: one worker, a fixed seed, and a limit that is the same on every computer."""

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import Problem
from runboard.plan.schedule.rule.greedy import greedy_plan
from runboard.plan.schedule.search.bounds import bound
from runboard.plan.schedule.search.model import Model
from runboard.plan.schedule.search.solving import Aim, Solved, SolveLimits

HORIZON = 3000


def solved(problem: Problem) -> Solved:
    """What the model makes of it, with the bound that is known without a search."""
    wish = Aim(HORIZON, bound(problem).tick)
    return Model(problem, wish).solve(SolveLimits(60, work=30))


def optimum(problem: Problem) -> int:
    """The finish that is proved: its plan breaks no rule, and the plan made at once does not beat it."""
    found = solved(problem)
    assert found.plan is not None
    assert found.is_all
    assert broken(problem, found.plan) == ()
    finish = found.plan.finish(problem)
    assert greedy_plan(problem, 20).finish(problem) >= finish
    return finish
