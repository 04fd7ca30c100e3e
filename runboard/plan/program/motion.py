"""How long a program takes on a machine whose axes gain and lose speed at a limited rate, and which looks ahead.

The method, block by block in w = v²:

1. **By itself.** Along its direction d a straight block may go as fast, and gain or lose speed as quickly, as the slowest of
   its axes allows: min over the axes of limit/|dᵢ|. It goes no faster than commanded. An arc or a helix does so by the worst
   direction that it could have, and by its bend: v² ≤ a·r, with a of the slower of the plane's two axes (of a helix: of that part of its speed).
2. **At a corner** the machine rounds the point by an arc that touches both sides and leaves the point by no more than the
   deviation δ: r = δ·s/(1 − s), v² ≤ a·r, with s the sine of half the angle between the sides and a what the axes allow in the
   direction in which the speed changes. The arc begins no earlier than in the middle of what is straight on either side: r ≤
   (ℓ/2)·s/√(1 − s²), so that a curve of many short lines goes no faster than the arc that it stands for.
3. **It stands** at the beginning and the end, at a reversal, at an exact stop (G61.1), a dwell, a change of tools and a stop.
4. **Backwards, then forwards** over all blocks: each is entered no faster than it can be left, and left no faster than it can
   get. What then lies in a block is up, along and down by one acceleration, in closed form.

Its limits: acceleration sets in at once (no jerk), a corner is passed at its point (the way that it cuts short is not taken
off), bending and gaining speed do not share one limit, a controller looks ahead to the end of the program, what a spindle
takes to come up is not reckoned, nor is what a person takes at a stop, nor a change of tools before the first cut: that is the
machine's setup. A feed that nobody commanded (0) takes no time here and
is a doubt. A station's own factor, from measured runs, sets right what all this leaves.
"""

from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from runboard.plan.program.motion_kernel import seconds_of
from runboard.plan.program.moves import Array, Moves
from runboard.shop.machines import Motion

# From so many blocks on compiling earns what it costs.
_MANY = 50_000


@dataclass(frozen=True)
class Timed:
    """``length``: float64 of n, mm along the path; ``seconds``: float64 of n."""

    length: Array
    seconds: Array

    @property
    def total(self) -> float:
        """Seconds of the whole program."""
        return float(self.seconds.sum())


def of_all_axes(
    motion: Motion, rapid: float | None = None, accel: float | None = None, corner: float | None = None
) -> Motion:
    """The same machine with this rapid speed (mm/min) and acceleration (mm/s²) on each axis, and this deviation at corners
    (mm); None leaves what it has. Up and down it goes no faster than it did: that axis is the slower one on most machines."""
    changed: dict[str, Any] = {}
    if rapid is not None:
        changed |= {"rapid": rapid, "rapid_z": min(rapid, motion.rapid_z)}
    if accel is not None:
        changed |= {"accel_x": accel, "accel_y": accel, "accel_z": accel}
    if corner is not None:
        changed["corner"] = corner
    return replace(motion, **changed)


def timed(moves: Moves, motion: Motion, *, is_compiled: bool | None = None) -> Timed:
    """The length and the time of each block, on a machine that stands at the beginning. ``is_compiled`` says whether it is done
    by machine code; by default where there are many blocks."""
    count = len(moves)
    found = Timed(np.empty(count), np.empty(count))
    if is_compiled is None:
        is_compiled = count >= _MANY
    if is_compiled:
        from runboard.plan.program.motion_compiled import compiled

        work = compiled()
    else:
        work = seconds_of
    start = np.array(moves.start, dtype=np.float64)
    work(
        (moves.kind, moves.to, moves.speed, moves.plane, moves.centre, moves.sweep, moves.exact, start),
        limits(motion),
        found.length,
        found.seconds,
    )
    return found


def limits(motion: Motion) -> tuple[Array, Array, float, float]:
    """What the passes ask of a machine: each axis's greatest speed (mm/s) and acceleration (mm/s²), the deviation at corners
    (mm), the seconds of a change of tools."""
    fast = np.array([motion.rapid, motion.rapid, motion.rapid_z]) / 60.0
    return (
        fast,
        np.array([motion.accel_x, motion.accel_y, motion.accel_z], dtype=np.float64),
        float(motion.corner),
        motion.tool_change.total_seconds(),
    )
