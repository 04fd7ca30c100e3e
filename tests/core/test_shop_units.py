"""Lengths are read as people write them, and refused where they say nothing or two things."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.shop.problem import Unreadable
from runboard.shop.units import format_length, parse_length


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("12 mm", 12),
        ("12,5 mm", 12.5),
        ("12.5mm", 12.5),
        (" 1 cm ", 10),
        ("2 m", 2000),
        ("1/2 mm", 0.5),
        (".5 mm", 0.5),
        ("0,125 mm", 0.125),
        ("12 MM", 12),
        ("12.", 12),
        ("0", 0),
    ],
)
def test_millimetres_are_read(text: str, mm: float) -> None:
    assert parse_length(text, "mm") == mm


@pytest.mark.parametrize(
    "text", ["5 1/2", '5-1/2"', "5 1/2 in", "5½", "5 ½ inches", "5.5", "5,5", "5 – 1/2 inch", "5 11/22''"]
)
def test_five_and_a_half_inches_may_be_written_many_ways(text: str) -> None:
    assert parse_length(text, "in") == pytest.approx(139.7)


def test_a_bare_number_is_in_the_unit_of_the_book() -> None:
    assert parse_length("2", "mm") == 2
    assert parse_length("2", "in") == 50.8


@pytest.mark.parametrize(
    "text",
    [
        "",
        " ",
        "wide",
        "1/0 in",
        "-3 mm",
        "1 2 3",
        "5 1/2/3",
        "1e3",
        "5 mm 3",
        "3 in 2 in",
        "1/2 1/2",
        "nan",
        "12 mm oak",
    ],
)
def test_what_is_no_length_is_refused(text: str) -> None:
    with pytest.raises(Unreadable) as refused:
        parse_length(text, "mm")

    assert refused.value.code in ("length unreadable", "length unit")


def test_an_unknown_unit_is_named() -> None:
    with pytest.raises(Unreadable) as refused:
        parse_length("5 furlongs", "mm")

    assert (refused.value.code, refused.value.facts) == ("length unit", {"unit": "furlongs"})
    assert str(refused.value) == "'furlongs' is no unit of length. Units are: mm, cm, m, in, ft."


def test_a_comma_that_may_mark_thousands_is_refused() -> None:
    with pytest.raises(Unreadable) as refused:
        parse_length("1,250 mm", "mm")

    assert refused.value.code == "length ambiguous"


@pytest.mark.parametrize(
    ("mm", "inches"),
    [(139.7, "5 1/2 in"), (0, "0 in"), (25.4, "1 in"), (19.05, "3/4 in"), (0.396875, "1/64 in"), (3, "0.118 in")],
)
def test_inches_are_written_as_the_reduced_fraction_where_exact_and_else_as_decimals(mm: float, inches: str) -> None:
    assert format_length(mm, "in") == inches


@pytest.mark.parametrize(("mm", "written"), [(12, "12 mm"), (12.5, "12.5 mm"), (0.1254, "0.125 mm"), (100, "100 mm")])
def test_millimetres_are_written_without_idle_noughts(mm: float, written: str) -> None:
    assert format_length(mm, "mm") == written


@given(st.text(max_size=12))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        assert parse_length(text, "in") >= 0
    except Unreadable as refused:
        assert str(refused)
