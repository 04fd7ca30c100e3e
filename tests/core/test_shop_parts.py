"""A load's parts: what each asks of the station, of people and of services."""

from dataclasses import replace
from datetime import timedelta

import pytest

from runboard.shop.book import Station
from runboard.shop.parts import LoadContents, parts
from runboard.shop.product import Operation, Pass, Wait


def minutes(count: float) -> timedelta:
    return timedelta(minutes=count)


CUT = Operation(
    key="cut",
    name="Cut",
    station="cnc",
    attendance="watched",
    services=("air",),
    passes=(Pass("1", "", "board", 15, minutes(4), minutes(2), minutes(38), minutes(2), minutes(0)),),
)
SAND = Operation(
    key="sand",
    name="Sand",
    station="sander",
    passes=(Pass("120", "120", hand=minutes(2)), Pass("180", "180", hand=minutes(1))),
    wait=Wait("dry", minutes(720), minutes(800), {"rack": 1}),
)


def test_a_machine_load_is_loaded_runs_and_is_unloaded() -> None:
    found = parts(CUT, LoadContents("1", 15))

    assert [(part.kind, part.length, part.attendance) for part in found] == [
        ("loading", minutes(2), "hands-on"),
        ("machine", minutes(38), "watched"),
        ("unloading", minutes(2), "hands-on"),
    ]


def test_setup_comes_first_where_the_station_needs_it() -> None:
    found = parts(CUT, LoadContents("1", 15, needs_setup=True))

    assert [part.kind for part in found] == ["setup", "loading", "machine", "unloading"]
    assert [part.length for part in found] == [minutes(4), minutes(2), minutes(38), minutes(2)]
    assert [part.attendance for part in found if part.attendance != "hands-on"] == [CUT.attendance]
    assert all(part.holds_station for part in found)


def test_hand_time_counts_each_piece() -> None:
    found = parts(SAND, LoadContents("120", 3))

    assert [(part.kind, part.length) for part in found] == [("hand", minutes(6))]


def test_hand_work_is_hands_on_whatever_the_machine_asks() -> None:
    found = parts(replace(SAND, attendance="none"), LoadContents("120", 5))

    assert found[0].attendance == "hands-on"


def test_the_wait_follows_the_last_pass_only_and_frees_the_station() -> None:
    first, last = parts(SAND, LoadContents("120", 5)), parts(SAND, LoadContents("180", 5))

    wait = last[-1]
    assert "wait" not in [part.kind for part in first]
    assert (wait.kind, wait.length, wait.attendance, wait.latest) == ("wait", minutes(720), "none", minutes(800))
    assert not wait.holds_station
    assert dict(wait.services) == {"rack": 1}
    assert [part.length for part in last if part.holds_station] == [minutes(5)]


def test_services_are_drawn_on_while_it_runs_and_not_while_it_is_loaded() -> None:
    station = Station("cnc", "CNC", "cnc", "shop", services=("air", "pump"))

    loading, machine, unloading = parts(CUT, LoadContents("1", 15), station)

    assert dict(machine.services) == {"air": 1, "pump": 1}
    assert not loading.services
    assert not unloading.services


def test_a_wait_of_no_least_time_but_a_latest_end_is_still_a_part() -> None:
    operation = replace(SAND, wait=Wait("dry", minutes(0), minutes(15)))

    found = parts(operation, LoadContents("180", 1))

    assert (found[-1].kind, found[-1].length) == ("wait", minutes(0))


def test_a_pass_that_is_not_there_is_refused() -> None:
    with pytest.raises(KeyError):
        parts(CUT, LoadContents("2", 15))
