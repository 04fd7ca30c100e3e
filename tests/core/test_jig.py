"""A jig: where its places lie, whether it fits on the bed, the file that is cut, and how it is put back."""

import re
from dataclasses import replace
from datetime import UTC, date, datetime

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.plan.before.finding import BeforeRun, Finding
from runboard.plan.before.kind import File
from runboard.plan.engraving.looked import findings as of_engravings
from runboard.plan.estimates import Estimates
from runboard.plan.jig.digits import number_lines
from runboard.plan.jig.kind import keeps
from runboard.plan.jig.looked import findings
from runboard.plan.jig.places import laid_out
from runboard.plan.jig.question import JigAnswer, Layout, Plate, begin
from runboard.plan.jig.sheet import corner_marks, numbers_of, svg_of
from runboard.plan.outlines.outline import Shapes
from runboard.plan.outlines.svg import read_svg
from runboard.run.fold.route import Route
from runboard.run.fold.state import Revision, RunState, ShopState
from runboard.run.refusal import Refused
from runboard.shop.book import Book, Room, Station
from runboard.shop.machines import Jig, Motion
from runboard.shop.product import Operation, Pass, Product
from runboard.shop.stocked import Piece

LASER = Station("laser", "Laser", "laser", "shop", motion=Motion(travel_x=400, travel_y=300))
RAIL = Product(
    "rail",
    "Key rail",
    (Operation("number", "Number", "laser", (Pass("one", "1", size="jig", pieces=5),), attendance="watched"),),
    piece=Piece(300, 40, 18),
)
NUMBERS = Jig("numbers", "Numbers", "laser", 1, 5, 300, 40, 310, 50, 10, 10)
BOOK = Book(rooms=(Room("shop", "Shop"),), stations=(LASER,), products=(RAIL,))


def asked(**fields: object) -> JigAnswer:
    return laid_out(BOOK, replace(begin(BOOK, {"product": "rail"}), **fields), None)  # type: ignore[arg-type]


def sizes(shapes: Shapes, group: str) -> list[tuple[float, float, float, float]]:
    """(left, top, width, height) of each line of a group."""
    found = []
    for one in shapes.outlines:
        if one.group == group:
            low, high = one.points.min(axis=0), one.points.max(axis=0)
            found.append((float(low[0]), float(low[1]), float(high[0] - low[0]), float(high[1] - low[1])))
    return found


def test_a_trays_rails_lie_one_below_the_other_on_the_bed() -> None:
    found = asked()

    assert (found.plate.columns, found.plate.rows) == (1, 5)
    assert (found.plate.length, found.plate.width) == pytest.approx((300.1, 40.1))
    assert found.plate.pitch_y == pytest.approx(50.1)
    assert (found.plate.wide, found.plate.high) == pytest.approx((320.1, 260.5))
    assert found.fits
    assert found.fitting == (1, 5)


def test_places_are_numbered_as_one_reads() -> None:
    places = Plate(2, 2, 30, 20, 40, 30, 5, 0.1).places

    assert [(one.number, one.x, one.y) for one in places] == [(1, 5, 5), (2, 45, 5), (3, 5, 35), (4, 45, 35)]


@pytest.mark.parametrize(
    ("fields", "grid"),
    [
        ({"piece_length": 80, "piece_width": 40, "pieces": 5}, (3, 2)),
        ({"piece_length": 80, "piece_width": 40, "pieces": None}, (4, 5)),
        ({"piece_length": 80, "piece_width": 40, "pieces": None, "columns": 2}, (2, 5)),
        ({"piece_length": 80, "piece_width": 40, "pieces": 3, "rows": 3}, (1, 3)),
        ({"piece_length": 80, "piece_width": 40, "columns": 2, "rows": 2}, (2, 2)),
    ],
)
def test_noughts_stand_for_as_many_as_are_needed_or_fit(fields: dict[str, int | None], grid: tuple[int, int]) -> None:
    found = asked(**fields)

    assert (found.plate.columns, found.plate.rows) == grid
    assert found.fits


def test_what_does_not_fit_says_how_many_would() -> None:
    found = asked(columns=2, rows=5)

    assert not found.fits
    assert found.fitting == (1, 5)
    assert list(keeps(BOOK, Layout(station="laser"), found)) == []


def test_the_corner_mark_takes_from_the_bed() -> None:
    found = asked(corner_x=20.0, corner_y=60.0)

    assert found.fitting == (1, 4)
    assert found.plate.rows == 4
    assert found.wanted == 5


@pytest.mark.parametrize(
    ("fields", "code"),
    [
        ({"piece_length": 500}, "jig-does-not-fit"),
        ({"station": None, "pieces": None}, "jig-no-bed"),
        ({"columns": 1, "rows": 5, "pitch_y": 40.0}, "jig-places-overlap"),
        ({"piece_length": 2, "piece_width": 2, "kerf": 3.0}, "jig-kerf-too-wide"),
        ({"piece_length": 1, "piece_width": 1, "gap": 1, "pieces": None}, "jig-too-many-places"),
        ({"product": None, "piece_length": None}, "jig-no-piece"),
    ],
)
def test_what_cannot_be_made_is_refused(fields: dict[str, float], code: str) -> None:
    with pytest.raises(Refused) as refused:
        asked(**fields)

    assert refused.value.code == code


