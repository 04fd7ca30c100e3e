"""Noise and dust of a person's day, from presses and the stations' own figures."""

from collections.abc import Mapping
from datetime import UTC, date, datetime, timedelta
from typing import Any

import pytest

from runboard.review.exposure import Exposure, exposures
from runboard.review.noise import NIOSH, dose, level_together
from runboard.review.stays import is_extraction
from runboard.shop.hours import day_bounds
from tests.core.pressing import START, Floor
from tests.scenario import shop

DAY = date(2026, 6, 1)
MINUTE = timedelta(minutes=1)


def loud(figures: Mapping[str, float] | None = None, start: datetime = START, **more: Any) -> Floor:
    """The small shop with figures: the sander 90, the CNC 85, the bench none."""
    record = shop() | more
    known = {"sander": 90, "cnc": 85} if figures is None else figures
    for station in record["stations"]:
        station["noise_db"] = known.get(station["key"])
    floor = Floor(record)
    floor.now = start
    floor.open_run(trays=6)
    return floor


def seen(floor: Floor, *days: date, person: str = "ann") -> list[Exposure]:
    found = exposures(floor.book, floor.state, floor.ledger.held, days or (DAY,), floor.now)
    return [one for one in found if one.person == person]


def hand_work(floor: Floor, load: str, minutes: float, **fields: Any) -> None:
    floor.press("load started", run="r1", load=load, **fields)
    floor.wait(minutes)
    floor.press("load done", run="r1", load=load, **fields)


def percent(*stretches: tuple[float, float]) -> float:
    return dose([(level, minutes * MINUTE) for level, minutes in stretches], NIOSH)


def near(found: Exposure, minutes: float) -> bool:
    return abs(found.heard - minutes * MINUTE) < timedelta(seconds=10)


def test_hands_at_a_station_count_at_its_figure() -> None:
    floor = loud()

    hand_work(floor, "sand:120/1", 60)

    (found,) = seen(floor)
    assert found.dose == pytest.approx(percent((90, 60)), rel=0.01)
    assert near(found, 60)
    assert (found.unknown, found.going_on, found.is_over) == ({}, False, False)


def test_a_station_without_a_figure_is_said_and_not_taken_as_quiet() -> None:
    floor = loud()

    hand_work(floor, "clean/1", 20)
    (only_bench,) = seen(floor)
    hand_work(floor, "sand:120/1", 30)
    (both,) = seen(floor)

    assert (only_bench.dose, only_bench.level) == (None, None)
    assert round(only_bench.unknown["bench"] / MINUTE) == 20
    assert both.dose == pytest.approx(percent((90, 30)), rel=0.01)
    assert set(both.unknown) == {"bench"}


def test_watching_a_running_machine_counts_in_its_room() -> None:
    floor = loud()
    floor.press("load started", run="r1", load="cut/1")
    floor.press("machine started", run="r1", load="cut/1")
    floor.wait(38)

    floor.press("load done", run="r1", load="cut/1")

    (found,) = seen(floor)
    assert found.dose == pytest.approx(percent((85, 38)), rel=0.01)
    assert near(found, 38)


def test_sources_at_the_same_time_add_by_energy_and_the_minutes_once() -> None:
    floor = loud({"cnc": 85, "bench": 85})
    floor.press("load started", run="r1", load="cut/1")
    floor.press("machine started", run="r1", load="cut/1")
    floor.press("load started", run="r1", load="clean/4")
    floor.wait(30)

    floor.press("load done", run="r1", load="cut/1")

    (found,) = seen(floor)
    together = level_together([85, 85])
    assert together is not None
    assert found.dose == pytest.approx(percent((together, 30)), rel=0.01)
    assert near(found, 30)


def test_watching_passes_from_one_to_another() -> None:
    floor = loud()
    floor.press("load started", run="r1", load="cut/1")
    floor.press("machine started", run="r1", load="cut/1")
    floor.wait(10)
    floor.press("watch taken", run="r1", load="cut/1", person="ben", device="other phone")
    floor.wait(28)

    (ann,), (ben,) = seen(floor), seen(floor, person="ben")

    assert near(ann, 10)
    assert near(ben, 28)
    assert (ann.going_on, ben.going_on) == (False, True)


