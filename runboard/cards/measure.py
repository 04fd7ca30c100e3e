"""How wide a text is and where its lines break, known before any page is drawn.

Widths are those of DejaVu Sans, which the PDF is set in and which is wider than what browsers have instead; so a line
that fits here fits there too. Every line is broken here, so that a card's height is known and nothing is cut off.
"""

import json
import re
import unicodedata
from collections.abc import Iterable, Mapping
from functools import cache, lru_cache
from pathlib import Path

_UNITS = 2048
_MM_A_POINT = 25.4 / 72
_SLACK = 1.02  # kerning, hinting, and a printer's rounding
_UNKNOWN = 2400  # a character that the font lacks is drawn in another: as wide as any
_BREAK_AFTER = "-/–_"
_KEEPING = "\u00a0\u202f"  # spaces at which no line ends
_BEFORE_A_MARK = re.compile(r" (?=[?!:;»%°·](?:\s|$))")
# '6 mm', '1 h 30', '14 days', 'Thu 17:00': what nobody should have to look for on the next line.
_UNITS_KEPT = "mm|cm|m|in|h|min|s|°C|°F|g|kg|ml|l|W|kW|V|A|dB|Hz|day|days|Tag|Tage|Tagen|día|días|jour|jours"
_AFTER_A_NUMBER = re.compile(
    rf"(?<=\d) (?=(?:{_UNITS_KEPT})\b)|(?<=\dh) (?=\d\d\b)|(?<=\d[ \u00a0]h) (?=\d\d?\b)|(?<=\w) (?=\d\d:\d\d\b)"
)

Run = tuple[str, bool]
Line = tuple[Run, ...]


@cache
def _advances() -> Mapping[bool, Mapping[str, int]]:
    table = json.loads((Path(__file__).parent / "widths.json").read_text("utf-8"))
    return {
        bold: {chr(int(first) + at): width for first, run in table[face].items() for at, width in enumerate(run)}
        for face, bold in (("regular", False), ("bold", True))
    }


@lru_cache(maxsize=16384)
def width(text: str, points: float, bold: bool = False) -> float:
    """Millimetres that a text takes at most in one line."""
    known = _advances()[bold]
    units = sum(known.get(letter, _UNKNOWN) for letter in text)
    return units / _UNITS * points * _MM_A_POINT * _SLACK


def plain(text: str) -> str:
    """A text as it is printed: without characters that draw nothing, or that would turn what follows around, and with
    marks kept at their word ('derrière ?', '62 %', 'Oil ·') and units at their number."""
    kept = (" " if letter.isspace() and letter not in _KEEPING else letter for letter in text)
    drawn = "".join(letter for letter in kept if unicodedata.category(letter) not in ("Cc", "Cf", "Cs", "Co", "Cn"))
    return _AFTER_A_NUMBER.sub("\u00a0", _BEFORE_A_MARK.sub("\u00a0", drawn))


def lines(text: str, room: float, points: float, bold: bool = False) -> tuple[str, ...]:
    """A text in lines of at most ``room`` mm. Words that are longer than a line are broken within."""
    kind = type(text)  # a text in another language than its card stays one, line by line
    return tuple(kind("".join(part for part, _ in line)) for line in flow(((text, bold),), room, points))


def beginning(text: str, room: float, points: float, bold: bool = False) -> str:
    """A text as far as one line goes, its end left out where it is longer."""
    found = lines(text, room, points, bold)
    return "".join(found) if len(found) < 2 else f"{lines(text, room - width('…', points, bold), points, bold)[0]}…"


def flow(runs: Iterable[Run], room: float, points: float) -> tuple[Line, ...]:
    """As ``lines``, for text that changes between plain and bold: each line is its runs."""
    return _flow(tuple(runs), room, points)


@lru_cache(maxsize=8192)
def _flow(runs: tuple[Run, ...], room: float, points: float) -> tuple[Line, ...]:
    done: list[list[Run]] = [[]]
    left = room
    gap = 0.0
    for word, bold, spaced in _words(runs):
        long = width(word, points, bold)
        gap = width(" ", points, bold) if spaced and done[-1] else 0.0
        if gap + long <= left:
            done[-1].append((" " + word if gap else word, bold))
            left -= gap + long
            continue
        for number, piece in enumerate(_pieces(word, room, points, bold)):
            if done[-1] or number:
                done.append([])
            done[-1].append((piece, bold))
            left = room - width(piece, points, bold)
    return tuple(_joined(line) for line in done if line)


def _words(runs: tuple[Run, ...]) -> Iterable[tuple[str, bool, bool]]:
    """(word, bold, whether a space goes before it); a word may also end after a hyphen or a stroke."""
    for text, bold in runs:
        for word in filter(None, plain(text).split(" ")):
            start, spaced = 0, True
            for at, letter in enumerate(word, 1):
                if (letter in _BREAK_AFTER and at > start + 1) or at == len(word):
                    yield word[start:at], bold, spaced
                    start, spaced = at, False


def _pieces(word: str, room: float, points: float, bold: bool) -> Iterable[str]:
    """A word in pieces that each fit a line; an accent stays with its letter."""
    piece = ""
    for letter in _letters(word):
        if piece and width(piece + letter, points, bold) > room:
            yield piece
            piece = ""
        piece += letter
    yield piece


def _letters(word: str) -> list[str]:
    """Each letter with the accents that are drawn over it."""
    found: list[str] = []
    for letter in word:
        if found and unicodedata.combining(letter):
            found[-1] += letter
        else:
            found.append(letter)
    return found


def _joined(line: list[Run]) -> Line:
    found: list[Run] = []
    for text, bold in line:
        if found and found[-1][1] == bold:
            found[-1] = (found[-1][0] + text, bold)
        else:
            found.append((text, bold))
    return tuple(found)
