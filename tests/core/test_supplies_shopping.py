"""What to buy: what all open runs still use against what is there, what runs out in the middle, what is worn."""

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from runboard.plan.opening import Tally
from runboard.plan.supplies.looked import found_of
from runboard.plan.supplies.shopping import Row, Shopping, ToOpen, shopping
from runboard.plan.supplies.wear import Wear
from tests import scenario
from tests.core.pressing import Floor


def rails_with_oil_and_cutter() -> dict[str, Any]:
    """Four hooks and 4 ml of oil a rail; cut with the six."""
    rails = scenario.key_rails()
    cut, _, sand, _, oil, _ = rails["operations"]
    cut["cutter"] = "six"
    sand["uses"] = [{"supply": "discs", "each": 0.2}]
    oil["uses"] = [{"supply": "hard  OIL", "each": 4, "unit": "ml"}]
    return rails


def a_shop(life: float | None = 20, life_in: str = "pieces", **cutter: Any) -> dict[str, Any]:
    record = scenario.shop()
    record["supplies"] = [
        {"key": "hooks", "name": "Hooks", "pack": 50, "price": 9.9, "low": 10},
        {"key": "oil", "name": "Hard oil", "unit": "ml", "pack": 500, "price": 18},
        {"key": "bits", "name": "Six mm bits", "pack": 1, "price": 17},
    ]
    record["cutters"] = [{"key": "six", "name": "6 mm", "life": life, "life_in": life_in, "price": 18, **cutter}]
    record["products"] = [rails_with_oil_and_cutter()]
    return record


def floor_with_a_run(trays: int = 3, **shop: Any) -> Floor:
    floor = Floor(a_shop(**shop))
    floor.open_run(trays=trays, product=rails_with_oil_and_cutter())
    return floor


def listed(floor: Floor, to_open: ToOpen | None = None) -> Shopping:
    return shopping(floor.book, floor.state, to_open)


def row(floor: Floor, word: str, to_open: ToOpen | None = None) -> Row:
    return next(one for one in listed(floor, to_open).rows if one.here.word == word)


def six(floor: Floor) -> Wear:
    (wear,) = listed(floor).wear
    return wear


def counted(floor: Floor, supply: str, have: float) -> None:
    floor.press("supply counted", {"supply": supply, "have": have})


def test_every_piece_that_is_on_its_way_goes_through_every_step_before_it():
    floor = floor_with_a_run()
    floor.press("load done", run="r1", load="oil/1")
    floor.press("load done", run="r1", load="hooks/2")

    assert row(floor, "hooks").needed == 4 * 10
    assert row(floor, "hard oil").needed == 4 * 5
    assert row(floor, "discs").needed == 0.2 * 5


def test_of_two_passes_one_that_is_done_has_used_its_half():
    floor = floor_with_a_run(trays=1)
    floor.press("load done", run="r1", load="sand:120/1")

    assert row(floor, "discs").needed == pytest.approx(0.2 * 5 / 2)


def test_what_is_missing_is_bought_in_whole_packets():
    floor = floor_with_a_run()
    counted(floor, "hooks", 9)

    found = row(floor, "hooks")

    assert (found.how, found.needed, found.missing) == ("short", 60, 51)
    assert (found.packets, found.buy, found.cost) == (2, 100, 19.8)
    assert listed(floor).cost == pytest.approx(19.8)


def test_what_suffices_and_goes_below_what_is_kept_is_bought_too():
    floor = floor_with_a_run()
    counted(floor, "hooks", 65)

    found = row(floor, "hooks")

    assert (found.how, found.missing, found.packets) == ("low", 0, 1)


def test_what_nobody_counted_is_neither_enough_nor_missing():
    floor = floor_with_a_run()

    found = row(floor, "hooks")

    assert (found.how, found.missing, found.shares[0].covered, found.shares[0].short_at) == ("unknown", None, (), "")


def test_what_runs_out_in_the_middle_says_where():
    floor = floor_with_a_run()
    counted(floor, "hard oil", 50)

    (share,) = row(floor, "hard oil").shares

    assert (share.covered, share.short_at, share.step) == (("1", "2"), "3", "Oil")


