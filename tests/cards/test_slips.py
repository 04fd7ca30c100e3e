"""Packing slips: what lies in the parcel and for whom, in four languages, without a price."""

from dataclasses import replace
from pathlib import Path

import pytest

from runboard.cards.model import CardOrder, Cell
from runboard.cards.of_a_run import page_words
from runboard.cards.slips import lines_to_pack, packing_slip
from runboard.run.fold.state import OrderLine, RunState, Ticked
from runboard.shop.book import Book
from tests.cards.making import LANGUAGES, NOW, rails_book, run_of, speech
from tests.cards.printing import printed, text_of


def slips(book: Book, run: RunState, language: str = "en", paper: str = "a6") -> CardOrder:
    said = speech(book, language)
    cards = tuple(packing_slip(book, run, line, said) for line in lines_to_pack(run, every=True))
    return CardOrder(cards, paper, page_words(said), language, run.name)


def with_good(run: RunState, pieces: int) -> RunState:
    """So many good pieces out of its first tray."""
    tray = run.trays["1"]
    return replace(run, trays={**run.trays, "1": replace(tray, good=pieces)})


def test_a_slip_says_whose_it_is_what_it_is_and_who_is_to_sign_for_the_packing() -> None:
    book = rails_book()
    run = run_of(book.products[0])

    slip = packing_slip(book, run, lines_to_pack(run, ("1",))[0], speech(book))

    assert (slip.shop, slip.whom, slip.what, slip.text) == ("Test shop", "Meyer", "9 pieces, Entry key rails", "12")
    assert slip.cells == (Cell("due", "Thu 5 Mar 2026, 17:00"), Cell("packed on"), Cell("packed by"))


@pytest.mark.parametrize(
    ("good", "ticks", "what"), [(1, {}, "1 of 2, 1 to follow"), (2, {}, "2 pieces"), (2, 1, "1 of 2")]
)
def test_a_slip_says_what_lies_in_the_parcel_and_what_is_to_follow(good: int, ticks: int, what: str) -> None:
    book = rails_book()
    held = {"1": {"collected": Ticked("ann", NOW, ticks)}} if ticks else {}
    run = with_good(run_of(book.products[0], orders=(OrderLine("1", 2, "Meyer"),), ticks=held), good)

    (line,) = lines_to_pack(run)

    assert packing_slip(book, run, line, speech(book)).what == f"{what}, Entry key rails"


def test_slips_are_for_what_can_be_handed_over_unless_every_one_is_wanted() -> None:
    run = with_good(run_of(rails_book().products[0]), 1)

    assert [line.order.line for line in lines_to_pack(run)] == ["1"]
    assert [line.order.line for line in lines_to_pack(run, every=True)] == ["1", "2"]


def test_a_line_without_a_name_is_called_by_its_text_else_by_itself() -> None:
    book = rails_book()
    run = run_of(book.products[0], orders=(OrderLine("7", 1, text="12"), OrderLine("8", 1)))

    assert [packing_slip(book, run, line, speech(book)).whom for line in lines_to_pack(run, every=True)] == [
        "12",
        "Order 8",
    ]


def test_what_is_collected_gets_no_slip_unless_it_is_picked() -> None:
    run = run_of(rails_book().products[0], ticks={"1": {"collected": Ticked("ann", NOW)}})

    assert [line.order.line for line in lines_to_pack(run, every=True)] == ["2"]
    assert [line.order.line for line in lines_to_pack(run, ("1",))] == ["1"]


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_slip_is_one_card_and_says_nothing_of_money_or_of_the_shops_dangers(tmp_path: Path, language: str) -> None:
    book = replace(rails_book(), emergency="112 or the neighbour")
    run = run_of(book.products[0])

    pages = text_of(printed(slips(book, run, language), tmp_path))

    assert len(pages) == 2
    assert "Meyer" in pages[0]
    assert "Test shop" in pages[0]
    assert speech(book, language)("slip-packed-by") in pages[0]
    assert "neighbour" not in pages[0]


def test_four_slips_lie_on_a_sheet(tmp_path: Path) -> None:
    book = rails_book()
    run = run_of(book.products[0], orders=tuple(OrderLine(str(at), 1, f"Name {at}") for at in range(1, 6)))

    assert len(text_of(printed(slips(book, run, paper="a4"), tmp_path))) == 2
