"""Lengths against exact inch arithmetic.

1 in = 25.4 mm exactly: the international inch of 1959, in NIST Handbook 44, Appendix C; the millimetre as the unit of
length of drawings is ISO 80000-3's. What is not a printed table is calculated in exact fractions from that definition.
"""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from runboard.shop.units import exact_length, format_length, parse_length
from tests.outside.said import calculated, published

INCH = Fraction(254, 10)

# Millimetres of 1/64 in to 64/64 in, four places.
SIXTY_FOURTHS = """
0.3969 0.7937 1.1906 1.5875 1.9844 2.3812 2.7781 3.1750 3.5719 3.9688 4.3656 4.7625 5.1594 5.5562 5.9531 6.3500
6.7469 7.1437 7.5406 7.9375 8.3344 8.7312 9.1281 9.5250 9.9219 10.3187 10.7156 11.1125 11.5094 11.9062 12.3031 12.7000
13.0969 13.4937 13.8906 14.2875 14.6844 15.0812 15.4781 15.8750 16.2719 16.6687 17.0656 17.4625 17.8594 18.2562 18.6531
19.0500 19.4469 19.8438 20.2406 20.6375 21.0344 21.4312 21.8281 22.2250 22.6219 23.0187 23.4156 23.8125 24.2094 24.6062
25.0031 25.4000
"""


@published(
    "https://utilitiesbunker.com/tools/fraction-to-decimal-chart",
    {f"{at}/64 in": float(mm) for at, mm in enumerate(SIXTY_FOURTHS.split(), 1)},
    within=5.1e-5,  # a 5 in the fifth place is cut in some rows
)
def test_sixty_fourths_of_an_inch_in_millimetres(text: str) -> float:
    return parse_length(text, "mm")


@calculated(
    "25.4 mm an inch, NIST Handbook 44, Appendix C",
    {
        '1"': INCH,
        "5 1/2 in": Fraction(11, 2) * INCH,
        '5-1/2"': Fraction(11, 2) * INCH,
        '3/4"': Fraction(3, 4) * INCH,
        "0.125 in": Fraction(1, 8) * INCH,
        "23 63/64 in": Fraction(1535, 64) * INCH,
        "1 ft": 12 * INCH,
        "8' 3 1/2\"": Fraction(199, 2) * INCH,
    },
)
def test_inches_are_exact(text: str) -> Fraction:
    found = exact_length(text, "mm")
    assert parse_length(text, "mm") == float(found)
    return found


@calculated("the prefixes of the SI", {"12,5 mm": Fraction(25, 2), "1 cm": Fraction(10), "0.6 m": Fraction(600)})
def test_metric_lengths_are_exact(text: str) -> Fraction:
    return exact_length(text, "in")


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
