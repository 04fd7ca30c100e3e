"""A drawing as what an engraving, a jig or a cutting plan needs of it: lines of points, in millimetres, y upwards or down as said."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from numpy.typing import NDArray

from runboard.plan.outlines.unclear import Unclear as Unclear

Points = NDArray[Any]  # float64 of (n, 2)


@dataclass(frozen=True)
class Outline:
    """One line of points, at most ``deviation`` mm from the curve that it stands for; ``closed`` where its end is its beginning.
    ``filled`` where its inside is marked too, not its line alone. ``group`` is the drawing's own name for what it belongs to, a
    group within another after it ('mark/numbers').
    ``part`` is the shape that it is a line of: those of one part are filled together, so that a hole stays one, by the even-odd
    rule where ``even_odd``, else by the non-zero rule. ``stroke`` is how wide its line is drawn, in mm; 0 where it has none."""

    points: Points
    closed: bool
    filled: bool = False
    group: str = ""
    part: int = 0
    even_odd: bool = False
    stroke: float = 0.0


@dataclass(frozen=True)
class Shapes:
    """``width`` and ``height`` are the drawing's own, in mm; the box of what is drawn is reckoned from the outlines. y runs
    downwards, as in SVG; DXF is turned over."""

    outlines: Sequence[Outline]
    width: float
    height: float
    unclear: Sequence[Unclear] = ()
