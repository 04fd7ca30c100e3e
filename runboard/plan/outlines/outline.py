"""A drawing as what an engraving, a jig or a cutting plan needs of it: lines of points, in millimetres, y upwards or down as said."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from numpy.typing import NDArray

Points = NDArray[Any]  # float64 of (n, 2)


@dataclass(frozen=True)
class Outline:
    """One line of points, at most ``deviation`` mm from the curve that it stands for; ``closed`` where its end is its beginning.
    ``filled`` where its inside is marked too, not its line alone. ``group`` is the drawing's own name for what it belongs to.
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
class Unclear:
    """What a drawing holds that is not understood, or may mean something else: ``code`` names its sentence
    (``outline-unclear-<code>``), ``line`` is where in the file, 0 where that is not known."""

    code: str
    line: int = 0
    facts: dict[str, Any] = field(default_factory=dict)


@dataclass(frozen=True)
class Shapes:
    """``width`` and ``height`` are the drawing's own, in mm; the box of what is drawn is reckoned from the outlines. y runs
    downwards, as in SVG; DXF is turned over."""

    outlines: Sequence[Outline]
    width: float
    height: float
    unclear: Sequence[Unclear] = ()
