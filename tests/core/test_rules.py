import pytest

from runboard.run.refusal import Refused
from tests.core.pressing import Floor


def ready() -> Floor:
    floor = Floor()
    floor.open_run()
    floor.press("load done", run="r1", load="cut/1")
    return floor


def refused_code(floor: Floor, kind: str, body=None, **fields) -> str:
    with pytest.raises(Refused) as refused:
        floor.press(kind, body, **fields)
    return refused.value.code


def test_nobody_goes_home_from_a_machine_that_must_be_watched():
    floor = ready()
    floor.press("machine started", run="r1", load="engrave/1")

    assert refused_code(floor, "person went") == "watch first"
    floor.press("watch taken", run="r1", load="engrave/1", person="ben")
    floor.press("person went")


def test_called_away_is_never_refused():
    floor = ready()
    floor.press("machine started", run="r1", load="engrave/1")

    floor.press("person called away")

    assert floor.state.people["ann"].away


def test_a_station_out_of_use_takes_no_load():
    floor = ready()
    floor.press("station out of use", {"why": "belt"}, station="sander")

    assert refused_code(floor, "load started", run="r1", load="sand:120/1") == "station out"
    floor.press("station back in use", station="sander")
    floor.press("load started", run="r1", load="sand:120/1")


def test_a_first_piece_that_fails_stops_the_operation_until_somebody_decides():
    floor = ready()
    floor.press("first piece checked", {"result": "fail", "check": "depth"}, run="r1", operation="engrave")

    assert refused_code(floor, "load started", run="r1", load="engrave/1") == "first piece failed"
    floor.press("first piece decided", {"what": "go on"}, run="r1", operation="engrave")
    floor.press("load started", run="r1", load="engrave/1")


def test_a_new_day_or_a_new_setup_opens_the_first_piece_check_again():
    floor = ready()
    floor.press("load started", run="r1", load="engrave/1")
    floor.press("first piece checked", {"result": "pass", "check": "depth"}, run="r1", operation="engrave")
    first = set(floor.run.first_pieces)

    floor.press("setup changed", {"what": "focus"}, station="laser")
    floor.press("first piece checked", {"result": "pass", "check": "depth"}, run="r1", operation="engrave")
    second = set(floor.run.first_pieces) - first
    floor.wait(24 * 60)
    floor.press("first piece checked", {"result": "pass", "check": "depth"}, run="r1", operation="engrave")

    assert len(second) == 1
    assert len(floor.run.first_pieces) == 3
    assert floor.run.loads["engrave/1"].fresh


def test_a_blind_press_that_breaks_a_rule_is_kept():
    floor = ready()
    floor.press("station out of use", {"why": "belt"}, station="sander")

    floor.blind("load started", run="r1", load="sand:120/1", person="ben")

    assert floor.run.loads["sand:120/1"].people == ("ben",)
    assert floor.state.unsettled == {}


def test_ids_that_nobody_knows_are_refused_blind_or_not():
    floor = ready()

    with pytest.raises(Refused) as refused:
        floor.blind("pieces counted", {"good": 1}, run="r1", tray="99", operation="clean")

    assert refused.value.code == "tray unknown"


def test_a_run_that_is_over_takes_no_press():
    floor = ready()
    floor.press("run finished", run="r1")

    assert refused_code(floor, "load started", run="r1", load="clean/1") == "run closed"


def test_a_run_that_ends_leaves_nobody_and_nothing_behind():
    floor = ready()
    floor.press("load started", run="r1", load="clean/1")
    floor.press("load put aside", run="r1", load="clean/1")
    floor.press("run finished", run="r1")

    assert floor.state.stations["bench"].load is None
    assert floor.run.loads == {}
