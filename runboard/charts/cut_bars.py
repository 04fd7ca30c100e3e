"""Boards cut to length, each a bar to scale: pieces outlined with their lengths, what is left hatched."""

from collections.abc import Sequence
from dataclasses import dataclass

from markupsafe import Markup

from runboard.charts.bars import WIDTH
from runboard.charts.svg import Box, Drawing, Word, cut, fitting

_HIGH, _BAR = 46.0, 22.0


@dataclass(frozen=True)
class CutBar:
    """A board of ``length`` with its ``pieces`` from its left end on: (start, length, what may be written on it, longest first).
    ``title`` stands over it."""

    title: str
    length: float
    pieces: Sequence[tuple[float, float, Sequence[str]]]


def cut_bars(key: str, label: str, rows: Sequence[CutBar], about: str = "") -> Markup:
    """One bar under the other, all to one scale."""
    drawing = Drawing(key, "layout", label, WIDTH, _HIGH * len(rows) + 2, about=about)
    scale = (WIDTH - 2) / max((row.length for row in rows), default=1)
    for at, row in enumerate(rows):
        top = _HIGH * at
        drawing.words.append(Word(0, top + 14, cut(row.title, WIDTH), "name"))
        drawing.boxes.append(Box(1, top + 19, round(row.length * scale, 2), _BAR, "watch"))
        for start, length, texts in row.pieces:
            wide = round(length * scale, 2)
            drawing.boxes.append(Box(round(1 + start * scale, 2), top + 19, wide, _BAR, "piece"))
            text = fitting([*texts], wide - 8)
            if text:
                drawing.words.append(Word(round(1 + start * scale + wide / 2, 2), top + 34.5, text, "figure", "middle"))
    return drawing.svg
