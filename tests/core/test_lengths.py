"""Boards cut to length: each board holds its cuts, all that is wanted is cut or named, and the bound holds."""

import json
from dataclasses import replace
from functools import cache
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from runboard.charts.cut_bars import CutBar, cut_bars
from runboard.plan.stock.cut_list import CutLength, LengthsAnswer, LengthsQuestion, answer_lengths, begin_lengths
from runboard.plan.stock.few_ways import in_few_ways
from runboard.plan.stock.lengths import Source, cut_to_length
from runboard.plan.stock.nest import A_MM
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.product import Product
from runboard.shop.stocked import Piece, Stock
from runboard.words.before.lengths import said

IN = 25.4
STRIP = Stock("strip", "Maple strip", 900, 45, 25, wood="maple", have=3, price=4)
LONG = replace(STRIP, key="long", name="Long strip", length=2400, have=0, price=9)
SHOP = Book(stocks=(STRIP, LONG))


def cut(*lengths: tuple[float, int], book: Book = SHOP, **said: Any) -> LengthsAnswer:
    rows = tuple(CutLength(length, pieces) for length, pieces in lengths)
    return answer_lengths(book, LengthsQuestion(rows, **said), None, lambda done, total: None)


def test_what_is_at_hand_is_cut_before_more_is_bought() -> None:
    found = cut((440, 6), gap=3)

    assert [(stock.key, used, bought) for stock, used, bought in found.counts] == [("strip", 3, 0)]
    assert [(bar.count, bar.cuts, bar.rest) for bar in found.bars] == [(3, ((440, 2),), pytest.approx(14))]
    assert found.is_proved


def test_a_cut_takes_what_the_blade_takes() -> None:
    assert cut((450, 2), gap=0).bars[0].count == 1
    assert [(stock.key, used) for stock, used, _ in cut((450, 2), gap=3).counts] == [("strip", 2)]


def test_pieces_sawn_off_a_board_take_a_cut_each() -> None:
    """2400 − (610 + 4 × 420) − 5 × 3: where a piece is left, the last one is sawn off it too."""
    (bar,) = cut((610, 1), (420, 4), own_length=2400, gap=3).bars

    assert bar.rest == pytest.approx(95)


def test_the_last_piece_that_just_fits_takes_no_cut() -> None:
    (bar,) = cut((450, 2), own_length=903, gap=3).bars

    assert (bar.count, bar.rest) == (1, 0)


def test_as_many_boards_are_cut_in_few_ways_with_one_long_offcut() -> None:
    found = cut((610, 8), (420, 12), own_length=2400, gap=3)

    assert [used for _, used, _ in found.counts] == [5]
    assert found.is_proved and found.is_best
    assert len(found.bars) <= 3
    assert max(bar.rest for bar in found.bars) >= 2400 - 2 * 423


def test_the_bound_counts_whole_boards() -> None:
    """3.4 boards' worth of pieces with two boards at hand: one that is bought in part is bought."""
    shop = Book(stocks=(replace(LONG, have=2, price=18),))

    found = cut((610, 5), (420, 12), book=shop, gap=3)

    assert [(used, bought) for _, used, bought in found.counts] == [(4, 2)]
    assert found.is_proved and found.above_bound == 0


def test_boards_at_hand_and_bought_ones_that_are_cut_alike_are_one_row() -> None:
    found = cut((440, 10), gap=3)

    assert [(stock.key, used, bought) for stock, used, bought in found.counts] == [("strip", 5, 2)]
    assert [(bar.count, bar.cuts) for bar in found.bars] == [(5, ((440, 2),))]


def test_both_ends_of_a_board_come_off_first() -> None:
    assert cut((440, 2), gap=3, trim=8.5).bars[0].cuts == ((440, 2),)
    assert cut((440, 2), gap=3, trim=8.6).bars[0].cuts == ((440, 1),)


