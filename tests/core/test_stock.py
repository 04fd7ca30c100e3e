"""Pieces from boards: layouts that can be cut, answers that say what they rest on, and what of them is kept."""

import json
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from runboard.charts.layout import Drawn, layout
from runboard.plan.before.kind import File
from runboard.plan.stock.answer import answer
from runboard.plan.stock.keeps import keeps
from runboard.plan.stock.kind import STOCK
from runboard.plan.stock.need import needed
from runboard.plan.stock.question import Board, StockAnswer, StockQuestion, begin
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.book_json import book_to_json
from runboard.shop.product import Operation, Pass, Product
from runboard.shop.stocked import Piece, Stock
from runboard.web.before.of_stock import draw_stock
from runboard.words.before.stock import said
from tests.core.test_dxf import drawing, rail

RAIL = Piece(300, 90, 20, gap=4, margin=5)
ASH = Stock("ash", "Ash board", 2000, 200, 24, wood="ash", have=2, price=30)
CUT = Operation("cut", "Cut", "saw", (Pass("cut", "1", "board", 10),))
RAILS = Product("rails", "Key rail", (CUT,), wood="ash", piece=RAIL)
SHOP = Book(stocks=(ASH,), products=(RAILS,))


def asked(book: Book = SHOP, file: File | None = None, **said: Any) -> StockAnswer:
    return answer(book, StockQuestion(**{"product": "rails", "pieces": 40, **said}), file, lambda done, total: None)


def crossing(board: Board, piece: Piece) -> list[str]:
    """What is wrong with a layout, looked at in millimetres and at every pair: nothing of the product's own is asked."""
    wrong, slack = [], 1e-6
    for at, one in enumerate(board.places):
        edge = piece.margin + piece.tabs - slack
        if min(one.x, one.y) < edge or one.x + one.length > board.stock.length - edge:
            wrong.append(f"{at} outside")
        if one.y + one.width > board.stock.width - edge:
            wrong.append(f"{at} outside")
        if {one.length, one.width} != {piece.length, piece.width}:
            wrong.append(f"{at} has another size")
        apart = piece.gap + 2 * piece.tabs - slack
        for other in board.places[:at]:
            beside = one.x >= other.x + other.length + apart or other.x >= one.x + one.length + apart
            above = one.y >= other.y + other.width + apart or other.y >= one.y + one.width + apart
            if not beside and not above:
                wrong.append(f"{at} too near")
    return wrong


def test_the_boards_for_a_run_with_how_many_to_buy() -> None:
    found = asked()

    assert [(board.each, board.use, board.buy, board.bound, board.proof) for board in found.used] == [
        (12, 4, 2, 12, "bound")
    ]
    assert found.need == needed(SHOP, RAILS, 40)
    assert crossing(found.used[0], RAIL) == []


def test_a_size_typed_in_wins_over_the_product() -> None:
    assert asked(length=990, width=95, thickness=20, gap=4).used[0].each == 4


def test_a_board_that_is_in_no_list_is_asked_about_by_its_size() -> None:
    found = asked(own_length=620, own_width=100)

    assert [(board.stock.key, board.each, board.use) for board in found.boards] == [("own", 2, 20)]
    assert "620 mm" in said(SHOP, StockQuestion(), found).head


def test_a_drawing_says_the_size_by_its_box() -> None:
    found = asked(file=File("rail.dxf", drawing(rail)), length=1, width=1, thickness=20)

    assert (found.piece.length, found.piece.width, found.fill) == (300, 90, pytest.approx(1))


def test_an_outline_that_fills_little_of_its_box_is_said() -> None:
    def corner(document: Any, space: Any) -> None:
        space.add_lwpolyline([(0, 0), (300, 0), (300, 20), (20, 20), (20, 90), (0, 90)], close=True)

    found = asked(file=File("corner.dxf", drawing(corner)))

    assert found.fill == pytest.approx((300 * 20 + 20 * 70) / 27000, abs=1e-3)
    assert any("27 % of its box" in line for line in said(SHOP, StockQuestion(), found).lines)


@pytest.mark.parametrize(
    ("book", "more", "code"),
    [
        (SHOP, {"product": None}, "stock no piece"),
        (SHOP, {"product": None, "length": 300}, "stock no piece"),
        (replace(SHOP, stocks=()), {}, "stock no boards"),
        (SHOP, {"file": File("a.dxf", b"")}, "dxf empty"),
    ],
)
def test_what_cannot_be_answered_is_refused(book: Book, more: Mapping[str, Any], code: str) -> None:
    with pytest.raises(Refused) as refused:
        asked(book, **more)

    assert refused.value.code == code