@pytest.mark.parametrize(
    ("kind", "body"),
    [("person called away", {}), ("room changed", {"room": "house"}), ("person went", {})],
)
def test_who_is_away_or_in_another_room_does_not_hear_the_machine(kind: str, body: dict[str, Any]) -> None:
    floor = loud()
    floor.press("load started", run="r1", load="cut/1")
    floor.press("machine started", run="r1", load="cut/1")
    floor.wait(10)

    floor.blind(kind, body)
    floor.wait(20)

    (found,) = seen(floor)
    assert near(found, 10)


def test_hands_in_another_room_end_the_watching_meanwhile() -> None:
    floor = loud({"cnc": 85, "laser": 60})
    floor.press("load started", run="r1", load="cut/1")
    floor.press("machine started", run="r1", load="cut/1")
    floor.wait(10)

    floor.blind("load started", run="r1", load="engrave/4.1")
    floor.wait(20)

    (found,) = seen(floor)
    assert found.dose == pytest.approx(percent((85, 10), (60, 20)), rel=0.02)


def test_an_open_span_counts_till_now() -> None:
    floor = loud()
    floor.press("load started", run="r1", load="sand:120/1")
    floor.wait(15)

    (found,) = seen(floor)

    assert near(found, 15)
    assert found.going_on


def test_an_undone_press_leaves_no_noise() -> None:
    floor = loud()
    begun = floor.press("load started", run="r1", load="sand:120/1")
    floor.wait(15)

    floor.press("event undone", {"event": begun.id})

    assert seen(floor) == []


def test_work_over_midnight_belongs_to_both_days() -> None:
    floor = loud(start=datetime(2026, 6, 1, 21, 30, tzinfo=UTC))  # 23:30 in Berlin

    hand_work(floor, "sand:120/1", 90)

    late, early = seen(floor, DAY, DAY + timedelta(days=1))
    assert (late.day, early.day) == (DAY + timedelta(days=1), DAY)
    assert near(early, 30)
    assert near(late, 60)


@pytest.mark.parametrize(("day", "hours"), [(date(2026, 3, 29), 23), (date(2026, 10, 25), 25)])
def test_a_day_with_a_clock_change_has_its_own_length(day: date, hours: int) -> None:
    floor = loud(start=datetime(day.year, day.month, day.day, tzinfo=UTC) - timedelta(hours=6))

    floor.press("load started", run="r1", load="sand:120/1")
    floor.wait(48 * 60)

    (found,) = seen(floor, day)
    began, ended = day_bounds(day, "Europe/Berlin")
    assert found.heard == ended - began == timedelta(hours=hours)
    assert found.is_over
    assert not found.going_on


def test_dust_without_extraction_is_told_apart() -> None:
    floor = loud()
    hand_work(floor, "sand:120/1", 20)
    floor.press("load started", run="r1", load="cut/1")
    floor.press("machine started", run="r1", load="cut/1")
    floor.wait(38)

    (found,) = seen(floor)

    assert round(found.dust / MINUTE) == 58
    assert round(found.dust_open / MINUTE) == 20


def test_clamps_and_a_rack_carry_no_dust_away() -> None:
    services = [
        {"key": "extraction", "name": "Dust extraction", "capacity": 1},
        {"key": "e1", "name": "Absaugung", "capacity": 1},
        {"key": "clamps", "name": "Clamps", "capacity": 4},
        {"key": "rack", "name": "Drying rack places", "capacity": 4},
    ]

    floor = loud(services=services)

    assert [one.key for one in floor.book.services if is_extraction(floor.book, one.key)] == ["extraction", "e1"]


def test_bench_work_is_not_at_dust() -> None:
    floor = loud()

    hand_work(floor, "clean/1", 20)

    (found,) = seen(floor)
    assert (found.dust, found.dust_open) == (timedelta(0), timedelta(0))


def test_days_nobody_asked_for_and_no_days_give_nothing() -> None:
    floor = loud()
    hand_work(floor, "sand:120/1", 20)

    assert seen(floor, START.date() - timedelta(days=1)) == []
    assert exposures(floor.book, floor.state, floor.ledger.held, [], floor.now) == []


def test_the_shops_own_rule_decides() -> None:
    floor = loud(noise_limit_db=90, noise_exchange_db=5)

    hand_work(floor, "sand:120/1", 4 * 60)

    (found,) = seen(floor)
    assert found.dose == pytest.approx(50, rel=0.01)
    assert found.level == pytest.approx(85, abs=0.05)
