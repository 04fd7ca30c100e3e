"""Order lines with due moments, in sentences: which will be late, and what being in time costs the whole."""

from collections.abc import Callable, Iterator, Sequence
from itertools import groupby

from babel.lists import format_list

from runboard.plan.schedule.bounds import Bound
from runboard.plan.schedule.effort import finish_of
from runboard.plan.schedule.lateness import dated, late_lines, lateness_of, soonest_ends, there_at
from runboard.plan.schedule.presence import open_minutes
from runboard.plan.schedule.problem import Order, Plan, Problem
from runboard.run.state import Order as OrderLine
from runboard.web.plan_words import Names, bound_sentence

# When so many pieces of a run are there; None where they are not made.
There = Callable[[Order], int | None]


def whom_of(line: OrderLine) -> str:
    """What an order line is called: its text, and for whom."""
    return " ".join(part for part in (line.text, line.whom) if part) or line.line


def late_sentences(names: Names, plan: Plan, run: str = "") -> list[str]:
    """'12 for Market will be late: due Fri 18:00, there Sat 10:40 …', the earliest due first; of one run where it is named.
    Lines that are due at one moment are one sentence."""
    problem = names.problem
    there, soonest = _there(problem, plan), _soonest(problem)
    late = [(order, due) for order, due, _ in late_lines(problem, plan) if run in ("", order.run)]
    return [
        _late(names, due, [order for order, _ in some], there, soonest)
        for due, some in groupby(late, key=lambda one: one[1])
    ]


def _late(names: Names, due: int, orders: Sequence[Order], there: There, soonest: There) -> str:
    what = format_list([names.say("line", pieces=one.pieces, whom=_called(names, one)) for one in orders], locale="en")
    facts = {"what": what, "due": names.tick(due)}
    at = [there(order) for order in orders]
    if any(one is None for one in at):
        return names.say("late-too-few", **facts)
    said = names.say("late", **facts, there=names.tick(max(one for one in at if one is not None)))
    least = max(one for order in orders if (one := soonest(order)) is not None)
    return f"{said} {names.say('late-surely', least=names.tick(least))}" if least > due else said


def limit_sentences(names: Names, plan: Plan, limit: Bound, run: str = "") -> Iterator[str]:
    """What no plan can beat, why, and what lies between that and the plan: what might be won, or the price of what is due."""
    problem, finish = names.problem, finish_of(names.problem, plan, run)
    yield bound_sentence(names, limit.tick, limit.rule, limit.facts)
    if limit.tick >= finish:
        yield names.say("proved")
        return
    minutes = round(open_minutes(problem, limit.tick, finish))
    lines = _kept(names, plan, finish)
    facts = {"lines": format_list(lines, locale="en") if lines else "none", "minutes": minutes}
    if limit.with_dues >= finish:
        yield names.say("gap-dues", **facts)
        return
    yield names.say("gap", minutes=minutes)
    if limit.with_dues > limit.tick:
        yield names.say("bound-dues", **facts, day=names.day(limit.with_dues), at=names.clock(limit.with_dues))


def _kept(names: Names, plan: Plan, finish: int) -> list[str]:
    """What a plan that is done sooner might have late, and this has in time; nothing where something is late as it is."""
    if lateness_of(names.problem, plan):
        return []
    some = [order for order, due in dated(names.problem) if due < finish]
    return [names.say("line", pieces=one.pieces, whom=_called(names, one)) for one in some]


def _there(problem: Problem, plan: Plan) -> There:
    ends = [plan.end(problem, at) for at in range(len(problem.blocks))]
    return lambda order: there_at(problem, ends, order)


def _soonest(problem: Problem) -> There:
    ends = soonest_ends(problem)
    return lambda order: there_at(problem, ends, order)


def _called(names: Names, order: Order) -> str:
    run = names.runs.get(order.run)
    return next((whom_of(one) for one in run.orders if one.line == order.line), order.line) if run else order.line
