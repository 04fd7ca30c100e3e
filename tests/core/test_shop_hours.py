"""Hours by the clock on the wall are right over both clock changes of the year."""

from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from runboard.shop.hours import (
    Window,
    day_bounds,
    is_open,
    local_day,
    next_close,
    open_windows,
    running_windows,
    without,
)
from tests.core.books import windows

BERLIN, NEW_YORK = "Europe/Berlin", "America/New_York"
SATURDAY, SUNDAY, MONDAY = 5, 6, 0


def at(text: str, zone: str) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=ZoneInfo(zone)).astimezone(UTC)


def utc(text: str) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=UTC)


def lengths(spans: list[tuple[datetime, datetime]]) -> list[timedelta]:
    return [end - start for start, end in spans]


@pytest.mark.parametrize(
    ("zone", "spring", "autumn"), [(BERLIN, "2026-03-29", "2026-10-25"), (NEW_YORK, "2026-03-08", "2026-11-01")]
)
def test_a_night_over_a_clock_change_is_an_hour_shorter_or_longer(zone: str, spring: str, autumn: str) -> None:
    nights = [Window(SATURDAY, time(22), time(0)), Window(SUNDAY, time(0), time(6))]
    found = {}

    for season, sunday in (("spring", spring), ("autumn", autumn)):
        noon = at(f"{sunday}T12:00", zone)
        found[season] = open_windows(nights, zone, noon - timedelta(hours=24), noon)

    assert lengths(found["spring"]) == [timedelta(hours=7)]
    assert lengths(found["autumn"]) == [timedelta(hours=9)]


def test_evening_hours_keep_their_place_on_the_wall_over_the_change() -> None:
    evenings = [Window(SATURDAY, time(18), time(22)), Window(SUNDAY, time(18), time(22))]

    found = open_windows(evenings, BERLIN, utc("2026-03-28T00:00"), utc("2026-03-30T00:00"))

    assert found == [
        (utc("2026-03-28T17:00"), utc("2026-03-28T21:00")),
        (utc("2026-03-29T16:00"), utc("2026-03-29T20:00")),
    ]


def test_an_opening_time_that_the_clock_skips_is_the_moment_of_the_change() -> None:
    found = open_windows(
        [Window(SUNDAY, time(2, 30), time(4))], BERLIN, utc("2026-03-28T12:00"), utc("2026-03-29T12:00")
    )

    assert found == [(utc("2026-03-29T01:00"), utc("2026-03-29T02:00"))]


def test_a_window_that_the_clock_skips_altogether_is_none() -> None:
    skipped = [Window(SUNDAY, time(2, 15), time(2, 45))]

    assert open_windows(skipped, NEW_YORK, utc("2026-03-08T00:00"), utc("2026-03-09T00:00")) == []


def test_an_hour_that_comes_twice_is_open_from_its_first_to_its_second() -> None:
    found = open_windows(
        [Window(SUNDAY, time(1, 15), time(1, 45))], NEW_YORK, utc("2026-11-01T00:00"), utc("2026-11-02T00:00")
    )

    assert lengths(found) == [timedelta(hours=1, minutes=30)]


def test_24_00_is_the_end_of_the_day_and_joins_the_next() -> None:
    late = [Window(SUNDAY, time(20), time(0)), Window(MONDAY, time(0), time(1))]

    found = open_windows(late, BERLIN, utc("2026-06-07T00:00"), utc("2026-06-09T00:00"))

    assert found == [(utc("2026-06-07T18:00"), utc("2026-06-07T23:00"))]


def test_a_span_that_was_asked_for_is_not_exceeded() -> None:
    day = [Window(MONDAY, time(8), time(20))]

    found = open_windows(day, BERLIN, at("2026-06-08T10:00", BERLIN), at("2026-06-08T11:00", BERLIN))

    assert lengths(found) == [timedelta(hours=1)]


@pytest.mark.parametrize(("clock", "expected"), [("17:59", False), ("18:00", True), ("21:59", True), ("22:00", False)])
def test_a_window_is_open_from_its_first_minute_and_closed_at_its_last(clock: str, expected: bool) -> None:
    evening = [Window(MONDAY, time(18), time(22))]

    assert is_open(evening, BERLIN, at(f"2026-06-08T{clock}", BERLIN)) is expected


def test_a_window_closes_where_it_is_open() -> None:
    evening = [Window(MONDAY, time(18), time(22))]
    open_, closed = at("2026-06-08T19:00", BERLIN), at("2026-06-08T22:00", BERLIN)

    assert next_close(evening, BERLIN, open_) == closed
    assert next_close(evening, BERLIN, closed) is None


def test_a_station_runs_outside_its_quiet_hours() -> None:
    quiet = [Window(SUNDAY, time(0), time(0)), Window(MONDAY, time(22), time(0))]

    found = running_windows(quiet, BERLIN, at("2026-06-07T00:00", BERLIN), at("2026-06-09T00:00", BERLIN))

    assert found == [(at("2026-06-08T00:00", BERLIN), at("2026-06-08T22:00", BERLIN))]


def test_a_day_has_23_24_or_25_hours() -> None:
    hours = [
        (end - start) / timedelta(hours=1)
        for start, end in (day_bounds(date(2026, *day), BERLIN) for day in ((3, 29), (6, 1), (10, 25)))
    ]

    assert hours == [23, 24, 25]


def test_the_local_day_is_the_shops_own() -> None:
    moment = utc("2026-06-08T23:30")

    assert local_day(moment, BERLIN) == date(2026, 6, 9)
    assert local_day(moment, NEW_YORK) == date(2026, 6, 8)


@settings(max_examples=60)
@given(
    st.lists(windows(), max_size=5),
    st.sampled_from([BERLIN, NEW_YORK, "UTC", "Australia/Lord_Howe"]),
    st.integers(0, 365 * 24),
)
def test_open_and_closed_share_out_all_time(hours: list[Window], zone: str, start: int) -> None:
    from_ = utc("2026-01-01T00:00") + timedelta(hours=start)
    to = from_ + timedelta(days=3)

    open_ = open_windows(hours, zone, from_, to)
    closed = without([(from_, to)], open_)

    assert sum(lengths(open_) + lengths(closed), timedelta(0)) == timedelta(days=3)
    assert all(is_open(hours, zone, begin) for begin, _ in open_)
    assert not any(is_open(hours, zone, begin) for begin, _ in closed)
