"""Every kind of question before a run: it has its words, begins in any shop, and is read back as it was written."""

from importlib import import_module
from importlib.util import find_spec
from typing import get_type_hints

import pytest

from runboard.demo.book import demo_book
from runboard.plan.before.asking import kinds_reading, question_from, question_to_json
from runboard.plan.before.kinds import KINDS
from runboard.shop.book import Book
from runboard.shop.book_json import BookError, book_from_json
from runboard.words.sentences import catalogue, message_name
from tests.conftest import START

SHOPS = {"empty": Book(), "demo": book_from_json(demo_book(START, "Europe/Berlin"))}


@pytest.mark.parametrize("name", KINDS)
def test_it_is_called_something_and_says_what_it_is_good_for(name: str) -> None:
    assert catalogue("en").has_message(message_name("before-kind", name))
    assert catalogue("en").has_message(message_name("before-about", name))


@pytest.mark.parametrize("name", KINDS)
def test_its_answer_has_words_and_its_drawing_a_module_of_its_name(name: str) -> None:
    word = name.replace("-", "_")
    drawing = f"runboard.web.before.of_{word}"

    assert callable(import_module(f"runboard.words.before.{word}").said)
    assert find_spec(drawing) is None or callable(getattr(import_module(drawing), f"draw_{word}"))


@pytest.mark.parametrize("shop", SHOPS)
@pytest.mark.parametrize("name", KINDS)
def test_it_begins_in_any_shop_and_is_read_back_as_it_was_written(name: str, shop: str) -> None:
    kind, book = KINDS[name], SHOPS[shop]
    for keys in ({}, {"product": "rails"}, {"product": "no such"}, {"station": "laser"}, {"run": "r1"}):
        begun = kind.begin(book, keys)

        assert isinstance(begun, kind.question)
        try:
            assert question_from(kind, question_to_json(begun), book) == begun
        except BookError as missing:  # what an empty shop has none of
            assert {problem.code for problem in missing.problems} <= {
                "unknown reference",
                "text empty",
                "list too short",
            }


@pytest.mark.parametrize("name", KINDS)
def test_a_field_that_is_none_of_its_own_is_said(name: str) -> None:
    with pytest.raises(BookError, match="nonsense"):
        question_from(KINDS[name], {"nonsense": 1}, Book())


def test_a_file_goes_to_the_kinds_that_read_its_ending() -> None:
    assert [kind.name for kind in kinds_reading("RAIL.NGC")] == ["program"]
    assert kinds_reading("rail.docx") == kinds_reading("") == []
    assert all(ending.startswith(".") and ending.islower() for kind in KINDS.values() for ending in kind.endings)


@pytest.mark.parametrize("name", KINDS)
def test_its_question_is_a_record_whose_fields_are_typed(name: str) -> None:
    assert get_type_hints(KINDS[name].question)
