"""An SVG drawing is read as W3C SVG says, in millimetres; what is not followed is named with its line, and nothing is fetched."""

import math
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.plan.outlines.outline import Shapes
from runboard.plan.outlines.svg import read_svg
from runboard.run.refusal import Refused

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="100mm" height="50mm" viewBox="0 0 100 50"{}>'


def drawn(inner: str, more: str = "") -> Shapes:
    return read_svg((HEAD.format(more) + inner + "</svg>").encode())


def box(shapes: Shapes) -> list[float]:
    points = np.concatenate([one.points for one in shapes.outlines])
    return [round(float(at), 3) for at in (*points.min(axis=0), *points.max(axis=0))]


def codes(shapes: Shapes) -> dict[str, int]:
    return {one.code: one.line for one in shapes.unclear}


@pytest.mark.parametrize(
    ("size", "wanted"),
    [
        ('width="100mm" height="50mm" viewBox="0 0 100 50"', [10, 10, 30, 20]),
        ('width="4in" height="2in" viewBox="0 0 4 2"', [254, 254, 762, 508]),
        ('width="96px" height="96px"', [10 * 25.4 / 96, 10 * 25.4 / 96, 30 * 25.4 / 96, 20 * 25.4 / 96]),
        ('width="96" height="96"', [10 * 25.4 / 96, 10 * 25.4 / 96, 30 * 25.4 / 96, 20 * 25.4 / 96]),
        ('width="10cm" height="5cm" viewBox="0 0 50 25"', [20, 20, 60, 40]),
        ('viewBox="10 10 96 96"', [0, 0, 20 * 25.4 / 96, 10 * 25.4 / 96]),
        ('width="72pt" height="6pc" viewBox="0 0 25.4 25.4"', [10, 10, 30, 20]),
        ('width="100mm" height="100mm" viewBox="0 0 50 100" preserveAspectRatio="xMaxYMid"', [60, 10, 80, 20]),
        ('width="100mm" height="100mm" viewBox="0 0 50 100" preserveAspectRatio="none"', [20, 10, 60, 20]),
    ],
)
def test_a_length_means_what_its_unit_and_viewbox_say(size: str, wanted: list[float]) -> None:
    shapes = read_svg(
        f'<svg xmlns="http://www.w3.org/2000/svg" {size}><rect x="10" y="10" width="20" height="10"/></svg>'.encode()
    )

    assert box(shapes) == pytest.approx(wanted, abs=0.001)


def test_what_names_no_unit_or_no_size_says_so() -> None:
    assert "no-unit" in codes(read_svg(b'<svg width="9" height="9"/>'))
    assert "no-size" in codes(read_svg(b'<svg viewBox="0 0 9 9"/>'))
    assert codes(drawn("")) == {}


@pytest.mark.parametrize(
    ("inner", "wanted"),
    [
        ('<circle cx="20" cy="20" r="10"/>', [10, 10, 30, 30]),
        ('<ellipse cx="20" cy="20" rx="10" ry="5"/>', [10, 15, 30, 25]),
        ('<line x1="1" y1="2" x2="3" y2="5" stroke="black"/>', [1, 2, 3, 5]),
        ('<polyline points="1,2 3,4 5,1"/>', [1, 1, 5, 4]),
        ('<polygon points="1 2 3 4 5 1"/>', [1, 1, 5, 4]),
        ('<rect x="1" y="2" width="30" height="20" rx="5"/>', [1, 2, 31, 22]),
        ('<rect x="10%" y="10%" width="50%" height="50%"/>', [10, 5, 60, 30]),
        ('<path d="M1 1h10v5H1z"/>', [1, 1, 11, 6]),
        ('<path d="m1 1l10 0 0 5t-10 0z"/>', [1, 1, 11, 6]),
        ('<path d="M0 0C0 10 10 10 10 0S20-10 20 0"/>', [0, -7.5, 20, 7.5]),
        ('<path d="M0 0Q5 10 10 0T20 0"/>', [0, -5, 20, 5]),
        ('<path d="M0 10A10 10 0 0 1 20 10"/>', [0, 0, 20, 10]),
        ('<path d="M0 10a10 10 0 0120 0"/>', [0, 0, 20, 10]),
        ('<g transform="translate(10 5) scale(2)"><rect width="5" height="4"/></g>', [10, 5, 20, 13]),
        ('<rect width="10" height="4" transform="rotate(90 10 10)"/>', [16, 0, 20, 10]),
        ('<rect width="10" height="4" transform="matrix(1 0 0 1 3 4)"/>', [3, 4, 13, 8]),
        ('<rect width="10" height="10" transform="skewX(45)"/>', [0, 0, 20, 10]),
        ('<defs><rect id="r" width="2" height="3"/></defs><use href="#r" x="7" y="8"/>', [7, 8, 9, 11]),
        ('<defs><g id="g"><rect id="r" width="2" height="3"/></g></defs><use xlink:href="#g" transform="scale(2)"/>', [0, 0, 4, 6]),
        ('<symbol id="s" viewBox="0 0 1 1"><rect width="1" height="1"/></symbol><use href="#s" x="5" width="10" height="10"/>',
         [5, 0, 15, 10]),
        ('<svg x="10" y="10" width="20" height="20" viewBox="0 0 2 2"><rect width="1" height="1"/></svg>', [10, 10, 20, 20]),
    ],
)  # fmt: skip
def test_shapes_paths_and_transforms_come_out_where_they_are(inner: str, wanted: list[float]) -> None:
    assert box(drawn(inner)) == pytest.approx(wanted, abs=0.02)


