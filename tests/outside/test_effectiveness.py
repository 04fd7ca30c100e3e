"""How well a machine was used (OEE), against worked examples and the standard's definitions."""

import pytest

from runboard.review.measured.rates import Effectiveness
from tests.outside.said import calculated, published

IDEAL_CYCLE = "https://pranavwrite.medium.com/what-is-oee-f35ec55eeeea"
CALCULATOR = "https://waycalculator.com/tool/Overall-Equipment-Effectiveness-OEE-Calculator.php"
FIGURES = ("availability", "performance", "quality", "overall")

# 480 minutes with 60 of breaks and 47 down; sixty a minute at best.
A_SHIFT = Effectiveness(busy=420, producing=373, run=1 / 60, made=19_271, good=19_271 - 423)
A_DAY = Effectiveness(busy=480, producing=420, run=1, made=400, good=380)


@published(IDEAL_CYCLE, dict(zip(FIGURES, (0.8881, 0.8611, 0.9780, 0.7479), strict=True)), within=6e-5)
def test_a_shift_of_nineteen_thousand(figure: str) -> float:
    return float(getattr(A_SHIFT, figure))


@published(CALCULATOR, dict(zip(FIGURES, (0.875, 0.952, 0.95, 0.791), strict=True)), within=0.00075)
def test_a_day_of_four_hundred(figure: str) -> float:
    return float(getattr(A_DAY, figure))


@calculated(f"inputs of {CALCULATOR}: 380 good in 480", {"overall": 380 / 480}, within=1e-12)
def test_the_day_exactly(figure: str) -> float:
    return float(getattr(A_DAY, figure))


@pytest.mark.parametrize("worked", [A_SHIFT, A_DAY])
def test_the_three_multiplied_are_good_pieces_run_time_by_busy_time(worked: Effectiveness) -> None:
    # ISO 22400-2: OEE index = availability x effectiveness x quality ratio, so PRI GQ / PBT.
    assert worked.overall == pytest.approx(worked.run * worked.good / worked.busy)
