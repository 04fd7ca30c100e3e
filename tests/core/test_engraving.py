"""How long an engraving takes, from a drawing or from sizes, by each of the ways in which a head may go."""

from itertools import combinations, pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from runboard.plan.before.kind import File
from runboard.plan.engraving.answer import engraved, worked_out
from runboard.plan.engraving.blocks import Row, between, parted, rows_of
from runboard.plan.engraving.marks import boxes_of, marks_of
from runboard.plan.engraving.methods import row_by_row
from runboard.plan.engraving.pieces import by_gaps, by_places
from runboard.plan.engraving.question import Engraving, EngravingAnswer
from runboard.plan.engraving.sweep import Sweep
from runboard.plan.outlines.svg import read_svg
from runboard.run.refusal import Refused
from runboard.shop.book import Book, Station
from runboard.shop.machines import Motion

SWEEP = Sweep(300, 3000, 0.1, 400)
HEAD = '<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="250mm" viewBox="0 0 400 250">'


def drawing(inner: str) -> File:
    return File("jig.svg", f"{HEAD}{inner}</svg>".encode())


def asked(inner: str = "", **fields: object) -> EngravingAnswer:
    return worked_out(Book(), Engraving(**fields), drawing(inner) if inner else None)  # type: ignore[arg-type]


def minutes(found: EngravingAnswer) -> dict[str, float]:
    return {one.name: round(one.seconds / 60, 3) for one in found.methods}


def boxes(*some: tuple[float, float, float, float]) -> str:
    return "".join(f'<rect x="{x}" y="{y}" width="{wide}" height="{high}"/>' for x, y, wide, high in some)


def test_a_drawing_of_boxes_takes_as_long_as_their_sizes() -> None:
    typed = asked(columns=2, rows=2, mark_width=30, mark_height=20, pitch_x=100, pitch_y=50)

    drawn = asked(boxes((10, 10, 30, 20), (110, 10, 30, 20), (10, 60, 30, 20), (110, 60, 30, 20)))

    assert {**minutes(drawn), "trace": 0} == {**minutes(typed), "trace": 0}
    assert drawn.places == typed.places == 4


def test_where_marks_fill_the_jig_no_way_is_much_better() -> None:
    found = minutes(asked(boxes((0, 0, 300, 200))))

    assert found["whole"] == found["rows"] == found["pieces"]


def test_neighbours_stay_together_and_what_is_far_is_parted() -> None:
    """At 300 mm/s and 3000 mm/s² a gap is worth sweeping up to 300·(0.2 + 2·√(0.1/3000)) = 63.5 mm, a little more since the
    way between two blocks takes time too."""
    near = asked(boxes((0, 0, 20, 25), (60, 0, 20, 25)))
    far = asked(boxes((0, 0, 20, 25), (110, 0, 20, 25)))

    assert [one.blocks for one in near.methods[:3]] == [1, 1, 2]
    assert [one.blocks for one in far.methods[:3]] == [1, 2, 2]


@given(
    st.lists(
        st.tuples(st.integers(0, 8), st.integers(1, 30), st.integers(1, 60), st.integers(1, 100)),
        min_size=1,
        max_size=6,
    ),
    st.booleans(),
)
@settings(max_examples=60, deadline=None)
def test_a_row_is_parted_no_worse_than_by_trying_every_way(units: list[tuple[int, int, int, int]], trims: bool) -> None:
    row = row_with(units)

    found = cost(row, [len(block.lines) for block in parted(row, SWEEP, trims)], parted(row, SWEEP, trims))

    count = len(row.left)
    tried = []
    for parts in range(count):
        for cuts in combinations(range(1, count), parts):
            bounds = [0, *cuts, count]
            blocks = [row.block(a, b, trims).seconds(SWEEP) for a, b in pairwise(bounds)]
            tried.append(sum(blocks) + sum(between(row, cut, SWEEP) for cut in cuts))
    assert found == pytest.approx(min(tried))


