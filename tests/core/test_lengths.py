"""Boards cut to length: each board holds its cuts, all that is wanted is cut or named, and the bound holds."""

import json
from dataclasses import replace
from functools import cache
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from runboard.plan.stock.cut_list import CutLength, LengthsAnswer, LengthsQuestion, answer_lengths, begin_lengths
from runboard.plan.stock.lengths import Source, cut_to_length
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.product import Product
from runboard.shop.stocked import Piece, Stock
from runboard.words.before.lengths import said

STRIP = Stock("strip", "Maple strip", 900, 45, 25, wood="maple", have=3, price=4)
LONG = replace(STRIP, key="long", name="Long strip", length=2400, have=0, price=9)
SHOP = Book(stocks=(STRIP, LONG))


def cut(*lengths: tuple[float, int], book: Book = SHOP, **said: Any) -> LengthsAnswer:
    rows = tuple(CutLength(length, pieces) for length, pieces in lengths)
    return answer_lengths(book, LengthsQuestion(rows, **said), None, lambda done, total: None)


def test_what_is_at_hand_is_cut_before_more_is_bought() -> None:
    found = cut((440, 6), gap=3)

    assert [(stock.key, used, bought) for stock, used, bought in found.counts] == [("strip", 3, 0)]
    assert [(bar.count, bar.cuts, bar.rest) for bar in found.bars] == [(3, ((440, 2),), pytest.approx(17))]
    assert found.is_proved


def test_a_cut_takes_what_the_blade_takes() -> None:
    assert cut((450, 2), gap=0).bars[0].count == 1
    assert [(stock.key, used) for stock, used, _ in cut((450, 2), gap=3).counts] == [("strip", 2)]


def test_both_ends_of_a_board_come_off_first() -> None:
    assert cut((440, 2), gap=3, trim=8.5).bars[0].cuts == ((440, 2),)
    assert cut((440, 2), gap=3, trim=8.6).bars[0].cuts == ((440, 1),)


def test_lengths_without_a_board_are_named() -> None:
    found = cut((800, 5), book=Book(stocks=(replace(STRIP, for_sale=False),)))

    assert found.missing == ((800, 2),)
    assert (
        said(SHOP, LengthsQuestion(()), found).head
        == "No board is there for 2 × 800 mm, and none that suits is for sale."
    )


@pytest.mark.parametrize(
    ("asked", "code"),
    [
        (lambda: cut(), "lengths none"),
        (lambda: cut(*((100 + at, 1) for at in range(31))), "lengths too many"),
        (lambda: cut((2401, 1)), "lengths too long"),
        (lambda: cut((100, 1), book=Book()), "stock no boards"),
        (lambda: cut((100, 1), thickness=26), "lengths too long"),
    ],
)
def test_what_cannot_be_cut_is_refused(asked: Any, code: str) -> None:
    with pytest.raises(Refused) as refused:
        asked()

    assert refused.value.code == code


def test_a_board_that_is_in_no_list_is_asked_about_by_its_length() -> None:
    found = cut((300, 4), own_length=1000, gap=3)

    assert [(stock.key, used, bought) for stock, used, bought in found.counts] == [("own", 2, 2)]


def test_a_cut_list_begins_with_the_product() -> None:
    rail = Product("rail", "Rail", (), piece=Piece(300, 45, 20, gap=3))

    assert begin_lengths(replace(SHOP, products=(rail,)), {"product": "rail"}).lengths == (CutLength(300, 1),)


def test_the_answer_is_said_and_can_be_read_by_a_program() -> None:
    question = LengthsQuestion((CutLength(440, 5), CutLength(210, 4)), gap=3)
    words = said(SHOP, question, answer_lengths(SHOP, question, None, lambda done, total: None))

    record = json.loads(json.dumps(words.record))
    assert sum(count * n for bar in record["cuts"] for length, n in bar["lengths_mm"] for count in [bar["count"]]) == 9
    assert words.head.startswith("Take ")
    assert not words.doubts


_WANTED = st.lists(
    st.tuples(st.integers(20, 90), st.integers(1, 4)), min_size=1, max_size=3, unique_by=lambda row: row[0]
)


@settings(deadline=None, max_examples=60)
@given(_WANTED, st.integers(90, 160), st.integers(0, 3))
def test_every_length_is_cut_from_boards_that_hold_it(wanted: list[tuple[int, int]], room: int, own: int) -> None:
    sizes, counts = [size for size, _ in wanted], [count for _, count in wanted]
    sources = [Source("own", 95, 1, own, False), Source("new", room, 10, None, True)]

    found = cut_to_length(sizes, counts, sources)

    cut = [sum(cuts[at] * times for _, cuts, times in found.boards) for at in range(len(sizes))]
    assert cut == counts and not any(found.missing)
    assert all(
        sum(size * n for size, n in zip(sizes, cuts, strict=True)) <= source.room for source, cuts, _ in found.boards
    )
    assert sum(times for source, _, times in found.boards if source.key == "own") <= own
    assert found.bound <= found.cost + 1e-6


@settings(deadline=None, max_examples=40)
@given(_WANTED, st.integers(90, 160))
def test_no_fewer_boards_would_do_where_it_is_proved(wanted: list[tuple[int, int]], room: int) -> None:
    sizes, counts = [size for size, _ in wanted], [count for _, count in wanted]
    found = cut_to_length(sizes, counts, [Source("new", room, 1, None, True)])

    boards = sum(times for _, _, times in found.boards)
    fewest = _fewest(tuple(sorted((size for size, count in wanted for _ in range(count)), reverse=True)), room)
    assert found.bound <= fewest + 1e-6
    assert fewest <= boards <= fewest + (not found.is_proved)


@cache
def _fewest(pieces: tuple[int, ...], room: int) -> int:
    """By trying: each next piece into every board that is begun, or a new one."""
    best = len(pieces)

    def put(at: int, left: tuple[int, ...]) -> None:
        nonlocal best
        if len(left) >= best:
            return
        if at == len(pieces):
            best = len(left)
            return
        for place in {space: number for number, space in enumerate(left) if space >= pieces[at]}.values():
            put(at + 1, tuple(sorted((*left[:place], left[place] - pieces[at], *left[place + 1 :]))))
        put(at + 1, tuple(sorted((*left, room - pieces[at]))))

    put(0, ())
    return best
