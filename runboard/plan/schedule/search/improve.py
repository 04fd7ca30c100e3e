"""Making a plan better for some seconds, and saying how far any plan could still beat it: what a child process runs.

It keeps no clock of its own: who calls it may give one. A plan is told of only if the checker finds nothing broken and
it is better than the one at hand, so the worst that can come of it is the plan that was given.
"""

from collections.abc import Callable
from dataclasses import replace
from functools import partial
from typing import Any

from runboard.plan.schedule.problem.alike import alike
from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.hours import Chains
from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.problem.worth import Worth, lateness_of, soonest_ends, worth
from runboard.plan.schedule.rule.greedy import NoPlace
from runboard.plan.schedule.rule.wandering import wander
from runboard.plan.schedule.search.bounds import Bound, bound
from runboard.plan.schedule.search.evenings import least_evenings
from runboard.plan.schedule.search.fewer_walks import WALKS_SECONDS, WALKS_SHARE, calm, with_fewer_walks
from runboard.plan.schedule.search.improved import Improved, improved
from runboard.plan.schedule.search.less_late import kept_late, less_late, whatever_is_due
from runboard.plan.schedule.search.model import Answer, Limits, Model, Stop, Watching, Wish
from runboard.plan.schedule.search.part import WHOLE
from runboard.plan.schedule.search.renamed import renamed
from runboard.plan.schedule.search.staffing import counts_heads, differ, with_people
from runboard.plan.schedule.search.usual_seconds import of_a_go, of_making

__all__ = ["Improved", "improve"]

Told = Callable[..., Any]
Clock = Callable[[], float]

# Of more blocks than this the whole is never searched at once.
_VERY_LONG = 260
_TENTHS = 10
# The share of the time for the dispatch rule's priorities, in a long plan and a short one. They come first: nothing is
# better as soon, and somebody waits for it.
_WANDER_SHARE, _WANDER_SHARE_SHORT = 0.25, 0.03
_EVENINGS_SHARE, _EVENINGS_SECONDS = 0.2, 2.0
# Counting heads first, in a long plan: the share of the time; and what is spent on finding people for what that finds.
_HEADS_SHARE, _PEOPLE_SECONDS = 0.25, 4.0
# Being less late, in a long plan: the share of the time; and of what could be done sooner if nothing were due.
_LATE_SHARE, _FREE_SHARE = 0.2, 0.3


def improve(
    problem: Problem,
    plan: Plan,
    seconds: float,
    told: Told,
    seed: int = 1,
    workers: int = 1,
    clock: Clock | None = None,
    stopped: Stop | None = None,
) -> Improved:
    """The best plan found within so many seconds, never worse than ``plan``, and then one with fewer walks that is as good.
    ``told(done, total, latest)`` hears of each better one, and of that last; a proof ends it sooner. Seconds are those of
    ``clock``, or, without one, those that the solver counts and that other work takes on a usual computer. Once ``stopped``
    is asked it answers soon with what it has."""
    search = _Search(problem, plan, seconds, told, seed, workers, clock, stopped or Stop())
    if problem.blocks:
        search.run()
        search.walk_less()
    return search.latest()


