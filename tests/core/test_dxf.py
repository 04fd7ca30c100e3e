"""DXF drawings as outlines, and those that are none: one sentence each, in bounded time."""

import io
import math
from collections.abc import Callable
from typing import Any

import ezdxf
import pytest

from runboard.plan.outlines.box import box_of, read_drawing
from runboard.plan.outlines.dxf import read_dxf
from runboard.run.refusal import Refused
from runboard.words.sentences import say, sentence


def drawing(draw: Callable[[Any, Any], object], units: int = 4) -> bytes:
    """A DXF file in which something is drawn into (document, modelspace)."""
    document = ezdxf.new("R2010")  # type: ignore[attr-defined]
    document.header["$INSUNITS"] = units
    draw(document, document.modelspace())
    text = io.StringIO()
    document.write(text)
    return text.getvalue().encode()


def rail(document: Any, space: Any) -> None:
    space.add_lwpolyline([(10, 10), (310, 10), (310, 100), (10, 100)], close=True)


@pytest.mark.parametrize(("units", "mm"), [(4, 1), (1, 25.4), (5, 10), (2, 304.8), (6, 1000)])
def test_a_drawing_has_the_size_that_its_unit_says(units: int, mm: float) -> None:
    shapes = read_dxf(drawing(rail, units)) if mm < 400 else read_dxf(drawing(_small, units))

    wide = 300 if mm < 400 else 0.3
    assert (shapes.width, shapes.height) == (pytest.approx(wide * mm), pytest.approx(0.3 * wide * mm))
    assert not list(shapes.unclear)


def _small(document: Any, space: Any) -> None:
    space.add_lwpolyline([(0, 0), (0.3, 0), (0.3, 0.09), (0, 0.09)], close=True)


def test_a_drawing_that_says_no_unit_is_taken_in_millimetres_and_says_so() -> None:
    shapes = read_dxf(drawing(rail, 0))

    assert (shapes.width, shapes.height) == (300, 90)
    assert [one.code for one in shapes.unclear] == ["dxf-no-unit"]


def test_y_is_turned_over() -> None:
    shapes = read_dxf(drawing(lambda document, space: space.add_lwpolyline([(0, 0), (10, 0), (10, 40)])))

    assert shapes.outlines[0].points.tolist() == [[0, 40], [10, 40], [10, 0]]


def test_lines_that_meet_are_one_outline() -> None:
    def rounded(document: Any, space: Any) -> None:
        space.add_line((0, 0), (10, 0))
        space.add_line((10, 5), (10, 0))
        space.add_arc((5, 5), 5, 0, 180)
        space.add_line((0, 5), (0, 0))

    shapes = read_dxf(drawing(rounded))
    box = box_of(shapes)

    assert [outline.closed for outline in shapes.outlines] == [True]
    assert box is not None and box.fill == pytest.approx((50 + math.pi * 12.5) / 100, abs=0.002)


def test_curves_and_blocks_are_read_and_letters_are_named() -> None:
    def all_kinds(document: Any, space: Any) -> None:
        space.add_circle((100, 0), 10)
        space.add_ellipse((0, 0), (20, 0), 0.5)
        space.add_spline([(0, 0), (10, 10), (20, 0)])
        space.add_polyline2d([(60, 0), (61, 1)])
        document.blocks.new("hook").add_circle((0, 0), 2)
        space.add_blockref("hook", (50, 0), dxfattribs={"xscale": 3, "yscale": 3})
        space.add_text("No. 7")

    shapes = read_dxf(drawing(all_kinds))

    assert len(shapes.outlines) == 5
    assert (shapes.width, shapes.height) == (pytest.approx(130), pytest.approx(20))
    assert [(one.code, one.facts["what"]) for one in shapes.unclear] == [("dxf-other", "TEXT")]


def test_a_layer_that_is_off_is_left_out_and_named() -> None:
    def hidden(document: Any, space: Any) -> None:
        document.layers.add("notes").off()
        space.add_circle((0, 0), 5)
        space.add_circle((0, 0), 50, dxfattribs={"layer": "notes"})

    shapes = read_dxf(drawing(hidden))

    assert shapes.width == pytest.approx(10)
    assert [one.code for one in shapes.unclear] == ["dxf-hidden"]


def ever_more(document: Any, space: Any) -> None:
    """Blocks of ten blocks of ten blocks, twelve deep."""
    for depth in range(12):
        block = document.blocks.new(f"B{depth}")
        for copy in range(10):
            if depth == 11:
                block.add_line((0, 0), (1, 1))
            else:
                block.add_blockref(f"B{depth + 1}", (copy, 0))
    space.add_blockref("B0", (0, 0))


def rows_of_rows(document: Any, space: Any) -> None:
    document.blocks.new("A").add_line((0, 0), (5, 5))
    space.add_blockref("A", (0, 0), dxfattribs={"row_count": 30000, "column_count": 30000, "row_spacing": 1})


def without_end(document: Any, space: Any) -> None:
    block = document.blocks.new("A")
    block.add_blockref("A", (1, 0))
    block.add_line((0, 0), (5, 5))
    space.add_blockref("A", (0, 0))


@pytest.mark.parametrize(
    ("content", "code"),
    [
        (b"", "dxf empty"),
        (b"\0\1\2" * 1000, "dxf not readable"),
        (b"<svg/>", "dxf not readable"),
        (b"AutoCAD Binary DXF\r\n\x1a\x00junk", "dxf not readable"),
        (b"0\nSECTION\n" * 1000, "dxf not readable"),
        (b"a" * 20_000_001, "dxf too large"),
        (drawing(lambda document, space: None), "dxf nothing drawn"),
        (drawing(lambda document, space: space.add_circle((0, 0), 1e12)), "dxf nothing drawn"),
        (drawing(ever_more), "dxf too much"),
        (drawing(rows_of_rows), "dxf too much"),
    ],
    ids=["empty", "binary", "svg", "torn", "sections", "large", "no lines", "far", "blocks", "rows"],
)
def test_a_bad_file_gets_one_sentence(content: bytes, code: str) -> None:
    with pytest.raises(Refused) as refused:
        read_drawing("rail.DXF", content)

    assert refused.value.code == code
    assert say("refused", code, refused.value.facts) != code


def test_a_block_within_itself_ends_and_is_named() -> None:
    assert [one.code for one in read_dxf(drawing(without_end)).unclear] == ["dxf-deep"]


@pytest.mark.parametrize("what", ["no-unit", "other", "hidden", "far", "deep"])
def test_what_is_left_out_has_a_sentence(what: str) -> None:
    assert sentence(f"outline-unclear-dxf-{what}", {"what": "TEXT", "count": 2})
