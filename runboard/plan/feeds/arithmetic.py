"""Chip load, feed and surface speed: f_z = v_f / (n z), v_c = π D n (any text on machining). Lengths in mm, all rates a minute."""

import math


def chip_load(feed: float, rpm: float, flutes: float) -> float:
    """What each flute takes, mm."""
    return feed / (rpm * flutes)


def feed_of(rpm: float, flutes: float, chip: float) -> float:
    """mm a minute."""
    return rpm * flutes * chip


def rpm_of(feed: float, flutes: float, chip: float) -> float:
    """Turns a minute."""
    return feed / (flutes * chip)


def flutes_of(feed: float, rpm: float, chip: float) -> float:
    """How many flutes take so much each; seldom a whole number."""
    return feed / (rpm * chip)


def surface_speed(diameter: float, rpm: float) -> float:
    """How fast the edge goes through the wood, mm a minute."""
    return math.pi * diameter * rpm


def rpm_at_speed(speed: float, diameter: float) -> float:
    """Turns a minute at that speed of the edge, mm a minute."""
    return speed / (math.pi * diameter)
