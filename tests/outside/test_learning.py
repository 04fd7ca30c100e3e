"""Learning curves against printed factors and worked problems; each model is named."""

import math

import pytest

from runboard.review.measured.learning import (
    fitted,
    number_at,
    slope_of,
    unit_time,
    units_time,
    units_time_by_average,
)
from runboard.review.measured.samples import rounded_up
from tests.outside.said import calculated, published

STEVENSON = (
    "Stevenson, Operations Management, 12th edition, chapter 7S, solutions: "
    "https://www.coursepaper.com/solution-manual/978-0078024108-imchap07s-part-2/"
)
EASY = "http://www.business-analysis-made-easy.com/learning-curve.html"
NUMBERS = (1, 2, 3, 4, 5, 10, 20, 30, 50, 100)
# The usual table of the text books, as it is remembered; each factor was calculated here.
UNITS = {
    0.80: (1, 0.800, 0.702, 0.640, 0.596, 0.477, 0.381, 0.335, 0.284, 0.227),
    0.85: (1, 0.850, 0.773, 0.722, 0.686, 0.583, 0.495, 0.450, 0.400, 0.340),
    0.90: (1, 0.900, 0.846, 0.810, 0.783, 0.705, 0.634, 0.596, 0.552, 0.497),
}
TOTALS = {
    0.80: (1, 1.8, 2.502, 3.142, 3.738, 6.315, 10.485, 14.020, 20.122, 32.651),
    0.85: (1, 1.85, 2.623, 3.345, 4.031, 7.116, 12.402, 17.091, 25.513, 43.754),
    0.90: (1, 1.9, 2.746, 3.556, 4.339, 7.994, 14.608, 20.727, 32.142, 58.141),
}
# Two factors of the table were read: the page prints the second under '80 %', which is a slip (it is .477 there).
READ = {(0.90, 20): 0.634, (0.85, 10): 0.583}


def by_number(table: dict[float, tuple[float, ...]]) -> dict[tuple[float, int], float]:
    return {(rate, number): factor for rate, row in table.items() for number, factor in zip(NUMBERS, row, strict=True)}


def not_read(table: dict[tuple[float, int], float]) -> dict[tuple[float, int], float]:
    return {asked: factor for asked, factor in table.items() if asked not in READ}


@published(STEVENSON, READ, within=0.0005)
def test_the_unit_factors_that_are_printed(rate: float, number: int) -> float:
    return unit_time(1, rate, number)


@calculated("T(n) = n^log2(r), Crawford", not_read(by_number(UNITS)), within=0.0006)
def test_unit_factors_by_crawford(rate: float, number: int) -> float:
    return unit_time(1, rate, number)


@calculated("the sum of T(1) to T(n), Crawford", by_number(TOTALS), within=0.0006)
def test_totals_by_crawford(rate: float, number: int) -> float:
    return units_time(1, rate, number)


@published(EASY, {2: 40, 4: 32, 8: 25.6}, within=1e-9)
def test_each_doubling_takes_80_percent_of_50_minutes(number: int) -> float:
    return unit_time(50, 0.8, number)


@calculated(f"inputs of {STEVENSON}", {"slope": -0.26303, "number": 6.97, "repetitions": 7}, within=0.005)
def test_how_often_until_18_minutes_where_the_second_took_25_of_30(figure: str) -> float:
    found = number_at(30, 25 / 30, 18)
    return {"slope": slope_of(25 / 30), "number": found, "repetitions": rounded_up(found)}[figure]


@calculated("four units at 80 %: the two models are not one", {"Crawford": 3.142, "Wright": 2.56}, within=0.0005)
def test_each_model_has_its_own_total(model: str) -> float:
    return {"Crawford": units_time, "Wright": units_time_by_average}[model](1, 0.8, 4)


@calculated(f"inputs of {EASY}", {"rate": 0.8, "first": 50 * 60, "fits": 1}, within=1e-5)
def test_a_curve_through_its_own_points_is_found_again(figure: str) -> float:
    curve = fitted([(number, 60 * minutes) for number, minutes in ((1, 50), (2, 40), (4, 32), (8, 25.6))])
    assert curve is not None
    assert curve.is_clear
    return {"rate": curve.rate, "first": curve.first.total_seconds(), "fits": curve.fits}[figure]


def test_the_slope_of_80_percent_is_the_logarithm_to_two() -> None:
    assert slope_of(0.8) == pytest.approx(math.log(0.8) / math.log(2))
