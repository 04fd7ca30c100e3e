"""A face: one card as it is printed, with its head, rows and foot."""

import math
from dataclasses import dataclass
from typing import Any

from runboard.cards.measure import lines
from runboard.cards.model import Foot
from runboard.cards.paper import Size
from runboard.cards.row import SMALL, TINY, Row, Type

DANGER = Type(8, 3.6)
_HIGHEST = 22  # mm beside each other
_FRAME = 2.2  # the danger line's frame and padding


@dataclass(frozen=True)
class Footing:
    """The foot in lines, and its height in mm. ``stacked``: one above the other."""

    bad: tuple[str, ...]
    danger: tuple[str, ...]
    print: tuple[str, ...]
    stacked: bool
    height: int


@dataclass(frozen=True)
class Face:
    """One printed card. ``head`` is what its macro is given, ``head_height`` in mm; ``left`` is the room for a pencil.
    ``part`` of ``parts`` where one card does not hold it all. ``strip``: its rows leave the column of marks free.
    ``whole`` faces take a sheet of their own."""

    kind: str
    size: Size
    head: dict[str, Any]
    head_height: int
    rows: tuple[Row, ...]
    foot: Footing
    left: int
    part: int = 1
    parts: int = 1
    strip: bool = False
    whole: bool = False


def footing(foot: Foot, room: float, bad: bool = True) -> Footing:
    """The foot set in ``room`` mm of width. ``bad``: with what to do with a bad piece, beside the framed line; one above
    the other and small where names in them are long."""
    half = room / 2 - 1 if bad else room
    said = lines(foot.bad, half, SMALL.points) if bad else ()
    danger = lines(foot.danger, half - 3, DANGER.points, bold=True)
    print_ = lines(foot.print, room, TINY.points)
    height = max(SMALL.height(len(said)), DANGER.height(len(danger)) + _FRAME)
    stacked = height > _HIGHEST
    if stacked:
        said = lines(foot.bad, room, TINY.points) if bad else ()
        danger = lines(foot.danger, room - 3, TINY.points, bold=True)
        height = TINY.height(len(said) + len(danger)) + _FRAME
    return Footing(said, danger, print_, stacked, math.ceil(height + TINY.height(len(print_)) + 1))
