"""Plain lines read fast, compiled or not, come out as the interpreter reads them, on any mixture of lines."""

import sys
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from runboard.plan.program.language.fast import Fast
from runboard.plan.program.moves import Moves
from runboard.plan.program.read import Way, read_program
from runboard.run.refusal import Refused
from tests.examples import examples

NUMBERS = st.one_of(
    st.integers(-30, 30).map(str),
    st.floats(-200, 200).map(lambda value: f"{value:.3f}"),
    st.floats(-1, 1).map(lambda value: f"{value:.17f}"),
    st.sampled_from(
        [
            "0",
            "-0",
            "+1.",
            ".5",
            "-.25",
            "1 2",
            "0. 5",
            "007",
            "1e3",
            "",
            "-",
            ".",
            "1.2.3",
            "1" * 20,
            "[1+2]",
            "#1",
            "-#1",
        ]
    ),
)
WORD = st.tuples(st.sampled_from("XYZXYZXYZIJKRFSNGMPTEA"), st.sampled_from(["", "", " "]), NUMBERS).map("".join)
CODE = st.sampled_from(
    [
        "G0", "G1", "G2", "G3", "G00", "G01", "g1", "G 2", "G17", "G18", "G19", "G20", "G21", "G90", "G91", "G93", "G94", "G61.1",
        "G64", "G92 X1", "G92.1", "G4 P1", "G80", "G81 Z-1 R1", "M3", "M5", "M8", "M9", "M3 M5", "M6", "M0", "M2", "G5", "G54", "G55",
        "(a comment)", "(not closed", "(one (in another))", ";rest", "/", "%", "#1=2", "O100", "\t", "G38.2", "G53", "G28", "F100",
    ]
)  # fmt: skip
ANY = st.lists(st.one_of(WORD, CODE), max_size=6).map(" ".join)


@st.composite
def plain(draw: Any) -> str:
    """A line that mostly means something."""
    words = [draw(st.sampled_from(["", "G1", "G1", "G0", "G2", "G3", "N10 G1", "n7"]))]
    for letter in draw(st.lists(st.sampled_from("XYZ"), unique=True)):
        words.append(f"{letter}{draw(st.integers(-20, 20))}")
    if words[0] in ("G2", "G3"):
        kind = draw(st.sampled_from(["IJ", "IK", "JK", "R", "I"]))
        words += [f"{letter}{draw(st.integers(-9, 9))}" for letter in kind]
    words += draw(
        st.sampled_from([[], [], [], ["F200"], ["S1000"], ["M3"], ["(said)"], [";said"], ["G91"], ["G90"], ["G18"]])
    )
    return draw(st.sampled_from([" ", "", "  "])).join(words)


HEAD = ["G21 G90 G0 X0 Y0 Z0 F100"]
PROGRAMS = st.tuples(
    st.sampled_from([[], HEAD, ["%", *HEAD], ["G20 G0 X0 Y0 Z0 F10"]]),
    st.lists(st.one_of(plain(), plain(), ANY), max_size=25),
).map(lambda parts: "\n".join([*parts[0], *parts[1]]))


