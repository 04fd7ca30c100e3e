"""How long a program takes: what must hold of any, and some by hand."""

from dataclasses import replace
from datetime import timedelta
from math import cos, pi, sin, sqrt

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from runboard.plan.program.motion import of_all_axes, timed
from runboard.plan.program.moves import FEED, Moves
from runboard.shop.machines import Motion
from tests.core.moves_by_hand import Block, arc, dwell, feed, moved, moves, polyline, rapid, stop, tool
from tests.core.slow_motion import simulated_seconds

MACHINE = Motion()
ALIKE = of_all_axes(Motion(rapid_z=4800), rapid=4800, accel=400, corner=0.02)

places = st.tuples(*[st.integers(-400, 400).map(lambda tenths: tenths / 10)] * 3)
straight = st.builds(lambda to, speed: feed(*to, speed=speed), places, st.floats(0.5, 120))
bends = st.builds(lambda to, turns: {"bend": to, "turns": turns}, st.floats(0.2, 6.0), st.sampled_from([1, -1]))
blocks = st.lists(
    st.one_of(straight, places.map(lambda to: rapid(*to)), bends, st.just(dwell(0.3)), st.just(stop())), max_size=30
)


def made(some: list[Block]) -> Moves:
    """A program of these; a bend is a helix from where it begins, round a centre beside it."""
    found: list[Block] = []
    at = (0.0, 0.0, 0.0)
    for one in some:
        if "bend" in one:
            angle, centre = one["bend"] * one["turns"], (at[0] - 5.0, at[1])
            to = (centre[0] + 5 * cos(angle), centre[1] + 5 * sin(angle), at[2] - 1.0)
            found.append(arc(to, centre, one["turns"]))
        else:
            found.append(one)
        at = found[-1].get("to", at)
    return moves(*found)


@given(blocks)
def test_no_block_is_faster_than_commanded(some: list[Block]) -> None:
    program = made(some)

    found = timed(program, MACHINE)

    is_feed = program.kind == FEED
    assert np.all(found.seconds[is_feed] * program.speed[is_feed] >= found.length[is_feed] * (1 - 1e-9))
    assert np.all(found.seconds >= 0)


@given(blocks, st.data())
def test_a_straight_move_in_two_takes_the_same_time(some: list[Block], data: st.DataObject) -> None:
    program = made([one for one in some if "bend" not in one] + [feed(7, 8, 9)])
    split = data.draw(st.sampled_from([at for at in range(len(program)) if program.kind[at] <= FEED]))
    share = data.draw(st.floats(0.001, 0.999))
    begin = program.to[split - 1] if split else np.array(program.start)
    middle = np.round(begin + (program.to[split] - begin) * share, 6)

    twice = np.insert(np.arange(len(program)), split, split)
    two = replace(program, **{name: getattr(program, name)[twice] for name in (
        "kind", "line", "to", "speed", "plane", "centre", "sweep", "tool", "exact",
    )})  # fmt: skip
    two.to[split] = middle

    assert timed(two, MACHINE).total == pytest.approx(timed(program, MACHINE).total, rel=1e-3)


@given(blocks, places)
def test_a_program_elsewhere_takes_the_same_time(some: list[Block], by: tuple[float, float, float]) -> None:
    program = made(some)

    assert timed(moved(program, by), MACHINE).total == pytest.approx(timed(program, MACHINE).total, rel=1e-6)


@given(blocks)
def test_half_the_acceleration_is_never_faster(some: list[Block]) -> None:
    program = made(some)
    slow = replace(MACHINE, accel_x=MACHINE.accel_x / 2, accel_y=MACHINE.accel_y / 2, accel_z=MACHINE.accel_z / 2)

    assert timed(program, slow).total >= timed(program, MACHINE).total * (1 - 1e-9)


@settings(max_examples=15, deadline=None)
@given(st.lists(st.tuples(places, st.floats(5, 60), st.booleans()), min_size=1, max_size=6))
def test_a_machine_that_goes_in_steps_of_time_takes_as_long(some: list[tuple]) -> None:
    at, found = (0.0, 0.0, 0.0), []
    for to, speed, is_rapid in some:
        if max(abs(one - other) for one, other in zip(at, to, strict=True)) >= 1:
            found.append(rapid(*to) if is_rapid else feed(*to, speed=speed))
            at = to
    program = moves(*found or [feed(10, 0, 0)])

    assert timed(program, ALIKE).total == pytest.approx(simulated_seconds(program, 80, 400, 0.02), rel=5e-3, abs=5e-3)


@settings(max_examples=20, deadline=None)
@given(blocks)
def test_compiled_it_says_the_same(some: list[Block]) -> None:
    program = made(some)

    plain, compiled = timed(program, MACHINE, is_compiled=False), timed(program, MACHINE, is_compiled=True)

    assert compiled.length == pytest.approx(plain.length, rel=1e-12)
    assert compiled.seconds == pytest.approx(plain.seconds, rel=1e-9, abs=1e-12)


def test_no_moves_take_no_time() -> None:
    assert timed(moves(), MACHINE).total == 0


def test_each_axis_limits_what_goes_along_it() -> None:
    up = timed(moves(rapid(0, 0, 50)), MACHINE).total
    along = timed(moves(rapid(50, 0, 0)), MACHINE).total
    diagonal = timed(moves(rapid(50, 50, 0)), MACHINE).total

    assert up == pytest.approx(50 / 25 + 25 / 200)
    assert along == pytest.approx(50 / (5000 / 60) + (5000 / 60) / 400)
    assert diagonal == pytest.approx(along)


