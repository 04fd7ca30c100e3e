"""Programs read: what is named, what is refused, and what a bad file gets."""

import tracemalloc

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from runboard.plan.program.language import limits
from runboard.plan.program.moves import DWELL, FEED, RAPID, STOP, TOOL, Moves
from runboard.plan.program.read import read_program
from runboard.run.refusal import Refused
from runboard.words.sentences import say
from tests.core.programs import codes, lengths, path, read

AT_ZERO = "G21 G90 G0 X0 Y0 Z0 F600"


def refused(content: bytes) -> tuple[str, dict[str, object]]:
    with pytest.raises(Refused) as found:
        read_program(content)
    said = say("refused", found.value.code, found.value.facts)
    assert said != found.value.code and "{" not in said
    return found.value.code, dict(found.value.facts)


# what is refused


@pytest.mark.parametrize(
    ("content", "code", "line"),
    [
        (b"", "program-empty", None),
        (b" \r\n\t\n", "program-empty", None),
        (b"G21\nG0 X1\0Y2\n", "program-binary", 2),
        (bytes(range(256)) * 40, "program-no-text", None),
        (b"G0 X1\n" + b"X1 " * 5000, "program-line-long", 2),
        (b"G0 X1 (no end\nX2", "program-comment", 1),
        (b"G21\nG0 X1)", "program-character", 2),
        (b"G21\nG0 X[1+2", "program-bracket", 2),
        (b"G21\nG0 X1+2]", "program-character", 2),
        (b"G0 X", "program-number", 1),
        (b"G0 XNaN", "program-number", 1),
        (b"G0 Xinf", "program-number", 1),
        (b"G0 X[" + b"[" * 1000 + b"1" + b"]" * 1000 + b"]", "program-nested", 1),
        (b"#1=" + b"#" * 1000 + b"1", "program-nested", 1),
        (b"G0 X" + b"-" * 1000 + b"1", "program-number", 1),
        (b"G0 X[1/0]", "program-arithmetic", 1),
        (b"G0 X[10 ** 999]", "program-arithmetic", 1),
        (b"G0 Xexp[1000]", "program-arithmetic", 1),
        (b"G0 X[exp[700]*exp[700]]", "program-arithmetic", 1),
        (b"G0 Xsqrt[-1]", "program-arithmetic", 1),
        (b"G0 X" + b"9" * 400, "program-arithmetic", 1),
        (b"G0 X1000000000", "program-huge", 1),
        (b"#5400=1", "program-parameter", 1),
        (b"#0.5=1", "program-parameter", 1),
        (b"#1 2", "program-expected", 1),
        (b"G0.55 X1", "program-code", 1),
        (b"G1.00005 X1", "program-code", 1),
        (b"G21 G0 X0 Y0 Z0 F1\nG2 X10 Y0 I3", "program-arc", 2),
        (b"G21 G0 X0 Y0 Z0 F1\nG2 X10 Y0 R3", "program-arc", 2),
        (b"G21 G0 X0 Y0 Z0 F1\nG81 X1 Z-1 R1 L99999", "program-repeats", 2),
        (b"G21 G0 X0 Y0 Z0 F1\nG83 X1 Z-1000 R1 Q0.00001", "program-blocks", 2),
        ("G0 X1 é".encode(), "program-character", 1),
        (b"<?xml version='1.0'?>", "program-character", 1),
        (b"\nHello, this is a letter.", "program-none", 2),
        (b"G0 X1\nHello, this is a letter.", "program-number", 2),
        (b"\x89PNG\r\n\x1a\n\0\0", "program-no-text", None),
    ],
    ids=lambda value: str(value)[:40],
)
def test_what_cannot_be_read_gets_one_sentence_with_its_line(content: bytes, code: str, line: int | None) -> None:
    found, facts = refused(content)

    assert (found, facts.get("line")) == (code, line)


def test_a_file_of_one_endless_line_is_refused_without_being_copied() -> None:
    content = b"G1 X1 " * 25_000_000
    tracemalloc.start()

    code, facts = refused(content)

    _, most = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert (code, facts["line"]) == ("program-line-long", 1)
    assert most < 1_000_000


def test_a_file_that_is_too_large_is_refused() -> None:
    assert refused(b"G1 X1\n" * 22_000_000)[0] == "program-large"


def test_too_many_lines_are_refused() -> None:
    assert refused(b"\n" * limits.MOST_LINES + b"G0")[0] == "program-lines"


