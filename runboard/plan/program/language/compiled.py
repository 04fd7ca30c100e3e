"""The reader of plain lines as machine code, kept on disk for the next time. Imported only where it is wanted: importing it
raises ImportError where there is no compiler."""

from collections.abc import Callable
from functools import cache
from pathlib import Path
from types import FunctionType
from typing import Any

import numba
from numba import boolean, float64, int32, uint8
from numba.extending import register_jitable

from runboard.plan.program.language import arcs, plain_lines
from runboard.plan.program.language.fast import STATE
from runboard.plan.schedule.rule.kernel.keeping import kept

# No function asks for memory or divides by what may be nothing.
_OPTIONS: dict[str, Any] = {"_nrt": False, "error_model": "numpy"}
_types: Any = numba.types
_ROWS = _types.NamedTuple(
    (
        uint8[::1], int32[::1], float64[:, ::1], float64[::1], uint8[::1], float64[:, ::1], float64[::1], int32[::1], boolean[::1],
    ),
    plain_lines.Rows,
)  # fmt: skip
# A program's bytes are read only.
_TEXT = numba.types.Array(uint8, 1, "C", readonly=True)


@cache
def compiled() -> Callable[..., None]:
    """``read_plain``, compiled. Other threads go on while it works."""
    return kept("program", Path(__file__).parent.parent, _made)


def _made(is_kept: bool) -> Callable[..., None]:
    state = numba.types.Array(numba.from_dtype(STATE), 1, "C")
    form = numba.void(_TEXT, state, _ROWS, float64[::1])
    made: Callable[..., None] = numba.njit(form, nogil=True, cache=is_kept, **_OPTIONS)(plain_lines.read_plain)
    return made


for _module in (arcs, plain_lines):
    for _one in list(vars(_module).values()):
        is_own = isinstance(_one, FunctionType) and _one.__module__ == _module.__name__
        if is_own and _one is not plain_lines.read_plain:
            register_jitable(**_OPTIONS)(_one)