def row_with(units: list[tuple[int, int, int, int]]) -> Row:
    """Units side by side: (first line, lines, width, gap behind it)."""
    lines = max(first + count for first, count, _, _ in units)
    left, right = np.full((len(units), lines), np.inf), np.full((len(units), lines), -np.inf)
    at = 0.0
    for unit, (first, count, wide, gap) in enumerate(units):
        left[unit, first : first + count], right[unit, first : first + count] = at, at + wide
        at += wide + gap
    return Row(0, left, right)


def cost(row: Row, lines: list[int], blocks: list) -> float:
    cuts = [int(np.flatnonzero(row.left.min(axis=1) == block.left.min())[0]) for block in blocks]
    return sum(block.seconds(SWEEP) for block in blocks) + sum(between(row, cut, SWEEP) for cut in cuts if cut)


@given(
    st.lists(
        st.tuples(st.integers(0, 300), st.integers(0, 200), st.integers(1, 60), st.integers(1, 40)),
        min_size=1,
        max_size=12,
    )
)
@settings(max_examples=40, deadline=None)
def test_the_beam_is_on_where_something_is_and_nowhere_else(some: list[tuple[int, int, int, int]]) -> None:
    outlines = read_svg(drawing(boxes(*some)).content).outlines
    top, left = min(y for _, y, _, _ in some), min(x for x, _, _, _ in some)
    seen = np.zeros((400, 400), bool)
    for x, y, wide, high in some:
        seen[y - top : y - top + high, x - left : x - left + wide] = True

    marks = marks_of(outlines, 1.0, lambda at: 0)

    assert marks.length == pytest.approx(seen.sum(), abs=1e-6)
    assert marks.lines == int(seen.any(axis=1).nonzero()[0].max()) + 1


def test_a_hole_stays_a_hole_by_either_rule() -> None:
    ring = "M0 0h30v30h-30z M10 10{}z"
    by_turn = f'<path d="{ring.format("v10h10v-10")}"/>'
    by_parity = f'<path fill-rule="evenodd" d="{ring.format("h10v10h-10")}"/>'
    filled = f'<path d="{ring.format("h10v10h-10")}"/>'

    on = [asked(inner, spacing=0.5).methods[0].on for inner in (by_turn, by_parity, filled)]

    assert on == pytest.approx([800 / 0.5, 800 / 0.5, 900 / 0.5])


def test_a_line_burns_as_wide_as_it_is_drawn() -> None:
    found = asked('<path d="M0 0h40" stroke="black" stroke-width="2" fill="none"/>', spacing=0.1)

    assert found.methods[0].lines == 20
    assert found.box[3] == pytest.approx(2)


def test_blank_lines_are_left_out_row_by_row_only() -> None:
    found = asked(boxes((0, 0, 100, 10), (0, 100, 100, 10)))

    assert [one.lines for one in found.methods[:3]] == [1100, 200, 200]


def test_a_head_that_turns_at_the_last_mark_is_no_slower() -> None:
    wedge = '<path d="M0 0L200 50L0 100z"/>'

    assert asked(wedge, trims=True).method("rows").seconds < asked(wedge).method("rows").seconds  # type: ignore[union-attr]


def test_tracing_takes_the_length_at_its_speed_and_a_little_more() -> None:
    line = '<path d="M0 0h100v100h-100z" fill="none" stroke="black"/>'

    trace = asked(line, trace_speed=20).method("trace")

    assert trace is not None
    assert trace.on == pytest.approx(400)
    assert 400 / 20 < trace.seconds < 400 / 20 + 0.2


def test_a_drawing_is_traced_at_a_usual_speed_and_sizes_only_along_a_line_that_is_said() -> None:
    drawn, typed, said = asked(boxes((0, 0, 100, 100))), asked(), asked(line=120.0)

    assert drawn.method("trace") is not None
    assert drawn.trace_speed == 20
    assert typed.method("trace") is None
    assert said.method("trace").on == pytest.approx(120)  # type: ignore[union-attr]


def test_lines_alone_may_be_traced_and_what_is_filled_may_not_be_in_its_place() -> None:
    assert asked('<path d="M0 0h100" fill="none" stroke="black"/>', trace_speed=100).best == "trace"
    assert asked(boxes((0, 0, 100, 50)), trace_speed=100).best != "trace"


