import pytest

from runboard.run.refusal import Refused
from tests.core.pressing import Floor, conserved


def at_clean_up() -> Floor:
    """Three trays, the board cut."""
    floor = Floor()
    floor.open_run()
    floor.press("load started", run="r1", load="cut/1")
    floor.press("machine started", run="r1", load="cut/1")
    floor.wait(38)
    floor.press("unloading started", run="r1", load="cut/1")
    floor.wait(2)
    floor.press("load done", run="r1", load="cut/1")
    return floor


def test_a_board_feeds_its_trays():
    floor = at_clean_up()

    assert [tray.at for tray in floor.run.trays.values()] == [{"clean": 5}] * 3
    assert floor.state.stations["cnc"].load is None
    assert conserved(floor.run)


def test_a_board_counted_short_shortens_its_last_tray():
    floor = Floor()
    floor.open_run()
    floor.press("load started", run="r1", load="cut/1")

    counts = {"*": {"good": 13, "scrap": [{"pieces": 2, "why": "knot"}]}}
    floor.press("load done", {"counts": counts}, run="r1", load="cut/1")

    assert [tray.at for tray in floor.run.trays.values()] == [{"clean": 5}, {"clean": 5}, {"clean": 3}]
    assert floor.run.trays["3"].scrapped == 2
    assert conserved(floor.run)


def test_a_load_cannot_start_while_another_holds_the_station():
    floor = at_clean_up()
    floor.press("load started", run="r1", load="clean/1")

    with pytest.raises(Refused) as refused:
        floor.press("load started", run="r1", load="clean/2", person="ben")

    assert refused.value.code == "station busy"
    assert refused.value.facts["station"] == "Bench"


def test_a_blind_press_that_does_not_fit_is_kept_to_settle():
    floor = at_clean_up()
    floor.press("load started", run="r1", load="clean/1")

    pressed = floor.blind("load started", run="r1", load="clean/2", person="ben")

    assert floor.state.unsettled[pressed.id].code == "station busy"
    assert floor.run.loads.keys() == {"clean/1"}


def test_settling_for_the_press_clears_the_station_for_it():
    floor = at_clean_up()
    floor.press("load started", run="r1", load="clean/1")
    pressed = floor.blind("load started", run="r1", load="clean/2", person="ben")

    floor.press("entry settled", {"event": pressed.id, "keep": "press"})

    assert floor.state.unsettled == {}
    assert floor.state.stations["bench"].load == ("r1", "clean/2")
    assert floor.run.trays["1"].free("clean") == 5
    assert conserved(floor.run)


def test_settling_never_takes_a_load_off_a_running_machine():
    floor = at_clean_up()
    floor.press("machine started", run="r1", load="engrave/1")
    pressed = floor.blind("load started", run="r1", load="engrave/2", person="ben")

    with pytest.raises(Refused) as refused:
        floor.press("entry settled", {"event": pressed.id, "keep": "press"})

    assert refused.value.code == "machine runs"
    assert floor.state.stations["laser"].load == ("r1", "engrave/1")
    assert pressed.id in floor.state.unsettled


def test_a_press_with_nothing_there_says_so_when_it_is_settled():
    floor = at_clean_up()
    body = {"to": "9", "pieces": 7, "to_operation": "cut"}
    pressed = floor.blind("pieces moved", body, run="r1", tray="1", operation="cut")

    with pytest.raises(Refused) as refused:
        floor.press("entry settled", {"event": pressed.id, "keep": "press"})

    assert refused.value.facts["step"] == "Cut"


def test_settling_can_be_undone():
    floor = at_clean_up()
    floor.press("load started", run="r1", load="clean/1")
    pressed = floor.blind("load started", run="r1", load="clean/2", person="ben")
    settled = floor.press("entry settled", {"event": pressed.id, "keep": "press"})

    floor.press("event undone", {"event": settled.id})

    assert pressed.id in floor.state.unsettled
    assert floor.state.stations["bench"].load == ("r1", "clean/1")


def test_a_load_begun_anew_stands_where_it_is_begun():
    floor = at_clean_up()
    floor.press("load started", run="r1", load="sand:120/1", station="finishing")
    floor.press("load taken off", run="r1", load="sand:120/1")

    floor.press("load started", run="r1", load="sand:120/1")

    assert floor.run.loads["sand:120/1"].station == "sander"


def test_settling_for_the_shop_leaves_all_as_it_is():
    floor = at_clean_up()
    floor.press("load started", run="r1", load="clean/1")
    pressed = floor.blind("load started", run="r1", load="clean/2", person="ben")

    floor.press("entry settled", {"event": pressed.id, "keep": "shop"})

    assert floor.state.unsettled == {}
    assert floor.state.stations["bench"].load == ("r1", "clean/1")


def test_a_second_start_joins():
    floor = at_clean_up()
    floor.press("load started", run="r1", load="clean/1")

    floor.press("load started", run="r1", load="clean/1", person="ben")

    assert floor.run.loads["clean/1"].people == ("ann", "ben")


def test_a_missing_start_is_filled_in():
    floor = at_clean_up()

    floor.press("load done", run="r1", load="clean/1")

    assert floor.run.trays["1"].at == {"sand:120": 5}
    assert floor.run.past["clean/1"].spans == ()


