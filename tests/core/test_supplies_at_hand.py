"""What is there of a supply follows from what was counted, bought and used; what it uses is learned between two counts."""

from datetime import timedelta
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from runboard.plan.supplies.at_hand import AtHand, all_at_hand
from runboard.run.fold.fold import fold
from runboard.shop.book_json import book_from_json
from tests import scenario
from tests.core.pressing import Floor


def a_shop(**supply: Any) -> dict[str, Any]:
    record = scenario.shop()
    record["supplies"] = [{"key": "hooks", "name": "Hooks", "pack": 50, "price": 9.9, "low": 10, **supply}]
    return record


def floor_with_a_run(trays: int = 6, **body: Any) -> Floor:
    floor = Floor(a_shop())
    floor.open_run(trays=trays, **body)
    return floor


def hooks(floor: Floor) -> AtHand:
    return next(one for one in all_at_hand(floor.book, floor.state) if one.word == "hooks")


def fitted(floor: Floor, *trays: str, run: str = "r1") -> None:
    """Hooks are fitted to all of these trays; what lies before is filled in."""
    for tray in trays:
        floor.press("load done", run=run, load=f"hooks/{tray}")


def counted(floor: Floor, have: float, supply: str = "hooks") -> str:
    return floor.press("supply counted", {"supply": supply, "have": have}).id


def bought(floor: Floor, amount: float) -> str:
    return floor.press("supply bought", {"supply": "Hooks", "amount": amount}).id


def test_what_nobody_counted_is_not_known():
    floor = floor_with_a_run()

    fitted(floor, "1")
    bought(floor, 50)

    assert (hooks(floor).there, hooks(floor).bought, hooks(floor).counted_at) == (None, 50, None)


def test_there_is_what_was_counted_and_bought_less_what_was_used_since():
    floor = floor_with_a_run()
    fitted(floor, "1")
    counted(floor, 100)

    fitted(floor, "2", "3")
    bought(floor, 50)

    found = hooks(floor)
    assert (found.counted, found.bought, found.used, found.there) == (100, 50, 40, 110)
    assert found.name == "Hooks"


def test_a_count_is_absolute_whatever_was_reckoned_before():
    floor = floor_with_a_run()
    counted(floor, 100)
    fitted(floor, "1", "2")
    bought(floor, 50)

    counted(floor, 7)

    assert (hooks(floor).there, hooks(floor).used, hooks(floor).bought) == (7, 0, 0)


def test_scrap_uses_too_and_rework_uses_again():
    floor = floor_with_a_run()
    counted(floor, 100)

    floor.press(
        "load done", {"counts": {"1": {"good": 3, "scrap": [{"pieces": 2, "why": "split"}]}}}, run="r1", load="hooks/1"
    )
    again = {"to": "1", "pieces": 1, "to_operation": "hooks", "why": "rework"}
    floor.press("pieces moved", again, run="r1", tray="1")
    floor.press("load done", run="r1", load="hooks/1.2")

    assert hooks(floor).used == 4 * 6


def test_what_was_counted_in_the_middle_of_a_load_is_used_before_the_count():
    floor = floor_with_a_run()
    floor.press("load started", run="r1", load="hooks/1")
    floor.press("pieces counted", {"good": 2}, run="r1", tray="1", operation="hooks", load="hooks/1")
    counted(floor, 50)

    floor.press("load done", run="r1", load="hooks/1")

    assert hooks(floor).used == 4 * 3


def test_a_late_press_counts_where_it_happened():
    floor = floor_with_a_run()
    floor.wait(60)
    counted(floor, 100)

    floor.late(30, "load done", run="r1", load="hooks/1")

    assert hooks(floor).there == 100


def test_a_purchase_that_is_undone_never_was():
    floor = floor_with_a_run()
    counted(floor, 10)
    event = bought(floor, 50)

    floor.press("event undone", {"event": event})

    assert hooks(floor).there == 10


def test_what_ran_out_is_none_until_somebody_says_what_came():
    floor = floor_with_a_run()
    counted(floor, 100)

    floor.press("supply out", {"supply": "hooks"}, run="r1")
    assert (hooks(floor).there, hooks(floor).is_out) == (0, True)

    floor.press("supply in", {"supply": "hooks"}, run="r1")
    assert (hooks(floor).there, hooks(floor).is_out) == (None, False)


def test_what_was_bought_while_it_was_out_is_what_there_is():
    floor = floor_with_a_run()
    floor.press("supply out", {"supply": "hooks"}, run="r1")

    bought(floor, 50)
    floor.press("supply in", {"supply": "hooks"}, run="r1")

    assert hooks(floor).there == 50


def test_more_used_than_there_was_is_said():
    floor = floor_with_a_run()
    counted(floor, 10)

    fitted(floor, "1")

    assert (hooks(floor).there, hooks(floor).is_over) == (0, True)


def test_a_supply_that_only_a_step_names_counts_under_its_own_name():
    floor = Floor()
    floor.open_run()

    assert [(one.word, one.there) for one in all_at_hand(floor.book, floor.state)] == [("hooks", None)]


