"""What machine programs mean, against NISTIR 6556: T. R. Kramer, F. M. Proctor, E. Messina, The NIST RS274/NGC Interpreter,
Version 3, 17 August 2000, a work of the United States government. Its programs are in data/nistir6556."""

import math
import re
from pathlib import Path

import numpy as np
import pytest

from runboard.plan.program.language.interpreter import Interpreter
from runboard.plan.program.moves import DWELL, FEED, NO_ARC, RAPID, STOP, TOOL, Moves
from runboard.plan.program.read import read_program
from tests.core.programs import codes, lengths, path, read
from tests.outside.said import calculated, from_memory, published

DATA = Path(__file__).parent / "data" / "nistir6556"
REPORT = "NISTIR 6556 (Kramer, Proctor, Messina 2000)"


def hello_world() -> Moves:
    return read_program((DATA / "c1-hello-world.ngc").read_bytes())


# C.1, 'hello world': the program is the report's, what it comes to was reckoned from it by another interpreter.

HELLO = f"the program of {REPORT}, C.1"


@calculated(HELLO, {"cut": 183.4305, "G1": 126.9785, "G2": 44.6710, "G3": 11.7810, "rapid": 202.0528}, within=5e-5)
def test_the_lengths_of_hello_world(what: str) -> float:
    moves, long = hello_world(), lengths(hello_world())
    chosen = {
        "cut": moves.kind == FEED,
        "G1": (moves.kind == FEED) & (moves.plane == NO_ARC),
        "G2": (moves.plane != NO_ARC) & (moves.sweep < 0),
        "G3": (moves.plane != NO_ARC) & (moves.sweep > 0),
        "rapid": moves.kind == RAPID,
    }
    return float(long[chosen[what]].sum())


@calculated(HELLO, {"F20": 9.1715}, within=5e-5)
def test_the_minutes_of_hello_world_at_its_feed(_: str) -> float:
    moves = hello_world()
    cut = moves.kind == FEED
    return float((lengths(moves)[cut] / moves.speed[cut]).sum() / 60)


@calculated(
    HELLO,
    {
        19: (13.5, 2.5, 270.0),
        32: (32.5, 2.5, -360.0),
        43: (57.5, 2.5, -360.0),
        49: (66.5, 0.8775, -77.364),
        59: (79.5, 2.5, -180.0),
    },
)
def test_the_arcs_of_hello_world(line: int) -> tuple[float, ...]:
    moves = hello_world()
    at = int(np.flatnonzero(moves.line == line)[0])
    return (
        round(float(moves.centre[at, 0]), 4),
        round(float(moves.centre[at, 1]), 4),
        round(math.degrees(moves.sweep[at]), 3),
    )


@calculated(HELLO, {"G1": 29, "G2": 4, "G3": 1})
def test_how_many_cuts_hello_world_has(what: str) -> int:
    moves = hello_world()
    cuts = moves.kind == FEED
    chosen = {"G1": cuts & (moves.plane == NO_ARC) & (lengths(moves) > 0), "G2": moves.sweep < 0, "G3": moves.sweep > 0}
    return int(chosen[what].sum())


def test_hello_world_is_without_doubt() -> None:
    assert hello_world().doubts == ()
    assert hello_world().lines == 62


# C.2, expressions: each line says what X should be.


def stated() -> dict[int, str]:
    """What the report prints, by the line's number."""
    lines = (DATA / "c2-expressions.ngc").read_text("ascii").splitlines()
    found = {at: re.search(r"x should be (-?[0-9]+(?:\.[0-9]+)?)", line) for at, line in enumerate(lines, 1)}
    return {at: said[1] for at, said in found.items() if said}


def test_the_report_states_so_many() -> None:
    assert len(stated()) == 44


@published(f"{REPORT}, C.2", {line: float(printed) for line, printed in stated().items()})
def test_what_x_should_be(line: int) -> float:
    """To as many places as the report prints."""
    moves = read_program((DATA / "c2-expressions.ngc").read_bytes())
    found = float(moves.to[int(np.flatnonzero(moves.line == line)[0]), 0])
    return round(found, len(stated()[line].partition(".")[2]))