def test_a_curve_is_nowhere_farther_than_the_deviation() -> None:
    found = drawn('<circle cx="50" cy="25" r="20"/>').outlines[0].points
    middles = (found[1:] + found[:-1]) / 2

    assert np.abs(np.hypot(*(found - [50, 25]).T) - 20).max() < 1e-9
    assert 20 - np.hypot(*(middles - [50, 25]).T).min() <= 0.02


@pytest.mark.parametrize(
    ("inner", "filled", "stroke"),
    [
        ('<rect width="9" height="9"/>', True, 0),
        ('<rect width="9" height="9" fill="none" stroke="red" stroke-width=".5"/>', False, 0.5),
        ('<rect width="9" height="9" style="fill:none;stroke:#000"/>', False, 1),
        ('<style>.cut{fill:none;stroke:#000;stroke-width:.1px}</style><rect class="cut" width="9" height="9"/>', False, 0.1),
        ('<style>rect,#a{fill:none}#a{stroke:black}</style><rect id="a" width="9" height="9"/>', False, 1),
        ('<g fill="none" stroke="black"><g stroke-width="2"><rect width="9" height="9" fill="inherit"/></g></g>', False, 2),
        ('<g transform="scale(2)"><rect width="9" height="9" fill="none" stroke="black"/></g>', False, 2),
        ('<rect width="9" height="9" stroke="black"/>', True, 1),
    ],
)  # fmt: skip
def test_inside_and_line_are_told_apart(inner: str, filled: bool, stroke: float) -> None:
    one = drawn(inner).outlines[0]

    assert (one.filled, round(one.stroke, 6), one.closed) == (filled, stroke, True)


@pytest.mark.parametrize(
    "inner",
    [
        '<rect width="9" height="9" fill="none"/>',
        '<rect width="9" height="9" display="none"/>',
        '<g style="display:none"><rect width="9" height="9" display="inline"/></g>',
        '<rect width="9" height="9" visibility="hidden"/>',
        '<rect width="9" height="9" opacity="0"/>',
        '<rect width="9" height="9" fill="white"/>',
        '<rect width="0" height="9"/>',
        '<defs><rect width="9" height="9"/></defs>',
        '<g xmlns="http://example.org/other"><rect xmlns="http://www.w3.org/2000/svg" width="9" height="9"/></g>',
    ],
)
def test_what_is_not_seen_is_not_burnt(inner: str) -> None:
    assert drawn(inner).outlines == []


def test_a_hole_stays_one_part_and_a_group_lends_its_name() -> None:
    first, second, other = drawn(
        '<g id="numbers"><path fill-rule="evenodd" d="M0 0h9v9H0zM2 2h2v2H2z"/></g><path d="M20 20h1v1z"/>'
    ).outlines

    assert first.part == second.part != other.part
    assert first.group == second.group == "numbers"
    assert first.even_odd and second.even_odd and not other.even_odd