# what is named


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("O100", "program-number"),
        ("O100 sub", "o-word"),
        ("o<drill> call [1]", "o-word"),
        ("G5 X1 Y1", "code-unknown"),
        ("G91.1", "centres-incremental"),
        ("G90.1", "code-unknown"),
        ("M98 P100", "code-unknown"),
        ("G1 X1 E5", "word-unknown"),
        ("G1 X1 A90", "axis-turning"),
        ("G1 X1 X2", "word-twice"),
        ("#<_depth>=1", "named-parameter"),
        ("G1 X#<_depth>", "named-parameter"),
        ("G1 X[1 GT 0]", "operation-unknown"),
        ("G1 Xsinh[0]", "operation-unknown"),
        ("G1 X#100", "parameter-unknown"),
        ("G41 D1", "cutter-radius"),
        ("G43 H1", "tool-length"),
        ("G38.2 Z-1", "probe"),
        ("G55", "coordinate-system"),
        ("G10 L2 P1 X0", "coordinate-system"),
        ("G10 L20 P1 X0", "origin-without-l2"),
        ("G10 L2 P10 X0", "origin-of-none"),
        ("G53 G0 Z0", "machine-coordinates"),
        ("G53 G2 X1 I1", "machine-coordinates-with"),
        ("G28", "home-unknown"),
        ("G30 X1", "home-unknown"),
        ("/G1 X1", "block-delete"),
        ("M6", "tool-not-chosen"),
        ("T-1", "tool-number"),
        ("S-1", "speed-negative"),
        ("F-1", "feed-negative"),
        ("G1", "no-axes"),
        ("G92", "no-axes"),
        ("G4", "dwell-without-p"),
        ("G4 P500", "dwell-long"),
        ("G82 X1 Z-1 R1 P250", "dwell-long"),
        ("G1 X1 P5", "word-idle"),
        ("G1 X-[1]", "sign-before-value"),
        ("(one (in another)) G1 X1", "comment-nested"),
        ("G0 G1 X1", "same-group"),
        ("G1 G92 X1", "axes-for-two"),
        ("G80 X1", "axes-after-g80"),
        ("G2 I5", "arc-without-end"),
        ("G80\nX1", "axes-after-g80"),
        ("G2 X5", "arc-without-centre"),
        ("G2 X5 I0 J0", "arc-without-radius"),
        ("G2 X5 I1 R1", "arc-both-ways"),
        ("G2 X0 R5", "arc-by-radius-closed"),
        ("G81 X1 R1", "cycle-without"),
        ("G81 X1 Z-1", "cycle-without"),
        ("G82 X1 Z-1 R1", "cycle-without"),
        ("G83 X1 Z-1 R1 Q0", "cycle-without"),
        ("G81 X1 Z1 R0", "cycle-upside-down"),
        ("G81 X1 Z-1 R1 L0", "cycle-repeats"),
        ("G84 X1 Z-1 R1", "spindle-stands"),
        ("G88 X1 Z-1 R1 P1", "out-by-hand"),
    ],
)
def test_what_is_doubtful_is_named_with_its_line(line: str, code: str) -> None:
    moves = read(AT_ZERO, line, "G0 X0")

    assert (line.count("\n") + 2, code) in codes(moves)
    for doubt in moves.doubts:
        said = say("program-doubt", doubt.code, {"line": doubt.line, **doubt.facts})
        assert said.count("line 2") + said.count("Line 2") == 1 or doubt.line != 2


def test_reading_goes_on_behind_a_line_that_is_left_out() -> None:
    moves = read(AT_ZERO, "G1 X10", "G0 G1 X20", "G1 X30")

    assert [x for _, x, _, _ in path(moves)] == [0, 10, 30]
    assert moves.doubts[0].changes_time


def test_what_says_no_more_than_the_language_changes_no_time() -> None:
    moves = read(AT_ZERO, "G90 G91.1 G17 G1 X5", "M2")

    assert [(doubt.code, doubt.changes_time) for doubt in moves.doubts] == [("centres-incremental", False)]
    assert path(moves)[-1] == (FEED, 5, 0, 0)


def test_a_cut_without_a_feed_is_named_and_kept_without_a_speed() -> None:
    moves = read("G21 G0 X0 Y0 Z0", "G1 X10", "F60 X20")

    assert codes(moves) == [(2, "feed-missing")]
    assert list(moves.speed) == [0, 0, 1]
    assert moves.doubts[0].changes_time