def test_an_arc_is_as_slow_as_its_bend_wants() -> None:
    small = timed(moves(arc((0, 0, 0), (1, 0), speed=100)), of_all_axes(MACHINE, accel=400))

    assert small.length[0] == pytest.approx(2 * pi)
    assert small.seconds[0] == pytest.approx(2 * pi / 20 + 20 / 400)  # v² = 400·1


def test_many_short_lines_round_a_bend_take_about_as_long_as_the_arc() -> None:
    round_it = [(3 - 3 * cos(a), -3 * sin(a), 0) for a in np.linspace(0, 2 * pi, 721)[1:]]

    lines = timed(moves(*polyline(round_it, speed=80)), ALIKE).total

    assert lines == pytest.approx(timed(moves(arc((0, 0, 0), (3, 0), speed=80)), ALIKE).total, rel=0.05)


@pytest.mark.parametrize("plane", [0, 1, 2])
def test_a_helix_is_as_long_as_its_thread(plane: int) -> None:
    to, third = [0.0, 0.0, 0.0], (2, 1, 0)[plane]
    to[third] = 4.0

    found = timed(moves(arc(to, (3, 0), turns=2, plane=plane)), MACHINE)

    assert found.length[0] == pytest.approx(sqrt((2 * 2 * pi * 3) ** 2 + 16))


@pytest.mark.parametrize("between", [dwell(0), stop(), tool(2)], ids=["dwell", "stop", "tool"])
def test_the_machine_stands_for_what_is_no_move(between: Block) -> None:
    quick = replace(MACHINE, tool_change=timedelta(0))
    one = timed(moves(feed(10, 0, 0)), quick).total

    assert timed(moves(feed(10, 0, 0), between, feed(20, 0, 0)), quick).total == pytest.approx(2 * one)


def test_the_machine_stands_at_an_exact_stop_and_at_a_reversal() -> None:
    one = timed(moves(feed(10, 0, 0)), MACHINE).total

    assert timed(moves(feed(10, 0, 0, exact=True), feed(20, 0, 0)), MACHINE).total == pytest.approx(2 * one)
    assert timed(moves(feed(10, 0, 0), feed(0, 0, 0)), MACHINE).total == pytest.approx(2 * one)
    assert timed(moves(feed(10, 0, 0), feed(20, 0, 0)), MACHINE).total < 2 * one


def test_what_moves_nothing_stops_nothing() -> None:
    straight = timed(moves(feed(20, 0, 0)), MACHINE).total

    assert timed(moves(feed(10, 0, 0), feed(10, 0, 0), feed(20, 0, 0)), MACHINE).total == pytest.approx(straight)


def test_a_line_that_goes_over_into_an_arc_is_not_slowed_there() -> None:
    round_it = moves(feed(10, 0, 0), arc((10, 20, 0), (10, 10)), feed(0, 20, 0))

    assert timed(round_it, ALIKE).total == pytest.approx((20 + 10 * pi) / 20 + 20 / 400)


def test_dwells_and_changes_of_tools_take_their_time() -> None:
    found = timed(moves(feed(1, 0, 0), tool(2), dwell(2.5)), replace(MACHINE, tool_change=timedelta(seconds=90)))

    assert [*found.seconds[1:]] == [90, 2.5]


def test_the_first_tool_is_clamped_in_as_the_machine_is_set_up() -> None:
    assert timed(moves(tool(1), rapid(0, 0, 0), tool(2)), MACHINE).total == 0


def test_a_feed_that_nobody_commanded_takes_no_time_and_the_machine_stands_there() -> None:
    found = timed(moves(feed(10, 0, 0), feed(20, 0, 0, speed=0), feed(30, 0, 0)), MACHINE)

    assert found.seconds[1] == 0
    assert found.length[1] == 10
    assert found.total == pytest.approx(2 * timed(moves(feed(10, 0, 0)), MACHINE).total)


short = st.lists(st.tuples(st.floats(0.01, 2), st.floats(-0.6, 0.6), st.floats(5, 120)), min_size=2, max_size=25)


@given(short)
def test_a_path_the_other_way_round_takes_the_same_time(some: list[tuple[float, float, float]]) -> None:
    points, angle = [(0.0, 0.0, 0.0)], 0.0
    for length, turn, _ in some:
        angle += turn
        x, y, z = points[-1]
        points.append((x + length * cos(angle), y + length * sin(angle), z))
    speeds = [speed for *_, speed in some]

    there = moves(*(feed(*to, speed=speed) for to, speed in zip(points[1:], speeds, strict=True)))
    back = moves(
        *(feed(*to, speed=speed) for to, speed in zip(points[-2::-1], speeds[::-1], strict=True)), start=points[-1]
    )

    assert timed(back, ALIKE).total == pytest.approx(timed(there, ALIKE).total, rel=1e-6)


@pytest.mark.parametrize("near", ["before", "behind"])
def test_a_straight_side_in_two_is_as_long_as_it_is_at_its_corner(near: str) -> None:
    turn = 0.15
    corner, end = (20.0, 0.0), (20 + 20 * cos(turn), 20 * sin(turn))
    split = (19.99, 0.0) if near == "before" else (20 + 0.01 * cos(turn), 0.01 * sin(turn))
    whole = [corner, end]
    parts = [split, corner, end] if near == "before" else [corner, split, end]

    one, other = (timed(moves(*(feed(*to, 0, speed=80) for to in some)), ALIKE).total for some in (whole, parts))

    assert other == pytest.approx(one, rel=1e-6)


def test_a_slower_rapid_never_makes_a_machine_faster_up_and_down() -> None:
    usual = Motion()

    assert of_all_axes(usual, rapid=5000).rapid_z == usual.rapid_z
    assert of_all_axes(usual, rapid=usual.rapid_z / 2).rapid_z == usual.rapid_z / 2
