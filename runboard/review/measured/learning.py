"""Learning curves: the more often something has been done, the less it takes.

The unit-cost model (Crawford 1947) says how long the n-th takes: T(n) = T(1) n^log2(r), where each doubling takes r times as long.
The cumulative-average model (Wright 1936, 'Factors affecting the cost of airplanes', *Journal of the Aeronautical Sciences* 3) says
the same of the mean of the first n, and so gives other totals from the same rate. What is fitted here is Crawford's.
"""

import math
from collections.abc import Sequence
from datetime import timedelta

from runboard.review.measured.lines import line_through
from runboard.review.measured.samples import student
from runboard.review.measured.study import LearningCurve

# A slope that is not told from none by so few observations is no trend.
FEWEST = 4


def slope_of(rate: float) -> float:
    """b = log2(r): 0.8 gives -0.3219."""
    return math.log2(rate)


def unit_time(first: float, rate: float, number: float) -> float:
    """Crawford: what the ``number``-th takes."""
    return float(first * number ** slope_of(rate))


def units_time(first: float, rate: float, number: int) -> float:
    """Crawford: what the first so many take together."""
    return math.fsum(unit_time(first, rate, one) for one in range(1, number + 1))


def units_time_by_average(first: float, rate: float, number: int) -> float:
    """Wright: the same, where the rate is of the mean of all so far."""
    return number * unit_time(first, rate, number)


def number_at(first: float, rate: float, length: float) -> float:
    """Crawford: which one is the first to take no longer than ``length``; round it up."""
    return float((length / first) ** (1 / slope_of(rate)))


def fitted(lengths: Sequence[tuple[int, float]]) -> LearningCurve | None:
    """The unit-cost curve through (which one, seconds), by least squares of the logarithms. None of fewer than four."""
    if len(lengths) < FEWEST:
        return None
    line = line_through([math.log(number) for number, _ in lengths], [math.log(length) for _, length in lengths])
    if line is None:
        return None
    is_clear = abs(line.slope) > student(0.975, line.free) * line.slope_error
    return LearningCurve(timedelta(seconds=math.exp(line.intercept)), 2**line.slope, line.fits, is_clear)
