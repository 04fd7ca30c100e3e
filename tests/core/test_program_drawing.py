"""A program's drawing: to scale, in ink, with its places in their order."""

import re
from types import SimpleNamespace
from typing import Any

import pytest

from runboard.charts.path import Path, marks, path
from runboard.plan.program.report import report
from runboard.shop.machines import Motion
from runboard.web.before.of_program import draw_program
from tests.core.moves_by_hand import feed, moves, rapid
from tests.core.test_program_visits import program, square


def drawn(some: Any, units: str = "mm", stock: tuple[float | None, float | None] = (None, None)) -> tuple[str, ...]:
    answer = SimpleNamespace(report=report(some, Motion(), search=0.1))
    question = SimpleNamespace(stock_length=stock[0], stock_width=stock[1])
    book: Any = SimpleNamespace(units=units)
    return tuple(map(str, draw_program(book, question, answer)))


def words(svg: str, kind: str) -> list[str]:
    return re.findall(rf'<text class="{kind}"[^>]*>([^<]*)<', svg)


def points(svg: str, kind: str) -> list[tuple[float, float]]:
    (data,) = re.findall(rf'<path class="{kind}" d="([^"]*)"', svg)
    return [(float(x), float(y)) for x, y in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", data)]


def test_the_path_is_to_scale_with_y_upwards() -> None:
    (svg,) = drawn(moves(feed(100, 0, -1), feed(100, 50, -1)))

    (x0, y0), (x1, y1), (x2, y2) = points(svg, "cut")
    assert y0 == y1 and x1 == x2
    assert (x1 - x0) == pytest.approx(2 * (y1 - y2), abs=0.2)
    assert y2 < y1


def test_a_drawing_says_what_is_to_be_seen() -> None:
    (svg,) = drawn(program(square(0, 0), square(50, 0)))

    assert 'role="img" aria-label="The path from above, to scale"' in svg
    assert "<figcaption><b>The path from above, to scale.</b> Solid lines are cuts" in svg
    assert "first reaches its 2 places" in svg
    assert words(svg, "place") == ["1", "2"]


def test_axes_are_in_the_shop_s_units() -> None:
    metric, inches = (drawn(moves(feed(254, 0, -1), feed(254, 127, -1)), units)[0] for units in ("mm", "in"))

    assert words(metric, "clock")[:3] == ["0 mm", "100 mm", "200 mm"]
    assert words(inches, "clock")[:3] == ["0 in", "2 in", "4 in"]


def test_the_stock_is_drawn_where_its_zero_can_only_be() -> None:
    some = moves(feed(100, 0, -1), feed(100, 50, -1))

    assert 'class="frame"' in drawn(some, stock=(120, 60))[0]
    assert "The thin box is the stock." in drawn(some, stock=(120, 60))[0]
    assert 'class="frame"' not in drawn(some, stock=(80, 60))[0]


def test_a_better_order_is_drawn_beside_the_path_where_it_saves_something() -> None:
    found = drawn(program(*(square(x, 0) for x in (0, 400, 50, 350, 100, 300))))

    assert len(found) == 2
    assert "in a better order" in found[1]
    assert points(found[0], "cut") == points(found[1], "cut")
    assert points(found[0], "travel") != points(found[1], "travel")
    assert len(drawn(program(square(0, 0), square(50, 0)))) == 1


def test_many_places_have_only_some_numbers_and_it_is_said_which() -> None:
    (few, *_), (many, *_) = (drawn(program(*(square(40 * x, 0, 5) for x in range(count)))) for count in (3, 60))

    assert sorted(words(few, "place")) == ["1", "2", "3"] and "One place in" not in few
    (every,) = re.findall(r"One place in (\d+) is numbered", many.partition("<figcaption>")[2])
    shown = sorted(map(int, words(many, "place")))
    assert int(every) > 1
    assert all(number in (1, 60) or number % int(every) == 0 for number in shown)
    assert 3 < len(shown) < 20


def test_nothing_is_drawn_of_a_program_that_moves_nothing() -> None:
    assert drawn(moves()) == ()


def test_a_program_that_only_drills_one_hole_has_a_drawing() -> None:
    (svg,) = drawn(moves(rapid(0, 0, 5), feed(0, 0, -5)))

    assert 'class="hole"' in svg


def test_numbers_never_lie_on_one_another_and_the_last_is_there() -> None:
    places = [(x / 3, y / 3) for x in range(30) for y in range(30)]

    svg = str(path("k", "Path", Path((0, 0, 10, 10), places=places)))

    at = [
        (float(x), float(y), text) for x, y, text in re.findall(r'"place" x="([\d.]+)" y="([\d.]+)"[^>]*>(\d+)<', svg)
    ]
    assert {"1", "900"} <= {text for *_, text in at}
    assert all(
        abs(x - other_x) >= 7 or abs(y - other_y) >= 12
        for number, (x, y, _) in enumerate(at)
        for other_x, other_y, _ in at[:number]
    )


@pytest.mark.parametrize(
    ("span", "unit", "step"), [(81, 1, 20), (300, 1, 50), (254, 25.4, 50.8), (0.5, 1, 0.1), (9, 25.4, 3.175)]
)
def test_an_axis_has_a_few_round_lengths(span: float, unit: float, step: float) -> None:
    assert marks(span, unit, 6) == pytest.approx(step)


def test_a_drawing_has_no_colour_of_its_own() -> None:
    (svg,) = drawn(program(square(0, 0), square(50, 0)))

    assert not re.search(r"fill=|stroke=|style=|#[0-9a-f]{3}", svg)
