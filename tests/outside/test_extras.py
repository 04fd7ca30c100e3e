"""Extras against problems that others have posed, each with the standing of its numbers, and against scipy."""

import math
from fractions import Fraction

import pytest
from scipy.stats import binom

from runboard.plan.extras import chance_of_enough, pieces_to_start

# Overage at 95 %: calculated from scipy.stats.binom.sf(N - 1, n, p), no printed source: it checks arithmetic only.
OVERAGE = [
    # wanted, good rate, start, its chance, the chance of one fewer, naive start N/p, its chance
    (10, 0.95, 12, 0.9804, 0.8981, 11, 0.898),
    (24, 0.85, 32, 0.9587, 0.9178, 29, 0.738),
    (50, 0.90, 60, 0.9658, 0.9334, 56, 0.674),
    (100, 0.90, 117, 0.9569, 0.9298, 112, 0.672),
    (100, 0.95, 109, 0.9533, 0.9081, 106, 0.720),
    (200, 0.95, 216, 0.9555, 0.9254, 211, 0.634),
]


@pytest.mark.parametrize(("wanted", "good_rate", "start", "chance", "fewer", "naive", "naive_chance"), OVERAGE)
def test_the_overage_table(
    wanted: int, good_rate: float, start: int, chance: float, fewer: float, naive: int, naive_chance: float
) -> None:
    found = pieces_to_start(wanted, good_rate, 0.95)

    assert (found.start, found.extra) == (start, start - wanted)
    assert found.chance == pytest.approx(chance, abs=5e-5)
    assert chance_of_enough(start - 1, wanted, good_rate) == pytest.approx(fewer, abs=5e-5)
    assert math.ceil(wanted / Fraction(str(good_rate))) == naive
    assert chance_of_enough(naive, wanted, good_rate) == pytest.approx(naive_chance, abs=5e-4)


@pytest.mark.parametrize(("stock", "chance"), [(100, 0.1326), (102, 0.6658), (105, 0.9808)])
def test_100_orders_with_2_percent_defective(stock: int, chance: float) -> None:
    # Montgomery & Runger, Applied Statistics and Probability for Engineers; from memory, agrees with scipy.
    assert chance_of_enough(stock, 100, 0.98) == pytest.approx(chance, abs=5e-5)


@pytest.mark.parametrize(("stock", "chance"), [(130, 0.0050), (132, 0.0983), (135, 0.5447)])
def test_130_orders_with_4_percent_defective(stock: int, chance: float) -> None:
    # Inputs read at https://tutorsglobe.com/question/exercise-describes-that-poor-quality-5862889.aspx;
    # the chances are calculated, not published: they check arithmetic only.
    assert chance_of_enough(stock, 130, 0.96) == pytest.approx(chance, abs=5e-5)


def test_130_orders_with_4_percent_defective_need_140_for_95_percent() -> None:
    # Inputs as above; the answer is calculated.
    assert pieces_to_start(130, 0.96, 0.95).start == 140


def test_grindit_and_floggit() -> None:
    # The 'Grindit & Floggit' problem: 100 widgets, 97 % good, $10,000 setup and $150 each. Inputs read; the
    # answers are calculated: they check arithmetic only.
    start = pieces_to_start(100, 0.97, 0.95)

    assert chance_of_enough(100, 100, 0.97) == pytest.approx(0.04755, abs=5e-6)
    assert chance_of_enough(105, 100, 0.97) == pytest.approx(0.90335, abs=5e-6)
    assert (start.start, round(start.chance, 4)) == (106, 0.9591)
    assert 10_000 + 150 * start.start == 25_900


@pytest.mark.parametrize(("bad_rate", "more_than_one"), [(0.01, 0.0169), (0.04, 0.19)])
def test_more_than_one_of_20_parts_to_rework(bad_rate: float, more_than_one: float) -> None:
    # Read at https://qammunity.org/8403413. 'At most one of 20 bad' is 'at least 19 good'.
    assert 1 - chance_of_enough(20, 19, 1 - bad_rate) == pytest.approx(
        more_than_one, abs=5e-5 if bad_rate < 0.02 else 5e-3
    )


@pytest.mark.parametrize("wanted", [1, 7, 48, 300, 2000])
@pytest.mark.parametrize("good_rate", [0.3, 0.72, 0.95, 0.999])
@pytest.mark.parametrize("certainty", [0.5, 0.9, 0.99])
def test_the_start_is_the_smallest_by_scipy_too(wanted: int, good_rate: float, certainty: float) -> None:
    start = pieces_to_start(wanted, good_rate, certainty)

    assert start.chance == pytest.approx(binom.sf(wanted - 1, start.start, good_rate), abs=1e-9)
    assert binom.sf(wanted - 1, start.start, good_rate) >= certainty
    assert start.start == wanted or binom.sf(wanted - 1, start.start - 1, good_rate) < certainty
