"""Boards for a run: chosen by what is at hand, by money or by waste, and never too few."""

from dataclasses import replace
from itertools import product as combined

import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.plan.stock.choose import Aim, Offer, chosen
from runboard.plan.stock.need import needed
from runboard.shop.book import Book
from runboard.shop.product import Product
from runboard.shop.stocked import Piece, Stock

RAIL = Piece(300, 90, 20, gap=4, margin=5)
BOARD = Stock("ash", "Ash board", 2000, 200, 24, wood="ash", have=2, price=30)
RAILS = Product("rails", "Key rail", (), wood="ash", piece=RAIL)


def test_what_is_at_hand_is_used_before_more_is_bought() -> None:
    need = needed(Book(stocks=(BOARD,)), RAILS, 40)

    assert [(row.stock, row.each, row.use, row.buy) for row in need.rows] == [("ash", 12, 4, 2)]
    assert (need.why, need.boards, need.spare, need.cost, need.cost_each) == ("", 4, 8, 120, 3)
    assert need.board_feet == pytest.approx(4 * 2000 * 200 * 24 / 2359737.216)
    assert need.yield_share == pytest.approx(40 * 300 * 90 / (4 * 2000 * 200))


def test_material_is_paid_by_the_pieces_that_come_good() -> None:
    assert needed(Book(stocks=(BOARD,)), RAILS, 40, good=30).cost_each == 4


def test_a_product_that_says_no_size_needs_no_board() -> None:
    assert needed(Book(stocks=(BOARD,)), replace(RAILS, piece=None), 40).why == "no piece"


@pytest.mark.parametrize(
    "board",
    [replace(BOARD, thickness=19), replace(BOARD, length=309), replace(BOARD, wood="oak")],
    ids=["too thin", "too short", "another wood"],
)
def test_a_board_that_does_not_suit_is_not_used(board: Stock) -> None:
    need = needed(Book(stocks=(board,)), RAILS, 40)

    assert (need.why, need.short, need.rows) == ("no stock", 40, ())


def test_a_board_that_the_product_names_is_used_whatever_wood_it_is_of() -> None:
    oak = replace(BOARD, wood="oak")

    assert needed(Book(stocks=(oak,)), replace(RAILS, piece=replace(RAIL, stocks=("ash",))), 40).why == ""


def test_pieces_without_a_board_are_said_where_no_more_can_be_bought() -> None:
    need = needed(Book(stocks=(replace(BOARD, for_sale=False),)), RAILS, 40)

    assert (need.why, need.short, need.boards) == ("short", 16, 2)


def test_without_a_price_the_cost_is_not_known() -> None:
    need = needed(Book(stocks=(replace(BOARD, price=None),)), RAILS, 40)

    assert (need.boards, need.cost, need.cost_each) == (4, None, None)


@pytest.mark.parametrize(
    ("aim", "used"), [("at hand", {"old": 3, "cheap": 1}), ("cost", {"cheap": 3}), ("waste", {"cheap": 3})]
)
def test_the_aim_says_which_boards_are_taken(aim: Aim, used: dict[str, int]) -> None:
    offers = (Offer("old", 6, 3, True, 90, 20.0), Offer("cheap", 9, 0, True, 100, 10.0))

    assert {take.offer.key: take.use for take in chosen(offers, 27, aim).takes} == used


_OFFER = st.builds(
    Offer,
    st.just("board"),
    st.integers(1, 9),
    st.integers(0, 3),
    st.booleans(),
    st.integers(1, 50).map(float),
    st.integers(1, 20).map(float),
)


@given(st.lists(_OFFER, min_size=1, max_size=3), st.integers(1, 15), st.sampled_from(["at hand", "cost", "waste"]))
def test_no_other_boards_are_better(offers: list[Offer], pieces: int, aim: Aim) -> None:
    found = chosen(tuple(replace(offer, key=str(at)) for at, offer in enumerate(offers)), pieces, aim)

    use = [next((take.use for take in found.takes if take.offer.key == str(at)), 0) for at in range(len(offers))]
    assert found.pieces >= pieces - found.short
    assert all(offer.for_sale or used <= offer.have for offer, used in zip(offers, use, strict=True))
    every = combined(*(range((16 if offer.for_sale else offer.have) + 1) for offer in offers))
    enough = [one for one in every if sum(n * offer.each for n, offer in zip(one, offers, strict=True)) >= pieces]
    assert bool(found.short) == (not enough)
    if enough:
        assert _worth(offers, use, aim) == min(_worth(offers, one, aim) for one in enough)


def _worth(offers: list[Offer], use: tuple[int, ...] | list[int], aim: Aim) -> tuple[float, float]:
    rows = [*zip(offers, use, strict=True)]
    bought = sum((offer.price or 0) * max(0, n - offer.have) for offer, n in rows)
    money, area = sum((offer.price or 0) * n for offer, n in rows), sum(offer.area * n for offer, n in rows)
    return {"at hand": (bought, area), "cost": (money, area), "waste": (area, bought)}[aim]


@given(st.lists(_OFFER, min_size=1, max_size=3), st.integers(5001, 20_000))
def test_very_many_pieces_are_covered_too(offers: list[Offer], pieces: int) -> None:
    found = chosen(tuple(replace(offer, key=str(at)) for at, offer in enumerate(offers)), pieces, "at hand")

    assert found.pieces >= pieces - found.short
    assert all(take.buy == max(0, take.use - take.offer.have) for take in found.takes)
    assert all(take.offer.for_sale or not take.buy for take in found.takes)
