"""One card a tray: both sides at most, cautions as signs with two words, and what gives way where the room is too little."""

from dataclasses import replace

import pytest

from runboard.cards.face import Face
from runboard.cards.layout import faces, sheets
from runboard.cards.measure import width
from runboard.cards.model import Traveller
from runboard.cards.of_a_run import traveller
from runboard.cards.papers import PAPERS as SIZES
from runboard.run.care.cautions import CATALOGUE
from runboard.run.fold.state import OrderLine, RunState
from runboard.shop.book import Book
from tests.cards.boxes import laid_out, overflows
from tests.cards.making import LANGUAGES, NOW, PAPERS, link, order, rails_book, run_of, speech


def card_of(book: Book, run: RunState, paper: str = "a6", language: str = "en") -> tuple[Face, ...]:
    asked = order(book, run, paper, language)
    return faces(asked.cards[0], SIZES[paper], asked.words)


def words_at(faces: tuple[Face, ...]) -> list[str]:
    """The words at the signs, in their order."""
    rows = [row for face in faces for row in face.rows if row.kind in ("signs", "unsigned")]
    return [str(item["words"]) for row in rows for item in row.facts["signed"] if item["words"]]


def steps_at(faces: tuple[Face, ...]) -> list[int]:
    return [row.facts["step"].number for face in faces for row in face.rows if row.kind == "step"]


def texts_at(faces: tuple[Face, ...]) -> list[str]:
    rows = [row for face in faces for row in face.rows if row.kind == "texts"]
    return ["".join(text) for row in rows for _, text in row.facts["cells"]]


def said_on(face: Face) -> str:
    """What stands at the top of a side."""
    return " ".join("".join(part for part, _ in line) for line in face.rows[0].facts["lines"])


def many_steps(count: int) -> tuple[Book, RunState]:
    """A route of so many steps at the bench, which has a caution each."""
    book = rails_book()
    product = book.products[0]
    one = replace(product.operations[1], cautions=("eye protection", "hearing protection", "dust mask", "no smoking"))
    steps = tuple(replace(one, key=f"o{at}", name=f"Step {at}") for at in range(1, count + 1))
    product = replace(product, operations=steps)
    return replace(book, products=(product,)), run_of(product, trays=1)


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("language", LANGUAGES)
def test_a_tray_has_one_card_with_every_step_and_its_cautions_in_two_words(paper: str, language: str) -> None:
    book = rails_book()

    found = card_of(book, run_of(book.products[0]), paper, language)

    assert len(found) <= 2
    assert steps_at(found) == [1, 2, 3, 4, 5, 6, 7]
    assert speech(book, language)("sign-stay-and-watch") in words_at(found)


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_caution_has_two_words_that_fit_one_line(language: str) -> None:
    say = speech(rails_book(), language)

    for caution in CATALOGUE.values():
        if caution.kind == "caution":
            words = say(f"sign-{caution.key}")
            assert words
            assert width(words, 9) < 60, words


def test_what_is_long_is_left_to_the_stations_sheet() -> None:
    check = {"key": "width", "text": "Width", "per": "setup", "nominal": 60}
    book = rails_book(
        cut={"checks": [check], "setup_sheet": [["Cutter", "6 mm"]], "instructions": [{"text": "Cut it"}]}
    )

    rows = {row.kind for face in card_of(book, run_of(book.products[0])) for row in face.rows}

    assert rows & {"check", "care", "how", "pair", "text"} <= {"text"}


def test_the_texts_of_twenty_pieces_fit_beside_their_numbers() -> None:
    book = rails_book()
    run = run_of(book.products[0], trays=1, pieces=20)
    tray = replace(run.trays["1"], places={at: ("1", f"{at}a") for at in range(1, 21)})

    found = card_of(book, replace(run, trays={"1": tray}))

    assert len(found) <= 2
    assert texts_at(found) == [f"{at}a" for at in range(1, 21)]


def test_texts_that_fill_more_than_a_card_are_all_there_and_it_says_so() -> None:
    book = rails_book()
    run = run_of(book.products[0], trays=1, pieces=20)
    long = {at: ("1", f"{at} " + "For the house at the harbour " * 7) for at in range(1, 21)}

    found = card_of(book, replace(run, trays={"1": replace(run.trays["1"], places=long)}))

    assert said_on(found[0]) == speech(book)("on-more-cards")
    assert "".join("".join(texts_at(found)).split()) == "".join("".join(text for _, text in long.values()).split())


def test_eighteen_steps_keep_their_boxes_and_let_words_go_that_stand_further_up() -> None:
    found = card_of(*many_steps(18))

    assert len(found) <= 2
    assert steps_at(found) == list(range(1, 19))
    assert words_at(found) == ["eyes", "ears", "mask on", "no smoking"]


def test_twenty_one_steps_keep_their_boxes_and_leave_the_signs_to_the_stations_sheet() -> None:
    found = card_of(*many_steps(21))
    said = speech(rails_book())("cautions-on-sheet")

    assert len(found) <= 2
    assert steps_at(found) == list(range(1, 22))
    assert words_at(found) == []
    assert all(said_on(face) == said for face in found)


def test_thirty_steps_need_another_card_and_it_says_so() -> None:
    found = card_of(*many_steps(30))

    assert len(found) > 2
    assert steps_at(found) == list(range(1, 31))
    assert said_on(found[0]) == speech(rails_book())("on-more-cards")
    assert found[0].said.startswith(f"side 1/{len(found)}")
    assert len(words_at(found)) == 30 * 4


def test_what_is_crowded_is_drawn_whole() -> None:
    for count in (18, 21, 30):
        assert overflows(laid_out(order(*many_steps(count), "a6", "de"))) == []


def test_when_it_may_go_on_is_a_blank_or_the_moment_in_ten_points() -> None:
    book = rails_book()

    (wait,) = [row for face in card_of(book, run_of(book.products[0])) for row in face.rows if row.kind == "goon"]

    assert (wait.facts["label"], wait.facts["text"]) == (speech(book)("go-on-from"), "")


def last_rows(face: Face) -> int:
    return sum(row.kind not in ("heads", "again") for row in face.rows)


@pytest.mark.parametrize("steps", [3, 5, 8, 9, 10, 11, 14, 30])
@pytest.mark.parametrize("kinds", ["travellers", "full", "everything"])
def test_no_last_side_has_one_row_and_no_heading_ends_a_side(steps: int, kinds: str) -> None:
    for sheet in sheets(order(*many_steps(steps), kinds=kinds)):
        for face in sheet.faces:
            assert not face.rows or not face.rows[-1].keep
            assert face.part == 1 or face.part < face.parts or last_rows(face) >= 2, (face.kind, face.part)


def test_who_it_is_for_stands_in_its_head() -> None:
    book = rails_book()
    run = run_of(book.products[0], orders=(OrderLine("1", 9, "Meyer", "12", NOW),))
    tray = replace(run.trays["1"], places={1: ("1", "12")})

    made = traveller(book, replace(run, trays={"1": tray}), tray, link, speech(book))

    assert isinstance(made, Traveller)
    assert "Meyer" in made.orders[0]
