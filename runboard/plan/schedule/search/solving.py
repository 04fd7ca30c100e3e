"""One solve: what it is asked for, how long it may take, how it is stopped from another thread, and what it came to."""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any, Literal

from ortools.sat.python import cp_model

from runboard.plan.schedule.problem.nouns import Plan, Span

# By one person from start to end; with one change of watcher; or by whoever is free: nobody is named, so such a plan is one
# only once it is staffed, but its bound holds.
Watching = Literal["named", "by turns", "anyone"]

# What the solver counts in a second on a usual computer.
WORK_A_SECOND = 0.3


@dataclass(frozen=True)
class Aim:
    """What a model is to look for: a finish before ``before``, and not before ``at_least``, which is known already.
    ``between`` narrows when blocks may begin. ``late`` is by how much order lines may be late, as ``Worth.late`` counts it;
    None: nobody asks. ``least`` is what is to be least: the finish, how late order lines are, or nothing: any plan will do."""

    before: int
    at_least: int = 0
    between: dict[int, Span] = field(default_factory=dict)
    watching: Watching = "named"
    late: int | None = None
    least: Literal["finish", "late", "nothing"] = "finish"


@dataclass(frozen=True)
class SolveLimits:
    """How long a solve may take. ``work`` is the solver's own measure, which is the same on every computer; ``is_counted``:
    the seconds are those that it comes to on a usual one. ``in_order``: what can begin first is begun first, as a
    dispatcher would: sooner at any plan of many blocks. ``around``: what is hinted is changed a part at a time, which one
    worker else never does, and nothing is proved but what is seen at once."""

    seconds: float
    workers: int = 1
    seed: int = 1
    work: float | None = None
    is_counted: bool = False
    in_order: bool = False
    around: bool = False


@dataclass(frozen=True)
class Solved:
    """What a solve came to: a plan, a bound on what was asked for, whether everything was tried; and the seconds it took."""

    plan: Plan | None
    bound: int
    is_all: bool
    seconds: float


class Stop:
    """Ends a solve from another thread: ``ask`` returns at once, and the solve that was given this ends within some
    hundredths of a second with what it has. Once asked, no solve begins: other loops look at ``asked`` between their goes.
    ``ask`` may be called again and again, before a solve, in it and after it; a search takes a new one for each problem.
    """

    def __init__(self) -> None:
        self.asked = False
        self.ends: Callable[[], object] | None = None

    def ask(self) -> None:
        """End what goes on, and begin nothing more."""
        self.asked = True
        ends = self.ends
        if ends is not None:
            ends()


def solved(
    model: cp_model.CpModel,
    limits: SolveLimits,
    stop: Stop | None,
    seen: cp_model.CpSolverSolutionCallback | None = None,
) -> tuple[cp_model.CpSolver, Any]:
    """The solver after its work, and what it says of that."""
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = limits.workers
    solver.parameters.random_seed = limits.seed
    if limits.is_counted:
        solver.parameters.max_deterministic_time = limits.seconds * WORK_A_SECOND
    else:
        solver.parameters.max_time_in_seconds = limits.seconds
    if limits.work is not None:
        solver.parameters.max_deterministic_time = limits.work
    if limits.in_order:
        solver.parameters.search_branching = cp_model.FIXED_SEARCH
    solver.parameters.use_lns_only = limits.around
    if stop is None:
        return solver, solver.solve(model, seen)
    stop.ends = solver.stop_search
    # What was asked for before the solver was ready to hear is heard with its first bound.
    solver.best_bound_callback = lambda _: solver.stop_search() if stop.asked else None
    status = solver.solve(model, seen)
    stop.ends = None
    return solver, status


def took(solver: cp_model.CpSolver, limits: SolveLimits) -> float:
    """The seconds that a solve took, by the measure of its limits."""
    return solver.deterministic_time / WORK_A_SECOND if limits.is_counted else solver.wall_time
