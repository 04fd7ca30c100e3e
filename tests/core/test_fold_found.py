"""What the state machine and the vectors found in the fold, each held by the shortest case that shows it."""

from dataclasses import replace
from datetime import timedelta

import pytest

from runboard.plan.next_move import moves
from runboard.run.fold.fold import fold
from runboard.run.fold.names import next_load
from runboard.run.refusal import Refused
from tests.core.pressing import Floor, conserved


def refusal(floor: Floor, *press, **fields) -> str:
    with pytest.raises(Refused) as refused:
        floor.press(*press, **fields)
    return refused.value.code


def test_a_date_that_no_calendar_has_is_refused_for_its_form():
    floor = Floor()

    assert refusal(floor, "person came", {"until": "2026-13-01T00:00:00Z"}) == "form"
    assert refusal(floor, "person came", at="9999-12-31T23:59:59Z") == "form"


def test_an_amendment_that_leaves_no_event_is_refused_for_its_form():
    floor = Floor()
    floor.open_run()
    done = floor.press("load done", run="r1", load="cut/1")

    assert refusal(floor, "event amended", {"event": done.id, "body": {"counts": "many"}}) == "form"


def test_a_wait_whose_operation_the_route_has_lost_stops_nobody():
    floor = Floor()
    floor.open_run()
    floor.press("load done", {"counts": {"1": {"good": 5}}}, run="r1", load="oil/1")
    product = dict(floor.ledger.arrived["event-00001"].body["product"])
    product["operations"] = [one for one in product["operations"] if one["key"] != "oil"]
    floor.press("route revised", {"product": product, "from_tray": "1"}, run="r1")

    floor.press("load started", run="r1", load="hooks/1")

    assert floor.run.loads["hooks/1"].pieces == {"1": 5}


def test_the_next_load_of_a_tray_never_takes_a_boards_name():
    floor = Floor()
    floor.open_run(trays=6)
    floor.press("load done", {"counts": {"2": {"good": 3}}}, run="r1", load="cut/1")

    assert next_load(floor.run, floor.run.route.steps[0], ("2",)) == "cut/2.2"


def test_a_board_that_was_taken_off_is_offered_again_as_a_whole():
    floor = Floor()
    floor.open_run()
    floor.press("load started", run="r1", load="cut/1")
    floor.press("load taken off", run="r1", load="cut/1")

    first = moves(floor.state, floor.book, "ann", floor.now)[0]

    assert (first.load, first.pieces) == ("cut/1", {"1": 5, "2": 5, "3": 5})


def test_a_load_done_again_after_it_was_assumed_replaces_the_assumed_count():
    floor = Floor()
    floor.open_run()
    floor.press("load done", run="r1", load="clean/1")

    counts = {"1": {"good": 4, "scrap": [{"pieces": 1, "why": "knot"}]}}
    floor.press("load done", {"counts": counts}, run="r1", load="clean/1")

    assert floor.run.trays["1"].counts["clean"] == {"clean/1": (4, 1)}
    assert conserved(floor.run)


def test_a_board_counted_whole_after_one_of_its_trays_went_on_counts_only_the_rest():
    floor = Floor()
    floor.open_run()
    floor.press("load done", run="r1", load="clean/1")

    floor.press("load done", {"counts": {tray: {"good": 5} for tray in "123"}}, run="r1", load="cut/1")

    assert [tray.at for tray in floor.run.trays.values()] == [{"sand:120": 5}, {"clean": 5}, {"clean": 5}]


def test_a_load_taken_off_and_begun_again_has_no_stop_behind_it():
    floor = Floor()
    floor.open_run()
    floor.press("machine started", run="r1", load="cut/1")
    floor.press("load stopped", {"why": "slip"}, run="r1", load="cut/1")
    floor.press("stop settled", {"how": "again"}, run="r1", load="cut/1")

    floor.press("load started", run="r1", load="cut/1")

    assert floor.run.loads["cut/1"].stop is None


def test_a_board_counted_again_with_more_good_pieces_gets_them_back():
    floor = Floor()
    floor.open_run()
    floor.press("load started", run="r1", load="cut/1")
    floor.press("load done", {"counts": {"*": {"good": 14}}}, run="r1", load="cut/1")

    floor.press("load done", {"counts": {"*": {"good": 15}}}, run="r1", load="cut/1")

    assert [tray.at for tray in floor.run.trays.values()] == [{"clean": 5}] * 3


def test_an_undo_that_arrives_before_the_press_it_names_undoes_it_all_the_same():
    floor = Floor()
    floor.open_run()
    pressed = floor.event("load started", run="r1", load="cut/1")
    floor.now += timedelta(minutes=1)
    undo = floor.event("event undone", {"event": pressed.id})

    for seq, event in enumerate((undo, pressed), 2):
        floor.ledger.keep(floor.ledger.try_event(event), seq)

    assert floor.run.loads == {}
    assert floor.state == fold(floor.book, floor.ledger.arrived.values())


def test_the_order_of_arrival_is_no_part_of_what_is_to_settle():
    floor = Floor()
    floor.open_run()
    floor.press("load started", run="r1", load="cut/1")
    pressed = floor.blind("load put aside", run="r1", load="clean/1")

    stored = [replace(event, seq=at) for at, event in enumerate(floor.ledger.arrived.values(), 1)]

    assert pressed.id in floor.state.unsettled
    assert fold(floor.book, stored) == floor.state


def test_a_settlement_that_names_itself_ends():
    floor = Floor()
    names_itself = floor.event("entry settled", {"event": "event-00001", "keep": "press"})
    settles_it = floor.event("entry settled", {"event": "event-00001", "keep": "press"})

    state = fold(floor.book, [names_itself, settles_it])

    assert state.unsettled == {}


def test_pieces_that_are_written_with_a_point_are_counted_all_the_same():
    floor = Floor()
    floor.open_run()

    floor.press(
        "pieces counted", {"good": 4.0, "scrap": [{"pieces": 1.0, "why": "knot"}]}, run="r1", tray="1", operation="cut"
    )

    assert [repr(count) for count in floor.run.trays["1"].at.values() if count] == ["4"]
    assert floor.ledger.held[-1].get("scrap") == [{"pieces": 1, "why": "knot"}]
