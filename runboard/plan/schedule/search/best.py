"""The best plan that a search has found so far, what bounds it, and the seconds that are left."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from runboard.plan.schedule.problem.alike import Alike, alike
from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.hours import Chains, open_minutes
from runboard.plan.schedule.problem.nouns import Placed, Plan, Problem
from runboard.plan.schedule.problem.people import walks_in
from runboard.plan.schedule.problem.worth import Worth, ends_of, lateness_of, soonest_ends
from runboard.plan.schedule.search.bounds import Bound, bound
from runboard.plan.schedule.search.solving import Stop

Told = Callable[..., Any]
Clock = Callable[[], float]
Value = tuple[int, ...]

_TENTHS = 10


@dataclass(frozen=True)
class Improved:
    """A plan with what bounds it. ``gap`` is in minutes of the hours in which anybody is there; ``is_proved`` where no
    plan can be finished sooner, however late it is for order lines. ``calmer`` is a plan with clearly fewer walks that is
    done later, where one was seen. What no plan can hold stands in the problem's ``left_out``."""

    plan: Plan
    bound: Bound
    gap: float
    is_proved: bool
    calmer: Plan | None = None


class Best:
    """The best plan so far, the one that is done ``soonest``, and a bound. ``told`` hears of each better one. Seconds are those
    of ``clock``, or, without one, what is ``counted``."""

    def __init__(
        self, problem: Problem, plan: Plan, seconds: float, told: Told, clock: Clock | None, stop: Stop
    ) -> None:
        self.problem, self.told, self.total, self.seconds = problem, told, seconds, seconds
        self.clock, self.stop = clock, stop
        self.began, self.counted = clock() if clock else 0.0, 0.0
        self.worth, self.chains, self.same = Worth(problem), Chains(problem), alike(problem)
        self.bound = bound(problem)
        self.least_late = self.worth.late(soonest_ends(problem, self.chains))
        self.plan = self.soonest = plan
        self.value = self._value(plan)
        again = renamed(plan, self.same)
        if not broken(problem, again):
            self.plan = self.soonest = again
        self.calmer: Plan | None = None

    def latest(self) -> Improved:
        """How things stand."""
        finish = self.plan.finish(self.problem)
        gap = open_minutes(self.problem, self.bound.tick, finish)
        return Improved(self.plan, self.bound, gap, finish <= self.bound.tick, self.calmer)

    @property
    def finish(self) -> int:
        """When the plan that is done soonest ends."""
        return self.soonest.finish(self.problem)

    @property
    def least(self) -> int:
        """No better plan is through before this: none at all, or none that is no later for the order lines."""
        return max(self.bound.tick, self.bound.with_dues)

    @property
    def late(self) -> int:
        """How late order lines are in it."""
        return lateness_of(self.problem, self.soonest)

    @property
    def used(self) -> float:
        """The seconds that are gone."""
        return self.clock() - self.began if self.clock else self.counted

    @property
    def is_over(self) -> bool:
        """Whether time is up, or no more is asked for."""
        return self.stop.asked or self.used >= self.seconds

    @property
    def is_proved(self) -> bool:
        """Whether no plan is less late or done sooner."""
        return self.finish <= self.least and self.late <= self.least_late

    def take(self, plan: Plan) -> None:
        """Keep a plan that breaks nothing and is better, or done sooner."""
        plan = renamed(plan, self.same)
        value = self._value(plan)
        is_sooner = (value[0], value[2]) < (self.late, self.finish)
        if (value >= self.value and not is_sooner) or broken(self.problem, plan):
            return
        if is_sooner:
            self.soonest = plan
        if value < self.value:
            self.plan, self.value = plan, value
            self.tell()

    def _value(self, plan: Plan) -> Value:
        """What a plan is worth; then everything as early as it can be, which leaves nobody idle beside work that is ready."""
        ends = ends_of(self.problem, plan)
        return *self.worth.of(ends, walks_in(self.problem, plan)), sum(ends)

    def checked(self, plan: Plan | None) -> Plan | None:
        return None if plan is None or broken(self.problem, plan) else plan

    def lift(self, tick: int, rule: str) -> None:
        """Keep a bound that is better. One above a plan that keeps the rules would be a fault, and says nothing."""
        if self.bound.tick < tick <= self.finish:
            self.bound = Bound(tick, rule, with_dues=self.bound.with_dues)
            self.tell()

    def tell(self) -> None:
        done = int(min(self.used, self.total) * _TENTHS)
        self.told(done, int(self.total * _TENTHS), self.latest())


def renamed(plan: Plan, same: Alike) -> Plan:
    """The plan in which the first of each group of alike blocks comes first, and so on: only names change places, so it ends
    when it did, and trays come in ascending order where nothing else decides."""
    placed = list(plan.placed)
    for at in same.ordered:
        group = same.groups[at]
        here = sorted((plan.placed[block] for block in group), key=lambda placed: (placed.start, placed.block))
        for block, was in zip(group, here, strict=True):
            placed[block] = Placed(block, was.start, was.setup, was.hands, was.watchers)
    return Plan(tuple(placed), plan.source)
