"""Boards cut to length, each a bar to scale: pieces outlined with their lengths, what is left hatched."""

from collections.abc import Sequence
from dataclasses import dataclass

from markupsafe import Markup

from runboard.charts.bars import WIDTH
from runboard.charts.svg import LETTER, Box, Drawing, Word, cut, fitting

_ABOVE, _BAR, _BELOW = 19.0, 22.0, 5.0
# A letter's height, as far as another line needs it.
_LINE = 13.0


@dataclass(frozen=True)
class CutBar:
    """A board of ``length`` with its ``pieces`` from its left end on: (start, length, what may be written on it, longest first).
    ``title`` stands over it."""

    title: str
    length: float
    pieces: Sequence[tuple[float, float, Sequence[str]]]


def cut_bars(key: str, label: str, rows: Sequence[CutBar], about: str = "") -> Markup:
    """One bar under the other, all to one scale; higher ones where a piece is so short that its length is written up it."""
    scale = (WIDTH - 2) / max((row.length for row in rows), default=1)
    high = max((_room_for(texts, length * scale) for row in rows for _, length, texts in row.pieces), default=_BAR)
    drawing = Drawing(key, "layout", label, WIDTH, (_ABOVE + high + _BELOW) * len(rows) + 2, about=about)
    for at, row in enumerate(rows):
        top = (_ABOVE + high + _BELOW) * at
        drawing.words.append(Word(0, top + 14, cut(row.title, WIDTH), "name"))
        drawing.boxes.append(Box(1, top + _ABOVE, round(row.length * scale, 2), high, "watch"))
        for start, length, texts in row.pieces:
            box = Box(round(1 + start * scale, 2), top + _ABOVE, round(length * scale, 2), high, "piece")
            drawing.boxes.append(box)
            drawing.words += _written(texts, box)
    return drawing.svg


def _room_for(texts: Sequence[str], wide: float) -> float:
    """How high a bar is to be for a piece's length."""
    if fitting([*texts], wide - 2) or wide < _LINE:
        return _BAR
    return max(_BAR, round(len(texts[-1]) * LETTER + 6, 1))


def _written(texts: Sequence[str], box: Box) -> list[Word]:
    """A piece's length in its middle, along it or up it, where there is room."""
    x, y = box.x + box.width / 2, box.y + box.height / 2
    if text := fitting([*texts], box.width - 2):
        return [Word(round(x, 2), round(y + 4.5, 2), text, "figure", "middle")]
    if box.width >= _LINE and (text := fitting([*texts], box.height)):
        return [Word(round(x + 4.5, 2), round(y, 2), text, "figure", "middle", turned=True)]
    return []