def test_a_revised_route_uses_as_its_own_revision_says():
    floor = floor_with_a_run()
    counted(floor, 100)
    fitted(floor, "1")
    route = scenario.key_rails()
    route["operations"][-1]["uses"][0]["each"] = 6

    floor.press("route revised", {"product": route, "from_tray": "2"}, run="r1")
    fitted(floor, "2")

    assert hooks(floor).used == 5 * 4 + 5 * 6


def between_counts(floor: Floor, have: float, *trays: str) -> None:
    fitted(floor, *trays)
    counted(floor, have)


def test_real_use_is_learned_between_counts_and_weighted_by_pieces():
    floor = floor_with_a_run(trays=9)
    counted(floor, 200)

    between_counts(floor, 200 - 20 * 5, "1", "2", "3", "4")
    between_counts(floor, 100 - 5 * 4, "5")

    (learned,) = hooks(floor).learned.values()
    assert (learned.written, learned.pieces, learned.pairs) == (4, 25, 2)
    assert learned.each == pytest.approx((100 + 20) / 25)
    assert learned.is_enough


def test_one_pair_of_counts_teaches_and_is_not_gone_by_yet():
    floor = floor_with_a_run(trays=9)
    counted(floor, 300)

    between_counts(floor, 300 - 30 * 5, "1", "2", "3", "4", "5", "6")
    fitted(floor, "7")

    (learned,) = hooks(floor).learned.values()
    assert (learned.each, learned.is_enough) == (5, False)
    assert hooks(floor).used == 5 * 4


def test_what_was_learned_says_what_is_used_from_then_on():
    floor = floor_with_a_run(trays=9)
    counted(floor, 300)
    between_counts(floor, 200, "1", "2", "3", "4")
    between_counts(floor, 150, "5", "6")

    fitted(floor, "7")

    assert hooks(floor).used == pytest.approx(5 * 5)


def test_more_than_there_could_be_teaches_nothing():
    floor = floor_with_a_run(trays=9)
    counted(floor, 100)

    between_counts(floor, 500, "1", "2")
    between_counts(floor, 0, "3")

    assert not hooks(floor).learned


def test_the_learned_use_is_of_a_use_as_it_was_written():
    """A route that takes the learned figure over begins anew."""
    floor = floor_with_a_run(trays=3)
    counted(floor, 300)
    between_counts(floor, 300 - 10 * 5, "1", "2")
    route = scenario.key_rails()
    route["operations"][-1]["uses"][0]["each"] = 5
    floor.open_run(trays=3, run="r2", product=route)

    fitted(floor, "1", "2", run="r2")
    counted(floor, 250 - 10 * 5)

    found = {key[2]: one.each for key, one in hooks(floor).learned.items()}
    assert found == {4: 5, 5: 5}


_PRESSES = st.lists(
    st.one_of(
        st.tuples(st.just("count"), st.integers(0, 500)),
        st.tuples(st.just("buy"), st.integers(1, 200)),
        st.tuples(st.just("fit"), st.integers(1, 6)),
        st.tuples(st.just("out"), st.just(0)),
        st.tuples(st.just("in"), st.just(0)),
        st.tuples(st.just("undo"), st.integers(0, 30)),
    ),
    max_size=12,
)


@settings(max_examples=60, deadline=None)
@given(_PRESSES, st.randoms(use_true_random=False))
def test_any_order_of_arrival_gives_the_same(presses, shuffled):
    floor = floor_with_a_run()
    left = ["1", "2", "3", "4", "5", "6"]
    for what, number in presses:
        events = list(floor.ledger.arrived)
        match what:
            case "count":
                counted(floor, number)
            case "buy":
                bought(floor, number)
            case "fit" if left:
                fitted(floor, left.pop(0))
            case "out":
                floor.press("supply out", {"supply": "hooks"}, run="r1")
            case "in":
                floor.press("supply in", {"supply": "hooks"}, run="r1")
            case "undo" if number and number < len(events):
                floor.press("event undone", {"event": events[number]})
        floor.now += timedelta(minutes=1)
    arrived = list(floor.ledger.arrived.values())

    shuffled.shuffle(arrived)
    again = fold(floor.book, arrived)

    assert again == floor.state
    assert all_at_hand(book_from_json(a_shop()), again) == all_at_hand(floor.book, floor.state)
    there = hooks(floor).there
    assert there is None or there >= 0


@settings(max_examples=40, deadline=None)
@given(st.integers(0, 1000), st.lists(st.integers(1, 100), max_size=3), st.integers(0, 6))
def test_what_is_there_adds_up(have, purchases, trays):
    floor = floor_with_a_run()
    counted(floor, have)

    for amount in purchases:
        bought(floor, amount)
    fitted(floor, *[str(at) for at in range(1, trays + 1)])

    found = hooks(floor)
    assert found.used == 20 * trays
    assert found.there == max(0, have + sum(purchases) - 20 * trays)