def test_boards_that_do_not_suit_are_named_with_why() -> None:
    thin, small, oak = (
        replace(ASH, key="thin", thickness=18),
        replace(ASH, key="small", width=95),
        replace(ASH, wood="oak"),
    )
    found = asked(Book(stocks=(thin, small, replace(oak, key="oak")), products=(RAILS,)), wood="ash")

    assert [(one.stock.key, one.why) for one in found.unsuited] == [
        ("thin", "thin"),
        ("small", "small"),
        ("oak", "wood"),
    ]
    assert found.need.why == "short" and not found.boards
    assert said(SHOP, StockQuestion(), found).head == "No board suits this piece."


def test_pieces_lie_along_the_grain_unless_they_may_lie_either_way() -> None:
    panel = replace(ASH, length=300, width=700)

    along = asked(Book(stocks=(panel,), products=(RAILS,)), length=290, width=90, gap=0)
    across = asked(Book(stocks=(panel,), products=(RAILS,)), length=340, width=90, gap=0, grain="none")

    assert [place.turned for place in along.used[0].places] == [False] * 7
    assert {place.turned for place in across.used[0].places} == {True}


def test_the_search_finds_the_piece_that_the_blocks_leave_out() -> None:
    found = asked(length=9, width=4, own_length=42, own_width=39, grain="none")

    assert (found.boards[0].each, found.boards[0].bound, found.boards[0].proof) == (45, 45, "bound")


def test_a_layout_that_is_not_proved_the_most_says_so() -> None:
    question = StockQuestion(length=163, width=63, own_length=1220, own_width=610, grain="none", pieces=71)
    found = answer(SHOP, question, None, lambda done, total: None)

    lines = said(SHOP, question, found)
    assert (found.boards[0].each, found.boards[0].bound, found.boards[0].proof) == (70, 71, "")
    assert "No layout holds more than 71. Nobody knows whether one holds more than 70." in lines.lines[0]
    assert any("Look longer" in doubt for doubt in lines.doubts)


def test_a_question_begins_with_what_the_product_is_made_of() -> None:
    question = begin(SHOP, {"product": "rails"})

    assert (question.length, question.gap, question.wood, question.product) == (300, 4, "ash", "rails")
    assert begin(SHOP, {}) == StockQuestion()


def test_the_record_says_all_of_it_as_json() -> None:
    record = json.loads(json.dumps(said(SHOP, StockQuestion(), asked()).record))

    assert record["kind"] == "stock"
    assert [(one["stock"], one["use"], one["buy"], one["pieces_each"]) for one in record["boards"]] == [
        ("ash", 4, 2, 12)
    ]
    assert (record["proved"], record["bound"], record["spare"], record["cost"]) == (True, 48, 8, 120)
    assert len(record["boards"][0]["layout_mm"]) == 12


def test_what_the_product_is_made_of_and_what_a_board_holds_can_be_kept() -> None:
    question = StockQuestion(40, "rails", 310, 90, 20, gap=4, margin=5)
    found = answer(SHOP, question, None, lambda done, total: None)
    record = book_to_json(SHOP)

    kept = keeps(SHOP, question, found)
    for keep in kept:
        keep.put(record)

    assert [keep.key for keep in kept] == ["piece", "board cut"]
    product = record["products"][0]
    assert (product["piece"]["length"], product["operations"][0]["passes"][0]["pieces"]) == (310, 12)


def test_what_the_book_says_already_is_so() -> None:
    question = StockQuestion(40, "rails")

    kept = keeps(SHOP, question, answer(SHOP, question, None, lambda done, total: None))

    assert [(keep.key, keep.is_so) for keep in kept] == [("piece", True), ("board cut", False)]
    assert kept[0].facts["size"] == "300 mm × 90 mm × 20 mm"


def test_the_answer_says_which_piece_was_reckoned_over_its_drawing() -> None:
    (drawn,) = draw_stock(SHOP, StockQuestion(), asked())

    assert drawn.index("A piece is 300 mm × 90 mm × 20 mm, gap 4 mm, edge margin 5 mm.") < drawn.index("<svg")


def test_without_a_board_the_piece_is_said_in_a_line() -> None:
    found = asked(Book(stocks=(replace(ASH, thickness=18),), products=(RAILS,)))

    assert said(SHOP, StockQuestion(), found).lines[0].startswith("A piece is 300 mm × 90 mm × 20 mm")


def test_a_gap_of_nothing_is_a_caution() -> None:
    words = said(SHOP, StockQuestion(), asked(length=300, width=90, thickness=20))

    assert len(words.cautions) == 1 and "gap" in words.cautions[0]
    assert not any("gap" in doubt for doubt in words.doubts)
    assert not said(SHOP, StockQuestion(), asked()).cautions