def test_a_run_to_be_opened_has_what_the_open_ones_leave():
    floor = floor_with_a_run()
    counted(floor, "hooks", 60 + 20)
    (product,) = floor.book.products
    to_open = ToOpen(product, "More rails", (Tally("1", 5), Tally("2", 5), Tally("3", 5, "hooks")), {})

    found = row(floor, "hooks", to_open)

    assert [(share.run, share.needed, share.covered, share.short_at) for share in found.shares] == [
        ("r1", 60, ("1", "2", "3"), ""),
        ("", 60, ("1",), "2"),
    ]
    assert row(floor, "hard oil", to_open).needed == 60 + 40


def test_what_earlier_runs_take_is_named_and_what_is_missing_is_the_run_s_own():
    floor = floor_with_a_run()
    floor.open_run(trays=2, product=rails_with_oil_and_cutter(), run="r2")
    counted(floor, "hooks", 70)

    first, second = row(floor, "hooks").shares

    assert (first.taken, first.missing, first.before) == (0, 0, ())
    assert (second.needed, second.taken, second.missing, second.before) == (40, 60, 30, (first.name,))


def test_what_is_bought_is_gone_from_the_list():
    floor = floor_with_a_run()
    counted(floor, "hooks", 9)
    assert [one.here.word for one in listed(floor).to_buy] == ["hooks"]

    floor.press("supply bought", {"supply": "Hooks", "amount": 100})

    assert not listed(floor).to_buy


def test_a_run_that_is_over_needs_nothing():
    floor = floor_with_a_run()
    floor.press("run abandoned", run="r1")

    assert row(floor, "hooks").needed == 0


# cutters


def test_a_cutter_is_changed_before_the_tray_that_it_does_not_last_for():
    floor = floor_with_a_run(trays=6)
    floor.press("load done", run="r1", load="cut/1")

    found = six(floor)

    assert (found.used, found.left, found.needed, found.changes) == (15, 5, 15, 1)
    assert [(one.run, one.trays) for one in found.ahead] == [("r1", ("4",))], "a board's trays are cut together"
    assert found.stations == ("cnc",)


def test_where_trays_are_cut_one_by_one_it_is_changed_between_two():
    record = a_shop(life=12)
    record["products"][0]["operations"][0]["passes"][0] |= {"size": "tray", "pieces": None}
    floor = Floor(record)
    floor.open_run(trays=5, product=record["products"][0])

    found = six(floor)

    assert [one.trays for one in found.ahead] == [("3", "5")]
    assert found.changes == 2


def test_a_load_that_asks_more_than_a_whole_life_takes_several():
    floor = floor_with_a_run(trays=3, life=5)

    assert (six(floor).ahead, six(floor).changes) == ((), 2)


def test_one_that_is_worn_is_bought_though_nothing_is_to_be_cut():
    floor = floor_with_a_run(trays=3, life=15)
    floor.press("load done", run="r1", load="cut/1")

    assert (six(floor).is_worn, six(floor).changes) == (True, 1)


def test_a_change_that_names_no_cutter_is_of_the_only_one_there():
    floor = floor_with_a_run(trays=3)
    floor.press("load done", run="r1", load="cut/1")

    floor.press("setup changed", {"what": "cutter"}, station="cnc")

    assert (six(floor).used, six(floor).changed_at is not None) == (0, True)


def test_a_change_of_another_cutter_or_of_wood_leaves_it_as_it_is():
    floor = floor_with_a_run(trays=3)
    floor.press("load done", run="r1", load="cut/1")

    floor.press("setup changed", {"what": "cutter", "cutter": "vee"}, station="cnc")
    floor.press("setup changed", {"what": "wood"}, station="cnc")

    assert six(floor).used == 15


