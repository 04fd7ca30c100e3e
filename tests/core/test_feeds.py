"""Feed, turns, flutes and chip load from one another, beside what the shop found good and what tore out."""

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.plan.feeds.feeding import Fed, Feed, answer, begin, keeps
from runboard.plan.feeds.torn import is_torn
from runboard.run.refusal import Refused
from runboard.shop.book import Book, Room, Station
from runboard.shop.book_json import book_from_json, book_to_json
from runboard.shop.machines import Cutter, GoodFeed, Motion
from runboard.shop.product import Operation, Pass, Product

SIX = Cutter("six", "6 mm, two flutes", diameter=6, flutes=2)
CLEAN = GoodFeed("ash-six", "six", 18_000, 1800, "ash", note="clean")
TORE = GoodFeed("ash-six-2", "six", 18_000, 3600, "ash", tore_out=True)
CUT = Operation("cut", "Cut", "cnc", (Pass("1", "1"),), "watched", cutter="six", rpm=18_000, feed=3600)
SHOP = Book(
    rooms=(Room("shop", "Shop"),),
    stations=(Station("cnc", "Router", "cnc", "shop", motion=Motion(spindle_most=24_000)),),
    cutters=(SIX,),
    feeds=(CLEAN, TORE),
    products=(Product("rail", "Key rail", (CUT,), wood="ash"),),
)


def fed(book: Book = SHOP, **said: Any) -> Fed:
    return answer(book, Feed(**{"cutter": "six", "wood": "ash", **said}), None, lambda done, total: None)


@given(st.floats(1000, 60_000), st.integers(1, 8), st.floats(0.005, 1))
def test_any_of_the_four_follows_from_the_others(rpm: float, flutes: int, chip: float) -> None:
    feed = fed(rpm=rpm, flutes=flutes, chip=chip).feed

    assert fed(rpm=rpm, flutes=flutes, feed=feed).chip == pytest.approx(chip)
    assert fed(feed=feed, flutes=flutes, chip=chip).rpm == pytest.approx(rpm)
    assert fed(cutter=None, rpm=rpm, feed=feed, chip=chip).flutes == pytest.approx(flutes)


def test_turns_follow_from_the_speed_of_the_edge() -> None:
    assert fed(surface=339_292, feed=1800).rpm == pytest.approx(18_000, rel=1e-4)


def test_less_than_three_of_the_four_is_refused() -> None:
    with pytest.raises(Refused, match="feed too little said"):
        fed(feed=1800, wood="spruce")
    with pytest.raises(Refused, match="feed too little said"):
        fed(replace(SHOP, feeds=(TORE,)), rpm=18_000)


@pytest.mark.parametrize("said", [{"rpm": 18_000}, {"feed": 2000}, {}, {"rpm": 18_000, "wood": ""}])
def test_where_too_little_is_said_the_shops_own_good_value_answers(said: dict[str, Any]) -> None:
    found = fed(**said)

    assert (found.solved, found.nearest, found.rpm, found.feed, found.chip) == ("kept", CLEAN, 18_000, 1800, 0.05)
    question = Feed("six", wood="ash", rpm=18_000)
    assert [keep.key for keep in keeps(SHOP, question, found)] == ["torn"]


def test_of_several_good_values_the_nearest_answers() -> None:
    slow = replace(CLEAN, key="slow", rpm=12_000, feed=1000)
    shop = replace(SHOP, feeds=(CLEAN, slow))

    assert fed(shop, rpm=13_000).nearest == slow
    assert fed(shop, rpm=17_000).nearest == CLEAN


def test_a_chip_load_that_does_not_follow_is_said() -> None:
    assert fed(rpm=18_000, feed=1800, chip=0.1).at_odds == 0.1
    assert fed(rpm=18_000, feed=1800, chip=0.05).at_odds is None


