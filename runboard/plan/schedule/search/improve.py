"""Making a plan better for some seconds, and saying how far any plan could still beat it: what a child process runs.

Priorities for the dispatch rule are searched for all along, from the plan at hand on: nothing wins so much so soon. Bounds come
early; the solver's model has its turns where a problem is short enough for it to win or to prove something: of a long one it
changes the plan at hand a part at a time. Then it looks for fewer walks, and a proof leaves it the time for that.

It keeps no clock of its own: who calls it may give one. A plan is told of only if the checker finds nothing broken and
it is better than the one at hand, so the worst that can come of it is the plan that was given.
"""

from collections.abc import Callable, Collection, Iterator
from dataclasses import replace

from runboard.plan.schedule.problem.hours import open_spans
from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.problem.people import walks_in
from runboard.plan.schedule.problem.worth import dated
from runboard.plan.schedule.rule.rule import NoPlace, warm
from runboard.plan.schedule.rule.wandering import Wandering
from runboard.plan.schedule.search.best import Best, Clock, Improved, Told
from runboard.plan.schedule.search.evenings import least_evenings
from runboard.plan.schedule.search.model import Model
from runboard.plan.schedule.search.solving import Aim, Solved, SolveLimits, Stop, Watching
from runboard.plan.schedule.search.staffing import counts_heads, differ, with_people
from runboard.plan.schedule.search.walks import WHOLE, WalksModel

# Of more blocks than this the whole is never given to the solver.
_VERY_LONG = 260
# Seconds of priorities before anything else, the least for a short problem; and the share of the time that they may take.
_FIRST, _FIRST_SHORT, _FIRST_SHARE = 1.0, 0.3, 0.1
# Counting evenings: a share of the time, or so many seconds.
_EVENINGS_SHARE, _EVENINGS_SECONDS = 0.2, 2.0
# Seconds of the model's first turns, and how much longer those of the next round are. Priorities have as long between them.
_TURN, _LONGER = 3.0, 3
# What is spent on finding people for a plan that only counts heads; and of the time on what could be sooner if nothing were due.
_PEOPLE_SECONDS, _FREE_SHARE = 4.0, 0.3
# Once nothing sooner is looked for: the share of the time that is kept for fewer walks, stays in one room, and goes without a
# better plan that end it.
_CALM_SHARE, _STAYS, _CALM_GOES = 0.15, 3, 4000
# Of what is left then the share for fewer walks, and of what that leaves for being early: a long plan needs most for the first.
_FEWER, _FEWER_SHORT = 0.8, 0.5
# By how many evenings the whole may end later for an order line to be in time.
_EVENINGS_LATER = 3
# Seconds for a go of the rule, and blocks that it places in one on a usual computer, compiled or not; seconds to make a model,
# for a block and a person: counted where no clock says it, so that a search is the same anywhere.
_GO, _BLOCKS_A_SECOND, _BLOCKS_PLAIN, _MAKING = 0.00004, 1_800_000, 15_000, 0.0004


def improve(
    problem: Problem,
    plan: Plan,
    seconds: float,
    told: Told,
    seed: int = 1,
    workers: int = 1,
    clock: Clock | None = None,
    stopped: Stop | None = None,
    near: Collection[int] = (),
) -> Improved:
    """The best plan found within so many seconds, never worse than ``plan``. ``told(done, total, latest)`` hears of each
    better one; a proof that none is done sooner ends it once fewer walks were looked for in the time that is left, and so does
    ``stopped`` at once. Seconds are those of ``clock``, or, without one, those that the solver counts and that other work takes
    on a usual computer. ``near`` are blocks where a change was: it is looked around them first."""
    limits = SolveLimits(seconds, workers, seed, is_counted=clock is None)
    search = _Search(problem, plan, told, limits, clock, stopped or Stop(), near)
    if problem.blocks:
        search.run()
    return search.latest()


