"""Payback and break-even, by their arithmetic, and what a saving off the constraint is worth: nothing (Goldratt)."""

from datetime import timedelta

import pytest

from runboard.review.changes.payback import payback_of

HOUR = timedelta(hours=1)


def test_a_cost_of_2400_that_saves_600_a_year_has_paid_after_four() -> None:
    assert payback_of(2400, 15 * HOUR, 40) == pytest.approx(4.0)


def test_a_fixed_cost_of_10000_breaks_even_at_5714_units_that_bring_1_75_each() -> None:
    """Heizer & Render, Operations Management, supplement 7: F 10,000, P 4.00, v 1.50 + 0.75."""
    assert payback_of(10_000, HOUR, 4.00 - (1.50 + 0.75)) == pytest.approx(5714.3, abs=0.05)


@pytest.mark.parametrize(
    ("cost", "saved", "rate"), [(None, HOUR, 40), (10, HOUR, None), (10, -HOUR, 40), (10, 0 * HOUR, 40)]
)
def test_what_nobody_said_and_what_saves_nothing_has_no_payback(cost: float, saved: timedelta, rate: float) -> None:
    assert payback_of(cost, saved, rate) is None
