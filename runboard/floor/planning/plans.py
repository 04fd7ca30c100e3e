"""The newest plan as the floor and the pages meet it: what is known of it, what is told of it, and one made at once.

It stands in ``Workshop.planned``, where ``floor.planner`` puts it.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import cached_property
from typing import Any, Literal

from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.plan.answer import Answer, answer
from runboard.plan.clashes import clashes, in_the_way
from runboard.plan.estimates import Estimates, MeasuredRuns, estimates_from
from runboard.plan.schedule.problem.nouns import LeftOut, OrderDue, Plan, Problem
from runboard.plan.schedule.problem.worth import late_lines
from runboard.plan.schedule.search.bounds import Bound
from runboard.plan.schedule.told.compared import Calmer
from runboard.plan.schedule.told.effort import finish_of
from runboard.plan.schedule.told.figures import Figures
from runboard.plan.schedule.told.holding import Holder, holder
from runboard.run.fold.state import ShopState

# Why there is no plan: more is open than is planned at once; one is looked for; it is proved that there is none; none was
# found, and that proves nothing.
WhyNone = Literal["too much", "looking", "none", "not found"]

# (order line, tick at which it is due, tick at which it is there).
LateLine = tuple[OrderDue, int, int | None]


@dataclass(frozen=True)
class Planned:
    """The newest plan and what it offers, as of arrival ``seq`` of the log and a book's ``revision``, and the bound that no
    plan can beat. ``version`` counts the plans told of, and ``calmer`` is what walking less costs, where that was seen. Where
    there is no plan, ``none`` says why, and ``clash`` are the blocks that are proved to be in each other's way."""

    seq: int
    revision: int
    answer: Answer
    estimates: Estimates
    bound: Bound | None = None
    version: int = 0
    calmer: Calmer | None = None
    none: WhyNone = "looking"
    clash: tuple[int, ...] = ()

    @property
    def made_at(self) -> datetime:
        return self.answer.now

    @property
    def plan(self) -> Plan | None:
        return self.answer.plan

    @property
    def why_none(self) -> WhyNone | None:
        """Why there is no plan; None where there is one."""
        if self.plan is not None:
            return None
        return "too much" if self.answer.is_too_much else self.none

    @cached_property
    def late(self) -> tuple[LateLine, ...]:
        """The order lines that are late in it: read off once, and told with each state."""
        return () if self.plan is None else tuple(late_lines(self.answer.problem, self.plan))

    @cached_property
    def done(self) -> Mapping[str, int]:
        """The tick at which each run is done in it."""
        if self.plan is None:
            return {}
        problem = self.answer.problem
        return {run: finish_of(problem, self.plan, run) for run in {block.run for block in problem.blocks}}

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
class ShownPlan:
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


def plan_at_once(workshop: Workshop, before: Planned | None = None, kept: MeasuredRuns | None = None) -> Planned:
    """A plan of the shop as it stands now, without a search."""
    with workshop.lock:
        catch_up(workshop)
        state, book, seq = workshop.ledger.state, workshop.book, workshop.ledger.last_seq
    now = workshop.clock.now()
    estimates = estimates_from(state, book, kept)
    made = answer(state, book, now, estimates, before.answer if before else None)
    return Planned(seq, book.revision, made, estimates, None, before.version + 1 if before else 1)


def is_anybody_here(state: ShopState, now: datetime) -> bool:
    """Whether somebody has said that they are in the shop until later."""
    return any(
        person.until is not None and person.came_at is not None and person.until > now
        for person in state.people.values()
    )


def holding(workshop: Workshop, shown: ShownPlan, run: str = "") -> Holder | None:
    """What holds the plan, or the end of one run in it. What was said last stays unless another is clearly larger."""
    return _said(workshop, shown.problem, shown.plan, run, run)


def holding_with_change(workshop: Workshop, problem: Problem, plan: Plan, run: str) -> Holder | None:
    """What holds the end of a run in a plan that was only tried: what was last said of its changes, else of the plan as it
    is, stays unless another is clearly larger."""
    return _said(workshop, problem, plan, run, f"try|{run}", run, "")


def _said(workshop: Workshop, problem: Problem, plan: Plan, run: str, about: str, *before: str) -> Holder | None:
    kept: dict[str, tuple[Plan, Holder | None]] = workshop.kept.setdefault("holding", {})
    if about not in kept or kept[about][0] is not plan:
        last = next((kept[key][1] for key in (about, *before) if key in kept), None)
        kept[about] = (plan, holder(problem, plan, run, last.name if last is not None else ()))
    return kept[about][1]


def plan_record(planned: Planned, is_lead: bool = False) -> Mapping[str, Any]:
    """What a page is told of a plan: which log it is of, when it was made, and where there is none, why: ``looking`` for one,
    ``unfound``, or ``none``, which is proved or more than is planned at once. A lead, who can do something about it, is told
    the first of what no plan can hold. ``done`` says when each run is, ``late`` are the order lines that will be."""
    told: dict[str, Any] = {"seq": planned.seq, "at": planned.made_at}
    problem = planned.answer.problem
    if planned.plan is None:
        told[{"looking": "looking", "not found": "unfound"}.get(planned.why_none or "", "none")] = True
    else:
        told["done"] = {run: _minute(problem, tick) for run, tick in planned.done.items()}
        if late := [_late_record(problem, *line) for line in planned.late]:
            told["late"] = late
    clash = next(iter(clashes(cannot_hold(planned))), None) if is_lead else None
    return told if clash is None else {**told, "clash": clash}


def cannot_hold(planned: Planned) -> tuple[LeftOut, ...]:
    """What the plan cannot hold; where it is proved that there is none, what is in the way of that."""
    problem = planned.answer.problem
    return problem.left_out if planned.plan is not None else in_the_way(planned.answer.state, problem, planned.clash)


def _late_record(problem: Problem, order: OrderDue, due: int, there: int | None) -> dict[str, Any]:
    found = {"run": order.run, "line": order.line, "pieces": order.pieces, "due": _minute(problem, due)}
    return found if there is None else {**found, "there": _minute(problem, there)}


def _minute(problem: Problem, tick: int) -> datetime:
    """The moment of a tick, to the nearest minute: a plan begins at any second, and what is due at 17:00 stays due then."""
    return (problem.moment(tick) + timedelta(seconds=30)).replace(second=0, microsecond=0)
