"""Inserts and magnets in their holes, and boards that move."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.plan.fits import moving, seating
from runboard.plan.fits.moving import Swell, Swollen
from runboard.plan.fits.seating import Fit, Seat, Seated
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.book_json import book_from_json, book_to_json
from runboard.shop.fasteners import Insert

M4 = Insert("m4", "M4 insert", 8, 10, "insert", hole=7.5, depth=11, source="the packet")
SHOP = Book(inserts=(M4,))


def seat(book: Book = SHOP, **said: Any) -> Seated:
    return seating.answer(book, Seat(**said), None, lambda done, total: None)


def swell(**said: Any) -> Swollen:
    return moving.answer(SHOP, Swell(**{"wood": "ash", "width": 160, **said}), None, lambda done, total: None)


def test_the_makers_hole_and_depth_win() -> None:
    found = seat(insert="m4", fit="loose", thickness=15)

    assert (found.hole, found.depth, found.by_maker, found.beneath) == (7.5, 11, True, 4)


def test_a_part_of_another_size_than_the_shops_is_not_its_makers() -> None:
    assert not seat(insert="m4", diameter=9).by_maker


@given(st.floats(1, 60), st.floats(0.5, 40))
def test_a_looser_fit_is_a_wider_hole(diameter: float, length: float) -> None:
    fits: tuple[Fit, ...] = ("press", "snug", "loose")
    press, snug, loose = (seat(diameter=diameter, length=length, fit=fit).hole for fit in fits)

    assert press < diameter < snug < loose


def test_glue_needs_a_wider_hole() -> None:
    assert seat(diameter=10, length=3, glue="thick").hole > seat(diameter=10, length=3, glue="thin").hole


def test_wood_that_is_too_thin_and_an_edge_that_is_too_near_are_said() -> None:
    found = seat(diameter=10, length=3, thickness=6, edge=7)

    assert not found.is_thick_enough
    assert not found.has_wall
    assert found.beside == pytest.approx(1.95)


def test_a_part_without_a_size_is_refused() -> None:
    with pytest.raises(Refused, match="insert size needed"):
        seat(diameter=10)


def test_a_hole_that_was_found_good_is_kept_with_its_part() -> None:
    question = Seat("m4", hole=7.6)
    (keep,) = seating.keeps(SHOP, question, seating.answer(SHOP, question, None, lambda done, total: None))
    record = book_to_json(SHOP)

    keep.put(record)

    (kept,) = book_from_json(record).inserts
    assert (kept.key, kept.hole, kept.source) == ("m4", 7.6, "the packet")


def test_a_typed_magnet_is_kept_as_a_part_of_its_own() -> None:
    question = Seat(diameter=10, length=3)
    (keep,) = seating.keeps(SHOP, question, seating.answer(SHOP, question, None, lambda done, total: None))
    record = book_to_json(SHOP)

    keep.put(record)

    assert [(each.name, each.what) for each in book_from_json(record).inserts] == [
        ("M4 insert", "insert"),
        ("10 mm × 3 mm", "magnet"),
    ]


def test_a_board_that_takes_up_moisture_may_jam() -> None:
    found = swell(room=1)

    assert found.by == pytest.approx(1.7536)
    assert found.lacks == pytest.approx(0.7536)


def test_air_says_what_moisture_the_wood_comes_to() -> None:
    found = swell(humidity_before=0.65, humidity_after=0.3)

    assert found.before == pytest.approx(0.12, abs=1e-4)
    assert found.by < 0


def test_beyond_the_range_of_the_coefficients_it_says_so() -> None:
    assert swell(after=0.2).is_beyond
    assert not swell().is_beyond


def test_a_wood_that_nobody_knows_needs_its_coefficient() -> None:
    with pytest.raises(Refused, match="wood unknown"):
        swell(wood="zebrano")

    assert swell(wood="zebrano", coefficient=0.003).by == pytest.approx(1.92)


@given(st.floats(0.06, 0.14), st.floats(0.06, 0.14))
def test_what_swells_one_way_shrinks_back_the_other(before: float, after: float) -> None:
    assert swell(before=before, after=after).by == pytest.approx(-swell(before=after, after=before).by)
