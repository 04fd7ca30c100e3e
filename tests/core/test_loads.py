"""How many pieces go on a load: Now, the plan, a press that names none and a helper's page take as many."""

import copy
from typing import Any

import pytest

from runboard.floor.letting_in.helper import work_at
from runboard.plan.next_move import moves
from runboard.plan.opening import work_in
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.run.fold.route import Route
from runboard.run.rules.loads import shared_out
from runboard.shop.book_json import product_from_json
from tests.core.pressing import Floor
from tests.scenario import a_pass, key_rails, operation

SIZES = ("piece", "tray", "jig", "board", "run")


def rails(size: str, pieces: int | None, **minutes: Any) -> dict[str, Any]:
    """Key rails that are carved, before anything else, in loads of this sort."""
    carve = operation("carve", "cnc", a_pass(size=size, pieces=pieces, **(minutes or {"machine": 5})))
    return {**key_rails(), "operations": [{**carve, "attendance": "watched"}, *key_rails()["operations"][1:]]}


def opened(product: dict[str, Any], trays: int = 3) -> Floor:
    floor = Floor()
    floor.press("person came")
    floor.open_run(trays=trays, product=product, boards={})
    return floor


def on_now(floor: Floor) -> list[tuple[str, dict[str, int]]]:
    """Each load that Now would begin, in the order of the trays."""
    found = [one for one in moves(floor.state, floor.book, "ann", floor.now, most=99) if one.code == "start"]
    return [(one.load, dict(one.pieces)) for one in found if one.step == "carve"]


def in_the_plan(floor: Floor) -> list[tuple[str, tuple[str, ...], int]]:
    blocks = problem_for(floor.state, floor.book, floor.now).blocks
    return [(one.load, one.trays, one.pieces) for one in blocks if one.step == "carve"]


def test_three_pieces_on_it_are_three_everywhere():
    floor = opened(rails("tray", 3), trays=1)

    assert on_now(floor) == [("carve/1", {"1": 3})]
    assert in_the_plan(floor) == [("carve/1", ("1",), 3), ("carve/1.2", ("1",), 2)]
    assert work_at(floor.state, "r1", "1").pieces == 3
    floor.press("load started", run="r1", load="carve/1")
    assert floor.run.loads["carve/1"].pieces == {"1": 3}


@pytest.mark.parametrize("pieces", [None, 3, 5, 8, 12])
@pytest.mark.parametrize("size", SIZES)
def test_now_and_the_plan_make_the_same_loads(size: str, pieces: int | None):
    floor = opened(rails(size, pieces or (5 if size in ("jig", "board") else None)))

    planned = in_the_plan(floor)

    assert on_now(floor)
    for load, taken in on_now(floor):
        assert (load, tuple(taken), sum(taken.values())) in planned


@pytest.mark.parametrize("pieces", [3, 5, 8])
@pytest.mark.parametrize("size", ["tray", "jig", "run"])
def test_a_press_that_names_no_pieces_means_those_that_now_offers(size: str, pieces: int):
    floor = opened(rails(size, pieces), trays=1)
    ((load, taken), *_) = on_now(floor)

    floor.press("load started", run="r1", load=load)

    assert floor.run.loads[load].pieces == taken


@pytest.mark.parametrize("pieces", [3, 5, 8])
@pytest.mark.parametrize("size", ["tray", "jig", "run"])
def test_before_a_run_is_opened_as_many_loads_are_counted(size: str, pieces: int):
    product = rails(size, pieces)

    _, machine = work_in(Route(product_from_json(product)), [5, 5, 5])["carve"]

    assert machine.total_seconds() / 300 == len(in_the_plan(opened(product)))


@pytest.mark.parametrize("pieces", [3, 5, 8])
@pytest.mark.parametrize("size", SIZES)
def test_a_tray_alone_is_shared_out_as_the_step_says(size: str, pieces: int):
    step = Route(product_from_json(rails(size, pieces))).steps[0]

    shared = [part["1"] for part in shared_out(step, {"1": 7})]

    assert (len(shared), shared[0], len(shared) == 1) == (step.loads_of(7), step.on_a_load(7), step.is_one_load(7))


def test_the_second_load_of_a_tray_has_the_name_that_a_phone_gives_it():
    floor = opened(rails("jig", 3), trays=1)
    second = in_the_plan(floor)[1][0]
    floor.press("load done", run="r1", load="carve/1")

    assert on_now(floor) == [(second, {"1": 2})]


def test_trays_whose_routes_differ_at_a_step_do_not_go_together():
    floor = opened(rails("run", 99), trays=6)
    product = copy.deepcopy(rails("run", 99))
    product["operations"][0]["passes"][0]["machine_minutes"] = 9

    floor.press("route revised", {"product": product, "from_tray": "4"}, run="r1")

    assert [load for load, _ in on_now(floor)] == ["carve/1+2+3", "carve/4+5+6"]
    assert [load for load, *_ in in_the_plan(floor)] == ["carve/1+2+3", "carve/4+5+6"]


# which text goes where


def test_the_second_load_of_a_tray_gets_the_texts_that_are_left():
    product = rails("jig", 3)
    product["operations"][0]["personal"] = True
    product["operations"][3]["personal"] = False
    floor = opened(product, trays=1)
    floor.press("orders changed", {"orders": [{"line": "1", "pieces": 5, "text": "87"}]}, run="r1")

    def proposed() -> list[int]:
        (move,) = (one for one in moves(floor.state, floor.book, "ann", floor.now) if one.step == "carve")
        return [one["position"] for one in move.places["1"]]

    assert proposed() == [1, 2, 3]
    placed = [{"position": at, "line": "1", "text": "87"} for at in (1, 2, 3)]
    floor.press("load started", {"places": {"1": placed}}, run="r1", load="carve/1")
    spoiled = {"1": {"good": 2, "scrap": [{"pieces": 1, "why": "crack", "positions": [2]}]}}
    floor.press("load done", {"counts": spoiled}, run="r1", load="carve/1")

    assert proposed() == [2, 4]
