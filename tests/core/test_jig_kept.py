"""A jig that is kept: with its machine, as the jig of a step, and what it says of the next one for that step."""

from dataclasses import replace

import pytest

from runboard.plan.jig.kind import keeps
from runboard.plan.jig.places import laid_out
from runboard.plan.jig.question import begin, plate_of
from runboard.shop.book import Book
from runboard.shop.book_json import book_from_json, book_to_json
from runboard.shop.machines import Jig
from tests.core.test_jig import BOOK, NUMBERS, RAIL


def test_a_jig_is_kept_with_its_station_and_step_and_read_back_the_same() -> None:
    question = replace(begin(BOOK, {"product": "rail"}), corner_x=12.5, corner_y=8.0)
    answer = laid_out(BOOK, question, None)
    keep, alone = keeps(BOOK, question, answer)
    record = book_to_json(BOOK)
    assert (keep.code, alone.code) == ("jig-step", "jig")

    keep.put(record)

    book = book_from_json(record)
    (jig,) = book.jigs
    assert (jig.key, jig.name, jig.station, jig.corner_x, jig.corner_y) == ("key-rail", "Key rail", "laser", 12.5, 8)
    assert plate_of(jig) == answer.plate
    assert book.products[0].operations[0].jig == "key-rail"
    again = begin(book, {"jig": "key-rail"})
    assert laid_out(book, again, None).plate == answer.plate
    assert [one.code for one in keeps(book, again, answer)] == ["jig-again"]


def test_a_jig_that_is_kept_by_itself_leaves_the_step_as_it_is() -> None:
    question = begin(BOOK, {"product": "rail"})
    *_, alone = keeps(BOOK, question, laid_out(BOOK, question, None))
    record = book_to_json(BOOK)

    alone.put(record)

    book = book_from_json(record)
    assert [one.key for one in book.jigs] == ["key-rail"]
    assert book.products[0].operations[0].jig is None


def test_a_jig_for_a_product_may_be_used_at_its_step_on_that_machine_though_nobody_named_the_step() -> None:
    question = replace(begin(BOOK, {}), product="rail")

    keep, _ = keeps(BOOK, question, laid_out(BOOK, question, None))

    assert (keep.code, keep.facts["step"]) == ("jig-step", "Number")


def with_kept(jig: Jig) -> Book:
    step = replace(RAIL.operations[0], jig=jig.key)
    return replace(BOOK, products=(replace(RAIL, operations=(step,)),), jigs=(jig,))


def test_a_form_begins_with_what_the_step_s_kept_jig_has_between_its_places() -> None:
    book = with_kept(replace(NUMBERS, clearance=0.2, pitch_y=48))

    found = laid_out(book, begin(book, {"product": "rail"}), None)

    assert found.plate.pitch_y == pytest.approx(48)
    assert (found.clearance, found.plate.rows) == (0.2, 5)
