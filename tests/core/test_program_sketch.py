"""The path as a page draws it: few points, and to the eye no other path."""

from math import cos, pi, sin

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from runboard.plan.program.moves import FEED, RAPID, Moves, no_moves
from runboard.plan.program.reach import is_move, reach
from runboard.plan.program.sketch import MOST_POINTS, Line, Sketch, sketch
from tests.core.moves_by_hand import arc, dwell, feed, moves, rapid


def sketched(program: Moves) -> Sketch:
    which = is_move(program)
    box = tuple(
        (float(low[which].min()), float(high[which].max())) for low, high in (reach(program, at) for at in range(3))
    )
    return sketch(program, box)


def off(point: np.ndarray, lines: tuple[Line, ...]) -> float:
    """How far a point lies from the nearest of the lines."""
    found = np.inf
    for line in lines:
        ends = np.array(line if len(line) > 1 else [*line, *line])
        one, way = ends[:-1], np.diff(ends, axis=0)
        length = np.einsum("ij,ij->i", way, way)
        along = np.clip(np.einsum("ij,ij->i", point - one, way) / np.where(length > 0, length, 1), 0, 1)
        found = min(found, float(np.hypot(*(point - one - along[:, None] * way).T).min()))
    return found


def relief(count: int) -> Moves:
    """A raster of so many short cuts, up and down over a wave."""
    arrays = no_moves(count)
    row, column = np.divmod(np.arange(count), 500)
    arrays["kind"][:] = FEED
    arrays["speed"][:] = 30
    arrays["to"][:, 0] = np.where(row % 2 == 0, column, 499 - column) * 0.4
    arrays["to"][:, 1], arrays["to"][:, 2] = row * 0.4, -np.sin(column / 20)
    return Moves(**arrays, start=(0.0, 0.0, 0.0), lines=count, units="mm")


def test_cuts_and_travel_are_lines_of_their_own() -> None:
    found = sketched(
        moves(rapid(10, 0, 5), feed(10, 0, -1), feed(10, 30, -1), dwell(1), feed(40, 30, -1), rapid(0, 0, 5))
    )

    assert found.cuts == (((10, 0), (10, 30)), ((10, 30), (40, 30)))
    assert found.travel == (((0, 0), (10, 0)), ((40, 30), (0, 0)))


def test_a_hole_is_one_point() -> None:
    found = sketched(moves(rapid(10, 5, 5), feed(10, 5, -9), rapid(10, 5, 5), rapid(50, 5, 5), feed(50, 5, -9)))

    assert found.cuts == (((10, 5),), ((50, 5),))


def test_points_on_one_straight_line_are_its_ends() -> None:
    found = sketched(moves(*(feed(x, x / 2, -(x % 3)) for x in range(1, 200))))

    assert [len(line) for line in found.cuts] == [2]


def test_an_arc_is_drawn_as_round_as_anybody_sees() -> None:
    found = sketched(moves(rapid(50, 0, 0), arc((50, 0, -2), (0, 0), turns=-1)))

    (line,) = found.cuts
    assert len(line) <= 100
    for angle in np.linspace(0, 2 * pi, 50):
        assert off(np.array([50 * cos(angle), 50 * sin(angle)]), found.cuts) < 100 / 700


@settings(max_examples=30, deadline=None)
@given(st.lists(st.tuples(st.floats(-100, 100), st.floats(-100, 100), st.booleans()), min_size=2, max_size=300))
def test_no_place_of_the_path_is_far_from_what_is_drawn(some: list[tuple[float, float, bool]]) -> None:
    program = moves(*(rapid(x, y, 5) if is_rapid else feed(x, y, -1) for x, y, is_rapid in some))

    found = sketched(program)

    side = max(*(high - low for low, high in found.box), 1e-9)
    for kind, lines in ((FEED, found.cuts), (RAPID, found.travel)):
        for place in program.to[program.kind == kind]:
            assert off(place[:2], lines) <= side / 400 + 1e-3


def test_a_long_program_has_no_more_points_than_a_page_can_draw() -> None:
    found = sketched(relief(200_000))

    assert found.is_whole
    assert sum(len(line) for line in found.cuts) <= 2000
    assert off(np.array([100.0, 80.0]), found.cuts) < 0.4


def test_more_lines_than_can_be_drawn_are_left_out_evenly_and_it_says_so() -> None:
    chance = np.random.default_rng(1)
    arrays = no_moves(60_000)
    arrays["kind"][1::2], arrays["speed"][:] = FEED, 20
    arrays["to"][:, :2] = chance.uniform(0, 300, (60_000, 2))

    found = sketched(Moves(**arrays, start=(0.0, 0.0, 0.0), lines=60_000, units="mm"))

    assert not found.is_whole
    assert MOST_POINTS / 2 < sum(len(line) for line in found.cuts) <= MOST_POINTS
    assert sum(len(line) for line in found.travel) <= MOST_POINTS


def test_ten_thousand_holes_in_one_square_are_one_dot() -> None:
    blocks = [one for _ in range(500) for one in (rapid(5, 5, 5), feed(5, 5, -1), rapid(5, 5, 5), rapid(90, 90, 5))]

    assert sketched(moves(*blocks, start=(90, 90, 5))).cuts == (((5, 5),),)


def test_nothing_is_drawn_of_nothing() -> None:
    assert sketch(moves(dwell(1)), ()).box == ()


@pytest.mark.parametrize("plane", [1, 2])
def test_an_arc_in_another_plane_is_a_line_from_above(plane: int) -> None:
    to = (20, 0, 0) if plane == 1 else (0, 20, 0)
    centre = (0, 10) if plane == 1 else (10, 0)
    (line,) = sketched(moves(arc(to, centre, plane=plane))).cuts

    assert line == ((0, 0), to[:2])
