"""What a search has come to: a plan, and how far any plan could still beat it."""

from dataclasses import dataclass

from runboard.plan.schedule.bounds import Bound
from runboard.plan.schedule.presence import open_ticks
from runboard.plan.schedule.problem import TICK, Plan, Problem


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
    gap = open_ticks(problem, finish) - open_ticks(problem, min(finish, bound.tick))
    return Improved(plan, bound, gap * TICK.total_seconds() / 60, finish <= bound.tick)
