"""The planner beside the floor: a plan at once after every event that matters, and a better one from a child process.

Nobody waits for it. What it knows is in ``Workshop.planned``; pages are told when that is another one. A better plan is
taken only where it makes less late, wins a window or five minutes, or ends a search, so that what people are offered does not
jump about. Where none is found at once, one is looked for, and only a proof says that there is none.
"""

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from itertools import islice
from typing import Any

from runboard.floor.long_work import KeptWork, TaskSeen
from runboard.floor.planning.plans import Figured, Planned, ShownPlan, WhyNone, is_anybody_here, latest, plan_at_once
from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.plan.answer import is_worth_telling, with_plan, with_prices
from runboard.plan.carrying_over import changed
from runboard.plan.estimates import MeasuredRuns
from runboard.plan.schedule.problem.nouns import Plan
from runboard.plan.schedule.problem.worth import could_be_less_late, lateness_of
from runboard.plan.schedule.search.bounds import Bound, bound
from runboard.plan.schedule.told.compared import calmer_than

# How long a search may take: what it finds in the first seconds is told at once.
SECONDS = 15.0
# With somebody in the shop a plan is made anew this often: what takes too long for today depends on the time.
AGAIN = timedelta(minutes=1)
# A plan made anew only because time has passed is searched once more where it is through so much later.
DRIFT = timedelta(minutes=5)
# Of more blocks than this the child says what no plan can beat, first of all: it takes tenths of a second.
BOUND_HERE = 400
# Presses that leave what is still to be done as it is.
CHANGE_NOTHING = frozenset(
    ("watch checked", "alert claimed", "reminder answered", "note written", "card printed", "span answered",
     "checklist ticked", "lead called", "shown how", "texts placed", "restart answered", "server restarted",
     "change adopted", "change judged")
)  # fmt: skip

# What a child is failed by that took more than its share: said by itself, or killed without a word.
OUT_OF_MEMORY = frozenset(("MemoryError", "died"))


