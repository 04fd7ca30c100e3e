"""What stands on the bars of a chart, by arithmetic: the longest that fits in a bar and nothing that leaves it; and the lanes of
what is done at once.

A bar says what is done and to which trays, on one line or two, along the page or turned; where it has no room for that, what is
done; then a letter alone, which the key explains.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from unicodedata import east_asian_width

from runboard.charts.svg import Box, Word

# How high a line of 13 px is with all that hangs below it, and a letter that stands alone, of 12 px.
LINE, LETTER_HIGH = 15.2, 14.0
# What stays free on each side of a line; from the middle of a line down to where it stands.
_SIDE, _DOWN, _LETTER_DOWN = 2.0, 4.5, 4.2
# Widths of letters in the widest of the usual faces, bold and of 13 px.
_THIN, _FIGURE, _SMALL, _CAPITAL, _WIDE = 5.0, 9.1, 9.1, 10.4, 14.5


@dataclass(frozen=True)
class Label:
    """``short`` is what is done, ``trays`` to what ('' where that is not said), ``letter`` the short form's own. ``name`` is it in
    full, where that is to be read wherever there is room."""

    short: str
    trays: str
    letter: str
    name: str = ""


@lru_cache(maxsize=4096)
def wide(text: str) -> float:
    """How wide a text of 13 px is at most."""
    return sum(map(_width, text))


def _width(letter: str) -> float:
    if letter in " .,:;·'’|il!jtfrI()[]-":
        return _THIN
    if letter in "mwMW@%—" or (letter > "\u10ff" and east_asian_width(letter) in "WF"):
        return _WIDE
    if letter.isdigit() or letter == "–":
        return _FIGURE
    return _CAPITAL if letter.isupper() else _SMALL


def wrapped(text: str, most: float) -> list[str]:
    """A text in lines that are no wider, at spaces where it has any: all of it."""
    lines = [""]
    for word in text.split(" "):
        longer = f"{lines[-1]} {word}".strip()
        if wide(longer) <= most:
            lines[-1] = longer
            continue
        lines += _pieces(word, most)
    return [line for line in lines if line] or [""]


def _pieces(word: str, most: float) -> Iterator[str]:
    """A word, apart where it is too long for a line."""
    piece = ""
    for letter in word:
        if piece and wide(piece + letter) > most:
            yield piece
            piece = ""
        piece += letter
    yield piece


def is_told(box: Box, label: Label) -> bool:
    """Whether a bar has room for what is done, and to which trays."""
    return any(_fits(box, lines, turned=turned) for lines in _whole(label) for turned in (False, True))


def on_bar(box: Box, label: Label, kind: str) -> list[Word]:
    """The words of a bar: as much as it has room for, and [] where not even the letter fits."""
    for lines in (*_whole(label), [label.short]):
        for turned in (False, True):
            if _fits(box, lines, turned=turned):
                return list(_lines(box, lines, kind, turned=turned))
    if label.letter and box.width >= wide(label.letter) and box.height >= LETTER_HIGH:
        return [_letter(box, label, kind)]
    return []


def _whole(label: Label) -> Sequence[list[str]]:
    if not label.trays:
        return ([label.name],) if label.name else ()
    return [f"{label.short} · {label.trays}"], [label.short, label.trays]


def _fits(box: Box, lines: Sequence[str], *, turned: bool) -> bool:
    along, across = max(map(wide, lines)) + 2 * _SIDE, LINE * len(lines)
    return (along <= box.height and across <= box.width) if turned else (along <= box.width and across <= box.height)


def _lines(box: Box, lines: Sequence[str], kind: str, *, turned: bool) -> Iterator[Word]:
    x, y = box.x + box.width / 2, box.y + box.height / 2
    for number, text in enumerate(lines):
        down = LINE * (number - (len(lines) - 1) / 2) + _DOWN
        at = (x + down, y) if turned else (x, y + down)
        yield Word(round(at[0], 1), round(at[1], 1), text, kind, "middle", turned)


def _letter(box: Box, label: Label, kind: str) -> Word:
    x, y = box.x + box.width / 2, box.y + box.height / 2 + _LETTER_DOWN
    return Word(round(x, 1), round(y, 1), label.letter, f"{kind} letter", "middle")


def ground(word: Word) -> Box:
    """What lies behind a word from its middle, so that no hatching cuts through it."""
    down = _LETTER_DOWN if "letter" in word.kind else _DOWN
    long, high = wide(word.text) + 2, LINE - 1
    if word.turned:
        return Box(round(word.x - down - high / 2, 1), round(word.y - long / 2, 1), high, long, "ground")
    return Box(round(word.x - long / 2, 1), round(word.y - down - high / 2, 1), long, high, "ground")


def lanes(spans: Sequence[tuple[float, float]]) -> list[tuple[int, int]]:
    """Of spans that share a row, each one's lane and how many lanes there are beside it: what happens at once lies side by
    side, those that come first in the first lane, and what has the time to itself has the whole row."""
    found, together = [0] * len(spans), _together(spans)
    for some in together:
        for number, at in enumerate(some):
            taken = {found[other] for other in some[:number] if _meet(spans[at], spans[other])}
            found[at] = next(lane for lane in range(len(some)) if lane not in taken)
    many = {at: 1 + max(found[other] for other in some) for some in together for at in some}
    return [(lane, many[at]) for at, lane in enumerate(found)]


def _together(spans: Sequence[tuple[float, float]]) -> list[list[int]]:
    """Those that overlap, one through the other, each group in the order in which they came."""
    groups, end = list[list[int]](), 0.0
    for at in sorted(range(len(spans)), key=lambda at: spans[at]):
        if groups and spans[at][0] < end:
            groups[-1].append(at)
            end = max(end, spans[at][1])
        else:
            groups.append([at])
            end = spans[at][1]
    return [sorted(some) for some in groups]


def _meet(one: tuple[float, float], other: tuple[float, float]) -> bool:
    return one[0] < other[1] and other[0] < one[1]