def test_the_nearest_good_value_is_one_of_the_same_wood() -> None:
    other = GoodFeed("oak-six", "six", 18_000, 2500, "oak")
    shop = replace(SHOP, feeds=(other, CLEAN))

    assert fed(shop, rpm=18_000, feed=2500).nearest == CLEAN
    assert fed(shop, rpm=18_000, feed=2500, wood="cherry").is_other_wood


def test_a_good_value_is_known_again() -> None:
    assert fed(rpm=18_000, feed=1850).is_good
    assert not fed(rpm=18_000, feed=2200).is_good


def test_values_that_tore_out_are_known_again() -> None:
    assert fed(rpm=18_000, feed=3600).tore_out == (TORE,)
    assert fed(rpm=18_000, feed=3600, wood="spruce").tore_out == ()


def test_a_spindle_that_does_not_turn_so_fast_is_said() -> None:
    assert fed(station="cnc", rpm=30_000, feed=3000).spindle_most == 24_000
    assert fed(station="cnc", rpm=24_000, feed=3000).spindle_most is None


def test_a_step_begins_with_how_it_is_cut() -> None:
    assert begin(SHOP, {"product": "rail", "step": "cut"}) == Feed(
        "six", rpm=18_000, feed=3600, wood="ash", station="cnc", product="rail", step="cut"
    )


def test_good_and_torn_values_are_kept_with_what_was_seen() -> None:
    question = Feed(
        "six", rpm=16_000, feed=2000, wood="ash", note="fuzzy edge", torn=3, torn_of=20, torn_in="run 4, Cut"
    )
    torn, good = keeps(SHOP, question, answer(SHOP, question, None, lambda done, total: None))
    record = book_to_json(SHOP)

    good.put(record)
    assert book_from_json(record).feeds[2:] == (
        GoodFeed("ash-6-mm-two-flutes", "six", 16_000, 2000, "ash", note="fuzzy edge"),
    )
    torn.put(record)
    (kept,) = book_from_json(record).feeds[2:]

    assert (kept.tore_out, kept.note) == (True, "fuzzy edge\nrun 4, Cut")
    assert (kept.torn, kept.torn_of) == (3, 20)


def test_values_that_tore_out_are_offered_as_such_first() -> None:
    question = Feed("six", rpm=16_000, feed=2000, wood="ash", torn=3)
    found = keeps(SHOP, question, answer(SHOP, question, None, lambda done, total: None))

    assert [each.key for each in found] == ["torn", "good"]


def test_what_was_kept_is_where_one_is_led_to() -> None:
    question = Feed("six", rpm=16_000, feed=2000, wood="ash")
    record = book_to_json(SHOP)
    good, _ = keeps(SHOP, question, answer(SHOP, question, None, lambda done, total: None))
    good.put(record)
    book = book_from_json(record)

    after, _ = keeps(book, question, answer(book, question, None, lambda done, total: None))

    assert (good.facts["link"], after.facts["link"]) == ("/shop", "/shop/feeds/ash-6-mm-two-flutes")


def test_a_step_takes_over_cutter_turns_and_feed() -> None:
    question = Feed("six", rpm=16_000, feed=2000, product="rail", step="cut")
    *_, step = keeps(SHOP, question, answer(SHOP, question, None, lambda done, total: None))
    record = book_to_json(SHOP)

    step.put(record)

    cut = book_from_json(record).products[0].operations[0]
    assert (cut.cutter, cut.rpm, cut.feed) == ("six", 16_000, 2000)


def test_nothing_is_kept_without_a_cutter_of_the_shops() -> None:
    question = Feed(None, 3, 2, 18_000, feed=1800)

    assert keeps(SHOP, question, answer(SHOP, question, None, lambda done, total: None)) == ()


@pytest.mark.parametrize(
    ("why", "is_it"),
    [("tear-out", True), ("torn at the end", True), ("Ausriss", True), ("crack", False), ("stored wrong", False)],
)
def test_tear_out_is_known_by_its_words(why: str, is_it: bool) -> None:
    assert is_torn(why) == is_it
