"""Noise dose against what OSHA and NIOSH print, and a published worked comparison of the two."""

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.review.noise import NIOSH, OSHA, NoiseRule, allowed_hours, dose, level_of_day, level_together

HOUR = timedelta(hours=1)

# 29 CFR 1910.95, Appendix A, Table G-16a: hours allowed at a level.
# https://www.osha.gov/laws-regs/regulations/standardnumber/1910/1910.95AppA
# At 83 dB one page of OSHA prints 21.1 and another 21.2 (the formula gives 21.113), hence the tolerance.
G_16A = {
    80: 32, 83: 21.1, 85: 16, 90: 8, 92: 6.1, 95: 4, 97: 3.0, 100: 2, 102: 1.5, 105: 1, 110: 0.5, 115: 0.25,
}  # fmt: skip
# NIOSH publication 98-126, table 1-1, as mirrored by the CDC: minutes allowed at a level.
NIOSH_MINUTES = {85: 480, 88: 240, 91: 120, 94: 60, 97: 30, 100: 15}
# The finer table by the same formula: https://www.engineeringtoolbox.com d_717.
NIOSH_FINER = {
    86: timedelta(hours=6, minutes=21),
    90: timedelta(hours=2, minutes=31),
    95: timedelta(minutes=47, seconds=37),
}


@pytest.mark.parametrize(("level", "hours"), G_16A.items())
def test_hours_allowed_are_those_of_osha(level: float, hours: float) -> None:
    assert allowed_hours(level, OSHA) == pytest.approx(hours, abs=0.1 if level == 83 else 0.05)


@pytest.mark.parametrize(("level", "minutes"), NIOSH_MINUTES.items())
def test_minutes_allowed_are_those_of_niosh(level: float, minutes: float) -> None:
    assert allowed_hours(level, NIOSH) * 60 == pytest.approx(minutes)


@pytest.mark.parametrize(("level", "printed"), NIOSH_FINER.items())
def test_the_finer_table_of_niosh_agrees(level: float, printed: timedelta) -> None:
    apart = abs(timedelta(hours=allowed_hours(level, NIOSH)) - printed)

    assert apart < timedelta(minutes=1) if level < 95 else apart < timedelta(seconds=1)


# A constant 69.6 dBA: table 3 of https://pmc.ncbi.nlm.nih.gov/articles/PMC8169711/table/T3
@pytest.mark.parametrize(
    ("rule", "hours", "percent", "level"),
    [(OSHA, 8, 5.9, 69.6), (NIOSH, 8, 2.8, 69.6), (OSHA, 1, 0.7, 54.6), (NIOSH, 1, 0.4, 60.6)],
)
def test_a_constant_level_makes_the_published_dose(rule: NoiseRule, hours: int, percent: float, level: float) -> None:
    found = dose([(69.6, hours * HOUR)], rule)

    assert found == pytest.approx(percent, abs=0.05)
    assert level_of_day(found, rule) == pytest.approx(level, abs=0.05)


def test_eight_hours_at_92_db() -> None:
    """About 131 % where T is taken from the table, rounded to 6.1 h (stepo.ai); the formula itself gives 132.0 %."""
    assert dose([(92, 8 * HOUR)], OSHA) == pytest.approx(132.0, abs=0.05)
    assert 100 * 8 / round(allowed_hours(92, OSHA), 1) == pytest.approx(131, abs=0.2)


def test_the_factors_that_are_printed_are_the_exact_ones_rounded() -> None:
    """TWA = 16.61 · log10(D/100) + 90 (Appendix A, II); 10.0 · log10(D/100) + 85 (NIOSH 98-126, 1.1.2, from memory)."""
    assert level_of_day(1000, OSHA) == pytest.approx(90 + 16.61, abs=0.005)
    assert level_of_day(1000, NIOSH) == pytest.approx(85 + 10.0, abs=0.05)


def test_two_sources_of_one_level_make_three_db_more() -> None:
    """Calculated: 10 · log10(2) = 3.01; ten of them make 10 dB more."""
    assert level_together([85, 85]) == pytest.approx(88.01, abs=0.005)
    assert level_together([85] * 10) == pytest.approx(95)
    assert level_together([]) is None


@given(st.floats(40, 140), st.floats(60, 120), st.floats(2, 6))
def test_eight_hours_of_a_constant_level_give_that_level_back(level: float, limit: float, exchange: float) -> None:
    rule = NoiseRule(limit, exchange)

    assert level_of_day(dose([(level, 8 * HOUR)], rule), rule) == pytest.approx(level)
