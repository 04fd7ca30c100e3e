"""The drawing of a screw in its stack: to scale, in ink alone."""

import re
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.plan.fits.driving import Drive
from runboard.plan.fits.seating import Seat
from runboard.shop.book import Book
from runboard.web.before.of_fit import draw_fit
from runboard.web.before.of_screw import draw_screw
from tests.core.test_fits import seat
from tests.core.test_screws import SHOP, asked

PLACE = re.compile(r'(?:[ML]|points="|[ ])(-?\d+(?:\.\d+)?)[ ,](-?\d+(?:\.\d+)?)')


def drawn(units: Any = "mm", **said: Any) -> str:
    book = replace(SHOP, units=units)
    question = {"screw": "hook", "wood": "ash", **said}
    (svg,) = draw_screw(book, Drive(**question), asked(book, **question))
    return str(svg)


def test_it_says_where_the_point_ends_and_where_the_drill_has_to() -> None:
    svg = drawn(into=20, washer=1)

    texts = re.findall(r"<text[^>]*>([^<]*)</text>", svg)
    assert texts == ["1 mm", "20 mm", "point: 5 mm left", "depth stop 15 mm", "margin 3 mm"]
    assert 'aria-label="It stops 5 mm short of the far face."' in svg


def test_a_point_that_is_out_is_drawn_below_the_far_face() -> None:
    svg = drawn(into=12)

    polygon = re.search(r'points="([^"]*)"', svg)
    assert polygon
    tip = max(float(pair.split(",")[1]) for pair in polygon[1].split())
    faces = [float(y) for y in re.findall(r'<path d="M88 ([\d.]+)L196 [\d.]+" stroke-width="1.5"/>', svg)]
    assert tip > max(faces)
    assert "point: 4 mm out" in svg


def test_it_is_to_scale() -> None:
    svg = drawn(into=20, through=10)

    faces = [float(y) for y in re.findall(r'<path d="M88 ([\d.]+)L196 [\d.]+" stroke-width="1.5"/>', svg)]
    top, between, far = sorted(set(faces))
    assert (far - between) / (between - top) == pytest.approx(2, abs=0.01)


def test_it_names_no_colour() -> None:
    assert not re.search(r"#[0-9a-f]{3}|rgb|black|white", drawn(into=20).replace("url(#", ""))


@given(st.floats(1, 300), st.floats(0, 100), st.floats(0.1, 300), st.floats(0, 20), st.floats(0.5, 20))
def test_nothing_is_drawn_outside(length: float, through: float, into: float, washer: float, diameter: float) -> None:
    svg = drawn(screw=None, length=length, through=through, into=into, washer=washer, diameter=diameter)

    box = re.search(r'viewBox="0 0 (\d+) (\d+)"', svg)
    assert box
    for x, y in PLACE.findall(svg.partition("</defs>")[2]):
        assert -0.5 <= float(x) <= float(box[1]) + 0.5
        assert -0.5 <= float(y) <= float(box[2]) + 0.5


@pytest.mark.parametrize("units", ["mm", "in"])
def test_a_part_is_drawn_in_its_hole_to_scale(units: Any) -> None:
    book, question = Book(units=units), Seat(diameter=10, length=3, thickness=6, sunk=0.5)
    (svg,) = draw_fit(book, question, seat(book, diameter=10, length=3, thickness=6, sunk=0.5))

    texts = re.findall(r"<text[^>]*>([^<]*)</text>", svg)
    assert (texts[1:] == ["margin 3 mm", "hole 3.7 mm deep", "2.3 mm beneath"]) == (units == "mm")
    found = re.search(r'width="([\d.]+)" height="([\d.]+)" fill="currentColor"', svg)
    assert found
    wide, high = found.groups()
    assert float(wide) / float(high) == pytest.approx(10 / 3, rel=0.01)
    assert "nan" not in svg
