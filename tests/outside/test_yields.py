"""Yields against published values."""

import math

import pytest

from runboard.plan.good_rate import rolled_throughput_yield, throughput_yield


def test_rolled_throughput_yield_is_the_product_of_the_steps() -> None:
    # M. Harry, iSixSigma 2004, read there; its 'e^0.10' signs are typos for e^-0.10, and its first yield is printed
    # .904834 where e^-0.10 is .904837.
    defects_per_unit = (0.10, 0.05, 0.008)

    yields = [throughput_yield(defects, 1) for defects in defects_per_unit]

    assert yields == pytest.approx([0.904834, 0.951229, 0.992032], abs=4e-6)
    assert rolled_throughput_yield(yields) == pytest.approx(0.853850, abs=2e-6)
    assert rolled_throughput_yield(yields) == pytest.approx(math.exp(-0.158))


def test_throughput_yield_of_7_defects_on_50_units() -> None:
    # Read at https://qammunity.org/11431882.
    assert throughput_yield(7, 50) == pytest.approx(0.869, abs=5e-4)