def test_where_cutters_take_turns_a_change_that_names_none_is_of_neither():
    record = a_shop()
    record["cutters"].append({"key": "vee", "name": "60 degree V"})
    record["products"][0]["operations"][3] |= {"station": "cnc", "cutter": "vee"}
    floor = Floor(record)
    floor.open_run(product=record["products"][0])
    floor.press("load done", run="r1", load="cut/1")

    floor.press("setup changed", {"what": "cutter"}, station="cnc")
    assert listed(floor).wear[0].used == 15

    floor.press("setup changed", {"what": "cutter", "cutter": "six"}, station="cnc")
    assert listed(floor).wear[0].used == 0


def test_life_in_minutes_counts_the_machine_as_it_was_measured():
    floor = floor_with_a_run(trays=6, life=60, life_in="minutes")
    floor.press("load started", run="r1", load="cut/1")
    floor.press("machine started", run="r1", load="cut/1")
    floor.wait(30)
    floor.press("machine ended", run="r1", load="cut/1")
    floor.press("load done", run="r1", load="cut/1")

    found = six(floor)

    assert found.used == pytest.approx(30, abs=0.1)
    assert found.needed == pytest.approx(38, abs=0.01)
    assert found.ahead[0].trays == ("4",)


def test_how_far_one_is_worn_that_outlived_itself_and_was_never_changed_is_not_known():
    floor = floor_with_a_run(trays=6, life=10)
    floor.press("load done", run="r1", load="cut/1")

    found = six(floor)
    (finding,) = [one for one in found_of(listed(floor), "r1") if one.check == "cutter six"]

    assert (found.is_unknown, found.is_worn, found.changes, found.ahead) == (True, False, 0, ())
    assert (finding.level, finding.code) == ("look", "cutter unknown")

    floor.press("setup changed", {"what": "cutter"}, station="cnc")
    assert (six(floor).is_unknown, six(floor).changes) == (False, 1)


def test_what_it_lasted_is_from_one_change_to_the_next():
    floor = floor_with_a_run(trays=9)
    for board in "123":
        floor.press("setup changed", {"what": "cutter", "cutter": "six"}, station="cnc")
        floor.press("load done", run="r1", load=f"cut/{board}")

    assert six(floor).lasted == (15, 15)


def test_a_new_cutter_comes_out_of_its_supply():
    floor = floor_with_a_run(trays=6, supply="bits")
    counted(floor, "six mm bits", 0)

    found = row(floor, "six mm bits")

    assert (found.how, found.for_cutters, found.packets, found.cost) == ("short", 1, 1, 17)
    assert not listed(floor).cutters_to_buy


def test_new_cutters_that_the_step_counts_as_used_up_are_counted_once():
    record = a_shop(life=5, supply="bits")
    record["products"][0]["operations"][0]["uses"] = [{"supply": "Six mm bits", "each": 0.1}]
    floor = Floor(record)
    floor.open_run(trays=6, product=record["products"][0])

    assert (row(floor, "six mm bits").needed, row(floor, "six mm bits").for_cutters) == (3, 0)


def test_what_is_changed_by_habit_out_of_a_packet_is_nothing_to_think_of():
    record = a_shop(life=5, supply="bits")
    record["products"][0]["operations"][0]["passes"][0] |= {"size": "tray", "pieces": None}
    floor = Floor(record)
    floor.open_run(trays=6, product=record["products"][0])

    (wear,) = listed(floor).wear

    assert (len(wear.ahead[0].trays), wear.to_mind("r1"), wear.changes) == (5, [], 5)


def test_a_worn_cutter_that_is_no_supply_is_bought_by_itself():
    floor = floor_with_a_run(trays=6)

    assert [(one.cutter.name, one.changes) for one in listed(floor).cutters_to_buy] == [("6 mm", 1)]
    assert listed(floor).cost == 18


def test_a_cutter_whose_life_nobody_wrote_down_is_counted_and_never_worn():
    floor = floor_with_a_run(trays=6, life=None)
    floor.press("load done", run="r1", load="cut/1")

    assert (six(floor).used, six(floor).left, six(floor).changes, six(floor).ahead) == (15, None, 0, ())


# what is found of a run