@pytest.fixture(autouse=True, scope="module")
def _always_fast() -> Any:
    """So that the interpreter never goes on alone for a while."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("runboard.plan.program.language.fast._FEW", 0)
        yield


def outcome(content: bytes, way: Way) -> Moves | tuple[str, Any]:
    try:
        return read_program(content, way=way)
    except Refused as refused:
        return refused.code, refused.facts


def assert_same(one: Any, other: Any) -> None:
    assert type(one) is type(other)
    if not isinstance(one, Moves):
        assert one == other
        return
    for name in ("kind", "line", "to", "speed", "plane", "centre", "tool", "exact"):
        assert np.array_equal(getattr(one, name), getattr(other, name)), name
    assert np.allclose(one.sweep, other.sweep, rtol=0, atol=1e-12)
    assert (one.doubts, one.start, one.lines, one.units) == (other.doubts, other.start, other.lines, other.units)


@settings(max_examples=examples(100), deadline=None)
@given(PROGRAMS)
def test_plain_python_and_the_interpreter_agree(text: str) -> None:
    assert_same(outcome(text.encode(), "plain"), outcome(text.encode(), "interpreted"))


@settings(max_examples=examples(100), deadline=None)
@given(PROGRAMS)
def test_machine_code_and_the_interpreter_agree(text: str) -> None:
    assert_same(outcome(text.encode(), "compiled"), outcome(text.encode(), "interpreted"))


@pytest.mark.parametrize(
    "line",
    [
        "G3 X2.0019 Y0 I1", "G3 X2.0021 Y0 I1", "G3 X2.003 Y0 I1", "G2 X2.003 Y0 R1", "G2 X0 Y0 R1", "G3 X0 Y0 I1", "G3 X0 Y0 I0",
        "G3 Z3 I1", "G3 Z3 X0 Y0 I1", "G3 X2 K1", "G3 X2 I1 K0", "G18 G2 X0 Z2 K1", "G19 G2 Y2 Z0 J1", "G1 X1 I1", "G1 R1", "I1", "G1",
        "G1 X10000000", "G1 X10000001", "N10.5 G1 X1", "N-1 G1 X1", "N 10 G1 X1", "X1 N10", "G1.0 X1", "G01. X1", "G1.00001 X1",
        "M3.0", "M3 M5", "M8 M9", "M7 M3", "F-1", "F0 G1 X1", "S-1", "G1 X1 F0", "X1.23456789012345678", "X.00000000000000000000001",
        "X0.1 Y0.2 Z0.3", "X1 (said) 2", "X1 ; 2", "(a(b)c", "@", "`", "[", "{", "G1 X\t1\tY 2", "G1 X1\fY2", "x\u00e9", "G4", "G1G90X1",
    ],
)  # fmt: skip
@pytest.mark.parametrize("way", ["plain", "compiled"])
def test_lines_at_the_edge_of_being_plain(line: str, way: Way) -> None:
    content = "\n".join([*HEAD, line, "X3 Y4", "G91 X0.1", "G0 Z1"]).encode("latin-1")

    assert_same(outcome(content, way), outcome(content, "interpreted"))


@settings(max_examples=examples(80), deadline=None)
@given(st.one_of(st.binary(max_size=200), st.text("GXYZIJKRNF0123456789.-+ \n()%;#[]", max_size=200).map(str.encode)))
def test_all_three_agree_on_any_bytes(content: bytes) -> None:
    interpreted = outcome(content, "interpreted")

    assert_same(outcome(content, "plain"), interpreted)
    assert_same(outcome(content, "compiled"), interpreted)


def test_where_compiling_fails_the_interpreter_reads_it_all(monkeypatch: pytest.MonkeyPatch) -> None:
    content = "\n".join([*HEAD, *["G1 X1", "Y1"] * 15_000]).encode()
    before = read_program(content)
    monkeypatch.setitem(sys.modules, "runboard.plan.program.language.compiled", None)

    assert_same(read_program(content), before)


def test_a_mixture_is_read_fast_where_it_is_plain(monkeypatch: pytest.MonkeyPatch) -> None:
    """What the fuzzed programs compare is compared: plain lines do not all fall to the interpreter."""
    alone = []
    read = Fast.read

    def counted(self: Fast, at: int, number: int, until: int) -> tuple[int, int]:
        found = read(self, at, number, until)
        alone.append(found[1] - number)
        return found

    monkeypatch.setattr(Fast, "read", counted)
    lines = [
        *HEAD,
        *["G1 X1", "X2 Y3 Z-1 F200", "G2 X4 R8", "G3 X4 Y5 I0 J1", "(said)", "", "G0 Z5", "N9 G1 Z-1;"] * 5,
        "M2",
    ]

    moves = read_program("\n".join(lines).encode(), way="plain")

    assert max(alone) == 40
    assert len(moves) == 31
