"""Finding people for a plan that counts heads only: as it stands, or else with every start a little earlier or later.

A search that asks of watching only whether anybody is free is far faster than one that names who, and what it finds is
mostly short of nothing but a walk: a few minutes here and there make a plan of it.
"""

from dataclasses import replace

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import Plan, Problem, Span
from runboard.plan.schedule.search.model import Model
from runboard.plan.schedule.search.solving import Aim, SolveLimits, Stop

# By how much a start may move: five minutes.
_NEAR = 5 * 2
# What a change of watcher, other hands than the plan's, and eyes that are not those of whoever loaded count for.
_CHANGE, _HANDS, _EYES = 20, 3, 1


def staffed(problem: Problem, plan: Plan) -> Plan | None:
    """The plan with every start as it is, hands and watchers chosen anew: as few changes of watcher as can be, then as few
    other hands. None where those who are there cannot do it so. The caller checks it."""
    between = {placed.block: (placed.begins(), placed.begins() + 1) for placed in plan.placed}
    wish = Aim(plan.finish(problem) + 1, between=between, watching="by turns", least="nothing")
    model = Model(problem, wish)
    costs = [_CHANGE * literal for change in model.people.changes.values() for literal in change.second.values()]
    for placed in plan.placed:
        block = problem.blocks[placed.block]
        loads = block.by if block.begun else placed.hands
        for weight, by, who in ((_HANDS, model.people.hands, placed.hands), (_EYES, model.people.eyes, loads)):
            some = by.get(placed.block, {}).items()
            costs += [weight * literal for person, literal in some if literal is not None and person != who]
    model.model.minimize(sum(costs))
    model.hint(plan)
    return model.solve(SolveLimits(20, work=2)).plan


def with_people(
    problem: Problem, plan: Plan, wish: Aim, limits: SolveLimits, stop: Stop | None = None
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
    return sum(bool(person.windows) for person in problem.people) > 1 and any(block.watched for block in problem.blocks)


def differ(problem: Problem) -> bool:
    """Whether some keep other hours, or may do other work, than others: then who watches may have to change."""
    there = {at for at, person in enumerate(problem.people) if person.windows}
    hours = {problem.people[at].windows for at in there}
    return len(hours) > 1 or any(there - set(block.people) for block in problem.blocks if block.hands)


def _near(plan: Plan) -> dict[int, Span]:
    return {placed.block: (max(0, placed.begins() - _NEAR), placed.begins() + _NEAR + 1) for placed in plan.placed}


def _settled(problem: Problem, plan: Plan) -> Plan:
    """Without changes of watcher that serve nothing: the search does not mind them."""
    if all(len(placed.watchers) < 2 for placed in plan.placed):
        return plan
    found = staffed(problem, plan)
    return found if found is not None and not broken(problem, found) else plan
