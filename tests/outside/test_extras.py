"""Extras against problems that others have posed, each with the standing of its numbers, and against scipy."""

import math
from fractions import Fraction

import pytest
from scipy.stats import binom

from runboard.plan.extras import chance_of_enough, pieces_to_start
from tests.outside.said import calculated, from_memory, published

# Overage at 95 %: no printed source.
OVERAGE = "scipy.stats.binom.sf(N - 1, n, p)"


@calculated(
    OVERAGE, {(10, 0.95): 12, (24, 0.85): 32, (50, 0.90): 60, (100, 0.90): 117, (100, 0.95): 109, (200, 0.95): 216}
)
def test_the_start_for_95_percent(wanted: int, good_rate: float) -> int:
    found = pieces_to_start(wanted, good_rate, 0.95)
    assert found.extra == found.start - wanted
    assert found.chance == chance_of_enough(found.start, wanted, good_rate)
    return found.start


@calculated(
    OVERAGE,
    {
        (12, 10, 0.95): 0.9804,
        (11, 10, 0.95): 0.8981,
        (32, 24, 0.85): 0.9587,
        (31, 24, 0.85): 0.9178,
        (60, 50, 0.90): 0.9658,
        (59, 50, 0.90): 0.9334,
        (117, 100, 0.90): 0.9569,
        (116, 100, 0.90): 0.9298,
        (109, 100, 0.95): 0.9533,
        (108, 100, 0.95): 0.9081,
        (216, 200, 0.95): 0.9555,
        (215, 200, 0.95): 0.9254,
    },
    within=5e-5,
)
def test_the_chance_of_a_start_and_of_one_fewer(start: int, wanted: int, good_rate: float) -> float:
    return chance_of_enough(start, wanted, good_rate)


@calculated(
    OVERAGE,
    {(24, 0.85): 0.738, (50, 0.90): 0.674, (100, 0.90): 0.672, (100, 0.95): 0.720, (200, 0.95): 0.634},
    within=5e-4,
)
def test_the_wanted_over_the_good_rate_is_no_answer(wanted: int, good_rate: float) -> float:
    return chance_of_enough(math.ceil(wanted / Fraction(str(good_rate))), wanted, good_rate)


@from_memory(
    "Montgomery and Runger, Applied Statistics and Probability for Engineers: 100 orders, 2 % defective",
    {100: 0.1326, 102: 0.6658, 105: 0.9808},
    within=5e-5,
)
def test_100_orders_with_2_percent_defective(stock: int) -> float:
    return chance_of_enough(stock, 100, 0.98)


@calculated(
    "inputs of https://tutorsglobe.com/question/exercise-describes-that-poor-quality-5862889.aspx",
    {130: 0.0050, 132: 0.0983, 135: 0.5447},
    within=5e-5,
)
def test_130_orders_with_4_percent_defective(stock: int) -> float:
    return chance_of_enough(stock, 130, 0.96)


@calculated(
    "inputs of the 'Grindit & Floggit' problem: 100 widgets, 97 % good", {100: 0.04755, 105: 0.90335}, within=5e-6
)
def test_grindit_and_floggit(started: int) -> float:
    return chance_of_enough(started, 100, 0.97)


@calculated("inputs of the two problems above", {(130, 0.96): 140, (100, 0.97): 106})
def test_what_the_posed_problems_need_for_95_percent(wanted: int, good_rate: float) -> int:
    return pieces_to_start(wanted, good_rate, 0.95).start


# 'At most one of 20 bad' is 'at least 19 good'.
@published("https://qammunity.org/8403413: more than one of 20 parts to rework", {0.01: 0.0169}, within=5e-5)
def test_more_than_one_of_20_parts_to_rework(bad_rate: float) -> float:
    return 1 - chance_of_enough(20, 19, 1 - bad_rate)


@published("https://qammunity.org/8403413, printed to two places", {0.04: 0.19}, within=5e-3)
def test_more_than_one_of_20_parts_to_rework_at_4_percent(bad_rate: float) -> float:
    return 1 - chance_of_enough(20, 19, 1 - bad_rate)


@pytest.mark.parametrize("wanted", [1, 7, 48, 300, 2000])
@pytest.mark.parametrize("good_rate", [0.3, 0.72, 0.95, 0.999])
@pytest.mark.parametrize("certainty", [0.5, 0.9, 0.99])
def test_the_start_is_the_smallest_by_scipy_too(wanted: int, good_rate: float, certainty: float) -> None:
    start = pieces_to_start(wanted, good_rate, certainty)

    assert start.chance == pytest.approx(binom.sf(wanted - 1, start.start, good_rate), abs=1e-9)
    assert binom.sf(wanted - 1, start.start, good_rate) >= certainty
    assert start.start == wanted or binom.sf(wanted - 1, start.start - 1, good_rate) < certainty