def test_after_inverse_time_a_feed_is_to_be_said_anew() -> None:
    moves = read(AT_ZERO, "G93 G1 X10 F2", "G94 X20", "X30 F60")

    assert codes(moves) == [(3, "feed-missing")]
    assert list(moves.speed[2:]) == [0, 1]


def test_a_feed_on_the_line_that_changes_units_is_in_the_old_ones() -> None:
    moves = read(AT_ZERO, "G20 G1 X1 F60")

    assert codes(moves) == [(2, "feed-before-units")]
    assert moves.speed[1] == 1


def test_a_program_that_names_no_units_is_taken_as_millimetres() -> None:
    moves = read("G0 X1 Y0 Z0", "G1 X2 F60")

    assert codes(moves) == [(1, "units-not-named")]
    assert moves.units == "mm"


def test_the_travel_from_a_place_that_nobody_knows_takes_no_time() -> None:
    moves = read("G21 G0 Z5", "X10 Y20", "X11")

    assert moves.start == (10, 20, 5)
    assert list(lengths(moves)) == [0, 0, 1]


def test_where_a_cut_begins_that_no_travel_led_to_is_named() -> None:
    moves = read("G21 G0 Z5 F60", "G1 X10", "G0 X20")

    assert codes(moves) == [(2, "start-unknown")]
    assert list(lengths(moves)) == [0, 10, 10]


def test_the_way_to_the_first_hole_takes_no_time() -> None:
    moves = read("G21 G0 Z5 F60", "G81 X10 Y20 Z-1 R2", "X11 Y20", "M2")

    assert codes(moves) == []
    assert moves.start == (10, 20, 5)
    assert list(lengths(moves)) == [0, 3, 3, 6, 1, 3, 3, 6]


def test_going_home_first_says_nothing_of_where_the_program_begins() -> None:
    moves = read("G21 G91 G28 Z0", "G90 G0 Z5", "X1 Y1", "M2")

    assert codes(moves) == [(1, "home-unknown")]
    assert moves.start == (1, 1, 5)
    assert lengths(moves).sum() == 0


def test_of_many_doubts_of_a_kind_the_rest_is_counted() -> None:
    moves = read(AT_ZERO, *["G1 G0 X1"] * 250)

    assert len(moves.doubts) == limits.MOST_OF_A_KIND + 2
    more = next(doubt for doubt in moves.doubts if doubt.code == "more")
    assert (more.line, more.facts["count"], more.changes_time) == (102, 150, True)


# what else the language means


def test_what_waits_changes_and_stops() -> None:
    moves = read(AT_ZERO, "T3", "M6 G4 P2", "G61.1 G1 X1", "G64 X2 M1", "M30", "G0 X9")

    assert list(moves.kind) == [RAPID, TOOL, DWELL, FEED, FEED, STOP]
    assert list(moves.tool) == [0, 3, 3, 3, 3, 3]
    assert list(moves.exact) == [False, False, False, True, False, False]
    assert codes(moves) == [(7, "after-the-end")]


def test_a_program_between_percent_signs_ends_at_the_second() -> None:
    moves = read("%", AT_ZERO, "G1 X1", "%", "this is not read")

    assert len(moves) == 2
    assert codes(moves) == [(5, "after-the-end")]
    assert [doubt.code for doubt in read(AT_ZERO, "G1 X1").doubts] == ["no-end"]
    assert read("%", AT_ZERO, "%").doubts == read(AT_ZERO, "M2").doubts == ()


@pytest.mark.parametrize("ends", ["\n", "\r\n", "\r"])
def test_lines_may_end_in_any_way(ends: str) -> None:
    moves = read_program(b"\xef\xbb\xbf" + ends.join([AT_ZERO, "g1 x1", "M2", ""]).encode())

    assert list(moves.line) == [1, 2]
    assert moves.doubts == ()


def test_systems_whose_origins_the_program_sets_lie_where_it_says() -> None:
    moves = read("G21 G10 L2 P1 X100 Y0 Z0", "G10 L2 P2 X130 Y0 Z0", AT_ZERO, "G55 G0 X0", "G54 G0 X0")

    assert [x for _, x, _, _ in path(moves)] == [0, 30, 0]
    assert codes(moves) == [(1, "coordinate-system")]


def test_an_offset_holds_beside_that_of_a_coordinate_system() -> None:
    moves = read(
        "G21 G10 L2 P1 X100 Y0 Z0",
        "G10 L2 P2 X130 Y0 Z0",
        AT_ZERO,
        "G55 G0 X5",
        "G92 X0",
        "G0 X1",
        "G54",
        "G0 X0",
        "M2",
    )

    assert [x for _, x, _, _ in path(moves)] == [0, 35, 36, 5]