# 3.5.3: arcs.


@published(f"{REPORT}, 3.5.3.2", {"centre x": 10.0, "centre y": 11.0, "radius": 5.0, "is a helix": 1.0}, within=1e-12)
def test_an_arc_by_its_centre(what: str) -> float:
    moves = read("G21 G0 X7 Y7 Z0", "G17 G2 x 10 y 16 i 3 j 4 z 9 F100")
    x, y = moves.centre[1]
    found = {"centre x": x, "centre y": y, "radius": math.hypot(7 - x, 7 - y), "is a helix": moves.to[1, 2] == 9}
    return float(found[what])


@published(f"{REPORT}, 3.5.3.1: up to 180° for a positive R, 180° to 359.999° for a negative", {20: True, -20: False})
def test_an_arc_by_its_radius_goes_the_shorter_way(radius: int) -> bool:
    moves = read("G21 G0 X0 Y0 Z0", f"G17 G2 x 10 y 15 r {radius} z 5 F100")
    assert math.dist(moves.centre[1], (0, 0)) == pytest.approx(20)
    assert math.dist(moves.centre[1], (10, 15)) == pytest.approx(20)
    assert moves.sweep[1] < 0
    return bool(abs(moves.sweep[1]) <= math.pi)


@published(
    f"{REPORT}, 3.5.3.1: it is an error if the end is where the arc begins", {"G2 X0 Y0 R5": "arc-by-radius-closed"}
)
def test_an_arc_by_its_radius_cannot_be_a_full_circle(line: str) -> str:
    return codes(read("G21 G0 X0 Y0 Z0 F100", line))[0][1]


@published(
    f"{REPORT}, 3.5.3.2: the two radii differ by more than 0.002 mm or 0.0002 inch",
    {("G21", 0.0019): False, ("G21", 0.0021): True, ("G20", 0.00019): False, ("G20", 0.00021): True},
)
def test_how_far_an_arc_may_be_from_closing(units: str, off: float) -> bool:
    return (2, "arc-open") in codes(read(f"{units} G0 X0 Y0 Z0 F10", f"G3 X{2 - off:.5f} Y0 I1"))


@published(f"{REPORT}, 3.5.3.2: a full circle by its centre", {"G2 X0 Y0 I3": -2 * math.pi, "G3 X0 Y0 I3": 2 * math.pi})
def test_a_full_circle(line: str) -> float:
    return float(read("G21 G0 X0 Y0 Z0 F100", line).sweep[1])


# 3.5.4 to 3.5.8, 3.5.16.5, 3.5.19: time, units, feed.


@published(f"{REPORT}, 3.5.4: P in seconds, less than nothing is an error", {"P2.5": 2.5, "P-1": None})
def test_a_dwell(word: str) -> float | None:
    moves = read("G21", f"G4 {word}")
    assert (codes(moves) == []) == (word == "P2.5")
    return float(moves.speed[0]) if len(moves) else None


@published(f"{REPORT}, 3.5.7", {"G20": 25.4, "G21": 1.0}, within=1e-12)
def test_units(code: str) -> float:
    return float(read(f"{code} G0 X0 Y0 Z0", "X1").to[1, 0])


@published(
    f"{REPORT}, 3.5.19: under G93 a move takes 1/F minutes, F2.0 half a minute", {2.0: 0.5, 4.0: 0.25}, within=1e-12
)
def test_inverse_time(feed: float) -> float:
    moves = read("G21 G0 X0 Y0 Z0", f"G93 G1 X30 Y40 F{feed}")
    return float(lengths(moves)[1] / moves.speed[1] / 60)


@published(
    f"{REPORT}, 3.5.19: under G93 every G1, G2 and G3 needs an F, G0 none, canned cycles are errors",
    {"G1 X5": "feed-missing-g93", "G0 X5": None, "G81 X5 Z-1 R1": "cycle-in-g93"},
)
def test_inverse_time_line_by_line(line: str) -> str | None:
    return dict(codes(read("G21 G0 X0 Y0 Z0", "G93 G1 X1 F2", line))).get(3)


