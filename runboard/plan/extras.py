"""Extras: how many pieces to start so that the good ones suffice, with a wanted certainty.

Each started piece comes good with the good rate, apart from the others: the good ones are binomial.
"""

import math
from dataclasses import dataclass

from runboard.plan.good_rate import check_good_rate
from runboard.run.refusal import Refused

MOST_PIECES = 100_000
# Above this the sum of probabilities is as large as rounding: nobody can promise more.
MOST_CERTAIN = 0.9999


@dataclass(frozen=True)
class Start:
    """How many to start. ``extra`` is what goes beyond ``wanted``; ``fewest`` would do if part loads were allowed;
    ``loads`` are whole loads; ``chance`` is the true chance that ``start`` pieces give the wanted good ones."""

    wanted: int
    start: int
    extra: int
    chance: float
    fewest: int
    loads: int
    good_rate: float
    certainty: float


def pieces_to_start(wanted: int, good_rate: float, certainty: float, load_pieces: int = 1) -> Start:
    """The fewest whole loads of ``load_pieces`` with P(Binomial(start, good_rate) ≥ wanted) ≥ certainty.

    ``good_rate`` is of the whole route that counts, 0.01 to 1; ``certainty`` 0 to 0.9999. Refuses what is outside,
    and a wanted count outside 0 to 100,000.
    """
    check_good_rate(good_rate)
    if not 0 <= wanted <= MOST_PIECES or load_pieces < 1:
        raise Refused("pieces out of range", pieces=wanted, most=MOST_PIECES, load=load_pieces)
    if not 0 <= certainty <= MOST_CERTAIN:
        raise Refused("certainty out of range", certainty=certainty, most=MOST_CERTAIN)
    fewest = _fewest(wanted, good_rate, certainty)
    loads = math.ceil(fewest / load_pieces)
    start = loads * load_pieces
    chance = chance_of_enough(start, wanted, good_rate)
    return Start(wanted, start, start - wanted, chance, fewest, loads, good_rate, certainty)


def _fewest(wanted: int, good_rate: float, certainty: float) -> int:
    """Smallest n with P(Binomial(n, p) ≥ wanted) ≥ certainty.

    That chance is the one that the wanted-th good piece comes at the n-th start or sooner, which grows by one negative
    binomial term with each n: C(n-1, wanted-1) p^wanted q^(n-wanted). The terms are kept as logarithms, since
    p^wanted alone may be too small for a float.
    """
    if wanted == 0 or good_rate == 1:
        return wanted
    log_bad, log_term = math.log1p(-good_rate), wanted * math.log(good_rate)
    started, reached = wanted, math.exp(log_term)
    while reached < certainty:
        log_term += log_bad + math.log(started / (started - wanted + 1))
        reached += math.exp(log_term)
        started += 1
    return started


def chance_of_enough(started: int, wanted: int, good_rate: float) -> float:
    """P(Binomial(started, good_rate) ≥ wanted), summed over the shorter side."""
    check_good_rate(good_rate)
    if wanted <= 0:
        return 1.0
    if wanted > started:
        return 0.0
    if good_rate == 1:
        return 1.0
    if wanted > started * good_rate:
        return min(1.0, math.fsum(_chance_of(good, started, good_rate) for good in range(wanted, started + 1)))
    return max(0.0, 1 - math.fsum(_chance_of(good, started, good_rate) for good in range(wanted)))


def _chance_of(good: int, started: int, good_rate: float) -> float:
    ways = math.lgamma(started + 1) - math.lgamma(good + 1) - math.lgamma(started - good + 1)
    return math.exp(ways + good * math.log(good_rate) + (started - good) * math.log1p(-good_rate))
