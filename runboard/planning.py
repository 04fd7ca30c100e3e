"""The plan of one data folder, made at once and then made better: for a command, whether the shop is served or not."""

import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from threading import Timer

from runboard.app import Settings, open_workshop
from runboard.floor.planning.plans import Planned, plan_at_once
from runboard.floor.warm import catch_up, find_run
from runboard.floor.workshop import Workshop
from runboard.plan.answer import Answer, with_plan
from runboard.plan.clashes import in_the_way
from runboard.plan.schedule.problem.nouns import Plan, Problem, of_run
from runboard.plan.schedule.rule.rule import warm
from runboard.plan.schedule.search.bounds import Bound, bound
from runboard.plan.schedule.told.forecast import Forecast, forecast
from runboard.plan.search import Found, search
from runboard.run.fold.state import RunState
from runboard.store.holding import hold
from runboard.web.plan.outlook import all_cores, spread_of

# What is kept back of the time for saying how it may turn out: seconds a block, on a slow computer.
LAST_SECONDS = 0.0008
# For any plan at all, where none is at hand and no time was given.
COLD_SECONDS = 5.0
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


def make_plan(data: Path, run: str, seconds: float, told: Told, began: float | None = None) -> RunPlan:
    """The best plan found for the run named, '' for the one that is open, within so many ``seconds`` since ``began``, which
    is read off the clock that only goes on: all of the answer is to be there by then, so that the search has what coming up
    and saying how it may turn out leave of it, and a quarter of it at least.

    ``told(done, total, plan)`` hears how far it is. Stopped by the keyboard it answers with the best so far. Raises
    ``CannotPlan``, and Refused for a run that there is not.
    """
    began = time.monotonic() if began is None else began
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
    problem = planned.answer.problem
    left = seconds - (time.monotonic() - began) - len(problem.blocks) * LAST_SECONDS
    answer, limit = _better(planned.answer, max(left, seconds / 4), told)
    if any(block.run != found.id for block in problem.blocks):
        limit = bound(of_run(problem, found.id))
    return RunPlan(found, answer, limit, _outlook(planned, answer, found.id))


def _better(answer: Answer, seconds: float, told: Told) -> tuple[Answer, Bound]:
    """A better plan, or any where there is none, and what none can beat."""
    problem = answer.problem
    if answer.plan is not None and (not problem.blocks or seconds <= 0):
        return answer, bound(problem)
    latest = Found(answer.plan)

    def tell(done: int, total: int, found: Found | None = None) -> None:
        nonlocal latest
        latest = found or latest
        if latest.plan is not None:
            told(done, total, latest.plan)

    try:
        latest = search(
            problem, answer.plan, seconds or COLD_SECONDS, (), (), tell, _AfterSeconds(seconds), time.monotonic
        )
    except KeyboardInterrupt:
        if latest.plan is None:
            raise
    if latest.plan is None:
        raise CannotPlan(_why_none(latest, answer, seconds))
    made = answer if latest.plan is answer.plan else with_plan(answer, latest.plan)
    return made, latest.bound or bound(problem)


@dataclass(frozen=True)
class _AfterSeconds:
    """Has a search asked to stop when its time is up, whatever it is at."""

    seconds: float

    @contextmanager
    def calls(self, ask: Callable[[], object]) -> Iterator[None]:
        timer = Timer(self.seconds or COLD_SECONDS, ask)
        timer.daemon = True
        timer.start()
        try:
            yield
        finally:
            timer.cancel()


def _why_none(found: Found, answer: Answer, seconds: float) -> str:
    if not found.is_impossible:
        return f"no plan was found in {seconds:.0f} seconds, though there may be one. Give it longer with --seconds."
    said = "no plan fits into people's hours beside what is begun."
    steps = dict.fromkeys(str(one.facts["step"]) for one in in_the_way(answer.state, answer.problem, found.clash))
    return f"{said} What has no place left: {', '.join(steps)}." if steps else said


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
