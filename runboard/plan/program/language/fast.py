"""Plain lines fast: the interpreter's state handed to ``plain_lines`` and taken back."""

from collections.abc import Callable
from typing import Any

import numpy as np

from runboard.plan.program.language.interpreter import Interpreter
from runboard.plan.program.language.limits import ARC_INCHES, ARC_MM
from runboard.plan.program.language.plain_lines import REAL, WHOLE, WHOLE_KNOWN, Rows, read_plain
from runboard.plan.program.language.state import MM_PER_INCH, State

STATE = np.dtype([(name, "i8") for name in (*WHOLE, *WHOLE_KNOWN)] + [(name, "f8") for name in REAL], align=True)
# After so few plain lines at a time it is not worth handing the state over: the interpreter goes on alone for a while.
_FEW, _MOST_ALONE = 8, 256


class Fast:
    """Reads the plain lines of a program for an interpreter."""

    def __init__(self, content: bytes, interpreter: Interpreter, is_compiled: bool) -> None:
        self._interpreter = interpreter
        self._text: Any = content
        self._read: Callable[..., None] = read_plain
        self._states: Any = np.zeros(1, STATE).view(np.recarray)
        self._words = np.zeros(26)
        if is_compiled:
            from runboard.plan.program.language.compiled import compiled

            self._text, self._read = np.frombuffer(content, np.uint8), compiled()
            self._states = np.zeros(1, STATE)
        self._alone = 0  # lines that the interpreter is to read by itself first
        self._next_alone = 1

    def read(self, at: int, number: int, until: int) -> tuple[int, int]:
        """(from which byte on, after how many lines) the interpreter has to go on, from there at ``at`` and ``number``, no
        farther than to line ``until``."""
        state, blocks = self._interpreter.state, self._interpreter.moving.blocks
        if self._alone or not state.are_units_named or state.is_inverse:
            self._alone = max(self._alone - 1, 0)
            return at, number
        self._hand_over(state, at, number, until, blocks.count)
        self._read(self._text, self._states, Rows(**blocks.arrays), self._words)
        found = dict(zip(STATE.names or (), self._states[0].item(), strict=True))
        blocks.count = found["count"]
        self._take_back(state, found)
        if found["number"] - number < _FEW:
            self._alone, self._next_alone = self._next_alone, min(2 * self._next_alone, _MOST_ALONE)
        else:
            self._alone, self._next_alone = 0, 1
        return found["at"], found["number"]

    def _hand_over(self, state: State, at: int, number: int, until: int, count: int) -> None:
        motion = state.motion // 10 if state.motion in (0, 10, 20, 30) else -1
        gap = ARC_MM if state.scale == 1.0 else ARC_INCHES * MM_PER_INCH
        offsets = (state.offsets[axis] + state.shift[axis] for axis in range(3))
        self._states[0] = (
            at, number, until, count, state.is_absolute, motion, state.plane, state.is_exact, state.tool, state.spindle,
            *state.is_known, *state.at, *offsets, state.scale, state.feed, gap,
        )  # fmt: skip

    def _take_back(self, state: State, found: dict[str, Any]) -> None:
        state.at = [found["x"], found["y"], found["z"]]
        state.is_absolute, state.plane = bool(found["absolute"]), found["plane"]
        state.feed, state.spindle = found["feed"], found["spindle"]
        if found["motion"] >= 0:
            state.motion = 10 * found["motion"]
