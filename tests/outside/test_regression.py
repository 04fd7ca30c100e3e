"""The least-squares line against NIST's certified values for the data set Norris, which scipy's wheel brings."""

from functools import cache
from pathlib import Path

import scipy.stats

from runboard.review.measured.lines import Line, line_through
from tests.outside.said import published

NORRIS = "NIST Statistical Reference Datasets, linear regression, Norris"


@cache
def norris() -> Line:
    """The line through the 36 observations: lines 61 to 96 of the file, y before x."""
    path = Path(scipy.stats.__file__).parent / "tests" / "data" / "nist_linregress" / "Norris.dat"
    rows = [line.split() for line in path.read_text("ascii").splitlines()[60:96]]
    found = line_through([float(x) for _, x in rows], [float(y) for y, _ in rows])
    assert found is not None
    assert found.free == 34
    return found


@published(
    NORRIS,
    {
        "intercept": -0.262323073774029,
        "slope": 1.00211681802045,
        "intercept_error": 0.232818234301152,
        "slope_error": 0.429796848199937e-03,
        "residual": 0.884796396144373,
        "fits": 0.999993745883712,
    },
    within=1e-11,
)
def test_norris(figure: str) -> float:
    return float(getattr(norris(), figure))


@published(NORRIS, {"f": 5436385.54079785}, within=1e-3)
def test_the_f_of_norris(figure: str) -> float:
    return norris().f
