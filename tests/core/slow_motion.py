"""A machine that follows a path in small steps of time, written apart from the product: it knows only where its path may be
how fast, and that its speed along it changes by no more than its acceleration.

The path is cut into pieces of 0.002 mm. At each tick the machine goes as fast as it may: it brakes where some limit ahead could
not be kept otherwise. All axes alike, straight moves only.
"""

from math import acos, inf, sin, sqrt, tan

import numpy as np

from runboard.plan.program.moves import FEED, Moves

STEP, TICK = 0.002, 1e-4


def simulated_seconds(program: Moves, rapid: float, accel: float, corner: float) -> float:
    """``rapid`` in mm/s along an axis, ``accel`` in mm/s² along an axis, ``corner`` in mm."""
    speeds, pulls = _path(program, rapid, accel, corner)
    # The greatest speed at each piece from which every limit behind it can still be kept.
    allowed = speeds.copy()
    for at in range(len(allowed) - 2, -1, -1):
        allowed[at] = min(allowed[at], sqrt(allowed[at + 1] ** 2 + 2 * pulls[at] * STEP))
    where = speed = seconds = 0.0
    while where < (len(pulls) - 0.5) * STEP:
        piece = int(where / STEP)
        part = where / STEP - piece
        after = sqrt(allowed[piece] ** 2 * (1 - part) + allowed[min(piece + 1, len(allowed) - 1)] ** 2 * part)
        faster = min(speed + pulls[min(piece, len(pulls) - 1)] * TICK, max(after, 0.05))
        where += (speed + faster) / 2 * TICK
        speed = faster
        seconds += TICK
    return seconds


def _path(program: Moves, rapid: float, accel: float, corner: float) -> tuple[np.ndarray, np.ndarray]:
    speeds, pulls, before, here = [0.0], [], None, np.array(program.start)
    for kind, to, commanded in zip(program.kind, program.to, program.speed, strict=True):
        way = to - here
        length = float(np.linalg.norm(way))
        way = way / length
        axes = 1 / float(np.max(np.abs(way)))
        top = min(rapid * axes, commanded if kind == FEED else inf)
        pieces = round(length / STEP)
        if before is not None:
            speeds[-1] = min(speeds[-1], top, _at_corner(before, way, accel, corner, length))
        speeds += [top] * pieces
        pulls += [accel * axes] * pieces
        before, here = way, to
    speeds[-1] = 0.0
    return np.array(speeds), np.array(pulls)


def _at_corner(before: np.ndarray, way: np.ndarray, accel: float, corner: float, length: float) -> float:
    turn = acos(max(-1.0, min(1.0, float(before @ way))))
    if turn < 1e-9:
        return inf
    if turn > 3.1415:
        return 0.0
    half = sin((3.141592653589793 - turn) / 2)
    change = (way - before) / np.linalg.norm(way - before)
    allowed = accel / float(np.max(np.abs(change)))
    return sqrt(allowed * min(corner * half / (1 - half), length / 2 / tan(turn / 2)))