def test_offsets_are_dropped_and_brought_back() -> None:
    moves = read("G21 G0 X4 Y0 Z0", "G92 X0", "G92.2", "G0 X0", "G92.3", "G0 X0", "G92.1", "G0 X1", "G92.3 G0 X1")

    assert [x for _, x, _, _ in path(moves)] == [4, 0, 4, 1, 1]


def test_the_numbers_of_a_cycle_stick_and_end_with_it() -> None:
    moves = read(AT_ZERO, "G0 Z5", "G99 G81 X1 Z-1 R2", "X2", "G82 X3 P1", "G80")

    assert codes(moves) == [(5, "cycle-without")]
    assert (moves.kind == FEED).sum() == 2


def test_pecks_go_back_to_r_each_time() -> None:
    moves = read(AT_ZERO, "G0 Z5", "G98 G83 X0 Z-2.5 R1 Q1.5", "M2")

    heights = [z for _, _, _, z in path(moves)[2:]]
    assert heights == pytest.approx([1, -0.5, 1, -0.5 + limits.PECK_SHORT, -2, 1, -2 + limits.PECK_SHORT, -2.5, 5])


def test_progress_is_told_by_lines() -> None:
    told: list[tuple[int, int]] = []

    read_program((AT_ZERO + "\n" + "G1 X1\n" * 119_999).encode(), lambda done, total: told.append((done, total)))

    assert told[-1] == (120_000, 120_000)
    assert [done for done, _ in told] == sorted(done for done, _ in told)
    assert len(told) >= 3


# what makes no difference


POINTS = st.tuples(*[st.integers(-400, 400).map(lambda value: value / 8)] * 3)


def program(points: list[tuple[float, float, float]], by: tuple[float, ...] = (0, 0, 0), scale: float = 1) -> Moves:
    """Travels, cuts, arcs and holes at these places, moved and in units of so many mm."""
    code, lines = "G21" if scale == 1 else "G20", []
    for at, point in enumerate(points):
        x, y, z = ((value + more) / scale for value, more in zip(point, by, strict=True))
        words = f"X{x:.9f} Y{y:.9f} Z{z:.9f}"
        match at % 4:
            case 0:
                lines.append(f"G0 {words}")
            case 1:
                lines.append(f"G1 {words} F{600 / scale:.9f}")
            case 2:
                lines.append(f"G3 X{x:.9f} Y{y:.9f} R{400 / scale:.9f}" if point[:2] != points[at - 1][:2] else "")
            case 3:
                high = (point[2] + by[2] + 5) / scale
                lines.append(f"G99 G82 {words} R{high:.9f} P0.5")
    return read(code, *lines, "M2")


def assert_alike(one: Moves, other: Moves, by: tuple[float, ...] = (0, 0, 0)) -> None:
    assert np.array_equal(one.kind, other.kind)
    assert np.allclose(one.to + np.array(by), other.to, rtol=0, atol=1e-6)
    assert np.allclose(one.speed, other.speed, rtol=0, atol=1e-7)
    assert np.allclose(one.sweep, other.sweep, rtol=0, atol=1e-6)
    assert np.allclose(lengths(one), lengths(other), rtol=0, atol=1e-6)
    assert [(doubt.line, doubt.code) for doubt in one.doubts] == [(doubt.line, doubt.code) for doubt in other.doubts]


@settings(max_examples=100, deadline=None)
@given(st.lists(POINTS, min_size=2, max_size=12), POINTS)
def test_a_program_that_is_moved_changes_nothing_but_its_places(
    points: list[tuple[float, float, float]], by: tuple[float, float, float]
) -> None:
    assert_alike(program(points), program(points, by), by)


@settings(max_examples=100, deadline=None)
@given(st.lists(POINTS, min_size=2, max_size=12))
def test_a_program_in_inches_is_the_same(points: list[tuple[float, float, float]]) -> None:
    inches = program(points, scale=25.4)

    assert_alike(program(points), inches)
    assert inches.units == "in"


@pytest.mark.parametrize(
    ("arc", "lies"), [("G2 X10 Y0 I3", "farther"), ("G2 X10 Y0 I7", "nearer"), ("G2 X10 Y0 R3", "short")]
)
def test_an_arc_that_does_not_close_says_which_way(arc: str, lies: str) -> None:
    _, facts = refused(f"G21 G0 X0 Y0 Z0 F1\n{arc}".encode())

    assert facts["lies"] == lies
