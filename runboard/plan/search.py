"""What the planner has done in child processes: the solver's search, a plan's figures, a change tried, the first compiling
of the dispatch rule.

All would hold up a server that answers phones, and the solver is loaded in the child and nowhere else.
"""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.rule.rule import warm
from runboard.plan.schedule.search.bounds import Bound
from runboard.plan.schedule.told.compared import Compared, Side, compared
from runboard.plan.schedule.told.figures import Asked, Figures, figures_of
from runboard.plan.schedule.told.forecast import Spread

Found = tuple[Plan, Bound]
Clock = Callable[[], float]


def search(
    problem: Problem, plan: Plan, seconds: float, told: Callable[..., None], clock: Clock | None = None
) -> Found:
    """(plan, bound) after at most so many seconds of ``clock``: never worse than ``plan``. Each better one is told of on
    the way.

    Only plain records are answered: reading the solver's own would load it where they are read.
    """
    from runboard.plan.schedule.search.improve import improve

    def tell(done: int, total: int, latest: Any = None) -> None:
        told(done, total, None if latest is None else (latest.plan, latest.bound))

    found = improve(problem, plan, seconds, tell, clock=clock)
    return found.plan, found.bound


def make_figures(problem: Problem, plan: Plan, asked: Asked, told: Callable[..., None]) -> Figures:
    """The figures of a plan, by the compiled rule where the server has it too."""
    if asked.is_many:
        warm()
    return figures_of(problem, plan, asked)


def compare(
    now: Problem, changed: Problem, run: str, spread: Spread, is_many: bool, told: Callable[..., None]
) -> Compared:
    """Both plans of a run, as things are and with a change, without their problems: whoever asks has those."""
    if is_many:
        warm()
    found = compared(now, changed, run, spread, None)
    return replace(found, before=_light(found.before), after=_light(found.after))


def _light(side: Side | None) -> Side | None:
    return None if side is None else replace(side, problem=replace(side.problem, blocks=(), left_out=()))


def compile_rule(told: Callable[..., None]) -> bool:
    """Compile the dispatch rule and keep it for every later process; False where there is no compiler."""
    return warm()
