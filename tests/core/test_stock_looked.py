"""What a run sheet finds of boards: enough, to buy, too few, none that suits; and what the route says of a board."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from typing import Any

import pytest

from runboard.plan.before.finding import BeforeRun, Finding
from runboard.plan.stock.looked import findings
from runboard.run.fold.route import Route
from runboard.run.fold.state import OrderLine, Revision, RunState, ShopState, Tray
from runboard.shop.book import Book
from runboard.shop.product import Product
from runboard.words.before.run_sheet import found_in_words
from tests.core.test_stock import ASH, RAILS

AT = datetime(2026, 11, 30, tzinfo=UTC)


def looked(
    product: Product = RAILS, *boards: Any, pieces: int = 40, others: tuple[RunState, ...] = (), **run: Any
) -> list[Finding]:
    order = OrderLine("a", pieces)
    found = RunState(
        "r1", "Rails", "open", AT, product.key, product.name, (Revision(1, "", Route(product)),), (order,), **run
    )
    book = Book(stocks=boards or (ASH,), products=(product,))
    state = ShopState(runs={run.id: run for run in (*others, found)})
    return list(findings(BeforeRun(book, state, found, None, date(2026, 11, 30))))  # type: ignore[arg-type]


def said(finding: Finding) -> str:
    return found_in_words(Book(), finding)


def test_boards_that_suffice_are_green_with_how_many() -> None:
    first = looked(RAILS, replace(ASH, have=9))[0]

    assert (first.level, first.code) == ("green", "stock-enough")
    assert said(first) == "Boards: 4 × Ash board in stock is enough for 40 pieces."


def test_boards_to_be_bought_are_looked_at() -> None:
    first = looked()[0]

    assert (first.level, said(first)) == ("look", "Buy 2 × Ash board first: 40 pieces take 4 × Ash board.")


@pytest.mark.parametrize(
    ("board", "code"),
    [(replace(ASH, for_sale=False), "stock-short"), (replace(ASH, thickness=10), "stock-none")],
    ids=["too few", "too thin"],
)
def test_a_run_that_has_no_boards_stops(board: Any, code: str) -> None:
    first = looked(RAILS, board)[0]

    assert (first.level, first.code) == ("stop", code)
    assert said(first)


def tray(key: str, uncut: int) -> Tray:
    return Tray(key, 30, at={Route(RAILS).steps[0].key: uncut})


def test_pieces_that_are_started_count_before_those_that_are_ordered() -> None:
    trays = {"1": tray("1", 30), "2": tray("2", 30)}

    assert looked(trays=trays)[0].facts["pieces"] == 60


def test_of_a_run_at_work_only_what_is_not_cut_yet_takes_boards() -> None:
    half = looked(trays={"1": tray("1", 0), "2": tray("2", 30)})
    cut = looked(trays={"1": tray("1", 0), "2": tray("2", 0)})

    assert half[0].facts["pieces"] == 30
    assert [(one.level, said(one)) for one in cut] == [("green", "Every piece is cut: no more boards needed.")]


def other(run: str, hours: int, uncut: int) -> RunState:
    route = (Revision(1, "", Route(RAILS)),)
    at = AT + timedelta(hours=hours)
    return RunState(run, f"Batch {run}", "open", at, RAILS.key, RAILS.name, route, trays={"1": tray("1", uncut)})


def test_boards_that_an_earlier_run_still_takes_are_not_this_one_s() -> None:
    first = looked(RAILS, replace(ASH, have=4), pieces=40, others=(other("r0", -1, 12), other("r9", 1, 12)))[0]

    assert (first.level, first.code) == ("look", "stock-buy")
    assert said(first) == (
        "Buy 1 × Ash board first: 40 pieces take 4 × Ash board. "
        "Kept for Batch r0, opened before: 1 × Ash board in stock."
    )


def test_boards_that_suffice_beside_an_earlier_run_say_what_is_kept_for_it() -> None:
    first = looked(RAILS, replace(ASH, have=5), pieces=40, others=(other("r0", -1, 12),))[0]

    assert first.level == "green"
    assert said(first).endswith("Kept for Batch r0, opened before: 1 × Ash board in stock.")


def test_a_run_to_which_an_earlier_one_leaves_nothing_stops_and_says_so() -> None:
    board = replace(ASH, have=2, for_sale=False)
    first = looked(RAILS, board, pieces=12, others=(other("r0", -1, 24),))[0]

    assert (first.level, first.code) == ("stop", "stock-short")
    assert "Kept for Batch r0" in said(first)


@pytest.mark.parametrize(
    ("pieces", "found"),
    [(10, ("green", "stock-board-holds-more")), (12, None), (15, ("look", "stock-board-holds-fewer"))],
)
def test_the_route_is_held_to_what_a_board_holds(pieces: int, found: tuple[str, str] | None) -> None:
    operation = replace(RAILS.operations[0], passes=(replace(RAILS.operations[0].passes[0], pieces=pieces),))

    ones = [one for one in looked(replace(RAILS, operations=(operation,))) if one.check == "board cut"]

    assert [(one.level, one.code) for one in ones] == ([found] if found else [])
    assert all(said(one) for one in ones)


def test_pieces_across_the_grain_are_said() -> None:
    assert RAILS.piece is not None
    loose = replace(RAILS, piece=replace(RAILS.piece, grain="none", length=190, width=150))

    assert {one.code for one in looked() if one.check == "grain"} == {"stock-along"}
    assert {one.code for one in looked(loose) if one.check == "grain"} == {"stock-across"}


def test_a_shop_that_wrote_down_no_boards_is_not_asked() -> None:
    assert looked(replace(RAILS, piece=None)) == []
