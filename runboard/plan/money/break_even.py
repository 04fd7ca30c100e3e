"""After how many a cost has come in again."""

from decimal import Decimal
from typing import TypeVar

Number = TypeVar("Number", float, Decimal)


def break_even(fixed: Number, each: Number) -> Number | None:
    """The count at which a fixed cost is made up by what each one brings: F / (P − v) with the price P and the cost v of one, or F
    over what each one saves; the simple break-even of any text on costing, without interest. None where each brings nothing."""
    return fixed / each if each > 0 else None
