"""The planner beside the floor: a plan at once after every event that matters, and a better one from a child process.

Nobody waits for it. What it knows is in ``Workshop.planned``; pages are told when that is another one. A better plan is
taken only where it wins a window or five minutes, so that what people are offered does not jump about.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from functools import cached_property
from itertools import islice
from typing import Any

from runboard.floor.long_work import LongWork, Task
from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.plan.answer import Answer, answer, is_worth_telling, with_plan
from runboard.plan.clashes import clashes
from runboard.plan.estimates import Estimates, Kept, estimates_from
from runboard.plan.schedule.problem.nouns import Order, Plan, Problem
from runboard.plan.schedule.problem.worth import could_be_less_late, late_lines, lateness_of
from runboard.plan.schedule.search.bounds import Bound, bound
from runboard.plan.schedule.told.compared import Calmer
from runboard.plan.schedule.told.figures import Figures
from runboard.plan.schedule.told.holding import Holder, holder
from runboard.run.state import ShopState

WHAT = "plan"
# How long a search may take: what it finds in the first seconds is told at once.
SECONDS = 15.0
# With somebody in the shop a plan is made anew this often: what takes too long for today depends on the time.
AGAIN = timedelta(minutes=1)
# Of more blocks than this the child says what no plan can beat, first of all: it takes tenths of a second.
BOUND_HERE = 400
# Presses that leave what is still to be done as it is.
CHANGE_NOTHING = frozenset(
    ("watch checked", "alert claimed", "reminder answered", "note written", "card printed", "span answered",
     "checklist ticked", "lead called", "shown how", "texts placed", "restart answered", "server restarted")
)  # fmt: skip

# What a child is failed by that took more than its share: said by itself, or killed without a word.
OUT_OF_MEMORY = frozenset(("MemoryError", "died"))

# (order line, tick at which it is due, tick at which it is there).
LateLine = tuple[Order, int, int | None]
# A function for the child: (problem, plan, seconds, told) → (plan, bound).
Search = Callable[..., Any]


@dataclass(frozen=True)
class Planned:
    """The newest plan and what it offers, as of arrival ``seq`` of the log and a book's ``revision``, and the bound that no
    plan can beat. ``version`` counts the plans told of. ``calmer`` is what walking less costs, where that was seen."""

    seq: int
    revision: int
    answer: Answer
    estimates: Estimates
    bound: Bound | None = None
    version: int = 0
    calmer: Calmer | None = None

    @property
    def made_at(self) -> datetime:
        return self.answer.now

    @property
    def plan(self) -> Plan | None:
        return self.answer.plan

    @cached_property
    def late(self) -> tuple[LateLine, ...]:
        """The order lines that are late in it: read off once, and told with each state."""
        return () if self.plan is None else tuple(late_lines(self.answer.problem, self.plan))

    def is_older(self, workshop: Workshop) -> bool:
        """Whether the log or the book went on since."""
        return (self.seq, self.revision) != (workshop.ledger.last_seq, workshop.book.revision)


@dataclass(frozen=True)
class Figured:
    """A plan and its figures."""

    planned: Planned
    figures: Figures

    def is_of(self, planned: Planned) -> bool:
        """Whether these are the figures of that plan, however often it was told of since."""
        mine = self.planned
        return mine.plan is planned.plan and mine.answer.problem is planned.answer.problem


@dataclass(frozen=True)
class Shown:
    """A plan as a page shows it. ``is_older`` says that the log went on since; ``figures`` are None where none are made
    yet of any plan."""

    planned: Planned
    plan: Plan
    is_older: bool
    figures: Figures | None = None

    @property
    def problem(self) -> Problem:
        return self.planned.answer.problem

    @property
    def bound(self) -> Bound | None:
        return self.planned.bound

    @property
    def made_at(self) -> datetime:
        return self.planned.made_at


def latest(workshop: Workshop) -> Planned | None:
    """The newest plan; None where there is none yet, or nobody plans."""
    planned: Planned | None = workshop.planned
    return planned


def plan_at_once(workshop: Workshop, before: Planned | None = None, kept: Kept | None = None) -> Planned:
    """A plan of the shop as it stands now, without a search."""
    with workshop.lock:
        catch_up(workshop)
        state, book, seq = workshop.ledger.state, workshop.book, workshop.ledger.last_seq
    now = workshop.clock.now()
    estimates = estimates_from(state, book, kept)
    made = answer(state, book, now, estimates, before.answer if before else None)
    return Planned(seq, book.revision, made, estimates, None, before.version + 1 if before else 1)


@dataclass
class Planner:
    """``turn`` does what there is to do and never waits. ``seek`` runs in a child of ``work``; without one, plans are only
    those of the priority rules. ``told`` hears the log's last arrival whenever another plan is there. A search begins once
    nothing has happened for as long as ``quiet``: presses come in bursts."""

    workshop: Workshop
    work: LongWork
    seek: Search | None
    told: Callable[[int], None]
    seconds: float = SECONDS
    quiet: timedelta = timedelta(0)
    task: str = ""
    # A search of so many blocks has ended for want of memory: none as large is begun again by itself.
    too_large: int | None = None
    _kept: Kept = field(default_factory=dict)
    _searched: Planned | None = None
    _heard: Any = None
    _stopped: bool = False

    def turn(self) -> int:
        """Plan where something happened, hear what a search found, or begin one; answers how much was done."""
        with self.workshop.lock:
            catch_up(self.workshop)
        self._learn()
        planned = self.workshop.planned
        if planned is not None and planned.is_older(self.workshop):
            planned = self._passed_over(planned)
        if planned is None or planned.is_older(self.workshop) or self._is_time(planned):
            self._plan(planned)
            return 1
        return self._hear(planned) or self._seek(planned)

    def latest(self) -> Shown | None:
        """The newest plan of which the figures are there, else the newest; None where nothing is planned yet, or nothing can
        be. Pages read the figures and make none."""
        planned = latest(self.workshop)
        if planned is None or planned.plan is None:
            return None
        figured: Figured | None = self.workshop.figured
        if figured is None or figured.is_of(planned):
            figures = figured.figures if figured is not None else None
            return Shown(planned, planned.plan, planned.is_older(self.workshop), figures)
        older = figured.planned
        return Shown(older, older.plan or planned.plan, older.is_older(self.workshop), figured.figures)

    def search(self) -> Task | None:
        """The search that goes on, or went on last."""
        return self.work.look(self.task) if self.task else None

    def look_further(self) -> None:
        """Search once more, though nothing happened."""
        self._searched, self._stopped, self.too_large = None, False, None

    def stop(self) -> None:
        """Let the plan be as it is until something happens."""
        self._stopped = True
        if self.task:
            self.work.end(self.task)

    def gave_up(self) -> bool:
        """Whether no search is begun since one of no more blocks needed more memory than it may use."""
        planned = latest(self.workshop)
        most = self.too_large
        return most is not None and planned is not None and len(planned.answer.problem.blocks) >= most

    def _learn(self) -> None:
        task = self.search()
        if task is not None and task.failure is not None and task.failure.kind in OUT_OF_MEMORY and self._searched:
            self.too_large = len(self._searched.answer.problem.blocks)

    def _is_time(self, planned: Planned) -> bool:
        state, now = self.workshop.ledger.state, self.workshop.clock.now()
        return now - planned.made_at >= AGAIN and is_anybody_here(state, now)

    def _passed_over(self, planned: Planned) -> Planned:
        """The plan as one of the log as it is now, where nothing happened since that matters to it."""
        ledger = self.workshop.ledger
        fresh = list(islice(reversed(ledger.arrived.values()), ledger.last_seq - planned.seq))
        if planned.revision != self.workshop.book.revision or any(one.kind not in CHANGE_NOTHING for one in fresh):
            return planned
        return self._publish(replace(planned, seq=ledger.last_seq, version=planned.version + 1))

    def _plan(self, before: Planned | None) -> None:
        if self.task:
            if before is not None:
                self._hear(before)
                before = self.workshop.planned
            self.work.end(self.task)
        made = plan_at_once(self.workshop, before, self._kept)
        self.task, self._searched, self._heard, self._stopped = "", None, None, False
        if before is not None and (before.seq, before.revision) == (made.seq, made.revision):
            # Only time has passed: nothing is to be found that was not found before, and no plan can be done sooner.
            made = self._searched = replace(made, bound=_moved(before, made))
        self._publish(made)

    def _seek(self, planned: Planned) -> int:
        """Begin the search for a better plan, unless none is better."""
        plan = planned.plan
        if self.seek is None or self._searched is not None or self._stopped or plan is None or self.gave_up():
            return 0
        if self.workshop.clock.now() - planned.made_at < self.quiet:
            return 0
        problem = planned.answer.problem
        if planned.bound is None and len(problem.blocks) <= BOUND_HERE:
            planned = replace(planned, bound=bound(problem))
        self._searched = self.workshop.planned = planned
        is_proved = planned.bound is not None and planned.bound.tick >= planned.answer.finish
        if is_proved and not could_be_less_late(problem, plan):
            return 0
        task = self.work.start(WHAT, "", self.seek, problem, plan, self.seconds)
        if task is None:
            self._searched = None
            return 0
        self.task = task.id
        return 1

    def _hear(self, planned: Planned) -> int:
        """Take what the search has found since."""
        task = self.work.look(self.task) if self.task else None
        found = None if task is None else (task.result or task.latest)
        if found is None or found is self._heard or self._searched is None:
            return 0
        self._heard = found
        plan, limit = found
        problem, before = self._searched.answer.problem, planned.plan
        if problem is not planned.answer.problem or before is None:
            return 0
        planned = replace(planned, bound=limit or planned.bound)
        is_last = task is not None and bool(task.result)
        if plan is not None and is_worth_telling(problem, plan, before, is_last=is_last):
            self._publish(replace(planned, answer=with_plan(planned.answer, plan), version=planned.version + 1))
            return 1
        self.workshop.planned = planned
        return 0

    def _publish(self, planned: Planned) -> Planned:
        self.workshop.planned = planned
        self.told(planned.seq)
        return planned


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


def is_anybody_here(state: ShopState, now: datetime) -> bool:
    """Whether somebody has said that they are in the shop until later."""
    return any(one.until is not None and one.came_at is not None and one.until > now for one in state.people.values())


def holding(workshop: Workshop, shown: Shown, run: str = "") -> Holder | None:
    """What holds the plan, or the end of one run in it. What was said last stays unless another is clearly larger."""
    return _said(workshop, shown.problem, shown.plan, run, run)


def holding_with_change(workshop: Workshop, problem: Problem, plan: Plan, run: str) -> Holder | None:
    """What holds the end of a run in a plan that was only tried: what was last said of its changes, else of the plan as it
    is, stays unless another is clearly larger."""
    return _said(workshop, problem, plan, run, f"try|{run}", run, "")


def _said(workshop: Workshop, problem: Problem, plan: Plan, run: str, about: str, *before: str) -> Holder | None:
    kept: dict[str, tuple[Plan, Holder | None]] = workshop.kept.setdefault("holding", {})
    if about not in kept or kept[about][0] is not plan:
        last = next((kept[one][1] for one in (about, *before) if one in kept), None)
        kept[about] = (plan, holder(problem, plan, run, last.name if last is not None else ()))
    return kept[about][1]


def plan_record(planned: Planned, is_lead: bool = False) -> Mapping[str, Any]:
    """What a page is told of a plan: which log it is of, when it was made, and ``none`` where nothing can be planned. A lead,
    who can do something about it, is told the first of what no plan can hold. ``late`` are the order lines that will be."""
    told: dict[str, Any] = {"seq": planned.seq, "at": planned.made_at}
    if planned.plan is None:
        return {**told, "none": True}
    problem = planned.answer.problem
    late = [
        {"run": order.run, "line": order.line, "pieces": order.pieces, "due": problem.moment(due)}
        | ({} if there is None else {"there": problem.moment(there)})
        for order, due, there in planned.late
    ]
    if late:
        told["late"] = late
    clash = next(iter(clashes(planned.answer.problem.left_out)), None) if is_lead else None
    return told if clash is None else {**told, "clash": clash}
