"""What a search has come to: a plan, and how far any plan could still beat it."""

from dataclasses import dataclass

from runboard.plan.schedule.problem.hours import open_minutes
from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.search.bounds import Bound


@dataclass(frozen=True)
class Improved:
    """A plan with what bounds it. ``gap`` is in minutes of the hours in which anybody is there; ``is_proved`` where no
    plan can be finished sooner, however late it is for order lines. What no plan can hold stands in the problem's
    ``left_out``."""

    plan: Plan
    bound: Bound
    gap: float
    is_proved: bool


def improved(problem: Problem, plan: Plan, bound: Bound) -> Improved:
    """How a plan stands against a bound."""
    finish = plan.finish(problem)
    return Improved(plan, bound, open_minutes(problem, bound.tick, finish), finish <= bound.tick)
