"""Ideas that are no better than a smaller one of the same thing: a tenth place that saves what the sixth did."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta

from runboard.plan.change import Capacity, TraySize
from runboard.review.changes.nouns import Span3, Tried

# Less than this is no more that anybody could tell.
_A_MINUTE = timedelta(minutes=1)


def with_beaten(found: Sequence[Tried]) -> tuple[Tried, ...]:
    """Each with the id of the smallest idea of the same thing that saves as much, where there is one."""
    return tuple(replace(one, no_more_than=_better_than(one, found)) for one in found)


def _better_than(one: Tried, found: Sequence[Tried]) -> str:
    smaller = [other for other in found if _is_less_of_the_same(other, one) and _saves_as_much(other, one)]
    return min(smaller, key=_size).idea.id if smaller else ""


def _size(one: Tried) -> int:
    change = one.idea.change
    return change.capacity if isinstance(change, Capacity) else change.pieces if isinstance(change, TraySize) else 0


def _is_less_of_the_same(other: Tried, one: Tried) -> bool:
    a, b = other.idea.change, one.idea.change
    is_same = (
        (isinstance(a, Capacity) and isinstance(b, Capacity) and a.service == b.service)
        or (isinstance(a, TraySize) and isinstance(b, TraySize) and a.run == b.run)
    )  # fmt: skip
    return is_same and _size(other) < _size(one) and (other.idea.cost or 0) <= (one.idea.cost or other.idea.cost or 0)


def _saves_as_much(other: Tried, one: Tried) -> bool:
    return (
        other.helps
        and one.refused is None
        and _as_much(other.earlier, one.earlier)
        and _as_much(other.hands, one.hands)
    )


def _as_much(other: Span3, one: Span3) -> bool:
    return other.low > one.low - _A_MINUTE and other.mid > one.mid - _A_MINUTE
