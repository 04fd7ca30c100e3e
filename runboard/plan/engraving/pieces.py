"""Which marks of a drawing belong to one piece: by the places of the jig, or by what straight cuts part."""

from typing import Any

import numpy as np


def by_places(boxes: Any, columns: int, rows: int) -> Any:
    """The place of each box, int64 of n, where the whole is divided evenly; ``boxes`` are float64 of (n, 4)."""
    low, high = boxes[:, :2].min(axis=0), boxes[:, 2:].max(axis=0)
    middle = (boxes[:, :2] + boxes[:, 2:]) / 2
    share = (middle - low) / np.maximum(high - low, 1e-9)
    column = np.clip((share[:, 0] * columns).astype(np.int64), 0, columns - 1)
    row = np.clip((share[:, 1] * rows).astype(np.int64), 0, rows - 1)
    return row * columns + column


def by_gaps(boxes: Any, apart: float) -> Any:
    """The piece of each box, int64 of n: rows and columns are parted wherever a straight cut runs through a gap wider than
    ``apart``, and what is parted again, until no cut is left."""
    found = np.zeros(len(boxes), np.int64)
    waiting, pieces = (
        [(np.arange(len(boxes)), 1, False)],
        0,
    )  # some, the axis to cut along, whether the other gave no cut
    while waiting:
        some, axis, is_tried = waiting.pop()
        parts = _parted(some, boxes, axis, apart)
        if len(parts) > 1:
            waiting += [(part, 1 - axis, False) for part in reversed(parts)]
        elif not is_tried:
            waiting.append((some, 1 - axis, True))
        else:
            found[some] = pieces
            pieces += 1
    return found


def _parted(some: Any, boxes: Any, axis: int, apart: float) -> list[Any]:
    order = some[np.argsort(boxes[some, axis], kind="stable")]
    reach = np.maximum.accumulate(boxes[order, axis + 2])
    cuts = np.flatnonzero(boxes[order, axis][1:] - reach[:-1] > apart) + 1
    return list(np.split(order, cuts))
