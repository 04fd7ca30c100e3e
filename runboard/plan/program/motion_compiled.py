"""The passes of ``motion_kernel`` as machine code, kept on disk for the next time. Imported only where it is wanted: importing it
raises ImportError where there is no compiler."""

from collections.abc import Callable
from functools import cache
from pathlib import Path
from types import FunctionType
from typing import Any

import numba
from numba import boolean, float64, uint8
from numba.core import types
from numba.extending import register_jitable

from runboard.plan.program import motion_kernel
from runboard.plan.schedule.rule.kernel.keeping import kept

_FLOATS, _PLACES = float64[::1], float64[:, ::1]
_BYTES = uint8[::1]
_tuple: Any = types.Tuple
_MOVES = _tuple((_BYTES, _PLACES, _FLOATS, _BYTES, _PLACES, _FLOATS, boolean[::1], _FLOATS))
_LIMITS = _tuple((_FLOATS, _FLOATS, float64, float64))


@cache
def compiled() -> Callable[..., None]:
    """``seconds_of``, compiled, for arrays as ``Moves`` has them, each in one piece. Other threads go on while it works."""
    return kept("motion", Path(motion_kernel.__file__), _made)


def _made(is_kept: bool) -> Callable[..., None]:
    form = numba.void(_MOVES, _LIMITS, _FLOATS, _FLOATS)
    made: Any = numba.njit(form, nogil=True, cache=is_kept, error_model="numpy")(motion_kernel.seconds_of)
    entry: Callable[..., None] = made
    return entry


for _one in list(vars(motion_kernel).values()):
    if (
        isinstance(_one, FunctionType)
        and _one.__module__ == motion_kernel.__name__
        and _one is not motion_kernel.seconds_of
    ):
        register_jitable(_one)
