"""Where a head travels over a bed, to scale: solid with the beam on, dashed with it off."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from runboard.charts.bars import WIDTH
from runboard.charts.svg import LETTER, Drawing, Stroke, Trace, Word, cut

_TOP, _BELOW, _HIGHEST = 42.0, 24.0, 420.0


@dataclass(frozen=True)
class Way:
    """One part of the head's way, in mm, y downwards."""

    x1: float
    y1: float
    x2: float
    y2: float
    on: bool


@dataclass(frozen=True)
class HeadSaid:
    """Two lines above the drawing, and how wide it is: from the leftmost to the rightmost that the head goes."""

    title: str
    shown: str
    wide: str


def head(key: str, label: str, ways: Sequence[Way], said: HeadSaid, about: str = "") -> Markup:
    """The way of a head, from the first part to the last."""
    xs = [x for way in ways for x in (way.x1, way.x2)] or [0.0, 1.0]
    ys = [y for way in ways for y in (way.y1, way.y2)] or [0.0, 1.0]
    left, top, wide, high = min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys)
    scale = min((WIDTH - 4) / max(wide, 1e-6), _HIGHEST / max(high, 1e-6))

    def at(x: float, y: float) -> tuple[float, float]:
        return round(2 + (x - left) * scale, 1), round(_TOP + (y - top) * scale, 1)

    low, right = round(_TOP + high * scale + 6, 1), round(2 + wide * scale, 1)
    drawing = Drawing(key, "swept", label, WIDTH, round(low + _BELOW, 1), about=about)
    for kind, is_on in (("off", False), ("on", True)):
        lines = list(_lines((*at(way.x1, way.y1), *at(way.x2, way.y2)) for way in ways if way.on is is_on))
        if lines:
            drawing.traces.append(Trace(lines, kind))
    drawing.words += [Word(0, 14, cut(said.title, WIDTH), "name"), Word(0, 31, cut(said.shown, WIDTH))]
    drawing.lines += [
        Stroke(2, low, right, low, "measure"),
        Stroke(2, low - 3, 2, low + 3, "measure"),
        Stroke(right, low - 3, right, low + 3, "measure"),
    ]
    middle = round(max(1 + wide * scale / 2, len(said.wide) * LETTER / 2), 1)
    drawing.words.append(Word(middle, low + 16, said.wide, "clock", "middle"))
    return drawing.svg


def _lines(parts: Iterable[tuple[float, float, float, float]]) -> Iterable[list[tuple[float, float]]]:
    """Parts that follow one another as one line; what is too short to be seen is left out, unless it stands alone."""
    line: list[tuple[float, float]] = []
    for x1, y1, x2, y2 in parts:
        if line and line[-1] == (x1, y1):
            if (x2, y2) != line[-1]:
                line.append((x2, y2))
            continue
        if line:
            yield line
        line = [(x1, y1), (x2, y2)]
    if line:
        yield line