class _Search(Best):
    """Everything that is worth a try, while time lasts."""

    def __init__(
        self,
        problem: Problem,
        plan: Plan,
        told: Told,
        limits: SolveLimits,
        clock: Clock | None,
        stop: Stop,
        near: Collection[int],
    ) -> None:
        super().__init__(problem, plan, limits.seconds, told, clock, stop)
        self.limits, self.near, self.is_long = limits, near, len(problem.blocks) > WHOLE
        self.wandering: Wandering | None = None
        self.answers: Iterator[tuple[int, Plan | None]] = iter(())
        self.each = 0.0

    def run(self) -> None:
        """One after the other: what wins most soonest comes first."""
        self.tell()
        self._wander(min(_FIRST if self.is_long else _FIRST_SHORT, self.total * _FIRST_SHARE))
        self._count_evenings()
        if len(self.problem.blocks) <= _VERY_LONG:
            self.seconds = self.total * (1 - _CALM_SHARE)
            self._race()
            self._leave_dues_aside()
            self.seconds = self.total
            self._walk_less()
        self._wander(self.seconds - self.used, _CALM_GOES if self.is_proved else None)
        if self.wandering is not None and self.wandering.goes:
            self.calmer = self.checked(self.wandering.calmer(self.plan))
        self.tell()

    def _wander(self, seconds: float, goes: int | None = None) -> None:
        """Other priorities, for so many seconds, or until so many goes have found nothing better."""
        until, idle = self.used + seconds, 0
        if self.is_over or seconds <= 0:
            return
        if self.wandering is None:
            self.each = _GO + len(self.problem.blocks) / (_BLOCKS_A_SECOND if warm() else _BLOCKS_PLAIN)
            self.wandering = Wandering(self.problem, self.limits.seed, self.plan, self.near)
            self.answers = self.wandering.answers()
        try:
            for some, plan in self.answers:
                self.counted += some * self.each
                idle += some
                if plan is not None:
                    self.take(plan)
                    idle = 0
                if self.is_over or self.used >= until or (goes is not None and idle >= goes):
                    return
        except NoPlace:  # the plan at hand is the only one that is known
            pass

    def _count_evenings(self) -> None:
        if self.is_over or self.is_proved:
            return
        limits = self._limits(max(_EVENINGS_SECONDS, self.seconds * _EVENINGS_SHARE))
        tick, took = least_evenings(
            self.problem, self.chains, self.bound.tick, self.finish + 1, limits, self.same, self.stop
        )
        self.counted += took
        self.lift(tick, "evenings")

    def _race(self) -> None:
        """In turn, each longer than the last: by anybody, which bounds, where it matters who watches; from nothing; from the
        plan at hand. Between them priorities, where the whole is too long for the model to be sure of it."""
        each, turn = _TURN, 0
        entries: list[tuple[Watching, bool]] = [("named", self.is_long), ("named", not self.is_long)]
        if counts_heads(self.problem):
            entries.insert(0, ("anyone", True))
            entries += [("by turns", True)] if differ(self.problem) else []
        while not self.is_over and not self.is_proved:
            self._be_less_late(each)
            self._solve(*entries[turn % len(entries)], each)
            if self.is_long and not self.is_proved:
                self._wander(each)
            turn += 1
            each *= _LONGER if turn % len(entries) == 0 else 1

    def _be_less_late(self, seconds: float) -> None:
        """Order lines in time first, or less late, though the whole may end some evenings later for it."""
        if self.is_over or self.late <= self.least_late:
            return
        closes = [closes for _, closes in open_spans(self.problem) if closes > self.finish]
        latest = max(self.finish, min([2 * self.finish, *closes[:_EVENINGS_LATER][-1:]]))
        watching: Watching = "by turns" if differ(self.problem) else "named"
        wish = Aim(1 + latest, self.bound.tick, watching=watching, late=self.late, least="late")
        model = self._model(wish, is_hinted=True)
        answer = self._answer(model, seconds, self.take)
        if model.is_bound:
            self.least_late = max(self.least_late, min(answer.bound, self.late))

    def _leave_dues_aside(self) -> None:
        """Once nothing better is left: what could be done sooner if nothing were due."""
        if not self.is_over and self.finish > self.bound.tick:
            watching: Watching = "anyone" if counts_heads(self.problem) else "named"
            model = self._model(Aim(self.finish, self.bound.tick, watching=watching))
            answer = self._answer(model, self.seconds * _FREE_SHARE)
            if model.is_bound:
                self.lift(answer.bound, "search")

    def _solve(self, watching: Watching, is_hinted: bool, seconds: float) -> None:
        if self.is_over or self.finish <= self.least:
            return
        wish, is_around = self._wish(watching), self.is_long and is_hinted
        if is_around:  # only a plan that the model allows can be changed a part at a time
            wish = replace(wish, before=self.finish + 1)
        model = self._model(wish, is_hinted)
        answer = self._answer(model, seconds, None if watching == "anyone" else self.take, is_around)
        if model.is_bound and model.wish.late is None:
            self.lift(answer.bound, "search")
        elif model.is_bound and self.least < answer.bound <= self.finish:
            self.bound = replace(self.bound, with_dues=answer.bound)
            self.tell()
        is_sooner = answer.plan is not None and answer.plan.finish(self.problem) < self.finish
        if answer.plan is not None and is_sooner and watching == "anyone" and not self.is_over:
            limits = self._limits(_PEOPLE_SECONDS)
            found, took = with_people(self.problem, answer.plan, self._wish("named"), limits, self.stop)
            self.counted += took + self._making()
            if found is not None:
                self.take(found)

    def _walk_less(self) -> None:
        """As soon done with the fewest walks, and then with nothing left to wait without need."""
        if self.is_over:
            return
        stays = _STAYS + sum(opens < self.finish for opens, _ in open_spans(self.problem))
        wish = replace(self._wish("by turns" if differ(self.problem) else "named"), before=self.finish + 1)
        calm = self.plan if self.plan.finish(self.problem) <= self.finish else self.soonest
        for is_early in (False, True):
            most = walks_in(self.problem, calm) if is_early else None
            model = WalksModel(self.problem, wish, stays, most)
            model.hint(calm)
            seconds = (self.seconds - self.used) * (_FEWER if self.is_long else _FEWER_SHORT)
            calm = self._answer(model, seconds, is_around=self.is_long).plan or calm

    def _model(self, wish: Aim, is_hinted: bool = False) -> Model:
        model = Model(self.problem, wish, self.chains, self.same)
        if is_hinted:
            model.hint(self.soonest)
        return model

    def _wish(self, watching: Watching) -> Aim:
        """To be done sooner, and no later for the order lines where some are due before the finish."""
        is_due = any(due < self.finish for _, due in dated(self.problem))
        return Aim(self.finish, self.least, watching=watching, late=self.late if is_due else None)

    def _answer(
        self, model: Model, seconds: float, seen: Callable[[Plan], object] | None = None, is_around: bool = False
    ) -> Solved:
        limits = replace(self._limits(seconds), around=is_around and self.limits.workers == 1)
        answer = model.solve(limits, seen, self.stop)
        self.counted += answer.seconds + self._making()
        self.limits = replace(self.limits, seed=self.limits.seed + 1)
        if answer.plan is not None and model.wish.watching != "anyone":
            self.take(answer.plan)
        return answer

    def _making(self) -> float:
        """What making a model takes, which the solver's own seconds leave out."""
        return _MAKING * len(self.problem.blocks) * len(self.problem.people)

    def _limits(self, seconds: float) -> SolveLimits:
        return replace(self.limits, seconds=max(0.05, min(seconds, self.seconds - self.used)))
