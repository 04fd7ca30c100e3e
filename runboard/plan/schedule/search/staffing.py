"""Finding people for a plan that counts heads only: as it stands, or else with every start a little earlier or later.

A search that asks of watching only whether anybody is free is far faster than one that names who, and what it finds is
mostly short of nothing but a walk: a few minutes here and there make a plan of it.
"""

from dataclasses import replace

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import Plan, Problem, Span
from runboard.plan.schedule.search.model import Limits, Model, Stop, Wish
from runboard.plan.schedule.search.part import staffed

# By how much a start may move: five minutes.
_NEAR = 5 * 2


def with_people(
    problem: Problem, plan: Plan, wish: Wish, limits: Limits, stop: Stop | None = None
) -> tuple[Plan | None, float]:
    """A plan like ``plan`` that keeps the rules and ``wish``, and the seconds it took to look for it; None where there is
    none near. By one person a run first, which is sooner found; then with changes of watcher."""
    found = staffed(problem, plan)
    if found is not None and not broken(problem, found):
        return found, 0.0
    took = 0.0
    for watching in ("named", "by turns"):
        model = Model(problem, replace(wish, between=_near(plan), watching=watching))
        model.hint(plan)
        answer = model.solve(replace(limits, seconds=limits.seconds / 2), None, stop)
        took += answer.seconds
        if answer.plan is not None:
            return _settled(problem, answer.plan), took
    return None, took


def counts_heads(problem: Problem) -> bool:
    """Whether a plan that only counts heads is another question than one that names who watches."""
    return sum(bool(one.windows) for one in problem.people) > 1 and any(one.watched for one in problem.blocks)


def differ(problem: Problem) -> bool:
    """Whether some keep other hours, or may do other work, than others: then who watches may have to change."""
    there = {at for at, one in enumerate(problem.people) if one.windows}
    hours = {problem.people[at].windows for at in there}
    return len(hours) > 1 or any(there - set(one.people) for one in problem.blocks if one.hands)


def _near(plan: Plan) -> dict[int, Span]:
    return {one.block: (max(0, one.begins() - _NEAR), one.begins() + _NEAR + 1) for one in plan.placed}


def _settled(problem: Problem, plan: Plan) -> Plan:
    """Without changes of watcher that serve nothing: the search does not mind them."""
    if all(len(one.watchers) < 2 for one in plan.placed):
        return plan
    found = staffed(problem, plan)
    return found if found is not None and not broken(problem, found) else plan
