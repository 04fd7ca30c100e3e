"""The plan of one data folder, made at once and then made better: for a command, whether the shop is served or not."""

import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from runboard.app import Settings, open_workshop
from runboard.floor.plans import Planned, plan_at_once
from runboard.floor.warm import catch_up, find_run
from runboard.floor.workshop import Workshop
from runboard.plan.answer import Answer, with_plan
from runboard.plan.schedule.problem.nouns import Plan, Problem, of_run
from runboard.plan.schedule.rule.rule import warm
from runboard.plan.schedule.search.bounds import Bound, bound
from runboard.plan.schedule.told.forecast import Forecast, forecast
from runboard.run.state import RunState
from runboard.store.holding import hold
from runboard.web.plan_outlook import all_cores, spread_of

# done, total, and the plan so far.
Told = Callable[[int, int, Plan], None]


class CannotPlan(Exception):
    """There is no plan; the text says why, and what to do."""


@dataclass(frozen=True)
class RunPlan:
    """A run's plan among all that is open, what no plan of it can beat, and how it may turn out."""

    run: RunState
    answer: Answer
    bound: Bound
    outlook: Forecast | None

    @property
    def problem(self) -> Problem:
        return self.answer.problem

    @property
    def plan(self) -> Plan:
        return self.answer.plan or Plan(())


def make_plan(data: Path, run: str, seconds: float, told: Told) -> RunPlan:
    """The best plan found within so many ``seconds`` for the run named, '' for the one that is open.

    ``told(done, total, plan)`` hears how far it is. Stopped by the keyboard it answers with the best so far. Raises
    ``CannotPlan``, and Refused for a run that there is not.
    """
    warm()
    with hold(data):
        store, workshop = open_workshop(Settings(data))
        try:
            found = _run(workshop, run)
            planned = plan_at_once(workshop)
        finally:
            store.close()
    if planned.answer.is_too_much:
        raise CannotPlan("more is open than can be planned at once. Finish or end a run.")
    if planned.answer.plan is None:
        raise CannotPlan("no plan was found that fits into people's hours beside what is begun.")
    answer, limit = _better(planned.answer, seconds, told)
    if any(block.run != found.id for block in answer.problem.blocks):
        limit = bound(of_run(answer.problem, found.id))
    return RunPlan(found, answer, limit, _outlook(planned, answer, found.id))


def _better(answer: Answer, seconds: float, told: Told) -> tuple[Answer, Bound]:
    if answer.plan is None or not answer.problem.blocks or seconds <= 0:
        return answer, bound(answer.problem)
    from runboard.plan.schedule.search.improve import improve  # loads the solver

    latest: list[Any] = []

    def tell(done: int, total: int, found: Any) -> None:
        latest[:] = [found]
        told(done, total, found.plan)

    try:
        best = improve(answer.problem, answer.plan, seconds, tell, clock=time.monotonic)
    except KeyboardInterrupt:
        if not latest:
            raise
        best = latest[0]
    return (answer if best.plan is answer.plan else with_plan(answer, best.plan)), best.bound


def _outlook(planned: Planned, answer: Answer, run: str) -> Forecast | None:
    if not any(block.run == run for block in answer.problem.blocks) or answer.plan is None:
        return None
    with all_cores() as cores:
        return forecast(answer.problem, answer.plan, spread=spread_of(planned), run=run, cores=cores)


def _run(workshop: Workshop, named: str) -> RunState:
    """The run named, else the one that is open."""
    if named:
        found = find_run(workshop, named)
        if found.state != "open":
            raise CannotPlan(f"{found.name} is {found.state}: nothing of it is planned any more.")
        return found
    catch_up(workshop)
    runs = list(workshop.ledger.state.open_runs())
    if not runs:
        raise CannotPlan("no run is open. Open one on the Plan page, or name a run.")
    if len(runs) > 1:
        listed = ", ".join(f"{run.id} ({run.name})" for run in runs)
        raise CannotPlan(f"several runs are open: {listed}. Say which one.")
    return runs[0]
