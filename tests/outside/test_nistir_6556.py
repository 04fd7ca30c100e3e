"""What machine programs mean, against NISTIR 6556: T. R. Kramer, F. M. Proctor, E. Messina, The NIST RS274/NGC Interpreter,
Version 3, 17 August 2000, a work of the United States government. Its programs are in data/nistir6556."""

import math
import re
from pathlib import Path

import numpy as np

from runboard.plan.program.moves import FEED, NO_ARC, RAPID, Moves
from runboard.plan.program.read import read_program
from tests.core.programs import lengths
from tests.outside.said import calculated, published

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
