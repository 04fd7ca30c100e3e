"""What a sample of lengths says: its spread, and how many more are needed.

Sample size as in the texts on time study (Stevenson, *Operations Management*; Heizer & Render; Krajewski) and, for a test of a
mean, NIST/SEMATECH e-Handbook 7.2.2.2. Student's t by Abramowitz & Stegun, *Handbook of Mathematical Functions*, 26.7.5.
"""

import math
from collections.abc import Sequence
from statistics import NormalDist, fmean, stdev

# Two-sided 95 %.
Z95 = NormalDist().inv_cdf(0.975)
# A count that is whole but for rounding is not rounded up once more.
_HAIR = 1e-9


def deviation(sample: Sequence[float]) -> float | None:
    """The sample's standard deviation (n - 1); None of fewer than two."""
    return stdev(sample) if len(sample) > 1 else None


def wanted(mean: float, deviation: float, within: float = 0.1, z: float = Z95) -> float:
    """n = (z s / (a x))²: how many observations bring the mean within this share of itself. Round it up."""
    return (z * deviation / (within * mean)) ** 2


def needed(sample: Sequence[float], within: float = 0.1, z: float = Z95) -> int | None:
    """How many more observations it takes; None where fewer than two say nothing of the spread."""
    spread = deviation(sample)
    if spread is None or not fmean(sample):
        return None
    return max(0, rounded_up(wanted(fmean(sample), spread, within, z)) - len(sample))


def rounded_up(count: float) -> int:
    """The next whole number."""
    return math.ceil(count - _HAIR)


def for_a_shift(difference: float, risk: float = 0.05, miss: float = 0.1, known: bool = True) -> int:
    """How many observations a one-sided test of a mean takes that sees a shift of so many standard deviations, wrongly with
    ``risk``, and misses it with ``miss``. With the deviation itself estimated (not ``known``) by Student's t."""
    normal = NormalDist()
    found = rounded_up(((normal.inv_cdf(1 - risk) + normal.inv_cdf(1 - miss)) / difference) ** 2)
    if known:
        return found
    for _ in range(50):  # it settles within a few rounds
        free = max(1, found - 1)
        again = rounded_up(((student(1 - risk, free) + student(1 - miss, free)) / difference) ** 2)
        if again == found:
            break
        found = again
    return found


def student(share: float, free: int) -> float:
    """The quantile of Student's t: exact with one and two degrees of freedom, by its expansion with more (within 1 % at 97.5 %
    with three, 0.1 % from five on)."""
    if free == 1:
        return math.tan(math.pi * (share - 0.5))
    if free == 2:
        return (2 * share - 1) / math.sqrt(2 * share * (1 - share))
    z = NormalDist().inv_cdf(share)
    terms = (
        z,
        (z**3 + z) / 4,
        (5 * z**5 + 16 * z**3 + 3 * z) / 96,
        (3 * z**7 + 19 * z**5 + 17 * z**3 - 15 * z) / 384,
        (79 * z**9 + 776 * z**7 + 1482 * z**5 - 1920 * z**3 - 945 * z) / 92160,
    )
    return math.fsum(term / free**power for power, term in enumerate(terms))
