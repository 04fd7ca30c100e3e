"""What is said of a program: times, lengths, extents, tools, doubts."""

import pickle
from dataclasses import replace
from datetime import timedelta
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.plan.program.motion import timed
from runboard.plan.program.report import Lengths, ProgramReport, report
from runboard.plan.program.suspects import Stock
from runboard.shop.machines import Motion
from tests.core.moves_by_hand import arc, dwell, feed, moves, rapid, stop, tool
from tests.core.programs import read

MACHINE = Motion(tool_change=timedelta(seconds=60))


def codes(found: ProgramReport) -> list[tuple[int, str]]:
    return [(doubt.line, doubt.code) for doubt in found.doubts]


def test_times_and_lengths_stand_by_what_is_done() -> None:
    program = moves(
        tool(1),
        rapid(10, 0, 5),
        feed(10, 0, -2),
        feed(30, 0, -2),
        dwell(1.5),
        feed(30, 0, 5),
        rapid(0, 0, 5),
        start=(0, 0, 5),
    )
    seconds = timed(program, MACHINE).seconds

    found = report(program, MACHINE)

    assert found.length == Lengths(cutting=20 + 7, rapid=40, plunge=7)
    assert found.seconds.rapid == pytest.approx(seconds[1] + seconds[6])
    assert found.seconds.plunge == pytest.approx(seconds[2])
    assert found.seconds.cutting == pytest.approx(seconds[3] + seconds[5])
    assert (found.seconds.dwell, found.seconds.tool_change) == (1.5, 0)
    assert found.seconds.total == pytest.approx(seconds.sum())


def test_a_ramp_and_a_helix_are_cuts_and_no_plunges() -> None:
    found = report(moves(rapid(0, 0, 1), feed(5, 0, -1), arc((5, 0, -3), (0, 0))), MACHINE)

    assert found.length.plunge == 0


def test_an_arc_reaches_as_far_as_its_bulge() -> None:
    found = report(moves(rapid(10, 0, 1), arc((0, 10, 1), (0, 0)), arc((-10, 0, 1), (0, 0))), MACHINE)

    assert found.extent[:2] == ((pytest.approx(-10), 10), (0, pytest.approx(10)))
    round_it = report(moves(arc((10, 0, 0), (4, 0), turns=-1), start=(10, 0, 0)), MACHINE)
    assert round_it.extent[:2] == ((pytest.approx(-2), pytest.approx(10)), (pytest.approx(-6), pytest.approx(6)))


@given(st.floats(0, 6.28), st.floats(0.1, 12), st.sampled_from([1, -1]), st.sampled_from([0, 1, 2]))
def test_an_arc_stays_within_its_extent_and_touches_it(begin: float, sweep: float, way: int, plane: int) -> None:
    from math import cos, sin

    import numpy as np

    from runboard.plan.program.moves import FEED, PLANES, Moves, no_moves

    first, second, _ = PLANES[plane]
    arrays, start = no_moves(1), [0.0, 0.0, 0.0]
    start[first], start[second] = 3 + 5 * cos(begin), 1 + 5 * sin(begin)
    arrays["kind"][0], arrays["plane"][0], arrays["centre"][0], arrays["sweep"][0] = FEED, plane, (3, 1), sweep * way
    angles = np.linspace(begin, begin + sweep * way, 5001)
    arrays["to"][0, first], arrays["to"][0, second] = 3 + 5 * cos(angles[-1]), 1 + 5 * sin(angles[-1])

    found = report(Moves(**arrays, start=(start[0], start[1], start[2]), lines=1, units="mm"), MACHINE).extent

    assert found[first] == pytest.approx((min(3 + 5 * np.cos(angles)), max(3 + 5 * np.cos(angles))), abs=1e-4)
    assert found[second] == pytest.approx((min(1 + 5 * np.sin(angles)), max(1 + 5 * np.sin(angles))), abs=1e-4)


def test_a_feed_above_the_stock_is_in_the_air_as_far_as_it_is_above() -> None:
    slow = replace(MACHINE, accel_x=1e9, accel_y=1e9, accel_z=1e9)
    program = moves(feed(0, 0, -3, speed=1), feed(7, 0, -3, speed=1), start=(0, 0, 3))

    assert report(program, slow).air_share == pytest.approx(3 / 13, rel=1e-3)
    assert report(program, slow, Stock(top=2)).air_share == pytest.approx(1 / 13, rel=1e-3)


def test_each_tool_has_its_row_in_the_order_of_its_use() -> None:
    found = report(
        moves(
            tool(5), rapid(0, 0, 1), feed(0, 0, -4), tool(2), feed(9, 0, -1), tool(5), feed(0, 0, -6), start=(0, 0, 2)
        ),
        MACHINE,
    )

    assert [(row.number, row.lowest) for row in found.tools] == [(5, -6), (2, -1)]
    assert [row.seconds.tool_change for row in found.tools] == [60, 60]
    assert sum(row.seconds.total for row in found.tools) == pytest.approx(found.seconds.total)


def test_stops_are_named_by_their_lines() -> None:
    assert report(moves(feed(1, 0, 0), stop(), feed(2, 0, 0), stop()), MACHINE).stops == (2, 4)


