"""Where things lie in an SVG file: units, viewports and transforms (SVG 2, chapter 8; CSS Values: 96 px an inch)."""

import math
import re
from typing import NamedTuple

MM_A_PX = 25.4 / 96
_UNITS = {"": MM_A_PX, "px": MM_A_PX, "mm": 1.0, "cm": 10.0, "q": 0.25, "in": 25.4, "pt": 25.4 / 72, "pc": 25.4 / 6}
_FONT = {"em": 16.0, "ex": 8.0}  # of the usual letters, in px
NUMBER = r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?"
_LENGTH = re.compile(rf"\s*({NUMBER})\s*(%|[A-Za-z]*)\s*")
_ONE = re.compile(rf"\s*([A-Za-z]+)\s*\(((?:\s*,?\s*{NUMBER})*)\s*\)\s*,?\s*")
_NUMBER = re.compile(NUMBER)
MOST_TRANSFORMS = 100


class Place(NamedTuple):
    """An affine transform: x' = a·x + c·y + e, y' = b·x + d·y + f."""

    a: float = 1.0
    b: float = 0.0
    c: float = 0.0
    d: float = 1.0
    e: float = 0.0
    f: float = 0.0

    def then(self, inner: "Place") -> "Place":
        """``inner`` first, then this one."""
        a, b, c, d, e, f = self
        g, h, i, j, k, m = inner
        return Place(
            a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * m + e, b * k + d * m + f
        )  # fmt: skip

    @property
    def most(self) -> float:
        """By how much it stretches a length at most: the larger singular value."""
        a, b, c, d = self[:4]
        half = (a * a + b * b + c * c + d * d) / 2
        return math.sqrt(half + math.sqrt(max(0.0, half * half - (a * d - b * c) ** 2)))

    @property
    def mean(self) -> float:
        """By how much it stretches a length as a whole: the root of its determinant."""
        return math.sqrt(abs(self.a * self.d - self.b * self.c))

    @property
    def is_finite(self) -> bool:
        return all(map(math.isfinite, self))


def length_px(text: str | None, whole: float = 0.0, usual: float = 0.0) -> float:
    """A length in px, a share of ``whole``; ``usual`` where there is none, or nothing that can be read."""
    said = _LENGTH.fullmatch(text or "")
    if said is None:
        return usual
    unit = said[2].lower()
    each = whole / 100 if unit == "%" else _FONT.get(unit) or _UNITS.get(unit, 0.0) / MM_A_PX
    found = float(said[1]) * each
    return found if math.isfinite(found) and each else usual


def unit_of(text: str | None) -> str | None:
    """'mm', '' where a number stands alone; None where there is no length."""
    said = _LENGTH.fullmatch(text or "")
    return None if said is None else said[2].lower()


def numbers(text: str, most: int = 1_000) -> list[float]:
    return [float(one[0]) for one, _ in zip(_NUMBER.finditer(text), range(most), strict=False)]


def transform(text: str) -> Place | None:
    """All transforms of an attribute, the first the outermost; None where it cannot be read."""
    found, at = Place(), 0
    for _ in range(MOST_TRANSFORMS):
        if at == len(text) or not text[at:].strip():
            return found if found.is_finite else None
        one = _ONE.match(text, at)
        place = None if one is None else _one(one[1], numbers(one[2], 7))
        if one is None or place is None:
            return None
        found, at = found.then(place), one.end()
    return None


def _one(name: str, said: list[float]) -> Place | None:
    match name, said:
        case "matrix", [a, b, c, d, e, f]:
            return Place(a, b, c, d, e, f)
        case "translate", [x, *rest] if len(rest) < 2:
            return Place(e=x, f=rest[0] if rest else 0.0)
        case "scale", [x, *rest] if len(rest) < 2:
            return Place(a=x, d=rest[0] if rest else x)
        case "rotate", [angle, *rest] if len(rest) in (0, 2):
            x, y = rest or (0.0, 0.0)
            cos, sin = math.cos(math.radians(angle)), math.sin(math.radians(angle))
            return Place(e=x, f=y).then(Place(cos, sin, -sin, cos)).then(Place(e=-x, f=-y))
        case "skewX", [angle]:
            return Place(c=math.tan(math.radians(angle)))
        case "skewY", [angle]:
            return Place(b=math.tan(math.radians(angle)))
    return None


def viewport(box: list[float], width: float, height: float, aspect: str) -> Place:
    """What maps a viewBox (x, y, width, height) into a viewport of that size, as ``preserveAspectRatio`` says."""
    x, y, wide, high = box
    across, down = width / wide, height / high
    words = aspect.split() or ["xMidYMid"]
    if words[0] == "none":
        return Place(across, 0, 0, down, -x * across, -y * down)
    scale = max(across, down) if "slice" in words else min(across, down)
    share = {"Min": 0.0, "Max": 1.0}
    left = (width - wide * scale) * share.get(words[0][1:4], 0.5)
    top = (height - high * scale) * share.get(words[0][5:8], 0.5)
    return Place(scale, 0, 0, scale, left - x * scale, top - y * scale)