@dataclass
class Planner:
    """``turn`` does what there is to do and never waits. ``child`` searches: it is given (problem, plan or None, seconds, blocks
    at which something has happened, whose prices) and tells of ``Found``; without one, plans are only those of the priority
    rules. ``told`` hears the log's last arrival
    whenever another plan is there. A search begins once nothing has happened for as long as ``quiet``."""

    workshop: Workshop
    child: KeptWork | None
    told: Callable[[int], None]
    seconds: float = SECONDS
    quiet: timedelta = timedelta(0)
    task: str = ""
    # A search of so many blocks has ended for want of memory: none as large is begun again by itself.
    too_large: int | None = None
    _kept: MeasuredRuns = field(default_factory=dict)
    _searched: Planned | None = None
    _near: tuple[int, ...] = ()
    _heard: Any = None
    _stopped: bool = False

    def turn(self) -> int:
        """Plan where something happened, hear what a search found, or begin one; answers how much was done."""
        with self.workshop.lock:
            catch_up(self.workshop)
        planned = self.workshop.planned
        if planned is not None and planned.is_older(self.workshop):
            planned = self._passed_over(planned)
        if planned is None or planned.is_older(self.workshop) or self._is_time(planned):
            self._plan(planned)
            return 1
        return self._hear(planned) or self._seek(planned)

    def latest(self) -> ShownPlan | None:
        """The newest plan of which the figures are there, else the newest; None where nothing is planned yet, or nothing can
        be. Pages read the figures and make none."""
        planned = latest(self.workshop)
        if planned is None or planned.plan is None:
            return None
        figured: Figured | None = self.workshop.figured
        if figured is None or figured.is_of(planned):
            figures = figured.figures if figured is not None else None
            return ShownPlan(planned, planned.plan, planned.is_older(self.workshop), figures)
        older = figured.planned
        return ShownPlan(older, older.plan or planned.plan, older.is_older(self.workshop), figured.figures)

    def search(self) -> TaskSeen | None:
        """The search that goes on, or went on last."""
        return self.child.look(self.task) if self.child is not None and self.task else None

    def look_further(self) -> None:
        """Search once more, though nothing happened."""
        self._searched, self._stopped, self.too_large = None, False, None

    def stop(self) -> None:
        """Let the plan be as it is until something happens."""
        self._stopped = True
        self._end()

    def gave_up(self) -> bool:
        """Whether no search is begun since one of no more blocks needed more memory than it may use."""
        planned = latest(self.workshop)
        most = self.too_large
        return most is not None and planned is not None and len(planned.answer.problem.blocks) >= most

    def _is_time(self, planned: Planned) -> bool:
        state, now = self.workshop.ledger.state, self.workshop.clock.now()
        return now - planned.made_at >= AGAIN and is_anybody_here(state, now)

    def _passed_over(self, planned: Planned) -> Planned:
        """The plan as one of the log as it is now, where nothing happened since that matters to it."""
        ledger = self.workshop.ledger
        fresh = list(islice(reversed(ledger.arrived.values()), ledger.last_seq - planned.seq))
        if planned.revision != self.workshop.book.revision or any(event.kind not in CHANGE_NOTHING for event in fresh):
            return planned
        return self._publish(replace(planned, seq=ledger.last_seq))

    def _plan(self, before: Planned | None) -> None:
        """A plan at once. The search for the last one goes on until the next begins: what it found meanwhile is taken over."""
        if before is not None:
            self._hear(before)
            before = self.workshop.planned
        self._end()
        made = plan_at_once(self.workshop, before, self._kept)
        searched = self._searched
        self._near = changed(made.answer.problem, before.answer.problem) if before is not None else ()
        self.task, self._searched, self._heard, self._stopped = "", None, None, False
        if before is not None and (before.seq, before.revision) == (made.seq, made.revision):
            # Only time has passed: what was proved stays so, and no plan can be done sooner.
            made = replace(made, bound=_moved(before, made), none=before.none, clash=_renamed(before, made))
            if searched is not None and made.plan is not None and _end_of(made) - _end_of(searched) < DRIFT:
                self._searched = searched
        self._publish(made)

    def _seek(self, planned: Planned) -> int:
        """Begin the search for a better plan, or for any, unless none is better."""
        if self._searched is not None or self._stopped or planned.answer.is_too_much:
            return 0
        if self.child is None or self.gave_up():
            return self._finds_none(planned)
        if self.workshop.clock.now() - planned.made_at < self.quiet:
            return 0
        problem, plan = planned.answer.problem, planned.plan
        if plan is not None and planned.bound is None and len(problem.blocks) <= BOUND_HERE:
            planned = self.workshop.planned = replace(planned, bound=bound(problem))
        self._searched = planned
        if plan is not None and _is_proved(planned, plan):
            return 0
        task = self.child.give(problem, plan, self.seconds, self._near, planned.answer.unsure)
        if task is None:
            self._searched = None
            return 0
        self.task = task.id
        return 1

    def _hear(self, planned: Planned) -> int:
        """Take what the search has found since."""
        task = self.search()
        if task is None or self._searched is None or self._searched.answer.problem is not planned.answer.problem:
            return 0
        if task.failure is not None and task.failure.kind in OUT_OF_MEMORY:
            self.too_large = len(planned.answer.problem.blocks)
        found = task.result or task.latest
        if found is None:
            return self._finds_none(planned) if task.is_over else 0
        if found is self._heard:
            return 0
        self._heard = found
        is_last = task.result is not None
        if found.plan is None:
            return self._finds_none(planned, found.clash, is_proved=found.is_impossible)
        planned = replace(planned, bound=found.bound or planned.bound)
        is_better = self._is_better(planned, found.plan, is_last=is_last)
        if is_better:
            made = with_plan(planned.answer, found.plan, found.prices or {})
            planned = replace(planned, answer=made, none="looking", clash=())
        elif found.prices:
            planned = replace(planned, answer=with_prices(planned.answer, found.prices))
        if planned.plan is not None:
            planned = replace(planned, calmer=calmer_than(planned.answer.problem, planned.plan, found.calmer))
        if is_better or found.prices:
            self._publish(planned)
            return 1
        self.workshop.planned = planned
        return 0

    def _is_better(self, planned: Planned, plan: Plan, *, is_last: bool) -> bool:
        before = planned.plan
        return before is None or is_worth_telling(planned.answer.problem, plan, before, is_last=is_last)

    def _finds_none(self, planned: Planned, clash: tuple[int, ...] = (), *, is_proved: bool = False) -> int:
        """Say that there is no plan, or that none was found, where that is news."""
        none: WhyNone = "none" if is_proved else "not found"
        if planned.plan is not None or (planned.none, planned.clash) == (none, clash):
            return 0
        self._publish(replace(planned, none=none, clash=clash))
        return 1

    def _end(self) -> None:
        if self.child is not None and self.task:
            self.child.end(self.task)

    def _publish(self, planned: Planned) -> Planned:
        before: Planned | None = self.workshop.planned
        planned = self.workshop.planned = replace(planned, version=before.version + 1 if before is not None else 1)
        self.told(planned.seq)
        return planned


def _is_proved(planned: Planned, plan: Plan) -> bool:
    is_proved = planned.bound is not None and planned.bound.tick >= planned.answer.finish
    return is_proved and not could_be_less_late(planned.answer.problem, plan)


def _end_of(planned: Planned) -> datetime:
    return planned.answer.problem.moment(planned.answer.finish)


def _renamed(before: Planned, made: Planned) -> tuple[int, ...]:
    """What clashes, where it is still the same blocks."""
    same = len(before.answer.problem.blocks) == len(made.answer.problem.blocks)
    return before.clash if same else ()


def _moved(before: Planned, planned: Planned) -> Bound | None:
    """The bound of the same log some time ago, as ticks from now. What was said of plans no later for the order lines than
    that one says nothing beside a later one."""
    if before.bound is None:
        return None
    passed = before.answer.problem.tick(planned.answer.problem.start)
    is_later = _lateness(planned) > _lateness(before)
    with_dues = 0 if is_later else max(0, before.bound.with_dues - passed)
    return replace(before.bound, tick=max(0, before.bound.tick - passed), with_dues=with_dues)


def _lateness(planned: Planned) -> int:
    return 0 if planned.plan is None else lateness_of(planned.answer.problem, planned.plan)
