"""A route changed on the way: the plan finds each tray's place by its step's key, and asks its own revision."""

import copy
from datetime import timedelta
from typing import Any

import pytest

from runboard.plan.next_move import moves
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import TICK
from runboard.run.refusal import Refused
from tests.core.pressing import Floor
from tests.scenario import key_rails, operation


def rails(*, insert: int | None = None, turned: bool = False) -> dict[str, Any]:
    """Key rails; with another operation put in at a place, or clean-up and sanding turned round."""
    product = copy.deepcopy(key_rails())
    operations = product["operations"]
    if insert is not None:
        operations.insert(insert, operation("look", "bench"))
    if turned:
        operations[1:3] = reversed(operations[1:3])
    return product


def planned(floor: Floor) -> set[tuple[str, str]]:
    """(step, tray) of everything that is still to be begun."""
    blocks = problem_for(floor.state, floor.book, floor.now).blocks
    return {(block.step, tray) for block in blocks if not block.begun for tray in block.trays}


def steps_after(product: dict[str, Any], key: str) -> list[str]:
    keys = [one["key"] for one in product["operations"]]
    return keys[keys.index(key) :]


@pytest.mark.parametrize("insert", range(7))
def test_a_step_put_in_plans_no_finished_work_again(insert: int):
    floor = Floor()
    floor.open_run(trays=6)
    floor.press("load done", run="r1", load="sand:180/1")
    floor.press("load done", run="r1", load="sand:180/2")
    before = planned(floor)

    floor.press("route revised", {"product": rails(insert=insert), "from_tray": "5"}, run="r1")

    assert planned(floor) - before <= {("look", "5"), ("look", "6")}
    assert before - planned(floor) == set()


def test_a_wait_before_a_step_holds_though_another_was_put_in_for_later_trays():
    floor = Floor()
    floor.open_run(trays=6)
    floor.press("load done", run="r1", load="oil/1")

    floor.press("route revised", {"product": rails(insert=5), "from_tray": "4"}, run="r1")

    found = problem_for(floor.state, floor.book, floor.now)
    hooks = {block.trays: block for block in found.blocks if block.step == "hooks"}
    assert max(lag.least for lag in hooks["1",].lags) * TICK > timedelta(hours=11)
    assert max(lag.least for lag in hooks["2",].lags) * TICK == timedelta(hours=12)
    assert max(lag.least for lag in hooks["4",].lags) == 0


def test_an_operation_that_only_earlier_trays_still_have_is_planned_for_them():
    floor = Floor()
    floor.open_run(trays=6)
    shorter = rails()
    del shorter["operations"][1]

    floor.press("route revised", {"product": shorter, "from_tray": "4"}, run="r1")

    assert {tray for step, tray in planned(floor) if step == "clean"} == {"1", "2", "3"}


def test_where_two_operations_were_turned_round_each_tray_keeps_its_own_order():
    floor = Floor()
    floor.open_run(trays=6)
    for board in ("cut/1", "cut/2"):
        floor.press("load done", run="r1", load=board)

    floor.press("route revised", {"product": rails(turned=True), "from_tray": "4"}, run="r1")

    found = problem_for(floor.state, floor.book, floor.now)
    for tray, first, then in (("1", "clean", "sand:120"), ("4", "sand:180", "clean")):
        (later,) = (block for block in found.blocks if (block.step, block.trays) == (then, (tray,)))
        assert [found.blocks[lag.before].step for lag in later.lags] == [first]


def test_the_load_on_a_machine_stays_in_the_plan_when_later_trays_lose_its_operation():
    floor = Floor()
    floor.open_run(trays=6)
    floor.press("load done", run="r1", load="cut/1")
    floor.press("load started", run="r1", load="clean/1")
    shorter = rails()
    del shorter["operations"][1]

    floor.press("route revised", {"product": shorter, "from_tray": "4"}, run="r1")

    found = problem_for(floor.state, floor.book, floor.now)
    assert [block.trays for block in found.blocks if block.begun] == [("1",)]


def test_texts_are_proposed_for_earlier_trays_though_a_step_was_put_in_for_later_ones():
    floor = Floor()
    floor.press("person came")
    floor.open_run(trays=6)
    floor.press("load done", run="r1", load="sand:180/1")

    floor.press("route revised", {"product": rails(insert=1), "from_tray": "4"}, run="r1")

    (move,) = (one for one in moves(floor.state, floor.book, "ann", floor.now) if one.load == "engrave/1")
    assert [one["text"] for one in move.places["1"]] == ["12"] * 5


def test_trays_that_wait_before_a_place_do_what_is_put_in_there():
    floor = Floor()
    floor.open_run(trays=2)
    floor.press("load done", run="r1", load="sand:180/1")
    floor.press("load done", run="r1", load="sand:180/2")
    floor.press("load started", run="r1", load="engrave/2")

    floor.press("route revised", {"product": rails(insert=3), "from_tray": "1"}, run="r1")

    assert {key: dict(tray.at) for key, tray in floor.run.trays.items()} == {"1": {"look": 5}, "2": {"engrave": 5}}
    assert ("look", "1") in planned(floor)


def test_a_route_by_which_pieces_would_do_something_again_is_refused():
    floor = Floor()
    floor.open_run(trays=2)
    floor.press("load done", run="r1", load="clean/1")

    with pytest.raises(Refused, match="would repeat"):
        floor.press("route revised", {"product": rails(turned=True), "from_tray": "1"}, run="r1")
