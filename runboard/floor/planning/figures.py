"""The one maker of the figures that pages show of a plan: once for each plan, in a child process, never for a request."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import timedelta
from typing import Any

from runboard.floor.long_work import LongWork
from runboard.floor.planning.plans import Figured, Planned, latest
from runboard.floor.workshop import Workshop
from runboard.plan.estimates import spread_in
from runboard.plan.schedule.problem.nouns import Plan
from runboard.plan.schedule.rule.rule import is_at_hand
from runboard.plan.schedule.told.figures import FiguresAsked
from runboard.plan.schedule.told.forecast import spread_table
from runboard.run.fold.state import ShopState

WHAT = "figures"


@dataclass
class Figuring:
    """``turn`` does what there is to do and never waits. ``make(problem, plan, asked)`` runs in a child of ``work`` and
    answers ``Figures``; while it works on one plan others may come, and the newest of them is next. It begins once nothing
    has happened for as long as ``quiet``, and once ``is_ready``: by the rule that is not compiled yet it takes ten times as
    long."""

    workshop: Workshop
    work: LongWork
    make: Callable[..., Any]
    quiet: timedelta = timedelta(0)
    is_ready: Callable[[], bool] = lambda: True
    _task: str = ""
    _of: Planned | None = None
    _tried: tuple[Plan, bool] | None = None

    def turn(self) -> int:
        """Take the figures that are there, or have the newest plan's made; answers how much was done."""
        return self._hear() or self._begin()

    def _hear(self) -> int:
        planned, task = self._of, self.work.look(self._task)
        if planned is None or (task is not None and not task.is_over):
            return 0
        self._of = None
        if task is None or task.result is None:  # the log says why; another plan is another try
            return 0
        publish(self.workshop, Figured(planned, task.result))
        return 1

    def _begin(self) -> int:
        planned = latest(self.workshop)
        if self._of is not None or planned is None or planned.plan is None or not self.is_ready():
            return 0
        if self._tried is not None and self._tried[0] is planned.plan and self._tried[1] == is_at_hand():
            return 0
        if self.workshop.clock.now() - planned.made_at < self.quiet:
            return 0
        task = self.work.start(
            WHAT, "", self.make, planned.answer.problem, planned.plan, asked_of(self.workshop, planned)
        )
        if task is None:
            return 0
        self._task, self._of, self._tried = task.id, planned, (planned.plan, is_at_hand())
        return 1


def asked_of(workshop: Workshop, planned: Planned) -> FiguresAsked:
    """What the figures of a plan are made of, as plain records."""
    state, problem = planned.answer.state, planned.answer.problem
    spread = spread_table(spread_in(state, planned.estimates), problem)
    figured: Figured | None = workshop.figured
    before = figured.figures.holder if figured is not None else None
    return FiguresAsked(spread, trays_begun(state), before.name if before is not None else (), is_at_hand())


def trays_begun(state: ShopState) -> frozenset[tuple[str, str]]:
    """The trays (run, tray) whose first step is over or under way."""
    firsts = {run.id: run.route.steps[0].key for run in state.open_runs()}
    trays = ((run.id, tray) for run in state.open_runs() for tray in run.trays.values())
    return frozenset((run, tray.id) for run, tray in trays if set(tray.at) - {firsts[run]} or tray.good or tray.busy)


def publish(workshop: Workshop, figured: Figured) -> None:
    """From now on pages show these. What holds the plan is what a tried change is compared with."""
    workshop.figured = figured
    kept = workshop.kept.setdefault("holding", {})
    kept[""] = (figured.planned.plan, figured.figures.holder)
