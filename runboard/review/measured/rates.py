"""Shares: how sure one is, and how well a machine was used.

Wilson 1927, 'Probable inference, the law of succession, and statistical inference', *JASA* 22, as Newcombe 1998 (*Statistics in Medicine*
17, 857-872) recommends it. Effectiveness by ISO 22400-2: availability APT / PBT, effectiveness PRI · PQ / APT, quality ratio GQ / PQ.
"""

import math
from dataclasses import dataclass

from runboard.review.measured.samples import Z95


def wilson(some: int, whole: int, z: float = Z95) -> tuple[float, float] | None:
    """The interval of a share, without a correction for whole numbers; None of none."""
    if not whole:
        return None
    share, more = some / whole, z * z / whole
    middle, half = share + more / 2, z * math.sqrt((share * (1 - share) + more / 4) / whole)
    low, high = (middle - half) / (1 + more), (middle + half) / (1 + more)
    return max(0.0, low), min(1.0, high)


@dataclass(frozen=True)
class Effectiveness:
    """A machine's time and pieces, in the standard's terms. All times in one unit: ``busy`` is planned busy time (PBT), ``producing`` the
    actual production time (APT), ``run`` the planned run time of one piece (PRI), ``made`` the produced quantity (PQ), ``good`` (GQ)."""

    busy: float
    producing: float
    run: float
    made: int
    good: int

    @property
    def availability(self) -> float:
        return self.producing / self.busy

    @property
    def performance(self) -> float:
        return self.run * self.made / self.producing

    @property
    def quality(self) -> float:
        return self.good / self.made

    @property
    def overall(self) -> float:
        """OEE: the three multiplied, which is PRI · GQ / PBT."""
        return self.availability * self.performance * self.quality