@published(f"{REPORT}, 3.5.19: G94 is units a minute", {"G94 G21": 2.0, "G94 G20": 50.8}, within=1e-12)
def test_units_a_minute(codes_: str) -> float:
    return float(read(f"{codes_} G0 X0 Y0 Z0", "G1 X1 F120").speed[1])


@calculated(
    f"{REPORT}, 3.5.17: I and J always count from where the arc begins", {"G90": (10.0, 5.0), "G91": (10.0, 5.0)}
)
def test_centres_are_incremental(mode: str) -> tuple[float, float]:
    x, y = read("G21 G0 X5 Y5 Z0 F100", f"{mode} G3 {'X15 Y5' if mode == 'G90' else 'X10 Y0'} I5").centre[1]
    return float(x), float(y)


@calculated(
    f"{REPORT}, 3.5.16.8 and 3.5.17: K of G87 is a height under G90, counts from Z under G91",
    {"G90": -2.0, "G91": -3.0},
)
def test_the_k_of_back_boring(mode: str) -> float:
    words = "X0 Y0 Z-5 R1 I1 J0 K-2" if mode == "G90" else "X0 Y0 Z-5 R0 I1 J0 K2"
    moves = read("G21 G0 X0 Y0 Z0 F100 M3 S100", f"{mode} G87 {words}")
    return float(moves.to[moves.kind == FEED][0, 2])


@published(f"{REPORT}, 3.5.16.5: S = F × threads a unit; F150 with 2 threads a mm is S300", {"S300 F150": 2.0})
def test_tapping_keeps_its_pitch(words: str) -> float:
    """Both ways at the feed: so many turns a mm."""
    moves = read(f"G21 G0 X0 Y0 Z5 M3 {words}", "G84 X0 Y0 Z-5 R1")
    cuts = moves.kind == FEED
    assert cuts.sum() == 2
    assert set(moves.speed[cuts]) == {150 / 60}
    return 300 / float(moves.speed[cuts][0] * 60)


# 3.5.18: axis offsets.


@published(f"{REPORT}, 3.5.18: at X4, G92 x7 makes the offset -3, then G92 x9 makes it -5", {1: -3.0, 2: -5.0})
def test_axis_offsets(times: int) -> float:
    moves = read("G21 G0 X4 Y0 Z0", *["G92 x7", "G92 x9"][:times], "G0 X0")
    return float(moves.to[-1, 0])


# 3.4, Table 4: modal groups.

GROUPS = {
    "G0 G1 X1": True, "G2 G80 X1": True, "G38.2 G81 X1": True, "G17 G18": True, "G90 G91": True, "G93 G94": True, "G20 G21": True,
    "G40 G41": True, "G43 G49 H1": True, "G98 G99": True, "G54 G59.3": True, "G61 G61.1": True, "G61 G64": True,
    "G4 G92 P1 X1": True, "G28 G30": True, "G53 G4 P1": True, "M0 M2": True, "M30 M60": True, "M3 M4": True, "M8 M9": True,
    "M48 M49": True, "G17 G90 G94 G21 G40 G49 G98 G54 G64": False, "M6 T1 M3 M8 M48": False,
}  # fmt: skip


@published(f"{REPORT}, Table 4: two of one group on a line are an error", GROUPS)
def test_codes_of_one_group_exclude_each_other(line: str) -> bool:
    return "same-group" in [code for _, code in codes(read("G21 G0 X0 Y0 Z0 F100", line))]


# 3.6.1: the end.


@published(
    f"{REPORT}, 3.6.1",
    {
        "plane": 0,
        "is_absolute": True,
        "is_inverse": False,
        "spindle": 5,
        "motion": 10,
        "offsets": [0.0, 0.0, 0.0],
        "system": 540,
    },
)
def test_what_the_end_leaves(what: str) -> object:
    interpreter = Interpreter()
    for number, line in enumerate(("G21 G0 X1 Y1 Z1 M3 F100", "G92 X0", "G18 G91 G93 G55 G0 X1", "M2"), 1):
        interpreter.read(line.encode(), number)
    return getattr(interpreter.state, what)


