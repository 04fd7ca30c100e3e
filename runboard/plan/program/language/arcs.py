"""Arcs in a plane: centre, sweep, and how far they are from being closed (NISTIR 6556, 3.5.3).

Plain arithmetic on numbers, so that the same source runs as Python and compiled.
"""

import math

TURN = 2 * math.pi


def sweep_between(
    x: float, y: float, to_x: float, to_y: float, centre_x: float, centre_y: float, clockwise: bool, same: float
) -> float:
    """The angle from one point to another about a centre, anticlockwise positive; a full circle where they are nearer to each
    other than ``same``."""
    way = -1.0 if clockwise else 1.0
    if abs(to_x - x) < same and abs(to_y - y) < same:
        return way * TURN
    sweep = math.atan2(to_y - centre_y, to_x - centre_x) - math.atan2(y - centre_y, x - centre_x)
    if way * sweep <= 0.0:
        sweep += way * TURN
    return sweep


def gap_between(x: float, y: float, to_x: float, to_y: float, centre_x: float, centre_y: float) -> float:
    """By how much the radius at the end is another than at the start."""
    here, there = (x - centre_x, y - centre_y), (to_x - centre_x, to_y - centre_y)
    return abs(math.sqrt(there[0] * there[0] + there[1] * there[1]) - math.sqrt(here[0] * here[0] + here[1] * here[1]))


def centre_of(
    x: float, y: float, to_x: float, to_y: float, radius: float, clockwise: bool
) -> tuple[float, float, float]:
    """(centre, centre, by how much the radius is too short) of an arc by its radius: the shorter way round where that is
    positive, the longer where it is negative. Too short a one is taken as half the distance."""
    across, along = to_x - x, to_y - y
    half = math.sqrt(across * across + along * along) / 2
    short = half - abs(radius)
    aside = 0.0 if short >= 0 else math.sqrt(radius * radius - half * half) / (2 * half)
    if clockwise == (radius > 0):
        aside = -aside
    return (x + to_x) / 2 - along * aside, (y + to_y) / 2 + across * aside, max(short, 0.0)