def test_the_file_is_in_millimetres_with_cut_and_mark_apart() -> None:
    plate = Plate(2, 3, 80.1, 40.2, 91.7, 55.3, 12, 0.15)

    text = svg_of(plate)
    shapes = read_svg(text.encode())

    assert re.search(r'width="195.95mm" height="174.95mm"', text)
    assert {one.group for one in shapes.outlines} == {"cut", "mark"}
    assert [one.code for one in shapes.unclear] == ["dashes"]
    assert not any(one.filled for one in shapes.outlines)
    assert "#" not in text and "rgb" not in text


@given(st.integers(1, 3), st.integers(1, 3), st.floats(5, 200), st.floats(5, 200), st.floats(0, 0.4), st.floats(0, 20))
def test_what_is_read_back_comes_out_right_with_the_beam(
    columns: int, rows: int, length: float, width: float, kerf: float, margin: float
) -> None:
    plate = Plate(columns, rows, length, width, length + 7, width + 9, margin, kerf)

    *places, outside = sizes(read_svg(svg_of(plate).encode()), "cut")

    half = kerf / 2
    assert len(places) == columns * rows
    for place, (left, top, wide, high) in zip(plate.places, places, strict=True):
        comes_out = (left - half, top - half, wide + kerf, high + kerf)  # the beam takes half its width on each side
        assert comes_out == pytest.approx((place.x + half, place.y + half, length, width), abs=0.001)
    assert (outside[2] - kerf, outside[3] - kerf) == pytest.approx((plate.wide, plate.high), abs=0.001)


@pytest.mark.parametrize(("margin", "inside"), [(10, 2), (2, 0.5)])
def test_the_corner_marks_point_at_their_corners_from_inside_where_they_show(margin: float, inside: float) -> None:
    plate = Plate(2, 2, 80, 40, 90, 50, margin, 0.1)

    ways = [*corner_marks(plate)]

    points = [point for way in ways for point in way]
    assert min(x for x, _ in points) == min(y for _, y in points) == inside
    assert max(x for x, _ in points) == plate.wide - inside
    assert (inside, inside) in points and (plate.wide - inside, inside) in points
    assert not any(p.x < x < p.x + 80 and p.y < y < p.y + 40 for p in plate.places for x, y in points)


def test_without_a_margin_no_corner_mark_lies_in_a_place() -> None:
    assert [*corner_marks(Plate(2, 2, 80, 40, 90, 50, 0, 0.1))] == []


def test_the_numbers_lie_in_their_strips() -> None:
    plate = Plate(2, 2, 80, 40, 90, 50, 10, 0.1)

    numbers = [*numbers_of(plate)]

    for line in numbers:
        for x, y in line:
            assert not any(p.x < x < p.x + 80 and p.y < y < p.y + 40 for p in plate.places)
            assert 0 < y < plate.high


def test_where_there_is_no_room_there_are_no_numbers() -> None:
    assert [*numbers_of(Plate(1, 2, 80, 40, 90, 41, 10, 0.1))] == []


def test_each_digit_is_another() -> None:
    drawn = {str(number_lines(number, 0, 0, 4)) for number in range(10)}

    assert len(drawn) == 10


def test_an_outline_says_how_large_a_piece_is() -> None:
    drawing = b'<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="40mm" viewBox="0 0 90 40"><circle cx="20" cy="20" r="15" fill="none" stroke="black"/></svg>'

    found = laid_out(BOOK, Layout(station="laser", pieces=4, clearance=0.4), File("disc.svg", drawing))

    assert found.piece == pytest.approx((30, 30), abs=0.04)  # its curve is flattened
    assert found.from_outline
    assert len(found.plate.places) == 4


def test_a_form_that_begins_plainly_names_no_size_so_that_the_products_counts() -> None:
    plain = begin(BOOK, {})

    assert (plain.piece_length, plain.piece_width) == (None, None)
    assert laid_out(BOOK, replace(plain, product="rail"), None).piece == (300, 40)


# looked at before a run


def found_with(jig: Jig | None, **operation: object) -> list[Finding]:
    step = replace(RAIL.operations[0], jig=jig.key if jig else None, **operation)  # type: ignore[arg-type]
    product = replace(RAIL, operations=(step,))
    book = replace(BOOK, products=(product,), jigs=(jig,) if jig else ())
    at = datetime(2026, 11, 29, 8, tzinfo=UTC)
    run = RunState("r", "Rails", "open", at, "rail", "Key rail", (Revision(1, "1", Route(product)),))
    before = BeforeRun(book, ShopState(), run, Estimates(), date(2026, 11, 29))
    return [*findings(before), *of_engravings(before)]


@pytest.mark.parametrize(
    ("jig", "level", "code"),
    [
        (NUMBERS, "green", "jig right"),
        (None, "look", "jig none"),
        (replace(NUMBERS, rows=4), "look", "jig places"),
        (replace(NUMBERS, corner_x=None), "look", "jig corner"),
        (replace(NUMBERS, corner_x=200), "stop", "jig too large"),
        (replace(NUMBERS, station="other"), "look", "jig elsewhere"),
    ],
)
def test_a_run_is_looked_through_for_its_jigs(jig: Jig | None, level: str, code: str) -> None:
    found = found_with(jig)[0]

    assert (found.level, found.code) == (level, code)


def test_an_engraving_that_nobody_reckoned_is_looked_at() -> None:
    assert [(one.level, one.code) for one in found_with(NUMBERS)[1:]] == [("look", "engraving guess")]


def test_the_outline_that_is_read_has_no_line_twice() -> None:
    shapes = read_svg(svg_of(Plate(1, 1, 30, 20, 40, 30, 10, 0.1), numbers=False).encode())

    assert len(shapes.outlines) == 6
    assert all(len(np.unique(one.points, axis=0)) >= len(one.points) - one.closed for one in shapes.outlines)