def test_what_is_found_of_a_run_says_what_suffices_what_runs_out_and_what_nobody_counted():
    floor = floor_with_a_run(trays=6)
    counted(floor, "hooks", 500)
    counted(floor, "discs", 50)
    counted(floor, "hard oil", 50)
    floor.press("supply in", {"supply": "discs"}, run="r1")

    found = {one.check: (one.level, one.code) for one in found_of(listed(floor), "r1")}

    assert found == {
        "supplies": ("green", "supplies there"),
        "supply hard oil": ("look", "supply short"),
        "cutter six": ("look", "cutter worn"),
    }


def test_a_run_that_needs_nothing_is_found_nothing_of():
    floor = floor_with_a_run()

    assert [*found_of(listed(floor), "r2")] == []


@settings(max_examples=60, deadline=None)
@given(st.integers(1, 9), st.integers(0, 400), st.integers(0, 9))
def test_what_is_covered_is_there_and_what_is_missing_makes_it_enough(trays, have, done):
    floor = floor_with_a_run(trays=trays)
    for tray in range(1, min(done, trays) + 1):
        floor.press("load done", run="r1", load=f"hooks/{tray}")
    counted(floor, "hooks", have)

    found = row(floor, "hooks")

    left = max(0, trays - done)
    assert found.needed == 20 * left
    for share in found.shares:
        assert 20 * len(share.covered) <= have
        assert bool(share.short_at) == (20 * left > have)
    if found.buy:
        assert have + found.buy >= found.needed
        floor.press("supply bought", {"supply": "hooks", "amount": found.buy})
        assert row(floor, "hooks").how in ("enough", "idle")


# boards


def a_shop_with_boards(have: int = 1) -> dict[str, Any]:
    record = a_shop()
    board = {"key": "plank", "name": "Ash plank", "length": 1000, "width": 200, "thickness": 20, "wood": "ash"}
    record["stocks"] = [board | {"have": have, "price": 15}]
    record["products"][0]["piece"] = {"length": 300, "width": 60, "thickness": 20, "stocks": ["plank"]}
    return record


def test_boards_are_for_what_is_not_cut_yet():
    record = a_shop_with_boards()
    floor = Floor(record)
    floor.open_run(trays=6, product=record["products"][0])

    before = listed(floor).boards
    floor.press("load done", run="r1", load="cut/1")
    after = listed(floor).boards

    assert [(one.name, one.use, one.have, one.buy) for one in before] == [("Ash plank", 4, 1, 3)], "9 pieces a plank"
    assert [(one.use, one.buy) for one in after] == [(2, 1)]
    assert listed(floor).cost == 18 + 15


def test_what_one_wood_takes_of_the_boards_the_next_product_has_not():
    record = a_shop_with_boards(have=2)
    record["products"].append(record["products"][0] | {"key": "peg", "name": "Peg rails"})
    floor = Floor(record)
    floor.open_run(trays=3, product=record["products"][0])
    floor.open_run(trays=3, product=record["products"][1], run="r2")

    assert [(one.product, one.use, one.have, one.buy) for one in listed(floor).boards] == [
        ("Entry key rails", 2, 2, 0),
        ("Peg rails", 2, 0, 2),
    ]


def test_each_run_takes_its_own_boards_and_the_list_says_whose_they_are():
    record = a_shop_with_boards(have=2)
    floor = Floor(record)
    for run in ("r1", "r2"):
        floor.open_run(trays=2, product=record["products"][0], run=run)

    (board,) = listed(floor).boards

    assert (board.use, board.have, board.buy, board.runs) == (4, 2, 2, ("r1", "r2")), "10 pieces each, 9 a plank"


def test_a_product_without_a_size_asks_for_no_boards():
    floor = floor_with_a_run()

    assert (listed(floor).boards, listed(floor).no_boards) == ((), ())


def test_boards_that_nothing_suits_are_said():
    record = a_shop_with_boards()
    record["products"][0]["piece"] |= {"thickness": 30, "stocks": []}
    floor = Floor(record)
    floor.open_run(trays=3, product=record["products"][0])

    assert [(one.product, one.why) for one in listed(floor).no_boards] == [("Entry key rails", "no stock")]
