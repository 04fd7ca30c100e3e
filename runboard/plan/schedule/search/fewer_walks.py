"""Fewer walks in a plan that is done as soon, and then nothing left to wait without need.

Whoever follows a plan minds each walk from room to room, and the finish does not: so walks are counted once nothing sooner is
looked for. The whole of a short plan is planned anew, of a longer one an evening or two at a time, with all else as it
stands.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import Plan, Problem, Span
from runboard.plan.schedule.problem.people import places_of
from runboard.plan.schedule.problem.worth import worth
from runboard.plan.schedule.search.model import Limits, Wish
from runboard.plan.schedule.search.part import WHOLE, FewWalks, Part, WalksModel, evenings_of

# The share of a search's time that is kept back for this, and the most seconds of it.
WALKS_SHARE, WALKS_SECONDS = 0.15, 5.0
# Evenings at a time, in turn.
_WIDTHS = (1, 2)
# Stays in one room: some for each evening, and some more. The share of what is left that one try may take.
_STAYS, _STAYS_AN_EVENING = 3, 1
_SHARE = 0.6

# What a plan is worth, and the sum of all begins.
Calm = tuple[int, int, int, int]


def calm(problem: Problem, plan: Plan) -> Calm:
    """What plans are compared by once no sooner one is looked for; the less, the better."""
    begins = sum(one.begins() for one in plan.placed)
    return *worth(problem, plan), begins


def with_fewer_walks(
    problem: Problem, plan: Plan, left: Callable[[], float], spend: Callable[[float], None], limits: Limits
) -> Plan:
    """A plan that is no worse by ``calm``, looked for until no seconds are ``left``. ``spend`` hears what each try took; of
    a try's ``limits`` the seconds are the most that it may take."""
    best, is_least = plan, False
    for try_ in _tries(problem, plan):
        seconds = min(limits.seconds, left() * _SHARE)
        if seconds <= 0:
            break
        if is_least and not try_.is_early:
            continue
        found, is_all, took = _Asked(problem, best, try_).answer(replace(limits, seconds=seconds))
        spend(took)
        is_least = is_least or (try_.is_whole and is_all)
        if found is not None and calm(problem, found) < calm(problem, best) and not broken(problem, found):
            best = found
    return best


@dataclass(frozen=True)
class _Try:
    """A stretch of the plan that is planned anew: for few walks, or for early begins at no more walks."""

    span: Span
    is_early: bool = False
    is_whole: bool = False


def _tries(problem: Problem, plan: Plan) -> Iterator[_Try]:
    last = plan.finish(problem) + 1
    opens = [0, *(span[0] for span in evenings_of(problem, plan)[1:])]
    if len(problem.blocks) <= WHOLE:
        yield _Try((0, last), is_whole=True)
    for width in _WIDTHS:
        for at in range(max(1, len(opens) - width + 1)):
            yield _Try((opens[at], (opens[at + width :] or [last])[0]))
        for one, closes in pairwise([*opens, last]):
            yield _Try((one, closes), is_early=True)


@dataclass(frozen=True)
class _Asked:
    """A try at a plan."""

    problem: Problem
    plan: Plan
    try_: _Try

    def answer(self, limits: Limits) -> tuple[Plan | None, bool, float]:
        """A plan with the stretch planned anew, whether none is better, and the seconds it took."""
        part = Part(self.problem, self.plan, *self.try_.span)
        if not part.blocks:
            return None, True, 0.0
        model = WalksModel(part.problem, self._wish(part), self._few())
        model.hint(part.plan_of_part())
        answer = model.solve(limits)
        plan = None if answer.plan is None else part.with_part(answer.plan)
        return plan, answer.is_all and plan is not None, answer.seconds

    def _wish(self, part: Part) -> Wish:
        takes_over = any(len(self.plan.placed[block].watchers) > 1 for block in part.blocks)
        between = {at: self._no_later(block, part.between[at]) for at, block in enumerate(part.blocks)}
        before = self.plan.finish(self.problem) + 1
        return Wish(before, between=between, watching="by turns" if takes_over else "named")

    def _no_later(self, at: int, span: Span) -> Span:
        """So that no order line is later: a load that ends by the first due moment of its run, or when it did."""
        block = self.problem.blocks[at]
        dues = [order.due for order in self.problem.orders if order.run == block.run and order.due is not None]
        if not dues or not block.last:
            return span
        latest = max(min(dues) - block.length, self.plan.placed[at].begins())
        return span[0], min(span[1], latest + 1)

    def _few(self) -> FewWalks:
        opens, closes = self.try_.span
        evenings = [one for one in evenings_of(self.problem, self.plan) if opens < one[1] and one[0] < closes]
        rows = [self._rooms(person) for person in range(len(self.problem.people))]
        before, after = (tuple(row[at] for row in rows) for at in (0, -1))
        known = [[room for room in row if room >= 0] for row in rows]
        most = sum(one != other for row in known for one, other in pairwise(row))
        stays = _STAYS + _STAYS_AN_EVENING * len(evenings)
        return FewWalks(before, after, stays, most if self.try_.is_early else None)

    def _rooms(self, person: int) -> list[int]:
        """The rooms in which somebody is: before the stretch, in it, and after it."""
        opens, closes = self.try_.span
        places = places_of(self.problem, self.plan, person)
        before = [self.problem.people[person].room, *(room for start, room, _ in places if start < opens)][-1]
        within = [room for start, room, _ in places if opens <= start < closes]
        after = next((room for start, room, _ in places if start >= closes), -1)
        return [before, *within, after]
