from runboard.plan.opening import plan_opening
from runboard.shop.book_json import product_from_json
from tests.scenario import key_rails

RAIL = product_from_json(key_rails())


def test_extras_round_up_to_whole_boards():
    opening = plan_opening(RAIL, 12, certainty=0.9)

    assert opening.start.start == 15
    assert [tally.pieces for tally in opening.trays] == [5, 5, 5]
    assert opening.boards == {"cut/1": {"1": 5, "2": 5, "3": 5}}


def test_the_good_rate_is_a_guess_until_something_was_counted():
    guessed = plan_opening(RAIL, 50)
    counted = plan_opening(RAIL, 50, counted={"sand": (40, 10)})

    assert guessed.good_rate.said == "guess"
    assert counted.good_rate.said == "counted 50"
    assert counted.start.start > guessed.start.start


def test_no_tray_lies_over_two_boards():
    opening = plan_opening(RAIL, 28, pieces_a_tray=4, start=30)

    assert [tally.pieces for tally in opening.trays] == [4, 4, 4, 3, 4, 4, 4, 3]


def test_what_is_used_up_is_counted_before_the_run_starts():
    opening = plan_opening(RAIL, 12, start=15)

    assert opening.uses == {"hooks": (60, "")}


def test_trays_may_begin_half_way():
    opening = plan_opening(RAIL, 12, begun={"1": "oil", "2": "oil", "3": "oil"})

    assert [tally.at for tally in opening.trays] == ["oil"] * 3
    assert opening.boards == {}