class _Search:
    """A plan and a bound, and the seconds that are left to bring them together."""

    def __init__(
        self,
        problem: Problem,
        plan: Plan,
        seconds: float,
        told: Told,
        seed: int,
        workers: int,
        clock: Clock | None,
        stopped: Stop,
    ) -> None:
        self.stopped = stopped
        self.problem, self.told, self.total = problem, told, seconds
        self.seconds = seconds * (1 - WALKS_SHARE)
        self.seed, self.workers = seed, workers
        self.clock, self.began, self.counted = clock, clock() if clock else 0.0, 0.0
        self.is_long = len(problem.blocks) > WHOLE
        self.chains, self.same = Chains(problem), alike(problem)
        self.plan = self.given = plan
        again = renamed(plan, self.same)
        if not broken(problem, again):
            self.plan = again
        self.bound = bound(problem)
        self.least_late = Worth(problem).late(soonest_ends(problem, self.chains))

    def latest(self) -> Improved:
        """How things stand."""
        return improved(self.problem, self.plan, self.bound)

    @property
    def finish(self) -> int:
        """When the plan at hand ends."""
        return self.plan.finish(self.problem)

    @property
    def least(self) -> int:
        """No better plan is through before this: none at all, or none that is no later for the order lines."""
        return max(self.bound.tick, self.bound.with_dues)

    @property
    def late(self) -> int:
        """By how many ticks order lines are late in the plan at hand."""
        return lateness_of(self.problem, self.plan)

    @property
    def used(self) -> float:
        """The seconds that are gone."""
        return self.clock() - self.began if self.clock else self.counted

    def spend(self, seconds: float) -> None:
        """Count what somebody else's work took."""
        self.counted += seconds

    @property
    def is_over(self) -> bool:
        """Whether time is up, or nothing can be better."""
        return (
            self.stopped.asked
            or self.used >= self.seconds
            or (self.finish <= self.least and self.late <= self.least_late)
        )

    def run(self) -> None:
        """Everything that is worth a try, while time lasts and nothing is proved."""
        self._tell()
        self._wander(self.seconds * (_WANDER_SHARE if self.is_long else _WANDER_SHARE_SHORT))
        self._count_evenings()
        if self.is_long:
            self._be_less_late(self.seconds * _LATE_SHARE)
            if counts_heads(self.problem) and not self.is_over:
                self._solve("anyone", self.seconds * _HEADS_SHARE)
        if len(self.problem.blocks) > _VERY_LONG:
            self._wander(self.seconds)
        self._race()
        self._leave_dues_aside()

    def walk_less(self) -> None:
        """With what time was kept back, or some of what a proof left: as soon done, with fewer walks."""
        if self.stopped.asked:
            return
        self.seconds = min(self.total, self.used + WALKS_SECONDS)
        calmest = min(self.given, self.plan, key=partial(calm, self.problem))
        limits = self._limits(WALKS_SECONDS)
        self.plan = with_fewer_walks(self.problem, calmest, lambda: self.seconds - self.used, self.spend, limits)
        self._tell()

    # what is found

    def take(self, plan: Plan) -> bool:
        """Keep a plan that breaks nothing and is better."""
        plan = renamed(plan, self.same)
        if worth(self.problem, plan) >= worth(self.problem, self.plan) or broken(self.problem, plan):
            return False
        self.plan = plan
        self._tell()
        return True

    def raise_bound(self, tick: int, rule: str) -> None:
        """Keep a bound that is better. One above a plan that keeps the rules would be a fault, and says nothing."""
        if self.bound.tick < tick <= self.finish:
            self.bound = Bound(tick, rule, with_dues=self.bound.with_dues)
            self._tell()

    def raise_with_dues(self, tick: int) -> None:
        """The same of a bound on plans that are no later for the order lines."""
        if self.least < tick <= self.finish:
            self.bound = replace(self.bound, with_dues=tick)
            self._tell()

    def _tell(self) -> None:
        done = int(min(self.used, self.total) * _TENTHS)
        self.told(done, int(self.total * _TENTHS), self.latest())

    # how

    def _count_evenings(self) -> None:
        seconds = min(self.seconds, max(_EVENINGS_SECONDS, self.seconds * _EVENINGS_SHARE))
        limits = Limits(seconds, self.workers, self.seed)
        tick, took = least_evenings(self.problem, self.chains, self.bound.tick, self.finish + 1, limits, self.same)
        self.raise_bound(tick, "evenings")
        self.spend(took)

    def _wander(self, seconds: float) -> None:
        """Other priorities for the dispatch rule: nothing wins so much so soon on a long plan."""
        until, self.seed = self.used + seconds, self.seed + 1
        if self.is_over:
            return
        each = of_a_go(self.problem)  # before the search is made: this has the rule compiled
        try:
            for goes, plan in wander(self.problem, self.seed):
                self.spend(goes * each)
                if plan is not None:
                    self.take(plan)
                if self.is_over or self.used >= until:
                    return
        except NoPlace:  # the plan at hand is the only one that is known
            pass

    def _race(self) -> None:
        """In turn, each longer than the last: beginning at the plan at hand, and from nothing; and, where a machine may be
        watched by turns, by anybody, which bounds."""
        each, turn = 3.0 if self.is_long else 4.0, 0
        entries = ["cold", "hinted"]
        if counts_heads(self.problem):
            entries = ["anyone", *entries, *(["by turns"] if differ(self.problem) else [])]
        while not self.is_over:
            self._be_less_late(each)
            self._solve(entries[turn % len(entries)], each)
            turn += 1
            if turn % len(entries) == 0:
                each *= 4

    def _be_less_late(self, seconds: float) -> None:
        """Order lines in time first, or less late: the finish comes after that."""
        if self.is_over or self.late <= self.least_late:
            return
        model = Model(self.problem, less_late(self.problem, self.plan, self.bound.tick), self.chains, self.same)
        model.hint(self.plan)
        answer = self._answer(model, seconds, self.take)
        if answer.plan is not None:
            self.take(answer.plan)
        if model.is_bound:
            self.least_late = max(self.least_late, min(answer.bound, self.late))

    def _leave_dues_aside(self) -> None:
        """Once nothing better is left: what could be done sooner if nothing were due."""
        if self.finish > self.bound.tick and self.used < self.seconds:
            wish = whatever_is_due(self.problem, self.plan, self.bound.tick)
            model = Model(self.problem, wish, self.chains, self.same)
            answer = self._answer(model, self.seconds * _FREE_SHARE)
            if model.is_bound:
                self.raise_bound(answer.bound, "search")

    def _solve(self, entry: str, seconds: float) -> None:
        watching: Watching = "anyone" if entry == "anyone" else "by turns" if entry == "by turns" else "named"
        if self.finish <= self.least:
            return
        model = Model(self.problem, self._wish(watching), self.chains, self.same)
        if entry != "cold":
            model.hint(self.plan)
        self._hear(model, self._answer(model, seconds, self.take if entry != "anyone" else None))

    def _wish(self, watching: Watching) -> Wish:
        return Wish(self.finish, self.least, watching=watching, late=kept_late(self.problem, self.plan))

    def _answer(self, model: Model, seconds: float, seen: Callable[[Plan], object] | None = None) -> Answer:
        answer = model.solve(self._limits(seconds), seen, self.stopped)
        self.spend(answer.seconds + of_making(self.problem, len(self.problem.blocks)))
        self.seed += 1
        return answer

    def _hear(self, model: Model, answer: Answer) -> None:
        if answer.plan is not None and model.wish.watching != "anyone":
            self.take(answer.plan)
        if model.is_bound and model.wish.late is None:
            self.raise_bound(answer.bound, "search")
        elif model.is_bound:
            self.raise_with_dues(answer.bound)
        if answer.plan is not None and model.wish.watching == "anyone":
            self._give_people(answer.plan)

    def _give_people(self, plan: Plan) -> None:
        """A plan that counts heads only, made one of named people."""
        limits = self._limits(_PEOPLE_SECONDS)
        found, took = with_people(self.problem, plan, self._wish("named"), limits)
        self.spend(took + of_making(self.problem, len(plan.placed)))
        if found is not None:
            self.take(found)

    def _limits(self, seconds: float) -> Limits:
        left = max(0.05, min(seconds, self.seconds - self.used))
        return Limits(left, workers=self.workers, seed=self.seed)
