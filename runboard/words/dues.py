"""Order lines with due moments, in sentences: which will be late, and what being in time costs the whole."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby

from runboard.plan.schedule.problem.hours import open_minutes
from runboard.plan.schedule.problem.nouns import OrderDue, Plan
from runboard.plan.schedule.problem.worth import Late, dated, late_orders, lateness_of
from runboard.plan.schedule.search.bounds import Bound
from runboard.plan.schedule.told.effort import finish_of
from runboard.run.fold.state import OrderLine
from runboard.words.facts import AT_THE_END, list_in_words
from runboard.words.plan import Names, bound_sentence
from runboard.words.sentences import sentence


def whom_of(line: OrderLine) -> str:
    """What an order line is called: for whom and with which text, 'Ito: “7a”'; else 'Order 3'."""
    return sentence("order-called", {"whom": line.whom or 0, "text": line.text or 0, "line": line.line})


def pieces_of(line: OrderLine, pieces: int) -> str:
    """'Ito: 5 × “7a”', '5 for Market'"""
    whom = line.whom or (0 if line.text else whom_of(line))
    return sentence("plan-line", {"pieces": pieces, "whom": whom, "text": line.text or 0})


def late_sentences(names: Names, plan: Plan, run: str = "") -> list[str]:
    """``late_said`` of a plan whose figures nobody has made."""
    return late_said(names, late_orders(names.problem, plan), run)


def late_said(names: Names, late: Iterable[Late], run: str = "") -> list[str]:
    """'12 for Market will be late: due Fri 18:00, there Sat 10:40 …', the earliest due first; of one run where it is named.
    Lines that are due at one moment are one sentence."""
    mine = [each for each in late if run in ("", each.order.run)]
    return [_late(names, due, list(some)) for due, some in groupby(mine, key=lambda each: each.due)]


def _late(names: Names, due: int, lines: Sequence[Late]) -> str:
    called = [_pieces(names, late.order) for late in lines]
    facts = {"what": list_in_words(called), "due": _due(names, due)}
    there = [late.there for late in lines if late.there is not None]
    if len(there) < len(lines):
        return names.say("late-too-few", **facts)
    said = names.say("late", **facts, there=names.tick(max(there)))
    least = max(late.soonest for late in lines if late.soonest is not None)
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
    facts = {"lines": list_in_words(lines) if lines else "none", "minutes": minutes}
    if limit.with_dues >= finish:
        yield names.say("gap-dues", **facts)
        return
    yield names.say("gap", minutes=minutes)
    if limit.with_dues > limit.tick:
        yield names.say("bound-dues", **facts, at=names.tick(limit.with_dues))


def _kept(names: Names, plan: Plan, finish: int) -> list[str]:
    """What a plan that is done sooner might have late, and this has in time; nothing where something is late as it is."""
    if lateness_of(names.problem, plan):
        return []
    some = [order for order, due in dated(names.problem) if due < finish]
    return [_pieces(names, order) for order in some]


def _pieces(names: Names, order: OrderDue) -> str:
    found = _line(names, order.run, order.line)
    return pieces_of(found or OrderLine(order.line, order.pieces), order.pieces)


def _due(names: Names, due: int) -> str:
    """When it is due; the day alone where it is the end of a day."""
    return names.day(due) if names.clock(due) == AT_THE_END else names.tick(due)


def order_called(names: Names, run: str, line: str) -> str:
    """Whom an order line is for, or what it is called."""
    found = _line(names, run, line)
    return whom_of(found) if found else line


def _line(names: Names, run: str, line: str) -> OrderLine | None:
    orders = names.runs[run].orders if run in names.runs else ()
    return next((order for order in orders if order.line == line), None)
