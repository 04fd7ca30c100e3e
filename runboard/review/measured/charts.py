"""Control charts: what is chance, and what stands out.

NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 (individuals), 6.3.2.4 (EWMA), 6.3.3.1 and 6.3.3.2 (counts and proportions),
6.1.6 (capability). The factors of a moving range of two: d2 = 1.128, D4 = 3.267.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from statistics import fmean

D2, D4 = 1.128, 3.267


@dataclass(frozen=True)
class ControlChart:
    """Individual values and their moving ranges: ``points`` in their order between ``lower`` and ``upper`` around ``centre``,
    ``ranges`` between neighbours up to ``range_upper``. ``out`` are the places, from 0, of points beyond a limit."""

    points: tuple[float, ...]
    centre: float
    upper: float
    lower: float
    ranges: tuple[float, ...]
    range_upper: float
    out: tuple[int, ...]


def individuals(points: Sequence[float]) -> ControlChart | None:
    """The chart of single values (X-mR): mean ± 3 mR / d2. None of fewer than two."""
    if len(points) < 2:
        return None
    ranges = tuple(abs(later - earlier) for earlier, later in pairwise(points))
    centre, range_mean = fmean(points), fmean(ranges)
    upper, lower = (centre + side * 3 * range_mean / D2 for side in (1, -1))
    out = tuple(at for at, point in enumerate(points) if not lower <= point <= upper)
    return ControlChart(tuple(points), centre, upper, lower, ranges, D4 * range_mean, out)


def proportions(bad: Sequence[int], each: int) -> tuple[float, float, float]:
    """The p chart of equal samples: (mean, upper, lower)."""
    mean = sum(bad) / (each * len(bad))
    return _limits(mean, math.sqrt(mean * (1 - mean) / each))


def defects(counts: Sequence[int], sizes: Sequence[float], size: float) -> tuple[float, float, float]:
    """The u chart: defects a unit as (mean, upper, lower) for a sample of ``size`` units."""
    mean = sum(counts) / math.fsum(sizes)
    return _limits(mean, math.sqrt(mean / size))


def _limits(mean: float, deviation: float) -> tuple[float, float, float]:
    """Three deviations about the mean, none below nought."""
    return mean, mean + 3 * deviation, max(0.0, mean - 3 * deviation)


def ewma(points: Sequence[float], start: float, weight: float) -> list[float]:
    """The exponentially weighted moving average after each point."""
    found, last = [], start
    for point in points:
        last = weight * point + (1 - weight) * last
        found.append(last)
    return found


def ewma_limits(start: float, deviation: float, weight: float) -> tuple[float, float]:
    """(upper, lower) of the average once it has run for a while."""
    side = 3 * deviation * math.sqrt(weight / (2 - weight))
    return start + side, start - side


def capability(mean: float, deviation: float, lower: float, upper: float) -> tuple[float, float]:
    """(Cp, Cpk): how often six deviations go between the limits, and how often three between the mean and the nearer one."""
    return (upper - lower) / (6 * deviation), min(upper - mean, mean - lower) / (3 * deviation)
