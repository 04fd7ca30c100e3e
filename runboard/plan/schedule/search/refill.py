"""Making a long plan shorter: a few evenings at a time are planned anew so that less is left for later ones.

What a whole plan is too large for, its parts are not: with all else as it stands, some evenings are filled with as much as
they hold, what has most to come after it first. Filled from the first evening to the last, a plan comes to need fewer.
"""

from runboard.plan.schedule.problem.conflicts import Doing, cliques, ticks_of
from runboard.plan.schedule.problem.domains import before_long_waits
from runboard.plan.schedule.problem.nouns import Plan, Problem, Span
from runboard.plan.schedule.problem.presence import open_spans
from runboard.plan.schedule.search.cpsat import Early, Limits, Model, Wish
from runboard.plan.schedule.search.part import Part

# How much more the work that led to a long wait is worth once it is through.
_TIMES = 3


def evenings_of(problem: Problem, plan: Plan) -> tuple[Span, ...]:
    """The hours up to the plan's finish, those less than six hours apart taken as one."""
    found: list[Span] = []
    finish = plan.finish(problem)
    for opens, closes in open_spans(problem):
        if opens >= finish:
            break
        if found and opens - found[-1][1] < 6 * 120:
            found[-1] = (found[-1][0], closes)
        else:
            found.append((opens, closes))
    return tuple(found)


def weights_of(problem: Problem) -> dict[int, int]:
    """What it is worth to have a block done: its ticks of what people have most of; and for the last before a long wait, all
    the work that led to it, several times: what needs a night after it must not wait for the next."""
    heaviest = _heaviest(problem)
    ticks = [ticks_of(problem, at, heaviest) for at in range(len(problem.blocks))]
    waits = before_long_waits(problem)
    more = _TIMES * sum(ticks) // len(waits) if waits else 0
    return {
        at: 1 + ticks[at] + (more if at in waits else 0) for at, block in enumerate(problem.blocks) if not block.begun
    }


def _heaviest(problem: Problem) -> frozenset[Doing]:
    found = cliques(problem)
    work = [sum(ticks_of(problem, at, one) for at in range(len(problem.blocks))) for one in found]
    return found[work.index(max(work))] if found else frozenset()


def refilled(
    problem: Problem, plan: Plan, opens: int, closes: int, limits: Limits, weights: dict[int, int]
) -> tuple[Plan, float]:
    """The plan with what begins between two ticks planned anew, and the seconds it took. The caller checks it.

    Less of it is left at the end of each evening in between; where it is the last of the plan, it ends sooner instead.
    """
    part = Part(problem, plan, opens, closes)
    until = max((plan.end(problem, block) for block in part.blocks), default=0)
    if until >= plan.finish(problem):
        wish = Wish(until, between=part.between)
    else:
        ticks = tuple(span[0] for span in open_spans(problem) if opens < span[0] < closes)
        some = {at: weights[block] for at, block in enumerate(part.blocks) if block in weights}
        wish = Wish(until + 1, between=part.between, early=Early(ticks, some))
    model = Model(part.problem, wish)
    model.hint(part.plan_of_part())
    answer = model.solve(limits)
    return (part.with_part(answer.plan) if answer.plan else plan), answer.seconds
