"""Lengths against exact inch arithmetic.

1 in = 25.4 mm exactly: the international inch of 1959, in NIST Handbook 44, Appendix C; the millimetre as the unit of
length of drawings is ISO 80000-3's. Everything here is calculated in exact fractions from that one definition.
"""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.shop.units import exact_length, format_length, parse_length

INCH = Fraction(254, 10)


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ('1"', Fraction(1)),
        ("5 1/2 in", Fraction(11, 2)),
        ('5-1/2"', Fraction(11, 2)),
        ('3/4"', Fraction(3, 4)),
        ("0.125 in", Fraction(1, 8)),
        ("1/64 in", Fraction(1, 64)),
        ("23 63/64 in", Fraction(1535, 64)),
        ("1 ft", Fraction(12)),
        ("8' 3 1/2\"", Fraction(199, 2)),
    ],
)
def test_inches_are_exact(text: str, inches: Fraction) -> None:
    assert exact_length(text, "mm") == inches * INCH
    assert parse_length(text, "mm") == float(inches * INCH)


@given(st.integers(0, 1000), st.integers(0, 63))
def test_every_64th_reads_exactly_and_is_written_back_the_same(whole: int, sixty_fourths: int) -> None:
    inches = whole + Fraction(sixty_fourths, 64)
    text = f"{whole} {sixty_fourths}/64"

    read = exact_length(text, "in")
    written = format_length(float(read), "in")

    assert read == inches * INCH
    assert exact_length(written, "mm") == read


@given(st.integers(0, 10_000_000))
def test_a_thousandth_of_a_millimetre_is_written_and_read_exactly(thousandths: int) -> None:
    mm = Fraction(thousandths, 1000)

    written = format_length(float(mm), "mm")

    assert exact_length(written, "in") == mm


@given(st.integers(0, 1_000_000))
def test_decimal_inches_are_exact(thousandths: int) -> None:
    inches = Fraction(thousandths, 1000)

    assert exact_length(f"{thousandths // 1000}.{thousandths % 1000:03d} in", "mm") == inches * INCH


@given(st.floats(0, 10_000))
def test_what_is_no_64th_is_written_to_a_thousandth_of_an_inch(mm: float) -> None:
    written = format_length(mm, "in")

    assert abs(exact_length(written, "mm") - Fraction(mm)) <= INCH / 2000 + Fraction(1, 10**6)
