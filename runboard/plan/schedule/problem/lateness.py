"""How late order lines are in a plan, and how late they are in any."""

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate

from runboard.plan.schedule.problem.domains import Chains
from runboard.plan.schedule.problem.nouns import Order, Plan, Problem


@dataclass(frozen=True)
class Late:
    """An order line that is late in a plan: the ticks at which it is due, at which it is there (None where the plan does
    not make so many), and before which no plan has it there."""

    order: Order
    due: int
    there: int | None
    soonest: int | None


class Made:
    """When so many pieces of each run are through the last step, given when each block ends: sorted once for all its order
    lines."""

    def __init__(self, problem: Problem, ends: Sequence[int]) -> None:
        self._problem, self._ends = problem, ends
        self._rows: dict[str, tuple[list[int], list[int]]] = {}

    def there(self, order: Order) -> int | None:
        """The tick at which the pieces of an order line, and of those due before it, are there. 0 where they are there
        already, ``None`` where the plan does not make so many."""
        if order.by_then <= 0:
            return 0
        if order.run not in self._rows:
            row = sorted((self._ends[at], pieces) for at, pieces in self._problem.last.get(order.run, ()))
            self._rows[order.run] = [end for end, _ in row], list(accumulate(pieces for _, pieces in row))
        ends, made = self._rows[order.run]
        at = bisect_left(made, order.by_then)
        return ends[at] if at < len(ends) else None


def there_at(problem: Problem, ends: Sequence[int], order: Order) -> int | None:
    """``Made.there`` of one order line alone."""
    return Made(problem, ends).there(order)


def dated(problem: Problem) -> Iterator[tuple[Order, int]]:
    """The order lines of which pieces are still to be made by some moment, each with its tick."""
    return ((one, one.due) for one in problem.orders if one.due is not None and one.by_then > 0)


def lateness(problem: Problem, ends: Sequence[int]) -> int:
    """The ticks by which order lines with a due moment are late, all together. What is not made counts as there at the
    finish; what is there already is not late."""
    return sum(max(0, one) for one in margins(problem, ends))


def margins(problem: Problem, ends: Sequence[int]) -> list[int]:
    """The ticks by which each order line with a due moment is late: below nought for one that is in time."""
    made, found = Made(problem, ends), []
    for order, due in dated(problem):
        there = made.there(order)
        found.append((max(ends, default=0) if there is None else there) - due)
    return found


def late_lines(problem: Problem, plan: Plan) -> list[tuple[Order, int, int | None]]:
    """(order line, tick at which it is due, tick at which it is there or None where the plan does not make so many) of each
    line that is late in a plan, the earliest due first."""
    made = Made(problem, [plan.end(problem, at) for at in range(len(problem.blocks))])
    found = [(order, due, made.there(order)) for order, due in dated(problem)]
    late = [one for one in found if one[2] is None or one[2] > one[1]]
    return sorted(late, key=lambda one: (one[1], one[0].by_then))


def late_orders(problem: Problem, plan: Plan) -> list[Late]:
    """The same lines, each with when any plan could have it there."""
    lines = late_lines(problem, plan)
    soonest = Made(problem, soonest_ends(problem) if lines else [])
    return [Late(order, due, there, soonest.there(order)) for order, due, there in lines]


def lateness_of(problem: Problem, plan: Plan) -> int:
    """The same of a plan."""
    return lateness(problem, [plan.end(problem, at) for at in range(len(problem.blocks))])


def worth(problem: Problem, plan: Plan) -> tuple[int, int]:
    """What plans are compared by, the less the better: how late order lines are, then the finish."""
    return lateness_of(problem, plan), plan.finish(problem)


def could_be_less_late(problem: Problem, plan: Plan) -> bool:
    """Whether order lines are later in a plan than hours and waits alone make them."""
    late = lateness_of(problem, plan)
    return late > 0 and late > lateness(problem, soonest_ends(problem))


def soonest_ends(problem: Problem, chains: Chains | None = None) -> list[int]:
    """When each block ends at the soonest, by its hours and what it waits for alone: no plan has an order line there
    before ``there_at`` of these."""
    begins = (chains or Chains(problem)).begins
    return [begins[at] + block.length for at, block in enumerate(problem.blocks)]