@pytest.mark.parametrize(
    ("inner", "code"),
    [
        ('<text x="1" y="20" font-size="10">12</text>', "text"),
        ('<image href="http://example.org/a.png" width="5" height="5"/>', "image"),
        ('<image href="file:///etc/passwd" width="5" height="5"/>', "image"),
        ('<rect width="9" height="9" clip-path="url(#c)"/>', "clip"),
        ('<rect width="9" height="9" style="filter:url(#c)"/>', "filter"),
        ('<rect width="9" height="9" mask="url(#c)"/>', "mask"),
        ('<rect width="9" height="9" fill="url(#p)"/>', "pattern"),
        ('<rect width="9" height="9" fill="#FFFFFF"/>', "white"),
        ('<rect width="9" height="9" stroke="black" stroke-dasharray="2 1"/>', "dashes"),
        ("<script>alert(1)</script>", "script"),
        ('<foreignObject><p xmlns="http://www.w3.org/1999/xhtml">x</p></foreignObject>', "foreign"),
        ('<rect width="9" height="9" transform="spin(3)"/>', "transform"),
        ('<path d="M0 0 L"/>', "path"),
        ('<path d="nonsense"/>', "path"),
        ('<path d="M0 0L1e400 2"/>', "far"),
        ('<rect width="1e300" height="9" transform="scale(1e200)"/>', "far"),
        ('<use href="#nowhere"/>', "use"),
        ('<use href="other.svg#a"/>', "use"),
        ('<style>@import "http://example.org/a.css"; rect > g {fill:none}</style>', "style"),
        ('<animate attributeName="x"/>', "moving"),
    ],
)
def test_what_is_not_followed_is_named_with_its_line(inner: str, code: str) -> None:
    assert codes(drawn(f"\n\n{inner}"))[code] == 3


def test_letters_come_as_the_room_that_they_take() -> None:
    shapes = drawn('<text x="50" y="20" font-size="10" text-anchor="middle">12</text>')

    assert box(shapes) == pytest.approx([44, 12, 56, 22])


def test_lines_of_a_text_are_told_apart() -> None:
    shapes = drawn('<text font-size="10"><tspan x="1" y="20">12</tspan><tspan x="1" dy="12">abc</tspan></text>')

    assert [[*one.points[0], *one.points[2]] for one in shapes.outlines] == pytest.approx(
        np.array([[1, 12, 13, 22], [1, 4, 19, 14]])
    )


SECRET = "root:"
LAUGHS = "".join(f'<!ENTITY l{n} "{f"&l{n - 1};" * 10}">' for n in range(1, 10))


