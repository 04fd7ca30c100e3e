"""One printed side: its head, its rows and its foot, each of a known height."""

import math
from dataclasses import dataclass
from typing import Any

from runboard.cards.measure import lines
from runboard.cards.model import Foot
from runboard.cards.papers import Size
from runboard.cards.row import SMALL, STRIP, TINY, Row, Type, text_rows

DANGER = Type(8.5, 3.7)
_HIGHEST = 22  # mm beside each other
_FRAME = 2.2  # the danger line's frame and padding
_LEAST = 20  # mm that the foot leaves for rows on a first side: a note of two lines and a step
Head = tuple[dict[str, Any], int]


@dataclass(frozen=True)
class Footing:
    """The foot in lines, and its height in mm. ``stacked``: one above the other; ``tiny``: in the smallest type."""

    bad: tuple[str, ...]
    danger: tuple[str, ...]
    print: tuple[str, ...]
    stacked: bool
    tiny: bool
    height: int


@dataclass(frozen=True)
class Face:
    """One printed card. ``head`` is what its macro is given, ``head_height`` in mm; ``left`` is the room for a pencil.
    ``part`` of ``parts`` where one card does not hold it all. ``strip``: its rows leave the column of marks free.
    ``whole`` faces take a sheet of their own. ``said`` is which part it is, in words."""

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
    said: str = ""


def footing(foot: Foot, room: float, bad: bool = True) -> Footing:
    """The foot set in ``room`` mm of width. ``bad``: with what to do with a bad piece, beside the framed line or above
    it, whichever is lower; small where names in them are long."""
    print_ = lines(foot.print, room, TINY.points)
    for small, danger in ((SMALL, DANGER), (TINY, TINY)):
        half = (room / 2 - 1) if bad else room
        beside = _set(foot, bad, half, half, small, danger)
        above = _set(foot, bad, room, room, small, danger)
        high = max(small.height(len(beside[0])), danger.height(len(beside[1])) + _FRAME)
        stacked = small.height(len(above[0])) + danger.height(len(above[1])) + _FRAME + 0.5
        if min(high, stacked) <= _HIGHEST:
            break
    said = above if stacked < high else beside
    height = math.ceil(min(high, stacked) + TINY.height(len(print_)) + 1)
    return Footing(*said, print_, stacked < high, danger is TINY, height)


def first_footing(foot: Foot, room: float, free: int) -> tuple[Footing, tuple[Row, ...]]:
    """The foot of a tray's first side, of whose height the head leaves ``free`` mm. Where names are so long that no row would
    fit, what to do with a bad piece comes as rows of its own."""
    whole = footing(foot, room)
    if free - whole.height >= _LEAST:
        return whole, ()
    return footing(foot, room, bad=False), tuple(text_rows(((foot.bad, True),), room - STRIP))


def _set(
    foot: Foot, bad: bool, left: float, right: float, small: Type, danger: Type
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    said = lines(foot.bad, left, small.points) if bad else ()
    return said, lines(foot.danger, right - 3, danger.points, bold=True)