def test_groups_that_are_cut_are_not_engraved() -> None:
    shapes = read_svg(
        drawing(
            f'<g id="Cut"><g id="inner">{boxes((0, 0, 9, 9))}</g></g><g id="mark">{boxes((50, 0, 9, 9))}</g>'
        ).content
    )

    assert [one.group for one in engraved(shapes, "cut, other")] == ["mark"]


def test_pieces_are_parted_by_straight_cuts_or_by_places() -> None:
    some = boxes_of(
        read_svg(
            drawing(boxes((0, 0, 5, 5), (7, 0, 5, 5), (40, 0, 5, 5), (0, 40, 5, 5), (40, 40, 5, 5))).content
        ).outlines,
        0.1,
    )

    assert by_gaps(some, 10).tolist() == [0, 0, 1, 2, 3]
    assert by_gaps(some, 1).tolist() == [0, 1, 2, 3, 4]
    assert by_places(some, 2, 2).tolist() == [0, 0, 1, 2, 3]


@pytest.mark.parametrize(("fields", "count"), [({"pieces": 25}, 7), ({"jig_fulls": 3, "pieces": 25}, 3), ({}, 1)])
def test_a_run_takes_so_many_jig_fulls(fields: dict[str, int], count: int) -> None:
    assert asked(columns=2, rows=2, **fields).jig_fulls == count


def test_the_stations_own_values_hold_unless_others_are_asked() -> None:
    laser = Station(
        "laser", "Laser", "laser", "shop", motion=Motion(scan_speed=200, scan_accel=4000, line_spacing=0.2, travel_x=50)
    )
    book = Book(stations=(laser,))

    found = worked_out(book, Engraving(station="laser"), None)
    other = worked_out(book, Engraving(station="laser", speed=100), None)
    nobodys = worked_out(Book(), Engraving(), None)

    assert (found.speed, found.accel, found.spacing, found.assumed) == (200, 4000, 0.2, ())
    assert other.speed == 100
    assert nobodys.assumed == ("speed", "accel", "spacing")
    assert not found.fits


def test_a_run_up_that_is_too_short_is_told_and_a_longer_one_takes_longer() -> None:
    usual, longer, short = (asked(run_up=run_up) for run_up in (None, 25.0, 5.0))

    assert usual.run_up == 15
    assert longer.methods[0].seconds == pytest.approx(usual.methods[0].seconds + 200 * 2 * 10 / 300)
    assert (short.short, longer.short) == (10, 0)


@pytest.mark.parametrize(
    ("inner", "fields", "code"),
    [
        ('<rect width="9" height="9" fill="none"/>', {}, "engraving-nothing-drawn"),
        ('<g id="cut"><rect width="9" height="9"/></g>', {}, "engraving-nothing-drawn"),
        ("", {"columns": 3, "pitch_x": 10, "mark_width": 20}, "engraving-pitch-too-small"),
        ("", {"mark_height": 9999, "spacing": 0.005}, "engraving-too-fine"),
    ],
)  # fmt: skip
def test_what_cannot_be_answered_is_refused(inner: str, fields: dict[str, float], code: str) -> None:
    with pytest.raises(Refused) as refused:
        asked(inner, **fields)

    assert refused.value.code == code


def test_many_small_marks_are_answered_within_bounds() -> None:
    many = boxes(*((x * 4, y * 4, 2, 2) for x in range(60) for y in range(40)))

    found = asked(many, apart=1)

    assert found.places == 2400
    assert all(len(one.strokes) < 10_000 for one in found.methods)


def test_rows_with_more_units_than_can_be_tried_close_their_narrowest_gaps() -> None:
    outlines = read_svg(drawing(boxes(*((x * 4, 0, 2 if x % 10 else 1, 5) for x in range(90)))).content).outlines

    row = rows_of(marks_of(outlines, 0.1, lambda at: 0))[0]

    assert len(row.left) <= 40
    assert row_by_row(marks_of(outlines, 0.1, lambda at: 0), SWEEP, False).blocks == 1
