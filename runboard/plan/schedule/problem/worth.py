"""What plans are compared by: how late order lines are, then how much of people's time and how many walks until all is done."""

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate

from runboard.plan.schedule.problem.hours import Chains, Presence, open_spans
from runboard.plan.schedule.problem.nouns import FAR, OrderDue, Plan, Problem
from runboard.plan.schedule.problem.people import walks_in

# A walk is worth so many ticks in which somebody is there, more than the time that it takes: a minute of their attention.
WALK = 2

# How late, the finish and the walks in open ticks, the finish: the less, the better.
Value = tuple[int, int, int]


@dataclass(frozen=True)
class Late:
    """An order line that is late in a plan: the ticks at which it is due, at which it is there (None where the plan does
    not make so many), and before which no plan has it there."""

    order: OrderDue
    due: int
    there: int | None
    soonest: int | None


class Made:
    """When so many pieces of each run are through the last step, given when each block ends: sorted once for all its order
    lines."""

    def __init__(self, problem: Problem, ends: Sequence[int]) -> None:
        self._problem, self._ends = problem, ends
        self._rows: dict[str, tuple[list[int], list[int]]] = {}

    def there(self, order: OrderDue) -> int | None:
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


class Worth:
    """How plans of one problem are compared; made once for many of them."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.hours = Presence.of([open_spans(problem)])
        self.dated = list(dated(problem))

    def of(self, ends: Sequence[int], walks: int) -> Value:
        """What is compared of a plan whose blocks end then and that has people walk so often: by how much order lines are
        late, the open ticks to the finish with ``WALK`` for each walk, and the finish."""
        finish = max(ends, default=0)
        return self.late(ends), self.hours.passed(finish) + WALK * walks, finish

    def late(self, ends: Sequence[int]) -> int:
        """By how much order lines with a due moment are late, all together, in open ticks: ticks in which anybody is there,
        those before now counted as such, and one at least for each line that is late. Where the book counts lines, each is
        worth more than any ticks. What is not made counts as there at the finish."""
        late = [self.late_by(due, there) for due, there in self._there(ends) if there > due]
        return sum(late) + (FAR * len(late) if self.problem.late_counts == "lines" else 0)

    def margins(self, ends: Sequence[int]) -> list[int]:
        """The ticks, open or not, by which each order line with a due moment is late: below nought for one in time."""
        return [there - due for due, there in self._there(ends)]

    def _there(self, ends: Sequence[int]) -> Iterator[tuple[int, int]]:
        if not self.dated:
            return
        made, finish = Made(self.problem, ends), max(ends, default=0)
        for order, due in self.dated:
            there = made.there(order)
            yield due, finish if there is None else there

    def late_by(self, due: int, there: int) -> int:
        """By how much an order line is late that is there after it is due."""
        return max(1, self.hours.between(due, there) - min(0, due))


def worth(problem: Problem, plan: Plan) -> Value:
    """What plans are compared by, the less the better: see ``Worth.of``."""
    return Worth(problem).of(ends_of(problem, plan), walks_in(problem, plan))


def ends_of(problem: Problem, plan: Plan) -> list[int]:
    """When each block ends in a plan."""
    return [plan.end(problem, at) for at in range(len(problem.blocks))]


def there_at(problem: Problem, ends: Sequence[int], order: OrderDue) -> int | None:
    """``Made.there`` of one order line alone."""
    return Made(problem, ends).there(order)


def dated(problem: Problem) -> Iterator[tuple[OrderDue, int]]:
    """The order lines of which pieces are still to be made by some moment, each with its tick."""
    return ((order, order.due) for order in problem.orders if order.due is not None and order.by_then > 0)


def lateness_of(problem: Problem, plan: Plan) -> int:
    """``Worth.late`` of a plan."""
    return Worth(problem).late(ends_of(problem, plan))


def late_lines(problem: Problem, plan: Plan) -> list[tuple[OrderDue, int, int | None]]:
    """(order line, tick at which it is due, tick at which it is there or None where the plan does not make so many) of each
    line that is late in a plan, the earliest due first."""
    made = Made(problem, ends_of(problem, plan))
    found = [(order, due, made.there(order)) for order, due in dated(problem)]
    late = [line for line in found if line[2] is None or line[2] > line[1]]
    return sorted(late, key=lambda line: (line[1], line[0].by_then))


def late_orders(problem: Problem, plan: Plan) -> list[Late]:
    """The same lines, each with when any plan could have it there."""
    lines = late_lines(problem, plan)
    soonest = Made(problem, soonest_ends(problem) if lines else [])
    return [Late(order, due, there, soonest.there(order)) for order, due, there in lines]


def could_be_less_late(problem: Problem, plan: Plan) -> bool:
    """Whether order lines are later in a plan than hours and waits alone make them."""
    late = lateness_of(problem, plan)
    return late > 0 and late > Worth(problem).late(soonest_ends(problem))


def soonest_ends(problem: Problem, chains: Chains | None = None) -> list[int]:
    """When each block ends at the soonest, by its hours and what it waits for alone: no plan has an order line there
    before ``there_at`` of these."""
    begins = (chains or Chains(problem)).begins
    return [begins[at] + block.length for at, block in enumerate(problem.blocks)]
