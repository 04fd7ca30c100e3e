"""Lines that end where another begins, as one line: drawings often have an outline in pieces."""

from collections import defaultdict
from collections.abc import Sequence

import numpy as np

from runboard.plan.outlines.outline import Outline, Points

# Ends nearer than this meet, in mm.
NEAR = 0.05


def joined(lines: Sequence[Outline]) -> list[Outline]:
    """The lines with those of one group joined that meet end to end, two at a place; where three meet, nobody knows which go on,
    and they stay apart."""
    open_ones = [line for line in lines if not line.closed]
    ends: dict[tuple[str, int, int], list[int]] = defaultdict(list)
    for at, line in enumerate(open_ones):
        for point in (line.points[0], line.points[-1]):
            ends[_place(line, point)].append(at)
    left, found = set(range(len(open_ones))), [line for line in lines if line.closed]
    for at in range(len(open_ones)):
        if at in left:
            left.remove(at)
            found.append(_grown(at, open_ones, ends, left))
    return found


def _place(line: Outline, point: Points) -> tuple[str, int, int]:
    return line.group, round(float(point[0]) / NEAR), round(float(point[1]) / NEAR)


def _grown(
    start: int, lines: Sequence[Outline], ends: dict[tuple[str, int, int], list[int]], left: set[int]
) -> Outline:
    """The line that goes on from both of its ends as far as others do."""
    first = lines[start]
    parts = [first.points]
    for is_front in (False, True):
        while True:
            tip = parts[0][0] if is_front else parts[-1][-1]
            meeting = ends[_place(first, tip)]
            following = [at for at in meeting if at in left]
            if len(meeting) != 2 or len(following) != 1:
                break
            left.remove(following[0])
            points = lines[following[0]].points
            is_near_its_start = np.abs(points[0] - tip).max() <= np.abs(points[-1] - tip).max()
            if is_front:
                parts.insert(0, points[::-1] if is_near_its_start else points)
            else:
                parts.append(points if is_near_its_start else points[::-1])
    points = np.concatenate([parts[0], *(part[1:] for part in parts[1:])])
    is_closed = len(parts) > 1 and _place(first, points[0]) == _place(first, points[-1])
    return Outline(points, is_closed, first.filled, first.group)
