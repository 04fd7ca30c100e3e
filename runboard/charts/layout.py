"""A board with its pieces, to scale: pieces outlined and numbered, what is left hatched, the grain an arrow, measures in words."""

from collections.abc import Sequence
from dataclasses import dataclass
from textwrap import wrap

from markupsafe import Markup

from runboard.charts.bars import WIDTH
from runboard.charts.svg import LETTER, Box, Drawing, Stroke, Word

_HIGHEST = 420.0
_LEFT, _TOP, _BELOW = 20.0, 40.0, 20.0
# Above so many pieces their numbers would say nothing.
_MOST_NUMBERED = 300
_LINE, _HEAD, _NEXT = 13.0, 4.0, 16.0


@dataclass(frozen=True)
class Drawn:
    """A board of ``length`` × ``width`` with its pieces (x, y, length, width), all in one unit; what is said of it."""

    length: float
    width: float
    pieces: Sequence[tuple[float, float, float, float]]
    title: str
    long: str
    wide: str
    grain: str = ""


def layout(key: str, label: str, board: Drawn, about: str = "") -> Markup:
    """The board as it lies, its length from left to right. ``grain`` is written at the arrow; without it there is none."""
    scale = min((WIDTH - _LEFT - 2) / board.length, _HIGHEST / board.width)
    title = wrap(board.title, int(WIDTH / LETTER), max_lines=2, placeholder="…")
    top = _TOP + _NEXT * max(0, len(title) - 1)
    right, low = _LEFT + board.length * scale, top + board.width * scale
    drawing = Drawing(key, "layout", label, WIDTH, round(low + (_BELOW if board.grain else 4), 1), about=about)
    drawing.words += [Word(0, 14 + _NEXT * at, text, "name") for at, text in enumerate(title)]
    drawing.boxes.append(Box(_LEFT, top, _round(board.length * scale), _round(board.width * scale), "watch"))
    for x, y, length, width in board.pieces:
        corner = _round(_LEFT + x * scale), _round(top + y * scale)
        drawing.boxes.append(Box(*corner, _round(length * scale), _round(width * scale), "piece"))
    if len(board.pieces) <= _MOST_NUMBERED:
        pieces = enumerate(drawing.boxes[1:], 1)
        drawing.words += [word for number, box in pieces if (word := _number(str(number), box))]
    _measure(drawing, board, (top, right, low))
    if board.grain:
        _arrow(drawing, board.grain, right, low + 12)
    return drawing.svg


def _round(value: float) -> float:
    return round(value, 2)


def _number(text: str, box: Box) -> Word | None:
    """A piece's number in its middle, along it or up it, where there is room."""
    wide, (x, y) = len(text) * LETTER + 1, (box.x + box.width / 2, box.y + box.height / 2)
    if box.height >= _LINE and box.width >= wide:
        return Word(_round(x), _round(y + 4.5), text, "figure", "middle")
    if box.width >= _LINE and box.height >= wide:
        return Word(_round(x + 4.5), _round(y), text, "figure", "middle", turned=True)
    return None


def _measure(drawing: Drawing, board: Drawn, edges: tuple[float, float, float]) -> None:
    """The board's length over it, its width beside it, each on a line from end to end. ``edges`` are its top, right and low one."""
    top, right, low = edges
    above, beside = top - 5, _LEFT - 5
    drawing.lines += [
        Stroke(_LEFT, above, _round(right), above, "measure"),
        Stroke(_LEFT, above - 3, _LEFT, above + 3, "measure"),
        Stroke(_round(right), above - 3, _round(right), above + 3, "measure"),
        Stroke(beside, top, beside, _round(low), "measure"),
        Stroke(beside - 3, top, beside + 3, top, "measure"),
        Stroke(beside - 3, _round(low), beside + 3, _round(low), "measure"),
    ]
    drawing.words.append(Word(_round((_LEFT + right) / 2), above - 4, board.long, "clock", "middle"))
    if low - top >= len(board.wide) * LETTER:
        drawing.words.append(Word(beside - 3, _round((top + low) / 2), board.wide, "clock", "middle", turned=True))
    else:
        drawing.words.append(Word(WIDTH, above - 4, f"× {board.wide}", "clock", "end"))


def _arrow(drawing: Drawing, text: str, right: float, at: float) -> None:
    """Which way the grain runs: a thin arrow of two heads, its word beside it."""
    start = min(_LEFT + len(text) * LETTER + 8, right - 30)
    drawing.words.append(Word(_LEFT, _round(at + 4), text, "clock"))
    drawing.lines.append(Stroke(_round(start), _round(at), _round(right), _round(at), "grain"))
    for tip, back in ((start, _HEAD), (right, -_HEAD)):
        for side in (-_HEAD, _HEAD):
            drawing.lines.append(Stroke(_round(tip), _round(at), _round(tip + back), _round(at + side), "grain"))
