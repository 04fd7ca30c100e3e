"""One line taken apart: its words, its codes, the parameters it sets (NISTIR 6556, 3.3)."""

import re
from collections.abc import Callable
from dataclasses import dataclass, field

from runboard.plan.program.language.doubts import Doubts, LeftOut
from runboard.plan.program.language.expressions import Text, parameter_number, real_value
from runboard.plan.program.language.limits import MOST_MM, NEAR_WHOLE
from runboard.run.refusal import Refused

_SPACES = re.compile(r"[ \t\r\f\v]+")
_NUMBERED = re.compile(r"n\d+")
# The report's Table 3, without those that a machine of three axes has no use for.
_WORDS = frozenset("dfhijklpqrstxyz")
_TURNING = frozenset("abc")


@dataclass
class Line:
    """``words``: their values by letter, in small letters. ``g``: G codes times ten, as they come; ``m``: M codes.
    ``unknown``: whether a G code is none of the language, or a word is."""

    number: int
    words: dict[str, float] = field(default_factory=dict)
    g: list[int] = field(default_factory=list)
    m: list[int] = field(default_factory=list)
    settings: list[tuple[int, float]] = field(default_factory=list)
    is_optional: bool = False  # begins with a slash

    def has(self, letters: str) -> bool:
        """Whether it has a word with any of these."""
        return any(letter in self.words for letter in letters)


def take_apart(raw: bytes, number: int, parameter: Callable[[int], float], doubts: Doubts) -> Line | None:
    """The line's parts; None where nothing is on it or it is an O-word, which is named.

    Refused: what is no line of the language. ``LeftOut`` is raised for what another dialect may mean by it."""
    text = Text(_bare(raw, number, doubts), number, parameter)
    line = Line(number)
    if text.peek() == "/":
        line.is_optional = True
        text.at += 1
    numbered = _NUMBERED.match(text.text, text.at)
    text.at = numbered.end() if numbered else text.at
    if text.peek() == "o":
        _name_o_word(text, doubts)
        return None
    while text.peek():
        _take(text, line, doubts)
    if text.has_signed_value:
        doubts.once(number, "sign-before-value")
    return line


def _bare(raw: bytes, number: int, doubts: Doubts) -> str:
    """The line without comments and spaces, in small letters."""
    text = raw.decode("latin-1")
    if "(" in text or ";" in text:
        text = _without_comments(text, number, doubts)
    text = _SPACES.sub("", text)
    if not text.isascii() or not text.isprintable():
        strange = next(sign for sign in text if not sign.isascii() or not sign.isprintable())
        raise Refused("program-character", line=number, sign=_shown(strange))
    return text.lower()


def _shown(sign: str) -> str:
    return sign if sign.isprintable() else f"U+{ord(sign):04X}"


def _without_comments(text: str, number: int, doubts: Doubts) -> str:
    kept, at = [], 0
    while at < len(text):
        opens = min((found for found in (text.find("(", at), text.find(";", at)) if found >= 0), default=len(text))
        kept.append(text[at:opens])
        if opens == len(text) or text[opens] == ";":
            break
        closes = text.find(")", opens)
        if closes < 0:
            raise Refused("program-comment", line=number)
        at = closes + 1
        if text.find("(", opens + 1, closes) >= 0:
            doubts.add(number, "comment-nested")
            at = _outer_end(text, opens, number)
    return "".join(kept)


def _outer_end(text: str, opens: int, number: int) -> int:
    """Behind the parenthesis that closes the outer one, where one is within another."""
    depth = 0
    for at in range(opens, len(text)):
        depth += (text[at] == "(") - (text[at] == ")")
        if depth == 0:
            return at + 1
    raise Refused("program-comment", line=number)


def _name_o_word(text: Text, doubts: Doubts) -> None:
    word = re.match(r"o\d+$", text.text[text.at :])
    if word:
        doubts.add(text.line, "program-number", number=word[0][1:])
    else:
        doubts.add(text.line, "o-word", changes_time=True, text=text.text[text.at : text.at + 20].upper())


def _take(text: Text, line: Line, doubts: Doubts) -> None:
    letter = text.peek()
    text.at += 1
    if letter == "#":
        _take_setting(text, line)
        return
    if not letter.isalpha():
        text.at -= 1
        raise Refused("program-character", line=line.number, sign=_shown(letter))
    value = real_value(text)
    if abs(value) > MOST_MM:
        raise Refused("program-huge", line=line.number, word=letter.upper())
    if letter == "g":
        line.g.append(_code(value, 10, "G", line))
    elif letter == "m":
        line.m.append(_code(value, 1, "M", line))
    elif letter in _TURNING:
        doubts.once(line.number, "axis-turning", changes_time=True, word=letter.upper())
    elif letter not in _WORDS:
        doubts.once(line.number, "word-unknown", changes_time=True, word=letter.upper())
    elif letter in line.words:
        doubts.add(line.number, "word-twice", changes_time=True, word=letter.upper())
    else:
        line.words[letter] = value


def _take_setting(text: Text, line: Line) -> None:
    if text.peek() == "<":
        raise LeftOut("named-parameter")
    which = parameter_number(real_value(text), text)
    text.take("=")
    line.settings.append((which, real_value(text)))


def _code(value: float, times: int, letter: str, line: Line) -> int:
    """The number of a code, of a G code times ten: it must be near a whole one."""
    near = round(value * times)
    if near < 0 or abs(value * times - near) > NEAR_WHOLE:
        raise Refused("program-code", line=line.number, word=f"{letter}{value:g}")
    return near
