"""Control charts, capability and their constants against NIST's handbook and printed data."""

import math

import pytest

from runboard.review.measured.charts import (
    D2,
    D4,
    ControlChart,
    capability,
    defects,
    ewma,
    ewma_limits,
    individuals,
    proportions,
)
from tests.outside.said import calculated, published

HANDBOOK = "NIST/SEMATECH e-Handbook of Statistical Methods"
DYED_CLOTH = "Montgomery, Introduction to Statistical Quality Control, dyed cloth"
PYZDEK = "Pyzdek, The Handbook for Quality Management, p. 172"

FLOW = (49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1)
# The flow data come after ten others.
AVERAGED = (52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, *FLOW)
EWMA = (50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38, 49.92,
        50.73, 51.23, 51.94, 51.99)  # fmt: skip
WAFERS = (12, 15, 8, 10, 4, 7, 16, 9, 14, 10, 5, 6, 17, 12, 22, 8, 10, 5, 13, 11, 20, 18, 24, 15, 9, 12, 7, 13, 9, 6)
CLOTH = (14, 12, 20, 11, 7, 10, 21, 16, 19, 23)
LENGTHS = (10, 8, 13, 10, 10, 10, 12, 11, 12, 13)


def chart() -> ControlChart:
    found = individuals(FLOW)
    assert found is not None
    return found


@published(
    f"{HANDBOOK}, 6.3.2.2",
    {"centre": 50.81, "upper": 55.8041, "lower": 45.8159, "range mean": 1.8778, "range_upper": 6.1347},
    within=6e-5,
)
def test_individuals_of_a_flow_rate(figure: str) -> float:
    found = chart()
    assert found.out == ()
    return sum(found.ranges) / 9 if figure == "range mean" else float(getattr(found, figure))


@published(f"{HANDBOOK}, 6.3.2.4", dict(enumerate(EWMA)), within=0.006)
def test_an_average_that_forgets(place: int) -> float:
    return ewma(AVERAGED, 50, 0.3)[place]


@published(f"{HANDBOOK}, 6.3.2.4", {"upper": 52.5884, "lower": 47.4115}, within=1.5e-4)
def test_its_limits(side: str) -> float:
    return ewma_limits(50, 2.0539, 0.3)[("upper", "lower").index(side)]


# The file prints .4103 for the upper limit, which is .41025.
@published(f"{HANDBOOK}, 6.3.3.2", {"mean": 0.2313, "upper": 0.4102, "lower": 0.0524}, within=1e-4)
def test_a_share_of_bad_wafers(figure: str) -> float:
    return proportions(WAFERS, 50)[("mean", "upper", "lower").index(figure)]


# Its own limits are those of the mean length: 2.48034 and 0.32700 belong to no roll of cloth.
@calculated(
    f"inputs of {DYED_CLOTH}",
    {("mean", 10): 1.403670, ("upper", 10): 2.527637, ("upper", 13): 2.389454, ("lower", 13): 0.417885},
    within=1e-6,
)
def test_defects_a_unit_of_cloth(figure: str, length: int) -> float:
    return defects(CLOTH, LENGTHS, length)[("mean", "upper", "lower").index(figure)]


@published(f"{HANDBOOK}, 6.1.6", {"Cp": 1.0, "Cpk": 0.6667}, within=4e-5)
def test_capability(figure: str) -> float:
    return capability(16, 2, 8, 20)[("Cp", "Cpk").index(figure)]


@published(PYZDEK, {"E2": 2.66}, within=0.005)
def test_three_by_the_mean_range(_: str) -> float:
    return 3 / D2


# The range of two normal values is 2 / sqrt(pi) on average; its own deviation .8525 makes D4 = 1 + 3 d3 / d2.
@calculated("the distribution of the range of two", {"d2": 2 / math.sqrt(math.pi), "D4": 3.267}, within=0.0005)
def test_the_factors_of_two(figure: str) -> float:
    assert pytest.approx(1 + 3 * math.sqrt(2 - 4 / math.pi) / (2 / math.sqrt(math.pi)), abs=5e-4) == D4
    return {"d2": D2, "D4": D4}[figure]
