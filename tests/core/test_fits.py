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
from runboard.shop.units import Unit

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


@given(st.floats(1, 60), st.floats(0.5, 40), st.sampled_from(["mm", "in"]))
def test_a_part_never_stands_proud_of_its_hole(diameter: float, length: float, units: Unit) -> None:
    found = seat(Book(units=units), diameter=diameter, length=length)

    assert found.depth >= length + 0.2 - 1e-6


def drills(units: Unit = "mm", **said: Any) -> list[tuple[float, str]]:
    return [(round(each.mm, 4), each.fit) for each in seat(Book(units=units), **{"length": 2, **said}).drills]


def test_the_drills_on_both_sides_say_how_the_part_would_sit() -> None:
    assert drills(diameter=6, fit="snug") == [(6, "press"), (6.5, "loose")]
    assert drills(diameter=6, fit="press") == [(5.5, "tight"), (6, "press")]
    assert drills(diameter=6.4, fit="snug") == [(6.5, "snug")]
    assert drills("in", diameter=6, fit="snug") == [(5.9531, "press"), (6.35, "loose")]


def test_glue_needs_no_wider_hole_around_a_thread() -> None:
    thread: dict[str, Any] = {"what": "insert", "diameter": 8, "length": 10}

    assert seat(glue="thick", **thread).hole == seat(**thread).hole


def test_a_hole_in_which_the_thread_would_hold_nothing_is_refused() -> None:
    with pytest.raises(Refused, match="insert hole too wide"):
        seat(insert="m4", hole=8)


def test_a_hole_in_which_a_magnet_rattles_is_known() -> None:
    assert seat(diameter=6, length=2, hole=9).is_slack
    assert not seat(diameter=6, length=2, glue="thick", fit="loose").is_slack


@pytest.mark.parametrize(("units", "thickness", "margin"), [("mm", 18, 3), ("in", 19.05, 3.175)])
def test_a_form_begins_in_the_shops_units(units: Unit, thickness: float, margin: float) -> None:
    begun = seating.begin(Book(units=units), {})

    assert (begun.thickness, begun.margin, begun.wall) == (thickness, margin, margin)
    assert moving.begin(Book(units=units), {}).width == (100 if units == "mm" else 101.6)


def test_a_magnet_begins_with_glue_and_a_threaded_insert_without() -> None:
    assert seating.begin(Book(), {}).glue == "thin"
    assert (seating.begin(SHOP, {}).glue, seating.begin(SHOP, {}).what) == ("none", "insert")