@pytest.mark.parametrize(
    ("content", "code"),
    [
        (b"", "drawing-empty"),
        (b"  \n", "drawing-empty"),
        (bytes(range(256)), "drawing-none"),
        (b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR", "drawing-none"),
        (b"words", "drawing-none"),
        (b"<svg", "drawing-none"),
        (b'<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0 L', "drawing-not-closed"),
        (b'<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0"/>', "drawing-not-closed"),
        (b'<svg a="1" a="2"/>', "drawing-none"),
        (b'<svg><g a="1" a="2"/></svg>', "drawing-not-readable"),
        (b"\x1f\x8b\x08\x00", "drawing-packed"),
        (b"<html/>", "drawing-not-svg"),
        (b"<svg><g></svg>", "drawing-not-closed"),
        (b"<svg" + b" " * 20_000_000 + b"/>", "drawing-too-large"),
        (b"<svg width='1' height='1'>" + b"<g>" * 200 + b"</g>" * 200 + b"</svg>", "drawing-too-deep"),
        (b"<svg width='1' height='1'>" + b"<g/>" * 40_001 + b"</svg>", "drawing-too-many"),
        (f'<!DOCTYPE svg [<!ENTITY l0 "ha">{LAUGHS}]><svg>&l9;</svg>'.encode(), "drawing-entities"),
        (b'<!DOCTYPE svg [<!ENTITY e SYSTEM "file:///etc/passwd">]><svg><text>&e;</text></svg>', "drawing-entities"),
        (b'<!DOCTYPE svg [<!ENTITY % e SYSTEM "http://example.org/x.dtd"> %e;]><svg/>', "drawing-entities"),
        (b"<!DOCTYPE svg [<!ATTLIST svg width CDATA '9mm'>]><svg height='9mm'/>", "drawing-entities"),
        (b"<svg width='10mm' height='10mm' viewBox='0 0 0 10'/>", "drawing-no-size"),
        (b"<svg width='10mm' height='10mm' viewBox='0 0 10 NaN'/>", "drawing-viewbox"),
        (b"<svg width='10mm' height='10mm' viewBox='0 0 inf 10'/>", "drawing-viewbox"),
        (b"<svg width='1e300mm' height='10mm'/>", "drawing-no-size"),
        (b"<svg width='-5mm' height='10mm'/>", "drawing-no-size"),
        (
            b"<svg width='1' height='1'><path d='M0 0" + b"c9999 9999 -9999 0 1 1" * 20_000 + b"'/></svg>",
            "drawing-too-many-points",
        ),
        (b"<svg width='1' height='1'><path d='M0 0" + b"h1" * 600_000 + b"'/></svg>", "drawing-too-many-points"),
    ],
    ids=lambda what: what if isinstance(what, str) else "",
)
def test_a_bad_file_gets_one_sentence(content: bytes, code: str) -> None:
    with pytest.raises(Refused) as refused:
        read_svg(content)

    assert refused.value.code == code
    assert SECRET not in str(refused.value.facts)


def test_a_document_type_that_declares_nothing_is_let_in() -> None:
    content = b'<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd"><svg width="9mm" height="9mm"><text>&e;</text></svg>'

    assert read_svg(content).width == 9


def test_what_uses_itself_ends() -> None:
    assert "use" in codes(drawn('<g id="a"><use href="#a"/></g>'))


def test_what_uses_what_uses_doubles_ends() -> None:
    doubled = "".join(f'<g id="g{n}"><use href="#g{n - 1}"/><use href="#g{n - 1}"/></g>' for n in range(1, 40))

    with pytest.raises(Refused) as refused:
        drawn(f'<defs><g id="g0"><path d="M0 0h1"/></g>{doubled}</defs><use href="#g39"/>')

    assert refused.value.code == "drawing-too-many"


@given(st.floats(-179, 179), st.floats(-50, 50), st.floats(-50, 50))
def test_turning_a_drawing_changes_no_length(angle: float, x: float, y: float) -> None:
    inner = '<path d="M0 0C0 10 10 10 10 0Q5 5 0 0" fill="none" stroke="black"/>'

    one = drawn(inner).outlines[0].points
    turned = drawn(f'<g transform="rotate({angle:.6f} {x:.6f} {y:.6f})">{inner}</g>').outlines[0].points

    def length(points: np.ndarray) -> float:
        return float(np.hypot(*np.diff(points, axis=0).T).sum())

    assert math.isclose(length(one), length(turned), rel_tol=1e-6)


@given(st.binary(max_size=300))
def test_no_file_stops_the_reader(content: bytes) -> None:
    for whole in (content, HEAD.format("").encode() + content + b"</svg>"):
        try:
            read_svg(whole)
        except Refused as refused:
            assert refused.code.startswith("drawing-")


@given(st.text("MmLlHhVvCcSsQqTtAaZz0123456789.,- e", max_size=60))
def test_no_path_stops_the_reader(data: str) -> None:
    for outline in drawn(f'<path d="{data}"/>').outlines:
        assert np.isfinite(outline.points).all()


def test_nothing_is_read_from_this_machine(monkeypatch: pytest.MonkeyPatch) -> None:
    def opened(*_args: object, **_more: object) -> None:
        raise AssertionError("a file is opened")

    monkeypatch.setattr("builtins.open", opened)
    monkeypatch.setattr(Path, "open", opened)

    drawn('<image href="file:///etc/passwd"/><style>@import url(file:///etc/passwd)</style><use href="file:///a#b"/>')


@pytest.mark.parametrize(
    "sheet", ["a" * 200_000, "/*" * 100_000, "{" * 200_000, "a," * 100_000 + "{fill:none}", "}" * 200_000]
)
def test_no_style_sheet_takes_long(sheet: str) -> None:
    assert len(drawn(f'<style>{sheet}</style><rect width="9" height="9"/>').outlines) == 1


def test_a_long_style_sheet_is_read_as_far_as_it_may_be_and_named() -> None:
    shapes = drawn(f'<style>rect{{fill:none}}{" " * 400_000}rect{{fill:red}}</style><rect width="9" height="9"/>')

    assert (len(shapes.outlines), codes(shapes)) == (0, {"style": 1})
