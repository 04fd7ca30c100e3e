"""Nothing on a card is cut off, whatever people write."""

import re
from collections.abc import Iterator
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from runboard.cards.layout import sheets
from runboard.cards.model import CardOrder
from runboard.cards.page import style
from runboard.run.fold.state import RunState
from runboard.shop.book import Book
from tests.cards.boxes import laid_out, overflows
from tests.cards.extremes import NAME, shops, widest
from tests.cards.making import LANGUAGES, PAPERS, order, rails_book, run_of

# Each example is a run of 14 operations and 40 orders; shrinking one would lay out hundreds of pages again.
pytestmark = pytest.mark.filterwarnings("ignore:Generating overly large repr")  # told where an example fails
A_FEW = settings(phases=[Phase.explicit, Phase.generate], suppress_health_check=list(HealthCheck))


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("language", LANGUAGES)
def test_every_kind_of_card_keeps_within_its_rows(paper: str, language: str) -> None:
    book = rails_book()

    assert overflows(laid_out(order(book, run_of(book.products[0]), paper, language, "everything"))) == []


@settings(A_FEW, max_examples=20)
@given(shops(), st.sampled_from(PAPERS), st.sampled_from(LANGUAGES))
def test_rows_never_fill_more_than_the_card(made: tuple[Book, RunState], paper: str, language: str) -> None:
    assert too_full(made, paper, language) == []


@pytest.mark.parametrize("paper", PAPERS)
@settings(A_FEW, max_examples=8, derandomize=True)
@given(shops(widest), st.sampled_from(LANGUAGES))
def test_nor_do_the_widest_names_wherever_a_name_stands(paper: str, made: tuple[Book, RunState], language: str) -> None:
    assert too_full(made, paper, language) == []


def too_full(made: tuple[Book, RunState], paper: str, language: str, kinds: str = "everything") -> list[object]:
    """The faces whose rows need more room than there is."""
    faces = [face for sheet in sheets(order(*made, paper, language, kinds)) for face in sheet.faces]
    return [
        (face.kind, face.part, face.head_height, face.foot.height, [(row.kind, row.height) for row in face.rows])
        for face in faces
        if face.head_height + sum(row.height for row in face.rows) + face.foot.height > face.size.room[1]
    ]


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("kinds", ["travellers", "full"])
def test_a_head_and_a_foot_that_fill_the_first_side_leave_the_bad_piece_to_a_row(paper: str, kinds: str) -> None:
    long, book = "Ж" * NAME, rails_book()
    book = replace(book, emergency=long, people=tuple(replace(person, name=long) for person in book.people))
    run = run_of(book.products[0], trays=1, name="Ж" * 40, product_name="W" * 40)
    made = book, replace(run, trays={"1": replace(run.trays["1"], id="Ж" * 80, wood="Ж" * 40)})

    assert [full for language in LANGUAGES for full in too_full(made, paper, language, kinds)] == []
    asked = order(*made, paper, "de", kinds)
    assert f"zählen,{long}Bescheid" in "".join(words_of(asked))
    assert overflows(laid_out(asked)) == []


def words_of(asked: CardOrder) -> Iterator[str]:
    """What stands on the cards' feet and in their small lines of text, without the spaces."""
    for face in (face for sheet in sheets(asked) for face in sheet.faces):
        yield "".join(face.foot.bad).replace(" ", "")
        for line in (line for row in face.rows if row.facts.get("style") == "small" for line in row.facts["lines"]):
            yield "".join(part for part, _ in line).replace(" ", "")


@settings(A_FEW, max_examples=2, derandomize=True)
@given(shops(), st.sampled_from(PAPERS))
def test_the_longest_names_in_three_alphabets_are_drawn_whole(made: tuple[Book, RunState], paper: str) -> None:
    found = overflows(laid_out(order(*made, paper)))

    assert found == []


@settings(A_FEW, max_examples=1, derandomize=True)
@given(shops(widest, operations=15))
def test_more_than_99_cards_of_the_widest_names_are_drawn_whole(made: tuple[Book, RunState]) -> None:
    asked = order(*made, "a6", "de", "everything")
    assert any(face.parts > 99 for sheet in sheets(asked) for face in sheet.faces)

    assert overflows(laid_out(asked)) == []


def test_what_is_too_large_for_its_row_would_be_noticed(monkeypatch: pytest.MonkeyPatch) -> None:
    large = style("a6").replace("font-size: 10pt; line-height: 4.2mm", "font-size: 14pt; line-height: 7mm")
    monkeypatch.setattr("runboard.cards.page.style", lambda paper: large)
    book = rails_book()

    assert overflows(laid_out(order(book, run_of(book.products[0]), kinds="full"))) != []


def test_no_type_is_smaller_than_8_and_a_half_points_and_no_row_with_boxes_lower_than_8_mm() -> None:
    book = rails_book()
    sizes = {float(size) for paper in PAPERS for size in re.findall(r"font-size: ([\d.]+)pt", style(paper))}
    rows = [
        row
        for sheet in sheets(order(book, run_of(book.products[0]), kinds="everything"))
        for face in sheet.faces
        for row in face.rows
    ]

    assert min(sizes) >= 8.5
    assert min(row.height for row in rows if row.kind in ("step", "check", "places", "texts", "cells", "goon")) >= 8


def test_cautions_are_as_large_as_the_step() -> None:
    sizes = {
        name: re.search(rf"^{name} {{[^}}]*font-size: ([\d.]+)pt", style("a6"), re.MULTILINE)
        for name in (r"\.name", r"\.caution span")
    }

    assert {size[1] for size in sizes.values() if size} == {"10"}


def test_a_card_that_goes_on_says_which_of_how_many_it_is() -> None:
    book = rails_book()
    asked = order(book, run_of(book.products[0], trays=1))

    faces = [face for sheet in sheets(asked) for face in sheet.faces]

    assert [face.head["mark"] for face in faces[1:]] == [(f"1 · {at}/{len(faces)}",) for at in range(2, len(faces) + 1)]


def test_one_full_card_at_least_has_room_for_a_pencil() -> None:
    book = rails_book()
    run = run_of(book.products[0], trays=1)
    done = replace(run, trays={"1": replace(run.trays["1"], at={"hooks": 5})})

    for one in (run, done):
        assert max(face.left for sheet in sheets(order(book, one, kinds="full")) for face in sheet.faces) >= 12
