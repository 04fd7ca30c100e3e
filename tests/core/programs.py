"""Programs for tests: read from lines, and what their moves come to."""

from typing import Any

import numpy as np

from runboard.plan.program.moves import NO_ARC, PLANES, Moves
from runboard.plan.program.read import read_program


def read(*lines: str) -> Moves:
    """What these lines do."""
    return read_program("\n".join(lines).encode())


def codes(moves: Moves) -> list[tuple[int, str]]:
    """Each doubt's line and code, but for the missing end."""
    return [(doubt.line, doubt.code) for doubt in moves.doubts if doubt.code != "no-end"]


def begins(moves: Moves) -> Any:
    """Where each block begins, (n, 3)."""
    return np.vstack([moves.start, moves.to[:-1]]) if len(moves) else moves.to


def lengths(moves: Moves) -> Any:
    """How long each block is, mm."""
    start, found = begins(moves), np.zeros(len(moves))
    for at in range(len(moves)):
        if moves.plane[at] == NO_ARC:
            found[at] = np.linalg.norm(moves.to[at] - start[at])
        else:
            first, second, third = PLANES[moves.plane[at]]
            across = np.hypot(start[at, first] - moves.centre[at, 0], start[at, second] - moves.centre[at, 1])
            found[at] = np.hypot(across * moves.sweep[at], moves.to[at, third] - start[at, third])
    return found


def path(moves: Moves) -> list[tuple[int, float, float, float]]:
    """Each block's kind and where it ends."""
    return [(int(kind), *(round(float(one), 9) for one in to)) for kind, to in zip(moves.kind, moves.to, strict=True)]
