"""How identical rectangles lie in a rectangle: the problem in whole numbers, a layout of it, and a checker that trusts nobody.

What the cutter takes between two pieces is put on the piece and on the board alike: pieces of (a+k) × (b+k) in (A+k) × (B+k)
touch each other, and lie k apart in truth.
"""

from collections.abc import Iterable
from dataclasses import dataclass

# Whole numbers of 1/8000 mm: a micrometre is eight of them, 1/64 in is 3175, so sizes in either unit add up exactly.
A_MM = 8000


def whole(mm: float) -> int:
    """A length in 1/8000 mm."""
    return round(mm * A_MM)


@dataclass(frozen=True)
class Nest:
    """Pieces of ``long`` × ``wide`` (along x and y as they lie unturned) in a board of ``x`` × ``y``, gap put on; they may be
    ``turned`` or not. All in whole units of any size."""

    x: int
    y: int
    long: int
    wide: int
    turned: bool = True

    @property
    def fits(self) -> bool:
        """Whether there is room for one."""
        return _has_room(self.x, self.y, self.long, self.wide) or (
            self.turned and _has_room(self.x, self.y, self.wide, self.long)
        )


def _has_room(x: int, y: int, long: int, wide: int) -> bool:
    return long <= x and wide <= y


@dataclass(frozen=True)
class Spot:
    """Where one piece lies: its corner nearest to the board's, and whether it is turned."""

    x: int
    y: int
    turned: bool = False


def faults(nest: Nest, spots: Iterable[Spot]) -> list[str]:
    """What is wrong with a layout, from its numbers alone: 'outside', 'turned', 'over'; nothing where it can be cut."""
    found, boxes = [], []
    for spot in spots:
        long, wide = (nest.wide, nest.long) if spot.turned else (nest.long, nest.wide)
        if spot.x < 0 or spot.y < 0 or spot.x + long > nest.x or spot.y + wide > nest.y:
            found.append("outside")
        if spot.turned and not nest.turned:
            found.append("turned")
        boxes.append((spot.x, spot.y, spot.x + long, spot.y + wide))
    boxes.sort()
    for at, (_, low, right, high) in enumerate(boxes):
        for left, bottom, _, top in boxes[at + 1 :]:
            if left >= right:
                break
            if bottom < high and low < top:
                found.append("over")
    return found
