"""What a program does, as arrays with names: one entry a block, in the order in which the machine does them."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from runboard.plan.program.doubt import Doubt as Doubt

# What a block is.
RAPID, FEED, DWELL, TOOL, STOP = range(5)
# The plane of an arc: its first, second and third axis. PLANES[0] is XY (G17), then ZX (G18) and YZ (G19).
PLANES = ((0, 1, 2), (2, 0, 1), (1, 2, 0))
NO_ARC = 255

Array = NDArray[Any]


@dataclass(frozen=True)
class Moves:
    """``n`` blocks. ``kind``: uint8 of n. ``line``: int32 of n, from 1. ``to``: float64 of (n, 3), where each ends, in mm of the
    program's own coordinates (offsets of G54 to G59.3 are the machine's and not known, those of G92 are reckoned in); a block
    begins where the one before ended, the first at ``start``.

    ``speed``: float64 of n, mm/s as commanded, for a FEED, 0 where nobody said it (a doubt); for a DWELL its seconds; 0 for what has none. Inverse time (G93) is
    turned into the speed that takes so long. ``plane``: uint8 of n, NO_ARC for a straight move, else 0, 1, 2 as in PLANES;
    ``centre``: float64 of (n, 2), of an arc, along the plane's first and second axis; ``sweep``: float64 of n, the angle that an arc
    or helix goes through, anticlockwise positive, of a full circle 2π; ``tool``: int32 of n, the tool in the spindle (0 none known).
    ``exact``: bool of n, whether the machine stops at the end of this block (G61.1).
    ``start`` is where the first travel along each axis leads, so that the way there from a place that nobody knows is none.
    ``lines`` is how many were read, ``doubts`` are in the order of their lines."""

    kind: Array
    line: Array
    to: Array
    speed: Array
    plane: Array
    centre: Array
    sweep: Array
    tool: Array
    exact: Array
    start: tuple[float, float, float]
    lines: int
    units: str  # 'mm' or 'in': those the program is written in, the last that it names
    doubts: Sequence[Doubt] = ()

    def __len__(self) -> int:
        return len(self.kind)


def no_moves(count: int) -> dict[str, Array]:
    """Arrays for so many blocks, by the names of ``Moves``."""
    return {
        "kind": np.zeros(count, np.uint8),
        "line": np.zeros(count, np.int32),
        "to": np.zeros((count, 3)),
        "speed": np.zeros(count),
        "plane": np.full(count, NO_ARC, np.uint8),
        "centre": np.zeros((count, 2)),
        "sweep": np.zeros(count),
        "tool": np.zeros(count, np.int32),
        "exact": np.zeros(count, np.bool_),
    }
