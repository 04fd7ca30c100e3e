"""How long a head takes that sweeps lines, in closed form.

A line of width w is swept at a steady speed v. Before it the head runs up from rest over v²/2a, behind it it brakes over as
much, so that it takes w/v + 2·v/a; then it moves on to the next line, from rest to rest: 2·√(d/a), or d/r + r/a where it gets to
its rapid speed r (any mechanics text). A block of n lines: n·(w/v + 2·v/a + 2·√(d/a)). The acceleration sets in at once (no
jerk), and is the same for the sweep, the step and the way between blocks; a machine that waits at the ends takes longer.
"""

import math
from dataclasses import dataclass
from typing import Any

import numpy as np


@dataclass(frozen=True)
class Sweep:
    """``speed`` mm/s, ``accel`` mm/s², ``spacing`` of lines in mm, ``rapid`` mm/s with the beam off. ``more`` is what the head
    runs beyond the way that it needs to be at speed, in mm on each side, at speed."""

    speed: float
    accel: float
    spacing: float
    rapid: float
    more: float = 0.0

    @property
    def overscan(self) -> float:
        """How far beyond a line the head goes on each side: v²/2a, and what is run beyond that."""
        return self.speed**2 / (2 * self.accel) + self.more

    @property
    def turn(self) -> float:
        """Seconds of one line that do not depend on its width: up to speed and down again."""
        return 2 * self.speed / self.accel + 2 * self.more / self.speed

    def lines(self, height: float) -> int:
        """How many lines cover a height."""
        return max(1, math.ceil(height / self.spacing - 1e-9))

    def seconds(self, widths: Any, steps: Any) -> float:
        """Of lines of these widths and the steps after them, float64 of n each, in mm."""
        swept = float(np.sum(widths)) / self.speed + len(widths) * self.turn
        return swept + float(np.sum(self.moved(steps)))

    def moved(self, distance: Any) -> Any:
        """Seconds from rest to rest over distances with the beam off, float64 of n."""
        way = np.asarray(distance, dtype=np.float64)
        reaches = way >= self.rapid**2 / self.accel
        return np.where(reaches, way / self.rapid + self.rapid / self.accel, 2 * np.sqrt(way / self.accel))
