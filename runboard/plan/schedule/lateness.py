"""How late order lines are in a plan."""

from collections.abc import Sequence

from runboard.plan.schedule.problem import Order, Problem


def there_at(problem: Problem, ends: Sequence[int], order: Order) -> int | None:
    """The tick at which the pieces of an order line, and of those due before it, are there: when so many pieces are
    through the last step. 0 where they are there already, ``None`` where the plan does not make so many."""
    if order.by_then <= 0:
        return 0
    last = sorted((ends[one.index], one.pieces) for one in problem.blocks if one.last and one.run == order.run)
    made = 0
    for end, pieces in last:
        made += pieces
        if made >= order.by_then:
            return end
    return None


def lateness(problem: Problem, ends: Sequence[int]) -> int:
    """The ticks by which order lines with a due moment are late, all together."""
    found = 0
    for order in problem.orders:
        if order.due is not None:
            there = there_at(problem, ends, order)
            found += max(0, (max(ends, default=0) if there is None else there) - order.due)
    return found