def test_lengths_without_a_board_are_named() -> None:
    found = cut((800, 5), book=Book(stocks=(replace(STRIP, for_sale=False),)))

    assert found.missing == ((800, 2),)
    assert (
        said(SHOP, LengthsQuestion(()), found).head == "There is no board for 2 × 800 mm, and none for sale that suits."
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
    assert not words.doubts and not words.cautions


def test_a_shop_in_inches_reads_offcuts_in_fractions() -> None:
    inches = Book(units="in", stocks=(replace(STRIP, length=96 * IN, have=9),))
    question = LengthsQuestion((CutLength(16.5 * IN, 5), CutLength(6.75 * IN)), gap=IN / 8)

    words = said(inches, question, answer_lengths(inches, question, None, lambda done, total: None))

    assert words.tables[0].rows == (("1 × Maple strip", "5 × 16 1/2 in and 1 × 6 3/4 in", "6 in"),)
    assert "Longest offcut: 6 in." in words.lines


def test_an_offcut_of_no_even_fraction_is_said_to_a_64th() -> None:
    inches = Book(units="in", stocks=(replace(STRIP, length=96 * IN, have=9),))
    question = LengthsQuestion((CutLength(16.5 * IN, 5),), gap=3.2)

    words = said(inches, question, answer_lengths(inches, question, None, lambda done, total: None))

    assert words.tables[0].rows[0][2] == "12 7/8 in"


def test_a_saw_that_takes_nothing_is_warned_of() -> None:
    question = LengthsQuestion((CutLength(440, 2),))

    words = said(SHOP, question, answer_lengths(SHOP, question, None, lambda done, total: None))

    assert len(words.cautions) == 1 and not words.doubts


def test_how_many_ways_the_boards_are_cut_is_said() -> None:
    assert any(
        "cut the same way" in line for line in said(SHOP, LengthsQuestion((), gap=3), cut((440, 4), gap=3)).lines
    )
    assert any(
        "3 different ways" in line
        for line in said(SHOP, LengthsQuestion((), gap=3), cut((610, 8), (420, 12), own_length=2400, gap=3)).lines
    )


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
@given(_WANTED, st.integers(90, 160), st.integers(0, 3))
def test_few_ways_cut_the_same_pieces_from_no_more_boards(wanted: list[tuple[int, int]], room: int, own: int) -> None:
    sizes, counts = [size * A_MM for size, _ in wanted], [count for _, count in wanted]
    sources = [
        Source("own", 95 * A_MM, 1, own, False),
        Source("new", room * A_MM, 10, None, True),
    ]
    before = cut_to_length(sizes, counts, sources).boards

    after = in_few_ways(sizes, before)

    rooms = {source.key: source.room for source, _, _ in before}
    assert [sum(cuts[at] * times for _, cuts, times in after.boards) for at in range(len(sizes))] == counts
    for key, cuts, _ in after.boards:
        assert sum(size * n for size, n in zip(sizes, cuts, strict=True)) <= rooms[key]
    for key in rooms:
        most = sum(times for source, _, times in before if source.key == key)
        assert sum(times for of, _, times in after.boards if of == key) <= most
    if after.is_best:
        assert _worth(after.boards, sizes, rooms) >= _worth(
            [(source.key, *rest) for source, *rest in before], sizes, rooms
        )


@settings(deadline=None, max_examples=40)
@given(_WANTED, st.integers(90, 160))
def test_no_fewer_boards_would_do_where_it_is_proved(wanted: list[tuple[int, int]], room: int) -> None:
    sizes, counts = [size for size, _ in wanted], [count for _, count in wanted]
    found = cut_to_length(sizes, counts, [Source("new", room, 1, None, True)])

    boards = sum(times for _, _, times in found.boards)
    fewest = _fewest(tuple(sorted((size for size, count in wanted for _ in range(count)), reverse=True)), room)
    assert found.bound <= fewest + 1e-6
    assert fewest <= boards <= fewest + (not found.is_proved)


def _worth(boards: Any, sizes: list[int], rooms: dict[str, int]) -> int:
    """The longest offcut in mm, a tenth of the longest board less for each way."""
    a_way = max(1, round(max(rooms.values()) / A_MM * 0.1))
    rests = [rooms[key] - sum(size * n for size, n in zip(sizes, cuts, strict=True)) for key, cuts, _ in boards]
    return max(rests) // A_MM - a_way * len({(key, cuts) for key, cuts, _ in boards})


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


def test_short_pieces_have_their_length_written_up_them() -> None:
    drawn = cut_bars(
        "a", "Boards", [CutBar("1 × Board", 2400, [(0, 610, ("610 mm", "610")), (613, 150, ("150 mm", "150"))])]
    )

    assert ">610 mm<" in drawn and ">150 mm<" not in drawn and ">150<" in drawn


def test_sixteen_and_a_half_inches_are_written_on_their_piece() -> None:
    drawn = cut_bars("a", "Boards", [CutBar("1 × Board", 96, [(0, 16.5, ("16 1/2 in", "16 1/2"))])])

    assert ">16 1/2<" in drawn
