"""Fewer walks in a plan that is done as soon, and then nothing left to wait without need.

Whoever follows a plan minds each walk from room to room, and the finish does not: so walks are counted once nothing sooner is
looked for. A short plan is planned anew; of a longer one, planning some evenings anew won nothing.
"""

from collections.abc import Callable
from dataclasses import replace

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.hours import open_spans
from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.problem.people import walks_in
from runboard.plan.schedule.problem.worth import lateness_of, worth
from runboard.plan.schedule.search.model import Limits, Watching, Wish
from runboard.plan.schedule.search.part import WHOLE, FewWalks, WalksModel

# The share of a search's time that is kept back for this, and the most seconds of it.
WALKS_SHARE, WALKS_SECONDS = 0.15, 5.0
# Stays in one room: one for each evening, and some more. The share of what is left that one try may take.
_STAYS, _SHARE = 3, 0.6

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
    best, finish = plan, plan.finish(problem)
    if len(problem.blocks) > WHOLE:
        return plan
    watching: Watching = "by turns" if any(len(one.watchers) > 1 for one in plan.placed) else "named"
    rooms, anywhere = tuple(one.room for one in problem.people), (-1,) * len(problem.people)
    stays = _STAYS + sum(opens < finish for opens, _ in open_spans(problem))
    wish = Wish(finish + 1, watching=watching, late=lateness_of(problem, plan))
    for is_early in (False, True):
        seconds = min(limits.seconds, left() * _SHARE)
        if seconds <= 0:
            break
        most = walks_in(problem, best) if is_early else None
        model = WalksModel(problem, wish, FewWalks(rooms, anywhere, stays, most))
        model.hint(best)
        answer = model.solve(replace(limits, seconds=seconds))
        spend(answer.seconds)
        found = answer.plan
        if found is not None and calm(problem, found) < calm(problem, best) and not broken(problem, found):
            best = found
    return best