# 3.8, Table 8: the order of what is on a line.


def ended(*lines: str) -> Interpreter:
    interpreter = Interpreter()
    for number, line in enumerate(lines, 1):
        interpreter.read(line.encode(), number)
    return interpreter


@published(
    f"{REPORT}, Table 8: what comes before what, wherever it stands on the line",
    {
        "X10 F600 G1": "feed, motion", "G4 P1 M6 T2": "tool, dwell", "M0 X5 G0": "motion, stop", "G91 X5 G1": "mode, motion",
        "G18 X2 Z0 I1 G2": "plane, motion", "G20 X1 G1": "units, motion",
    },
)  # fmt: skip
def test_the_order_of_a_line(line: str) -> str:
    """By what each pair leaves, were it the other way round it would be another."""
    moves = ended("G21 G0 X0 Y0 Z0 F60", line).moving.blocks.filled()
    kinds = list(moves["kind"][1:])
    match line:
        case "X10 F600 G1":
            assert moves["speed"][1] == 10
            return "feed, motion"
        case "G4 P1 M6 T2":
            assert kinds == [TOOL, DWELL] and moves["tool"][2] == 2
            return "tool, dwell"
        case "M0 X5 G0":
            assert kinds == [RAPID, STOP]
            return "motion, stop"
        case "G91 X5 G1":
            assert ended("G21 G0 X5 Y0 Z0 F60", line).state.at[0] == 10
            return "mode, motion"
        case "G18 X2 Z0 I1 G2":
            assert moves["plane"][1] == 1
            return "plane, motion"
    assert moves["to"][1, 0] == 25.4
    return "units, motion"


# 3.3.2: numbers and expressions.


@published(
    f"{REPORT}, 3.3.2",
    {
        "fix[2.8]": 2.0, "fix[-2.8]": -3.0, "fup[2.8]": 3.0, "fup[-2.8]": -2.0, "[2.0 / 3 * 1.5 - 5.5 / 11.0]": 0.5,
    },
    within=1e-12,
)  # fmt: skip
def test_real_values(value: str) -> float:
    return float(read("G21 G0 X0 Y0 Z0", f"X{value}").to[1, 0])


@from_memory(f"{REPORT}, 3.3.2.3: what MOD leaves is never less than nothing", {"[-7 mod 3]": 2.0, "[7 mod -3]": 1.0})
def test_the_rest_of_a_division(value: str) -> float:
    return float(read("G21 G0 X0 Y0 Z0", f"X{value}").to[1, 0])


@published(f"{REPORT}, 3.3: spaces and tabs mean nothing", {"g0x +0. 12 34y 7": (0.1234, 7.0)})
def test_strange_looking_input(line: str) -> tuple[float, float]:
    to = read("g21", line).to[0]
    return float(to[0]), float(to[1])


# 3.5.16: canned cycles.

FIRST_CYCLE = [("rapid", 4, 5, 3), ("rapid", 4, 5, 2.8), ("feed", 4, 5, 1.5), ("rapid", 4, 5, 3)]


def done(moves: Moves) -> list[tuple[object, ...]]:
    names = {RAPID: "rapid", FEED: "feed", DWELL: "dwell", STOP: "stop", TOOL: "tool"}
    return [(names[kind], *to) for kind, *to in path(moves)[1:]]


@published(f"{REPORT}, 3.5.16.2, example 1", dict(enumerate(FIRST_CYCLE)))
def test_a_drilling_cycle(at: int) -> tuple[object, ...]:
    found = done(read("G21 G0 X1 Y2 Z3 F100", "G90 G81 G98 X4 Y5 Z1.5 R2.8"))
    assert len(found) == len(FIRST_CYCLE)
    return found[at]