def test_what_is_to_be_bought_has_its_price() -> None:
    lines = said(SHOP, StockQuestion(), asked()).lines

    assert "The boards are worth 120.00, 3.00 per piece. Those to buy cost 60.00." in lines
    assert asked().need.cost_to_buy == 60
    assert asked(Book(stocks=(replace(ASH, have=9),), products=(RAILS,))).need.cost_to_buy == 0
    assert asked(Book(stocks=(replace(ASH, price=None),), products=(RAILS,))).need.cost_to_buy is None


def test_room_for_more_pieces_is_no_waste() -> None:
    """40 × 27 000 mm² of 4 boards × 400 000: 67.5 %; 8 more pieces are 13.5 %."""
    lines = said(SHOP, StockQuestion(), asked()).lines

    assert "8 more pieces fit on the last board." in lines
    assert "The pieces use 68 % of the area, those that still fit 14 %; 18 % is cuts, edges and offcuts." in lines


def test_a_long_name_is_written_over_its_drawing_in_two_lines() -> None:
    drawn = layout(
        "a", "Layout", Drawn(1200, 800, [], "12 pieces on each of 4: Board of 1200 mm × 800 mm", "1200 mm", "800 mm")
    )

    assert "12 pieces on each of 4: Board of 1200 mm ×" in drawn and ">800 mm<" in drawn and "…" not in drawn


def test_nothing_is_kept_in_a_product_that_is_gone() -> None:
    for keep in keeps(SHOP, StockQuestion(product="rails"), replace(asked(), piece=replace(RAIL, length=5))):
        with pytest.raises(Refused):
            keep.put(book_to_json(replace(SHOP, products=())))


def test_what_lies_along_the_grain_is_answered_at_once() -> None:
    assert STOCK.is_quick(SHOP, StockQuestion(40, "rails"))
    assert STOCK.is_quick(SHOP, StockQuestion(40))  # refused, that is
    assert not STOCK.is_quick(SHOP, StockQuestion(40, length=300, width=90, grain="none"))


def test_stock_is_a_kind_that_reads_drawings() -> None:
    assert STOCK.name == "stock" and ".dxf" in STOCK.endings and STOCK.is_long


_MM = st.integers(10, 400).map(lambda tenths: tenths / 2)


@st.composite
def cutting(draw: st.DrawFn) -> tuple[Stock, Piece]:
    """A board, and a piece that may fit on it, in half millimetres."""
    sides = [draw(_MM) for _ in range(4)]
    around = [draw(st.sampled_from([0.0, 0.5, 3.2])) for _ in range(3)]
    grains = draw(st.sampled_from(["length", "none"])), draw(st.sampled_from(["length", "none"]))
    board = Stock("board", "Board", sides[0] * 3, sides[1] * 3, 20, grain=grains[0])  # type: ignore[arg-type]
    return board, Piece(sides[2], sides[3], 20, *around, grain=grains[1])  # type: ignore[arg-type]


def layout_of(board: Stock, piece: Piece) -> Board | None:
    question = StockQuestion(10, None, piece.length, piece.width, 20, piece.gap, piece.margin, piece.tabs, piece.grain)
    found = answer(Book(stocks=(board,)), question, None, lambda done, total: None)
    return found.boards[0] if found.boards else None


@settings(deadline=None, max_examples=40)
@given(cutting())
def test_every_layout_can_be_cut(asked: tuple[Stock, Piece]) -> None:
    found = layout_of(*asked)

    if found is not None:
        assert crossing(found, asked[1]) == []
        assert 1 <= found.each <= found.bound
        turned = {place.turned for place in found.places}
        assert turned == {False} or "none" in (asked[0].grain, asked[1].grain)


@settings(deadline=None, max_examples=40)
@given(cutting(), st.integers(0, 40), st.integers(0, 40))
def test_a_larger_board_never_has_fewer_pieces_at_most_and_a_larger_gap_never_more(
    asked: tuple[Stock, Piece], longer: int, wider: int
) -> None:
    board, piece = asked
    large, wide_gap = (
        replace(board, length=board.length + longer, width=board.width + wider),
        replace(piece, gap=piece.gap + wider / 4),
    )

    before, more, fewer = layout_of(board, piece), layout_of(large, piece), layout_of(board, wide_gap)

    if before is not None:
        assert more is not None and more.bound >= before.each
        if before.proof and more.proof:
            assert more.each >= before.each
    if fewer is not None:
        assert before is not None and before.bound >= fewer.each
        if before.proof:
            assert fewer.each <= before.each
