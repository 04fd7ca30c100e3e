"""The boxes of a step: what was counted, who did it and when. Each is as wide as the word over it, in any language."""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from runboard.cards.measure import width
from runboard.cards.model import StepLine
from runboard.cards.row import SMALL, STRIP

_LEAST = 10  # mm that two digits take in pencil
_AIR = 1.2


@dataclass(frozen=True)
class Box:
    """One box, so many mm from the right edge, with what is printed in it or over it."""

    right: int
    width: int
    words: str = ""


def heads_of(words: Mapping[str, str]) -> tuple[Box, ...]:
    """The words over the boxes, from the right: initials with the time, scrap, good."""
    found: list[Box] = []
    for said in (f"{words['initials']}, {words['time']}", words["scrap-box"], words["good"]):
        wide = max(_LEAST, math.ceil(width(said, SMALL.points) + _AIR))
        found.append(Box(room_of(found), wide, said))
    return tuple(found)


def boxes_of(step: StepLine, words: Mapping[str, str]) -> tuple[Box, ...]:
    """The boxes of one step; one that is done carries its counts."""
    printed = ("", step.scrap, step.good)
    return tuple(Box(box.right, box.width, text) for box, text in zip(heads_of(words), printed, strict=True))


def room_of(boxes: tuple[Box, ...] | list[Box]) -> int:
    """The mm that boxes take."""
    return sum(box.width for box in boxes)


def room_beside(room: float, words: Mapping[str, str]) -> float:
    """The mm of a step's name, between its mark and its boxes."""
    return room - STRIP - room_of(heads_of(words)) - 1
