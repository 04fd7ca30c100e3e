"""Cuts that go on at the feed of the plunge before them, where the tool cuts faster elsewhere: an F that was forgotten."""

from collections.abc import Iterator

import numpy as np

from runboard.plan.program.motion import Timed
from runboard.plan.program.moves import FEED, TOOL, Array, Doubt, Moves
from runboard.plan.program.reach import begins, is_upright

# A tool's usual feed is so many times the plunge's, or nothing is said; common practice, no source.
_FASTER = 1.5
# Seconds a load: less is not worth saying.
_LEAST = 5.0
_SAME = 1e-3


def slow_cuts(moves: Moves, found: Timed) -> Iterator[Doubt]:
    """One doubt a tool: its lines, both feeds (mm/min), and what it costs (s). Ramps are meant to be slow: what goes down is none."""
    down = begins(moves, 2) - moves.to[:, 2]
    upright = is_upright(moves)
    fed = (moves.kind == FEED) & (found.length > 0) & (moves.speed > 0)
    across = fed & ~upright & (down <= _SAME)
    slow = across & _as_plunged(moves, fed & upright & (down > 0), fed)
    for tool in np.unique(moves.tool[slow]).tolist():
        own = across & (moves.tool == tool)
        usual = _usual(moves.speed[own], found.length[own])
        late = slow & own & (moves.speed * _FASTER <= usual)
        lost = float((found.length[late] * (1 / moves.speed[late] - 1 / usual)).sum()) if late.any() else 0.0
        if lost >= _LEAST:
            lines = np.unique(moves.line[late])
            facts = {"more": len(lines) - 1, "feed": float(moves.speed[late][0]) * 60, "most": usual * 60, "lost": lost}
            yield Doubt(int(lines[0]), "feed-of-the-plunge", facts)


def _as_plunged(moves: Moves, plunge: Array, fed: Array) -> Array:
    """bool of n: whether a feed is the one of the plunge before it, with none other and no change of tools between."""
    at = np.flatnonzero(fed)
    found = np.zeros(len(moves), bool)
    if len(at):
        speed = moves.speed[at]
        of = np.cumsum(np.diff(speed, prepend=speed[0]) != 0) + np.cumsum(moves.kind == TOOL)[at]
        last = np.maximum.accumulate(np.where(plunge[at], np.arange(len(at)), -1))
        found[at] = (last >= 0) & (of[last] == of)
    return found


def _usual(speed: Array, length: Array) -> float:
    """mm/s: at least half of the way is cut at this feed or a slower one."""
    order = np.argsort(speed, kind="stable")
    way = np.cumsum(length[order])
    return float(speed[order][int(np.searchsorted(way, way[-1] / 2))])