def test_missing_earlier_operations_are_filled_in_as_all_good():
    floor = at_clean_up()

    floor.press("load started", run="r1", load="sand:180/2")

    assert floor.run.trays["2"].busy == {"sand:180": 5}
    assert floor.run.trays["2"].counts["sand:120"] == {"sand:120/2": (5, 0)}
    assert conserved(floor.run)


def test_pieces_on_a_running_machine_are_not_filled_in():
    floor = Floor()
    floor.open_run()
    floor.press("machine started", run="r1", load="cut/1")

    with pytest.raises(Refused) as refused:
        floor.press("load started", run="r1", load="clean/1", person="ben")

    assert refused.value.code == "pieces not there"


def test_starting_something_else_puts_a_hand_load_aside():
    floor = at_clean_up()
    floor.press("load started", run="r1", load="clean/1")
    floor.wait(10)

    floor.press("load started", run="r1", load="sand:120/2")

    left = floor.run.loads["clean/1"]
    assert left.people == () and left.state == "working"
    assert floor.state.stations["bench"].load == ("r1", "clean/1")
    assert not left.spans[-1].measured


def test_counts_replace_and_never_add():
    floor = at_clean_up()
    floor.press("load done", run="r1", load="clean/1")

    floor.press(
        "pieces counted", {"good": 4, "scrap": [{"pieces": 1, "why": "split"}]}, run="r1", tray="1", operation="clean"
    )
    floor.press(
        "pieces counted", {"good": 4, "scrap": [{"pieces": 1, "why": "split"}]}, run="r1", tray="1", operation="clean"
    )

    assert floor.run.trays["1"].at == {"sand:120": 4}
    assert floor.run.trays["1"].scrapped == 1
    assert conserved(floor.run)


def test_a_count_cannot_call_back_pieces_that_went_on():
    floor = at_clean_up()
    floor.press("load done", run="r1", load="clean/1")
    floor.press("load done", run="r1", load="sand:120/1")

    with pytest.raises(Refused) as refused:
        floor.press("pieces counted", {"good": 3}, run="r1", tray="1", operation="clean")

    assert refused.value.code == "counts gone on"


def test_a_partial_count_leaves_the_rest_in_the_load():
    floor = at_clean_up()
    floor.press("load started", run="r1", load="clean/1")

    floor.press("pieces counted", {"good": 2}, run="r1", tray="1", operation="clean")
    floor.press("load put aside", run="r1", load="clean/1")

    assert floor.run.trays["1"].at == {"clean": 3, "sand:120": 2}
    assert floor.run.trays["1"].busy == {"clean": 3}
    floor.press("load done", run="r1", load="clean/1")
    assert floor.run.trays["1"].at == {"sand:120": 5}


def test_a_watched_laser_holds_the_person():
    floor = at_clean_up()
    floor.press("load started", run="r1", load="engrave/1")
    floor.press("machine started", run="r1", load="engrave/1")

    with pytest.raises(Refused) as refused:
        floor.press("load started", run="r1", load="clean/2")

    assert refused.value.code == "watch first"


def test_work_in_sight_of_a_watched_machine_is_allowed():
    floor = Floor()
    floor.open_run(trays=6)
    floor.press("load done", run="r1", load="cut/1")
    floor.press("load started", run="r1", load="cut/2")
    floor.press("machine started", run="r1", load="cut/2")

    floor.press("load started", run="r1", load="sand:120/1")

    assert floor.state.people["ann"].hands == ("r1", "sand:120/1")
    assert floor.run.loads["cut/2"].watcher == "ann"


def test_a_load_that_stopped_early_can_be_saved():
    floor = at_clean_up()
    floor.press("machine started", run="r1", load="engrave/1")
    floor.press("load stopped", {"why": "power", "good": [1, 2], "half": [3]}, run="r1", load="engrave/1")

    counts = {"1": {"good": 2, "scrap": [{"pieces": 1, "why": "half engraved"}]}}
    floor.press("stop settled", {"how": "save", "counts": counts}, run="r1", load="engrave/1")

    assert floor.run.trays["1"].at == {"engrave": 2, "oil": 2}
    assert floor.run.trays["1"].free("engrave") == 2
    assert conserved(floor.run)


def test_a_load_that_stopped_early_can_go_on():
    floor = at_clean_up()
    floor.press("machine started", run="r1", load="engrave/1")
    floor.press("load stopped", {"why": "cutter"}, run="r1", load="engrave/1")
    setups = floor.state.stations["laser"].setups

    floor.press("stop settled", {"how": "resume"}, run="r1", load="engrave/1")
    floor.press("machine started", {"minutes": 9}, run="r1", load="engrave/1")

    assert floor.run.loads["engrave/1"].state == "running"
    assert floor.state.stations["laser"].setups == setups


def test_still_running_moves_the_end():
    floor = at_clean_up()
    floor.press("machine started", run="r1", load="engrave/1")
    floor.wait(22)

    again = "2026-06-01T17:20:00Z"
    alert = "machine end|r1|engrave/1|1"
    floor.press("alert answered", {"alert": alert, "answer": "still running", "ask_again_at": again})

    assert floor.run.loads["engrave/1"].end_at.isoformat() == "2026-06-01T17:20:00+00:00"
    assert floor.run.loads["engrave/1"].ends == 2
