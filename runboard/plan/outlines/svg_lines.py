"""The basic shapes and paths of SVG as lines of points, curves no farther from them than a deviation.

A chord of a curve leaves it by at most h²/8 · max|B''|, where h is its share of the curve's parameter: so many chords are
taken as keep that within the deviation. |B''| of a cubic is at most 6 times, of a quadratic 2 times, the largest second
difference of its points; of an arc radius · angle².
"""

import math
from collections.abc import Iterator
from typing import Any

import numpy as np
from svg.path import Arc, Close, CubicBezier, Line, Move, QuadraticBezier, parse_path

from runboard.plan.outlines.outline import Points
from runboard.plan.outlines.svg_place import Place, length_px
from runboard.plan.outlines.svg_tree import Node

MOST_CHORDS = 2_000


def data_of(node: Node, whole: tuple[float, float]) -> str:
    """A shape as path data, SVG 2, chapter 10; '' where it draws nothing. ``whole`` are the sides that shares are of."""
    said = node.attributes
    wide, high = whole
    across = math.hypot(wide, high) / math.sqrt(2)

    def x(name: str) -> float:
        return length_px(said.get(name), wide)

    def y(name: str) -> float:
        return length_px(said.get(name), high)

    match node.tag:
        case "path":
            return said.get("d", "")
        case "line":
            return f"M{x('x1')} {y('y1')}L{x('x2')} {y('y2')}"
        case "polyline" | "polygon":
            points = said.get("points", "").strip()
            return f"M{points}" + "Z" * (node.tag == "polygon") if points else ""
        case "circle":
            return _ellipse(x("cx"), y("cy"), *2 * (length_px(said.get("r"), across),))
        case "ellipse":
            across_x, across_y = length_px(said.get("rx"), wide, -1), length_px(said.get("ry"), high, -1)
            return _ellipse(x("cx"), y("cy"), _either(across_x, across_y), _either(across_y, across_x))
        case "rect":
            return _rect(
                x("x"),
                y("y"),
                x("width"),
                y("height"),
                length_px(said.get("rx"), wide, -1),
                length_px(said.get("ry"), high, -1),
            )
    return ""


def _either(one: float, other: float) -> float:
    return max(0.0, one if one >= 0 else other)


def _ellipse(x: float, y: float, rx: float, ry: float) -> str:
    if rx <= 0 or ry <= 0:
        return ""
    return f"M{x + rx} {y}A{rx} {ry} 0 0 1 {x - rx} {y}A{rx} {ry} 0 0 1 {x + rx} {y}Z"


def _rect(x: float, y: float, wide: float, high: float, rx: float, ry: float) -> str:
    if wide <= 0 or high <= 0:
        return ""
    rx, ry = min(_either(rx, ry), wide / 2), min(_either(ry, rx), high / 2)
    if rx <= 0 or ry <= 0:
        return f"M{x} {y}H{x + wide}V{y + high}H{x}Z"
    turn = f"A{rx} {ry} 0 0 1 "
    return (
        f"M{x + rx} {y}H{x + wide - rx}{turn}{x + wide} {y + ry}V{y + high - ry}{turn}{x + wide - rx} {y + high}"
        f"H{x + rx}{turn}{x} {y + high - ry}V{y + ry}{turn}{x + rx} {y}Z"
    )


class TooManyPoints(Exception):
    """A path has more points than it may."""


def lines_of(data: str, place: Place, deviation: float, most: int) -> Iterator[tuple[Points, bool]]:
    """(points in mm, closed) of each line of path data, float64 of (n, 2). ``place`` takes its units to mm. Raises
    ``ValueError`` where the data is none, ``TooManyPoints`` where it makes more than ``most``; what no number can hold is left as it
    comes, for whoever asks to see."""
    if data.lstrip()[:1] not in ("M", "m"):
        raise ValueError(data[:1])  # the first command is a move
    fine = deviation / max(place.most, 1e-12)
    found: list[complex] = []
    for part in parse_path(data):
        if isinstance(part, Move):
            if len(found) > 1:
                yield _placed(found, place), False
            found = [part.end]
        elif isinstance(part, Close):
            if part.start != part.end:
                found.append(part.end)
            if len(found) > 1:
                yield _placed(found, place), True
            found = [part.end]
        else:
            if not found:
                found = [part.start]
            found.extend([part.end] if isinstance(part, Line) else _along(part, fine))
            if len(found) > most:
                raise TooManyPoints
    if len(found) > 1:
        yield _placed(found, place), False


def _placed(found: list[complex], place: Place) -> Points:
    line = np.array(found)
    x, y = line.real, line.imag
    a, b, c, d, e, f = place
    points = np.empty((len(line), 2))
    with np.errstate(all="ignore"):
        points[:, 0], points[:, 1] = a * x + c * y + e, b * x + d * y + f
    return points


def _along(part: Any, deviation: float) -> Any:
    """Points of one part, without its first, as complex numbers in an array or a list."""
    if isinstance(part, CubicBezier):
        p = part.start, part.control1, part.control2, part.end
        t = _shares(math.sqrt(0.75 * max(abs(p[0] - 2 * p[1] + p[2]), abs(p[1] - 2 * p[2] + p[3])) / deviation))
        u = 1 - t
        return u**3 * p[0] + 3 * u * u * t * p[1] + 3 * u * t * t * p[2] + t**3 * p[3]
    if isinstance(part, QuadraticBezier):
        q = part.start, part.control, part.end
        t = _shares(math.sqrt(0.25 * abs(q[0] - 2 * q[1] + q[2]) / deviation))
        return (1 - t) ** 2 * q[0] + 2 * (1 - t) * t * q[1] + t * t * q[2]
    if isinstance(part, Arc) and part.start != part.end and part.radius.real and part.radius.imag:
        rx, ry = abs(part.radius.real) * part.radius_scale, abs(part.radius.imag) * part.radius_scale
        t = _shares(math.radians(abs(part.delta)) * math.sqrt(max(rx, ry) / (8 * deviation)))
        angle = np.radians(part.theta + t * part.delta)
        turned = complex(math.cos(math.radians(part.rotation)), math.sin(math.radians(part.rotation)))
        points = (rx * np.cos(angle) + 1j * ry * np.sin(angle)) * turned + part.center
        points[-1] = part.end
        return points
    return [part.end]


def _shares(chords: float) -> Any:
    count = min(MOST_CHORDS, max(1, math.ceil(chords))) if math.isfinite(chords) else 1
    return np.arange(1, count + 1) / count