def test_nothing_at_all_is_reported_too() -> None:
    found = report(moves(), MACHINE)

    assert (found.seconds.total, found.extent, found.air_share, found.tools) == (0, (), 0, ())


def test_travel_within_the_stock_is_a_doubt() -> None:
    found = report(
        moves(
            rapid(0, 0, 5),
            feed(0, 0, -4),
            rapid(20, 0, -4),
            rapid(20, 0, 5),
            rapid(20, 0, -1),
            feed(30, 0, -1),
            rapid(30, 0, 5),
        ),
        MACHINE,
    )

    assert codes(found) == [(3, "fast-across"), (5, "fast-down")]
    assert found.doubts[0].facts == {"z": -4}
    assert not found.changes_time


def test_a_drill_that_goes_back_into_its_hole_is_no_doubt() -> None:
    found = report(read("G21 G90 G0 Z5", "X0 Y0", "G83 X10 Y10 Z-12 R1 Q4 F100", "X20", "G80", "M2"), MACHINE)

    assert [code for _, code in codes(found) if code.startswith("fast")] == []


def test_a_program_whose_zero_is_the_table_is_told_so_once() -> None:
    found = report(moves(rapid(0, 0, 25), feed(0, 0, 12), feed(90, 0, 12), rapid(90, 0, 25)), MACHINE)

    assert codes(found) == [(2, "nothing-below-top")]
    assert found.air_share == pytest.approx(found.seconds.rapid / found.seconds.total)
    assert codes(report(moves(rapid(9, 0, -1), feed(9, 0, -12)), MACHINE)) == [(2, "nothing-above-top")]


def test_what_reaches_farther_than_machine_or_stock_is_named_where_it_does() -> None:
    small = replace(MACHINE, travel_x=300.0, travel_y=200.0, travel_z=80.0)
    program = moves(rapid(0, 0, 5), feed(0, 0, -19), feed(250, 0, -19), feed(310, 150, -19), rapid(310, 150, 5))

    assert codes(report(program, small, Stock(320, 140, 18))) == [
        (2, "through-stock"), (4, "beyond-travel"), (4, "beyond-stock"),
    ]  # fmt: skip
    assert codes(report(program, MACHINE)) == []


def test_a_feed_beyond_sense_is_named_once() -> None:
    fast = moves(rapid(0, 0, 5), feed(0, 0, -1, speed=200), feed(9, 0, -1, speed=200))
    slow = moves(rapid(0, 0, 5), feed(0, 0, -1, speed=0.02), feed(9, 0, -1))
    none = moves(rapid(0, 0, 5), feed(0, 0, -1, speed=0), feed(9, 0, -1))

    assert codes(report(fast, MACHINE)) == [(2, "feed-fast")]
    assert codes(report(slow, MACHINE)) == [(2, "feed-slow")]
    assert codes(report(none, MACHINE)) == [(2, "feed-nought")]
    assert report(none, MACHINE).changes_time


def test_a_missing_feed_is_said_once_and_by_the_reader() -> None:
    found = report(read("G21 G90 G0 X0 Y0 Z5", "G1 Z-1", "M2"), MACHINE)

    assert [code for _, code in codes(found) if code.startswith("feed")] == ["feed-missing"]


def test_inches_and_millimetres_say_the_same() -> None:
    metric = read("G21 G90 G0 X0 Y0 Z5.08", "G1 Z-2.54 F508", "G2 X25.4 Y0 I12.7", "G0 Z5.08", "M2")
    inches = read("G20 G90 G0 X0 Y0 Z0.2", "G1 Z-0.1 F20", "G2 X1 Y0 I0.5", "G0 Z0.2", "M2")

    one, other = report(metric, MACHINE), report(inches, MACHINE)

    assert one.seconds.total == pytest.approx(other.seconds.total)
    assert one.extent == tuple(pytest.approx(each) for each in other.extent)


def test_a_report_can_be_sent_from_a_child() -> None:
    found = report(moves(rapid(3, 4, 0), feed(9, 0, -1)), MACHINE)

    assert pickle.loads(pickle.dumps(found)) == found
    assert found.length.rapid == 5 and found.length.cutting == pytest.approx(sqrt(36 + 16 + 1))


def test_a_load_after_the_first_puts_the_first_tool_in_again() -> None:
    cuts = [rapid(0, 0, 1), feed(0, 0, -1)]
    two = moves(tool(1), *cuts, tool(2), *cuts, start=(0, 0, 2))

    found, once = report(two, MACHINE), report(two, MACHINE, runs_once=True)

    assert (found.seconds.tool_change, found.back_to, found.change) == (120, 1, 60)
    assert found.seconds.total == pytest.approx(once.seconds.total + 60)
    assert [row.seconds.tool_change for row in found.tools] == [60, 60]
    assert (once.seconds.tool_change, once.back_to) == (60, None)
    assert report(moves(tool(1), *cuts, start=(0, 0, 2)), MACHINE).back_to is None


def test_the_same_of_one_line_is_one_doubt() -> None:
    found = report(read("G21 G90 G99 G0 X0 Y0 Z5", "M3 S1", "G81 X1 Y1 Z-9 R-6 L3 F99", "G80", "M2"), MACHINE)

    assert len(codes(found)) == len(set(codes(found)))