@calculated(f"{REPORT}, 3.5.16.2, example 1", {"feed": 1.3, "rapid": math.sqrt(18) + 0.2 + 1.5}, within=1e-9)
def test_how_long_the_drilling_cycle_is(what: str) -> float:
    moves = read("G21 G0 X1 Y2 Z3 F100", "G90 G81 G98 X4 Y5 Z1.5 R2.8")
    return float(lengths(moves)[1:][moves.kind[1:] == (FEED if what == "feed" else RAPID)].sum())


SECOND_CYCLE = [("rapid", 1, 2, 4.8)] + [
    one
    for x, y in ((5, 7), (9, 12), (13, 17))
    for one in (("rapid", x, y, 4.8), ("feed", x, y, 4.2), ("rapid", x, y, 4.8))
]


@from_memory(f"{REPORT}, 3.5.16.2, example 2", dict(enumerate(SECOND_CYCLE)))
def test_three_holes_in_a_row(at: int) -> tuple[object, ...]:
    found = done(read("G21 G0 X1 Y2 Z3 F100", "G91 G81 G98 X4 Y5 Z-0.6 R1.8 L3"))
    assert len(found) == len(SECOND_CYCLE)
    return found[at]


@published(f"{REPORT}, 3.5.16.3: G82 waits P seconds at the bottom", {"G82": 1.5})
def test_a_dwell_at_the_bottom(code: str) -> float:
    moves = read("G21 G0 X0 Y0 Z3 F100", f"{code} X4 Y5 Z-1 R2 P1.5")
    at = int(np.flatnonzero(moves.kind == DWELL)[0])
    assert moves.to[at, 2] == -1
    return float(moves.speed[at])


# C.3 is a torture test of canned cycles in all three planes; this is of its kind, written for this test.


@pytest.mark.parametrize(("plane", "axes"), [("G17", "XYZ"), ("G18", "ZXY"), ("G19", "YZX")])
@pytest.mark.parametrize("code", range(81, 90))
@pytest.mark.parametrize("mode", ["G90", "G91"])
def test_canned_cycles_are_the_same_in_each_plane(plane: str, axes: str, code: int, mode: str) -> None:
    first, second, third = axes
    offsets = dict(zip("XYZ", "IJK", strict=True))
    aside = f"{offsets[first]}1 {offsets[second]}0 {offsets[third]}0.5" if code == 87 else ""

    def drill(a: str, b: str, c: str, which: str, more: str) -> Moves:
        return read(
            f"G21 {which} G0 {a}1 {b}2 {c}3 F100 M3",
            f"{mode} G99 G{code} {a}4 {b}5 {c}-1 R2 P1 Q0.4 {more} L2",
            f"{a}1",
            f"G98 {b}2 R2.5",
            "G80",
        )

    moves = drill(first, second, third, plane, aside)
    plain = drill("X", "Y", "Z", "G17", "I1 J0 K0.5" if code == 87 else "")

    order = ["XYZ".index(one) for one in axes]
    assert np.allclose(moves.to[:, order], plain.to)
    assert (moves.kind == plain.kind).all()
    assert (moves.kind == FEED).any()
    assert {code for _, code in codes(moves)} <= {"word-idle", "out-by-hand", "cycle-returns"}


# Appendix B, Table 12: corners of a contour and the arcs between them.


@calculated(f"{REPORT}, appendix B, Table 12", {"G3 X2 Y3 I1": (1.0, 3.0), "G2 X3 Y2 J-1": (2.0, 2.0)})
def test_arcs_of_a_contour(line: str) -> tuple[float, float]:
    """Each is a half or a quarter circle of radius 1 that closes, from where its centre has to be."""
    start = "X0 Y3" if "I1" in line else "X2 Y3"
    moves = read(f"G21 G0 {start} Z0 F100", line)
    assert codes(moves) == []
    assert math.dist(moves.centre[1], moves.to[1, :2]) == pytest.approx(1)
    return float(moves.centre[1, 0]), float(moves.centre[1, 1])
