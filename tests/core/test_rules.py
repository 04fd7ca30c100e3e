import pytest

from runboard.run.fold.record import stations_record, step_record
from runboard.run.refusal import Refused
from runboard.shop.book import STATION_KINDS
from tests.core.pressing import Floor
from tests.scenario import a_pass, key_rails, operation, shop


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


@pytest.mark.parametrize("minutes", [{"machine": 30}, {"hand": 5}], ids=["machine time", "by hand"])
@pytest.mark.parametrize("kind", STATION_KINDS)
def test_the_lead_can_show_what_a_helper_is_not_let_at_before(kind: str, minutes: dict[str, int]):
    """Rails glued in clamps that a press closes: whatever refuses the helper stands in what the lead picks from."""
    glue = operation("glue", "press", a_pass(**minutes), attendance="watched" if "machine" in minutes else "hands-on")
    book = shop()
    book["stations"].append({"key": "press", "name": "Press", "kind": kind, "room": "shop"})
    floor = Floor(book)
    floor.open_run(product={**key_rails(), "operations": [glue, *key_rails()["operations"]]}, boards={})
    floor.press("person came", {"name": "Mia"}, person="guest-1")
    begin = {"run": "r1", "load": "glue/1", "person": "guest-1"}

    station = stations_record(floor.state, floor.book)["press"]
    step = step_record(floor.book, floor.run.route, floor.run.route.steps[0])

    if station.get("shown_first") or step.get("shown_first"):
        assert refused_code(floor, "load started", **begin) == "not shown"
        floor.press("shown how", {"person": "guest-1"}, station="press")
    floor.press("load started", **begin)


def test_a_helper_is_shown_a_machine_whatever_is_done_at_it():
    """At another machine nobody's hands tell whether it can hurt: it is shown, also where a route knows no machine time."""
    book = shop()
    book["stations"].append({"key": "press", "name": "Press", "kind": "other machine", "room": "shop"})
    floor = Floor(book)
    glue = operation("glue", "press", a_pass(hand=5))
    floor.open_run(product={**key_rails(), "operations": [glue]}, boards={})
    floor.press("person came", {"name": "Mia"}, person="guest-1")

    assert refused_code(floor, "load started", run="r1", load="glue/1", person="guest-1") == "not shown"
