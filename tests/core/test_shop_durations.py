"""Spans of time are read as people write them, and written so that they read back the same."""

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.shop.durations import LONGEST, OVERNIGHT, format_duration, minutes_of, parse_duration
from runboard.shop.problem import Unreadable


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("40", 40),
        ("40 min", 40),
        ("1h30", 90),
        ("1 h 30 min", 90),
        ("90 s", 1.5),
        ("1:30", 90),
        ("0:00:30", 0.5),
        ("2 h", 120),
        ("1.5 h", 90),
        ("1,5 hours", 90),
        ("2 min 30", 2.5),
        ("1 day", 1440),
        ("2 weeks", 20160),
        ("12.5", 12.5),
        ("0", 0),
    ],
)
def test_spans_are_read(text: str, minutes: float) -> None:
    assert parse_duration(text) == timedelta(minutes=minutes)


@pytest.mark.parametrize(
    "text", ["", "soon", "1 h 2 h", "30 min 1 h", "1:75", "-5", "5 10", "h", "1e3", "nan", "40 minuets"]
)
def test_what_is_no_span_is_refused(text: str) -> None:
    with pytest.raises(Unreadable) as refused:
        parse_duration(text)

    assert refused.value.code == "time unreadable"


def test_overnight_is_read_where_it_makes_sense_only() -> None:
    assert parse_duration("Overnight", overnight=OVERNIGHT) == timedelta(hours=12)
    with pytest.raises(Unreadable):
        parse_duration("overnight")


def test_a_span_beyond_reason_is_refused() -> None:
    with pytest.raises(Unreadable) as refused:
        parse_duration("999999999 weeks")

    assert refused.value.code == "time too long"


@pytest.mark.parametrize(
    ("minutes", "written"),
    [
        (40, "40 min"),
        (90, "1 h 30 min"),
        (720, "12 h"),
        (1440, "1 d"),
        (1.5, "1 min 30 s"),
        (0, "0 min"),
        (0.025, "1.5 s"),
    ],
)
def test_spans_are_written(minutes: float, written: str) -> None:
    assert format_duration(timedelta(minutes=minutes)) == written


@given(st.timedeltas(timedelta(0), LONGEST))
def test_what_is_written_reads_back_the_same(span: timedelta) -> None:
    assert parse_duration(format_duration(span)) == span
    assert timedelta(minutes=minutes_of(span)) == span


@given(st.text(max_size=12))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        assert parse_duration(text) >= timedelta(0)
    except Unreadable as refused:
        assert str(refused)
