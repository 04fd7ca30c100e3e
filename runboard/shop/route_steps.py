"""The steps of a route in a few words, taken apart: words, minutes, what a load is. ``route_text`` has the grammar."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta

from runboard.shop.book import LoadSize
from runboard.shop.durations import parse_duration
from runboard.shop.problem import Unreadable
from runboard.shop.route_words import FILLERS, WAIT_WORDS

MOST_STEPS = 100
MOST_LETTERS = 120
# A comma between two digits is a decimal comma.
_BETWEEN = re.compile(r",(?!\d)|(?<!\d),|[;\n\r→]|->|\bthen\b", re.IGNORECASE)
_EACH = re.compile(r"\s+(?:each|(?:a|per) piece)$", re.IGNORECASE)
_A_TRAY = re.compile(r"\s+(?:a|per) tray$", re.IGNORECASE)
_LOAD = re.compile(r"\s*\b(?:(?:a|per|on a)\s+)?(board|jig) of (\d{1,4})\b", re.IGNORECASE)


@dataclass(frozen=True)
class StepSaid:
    """What one step says, taken apart."""

    number: int
    text: str
    words: tuple[str, ...]
    time: timedelta | None
    each: bool = False
    size: LoadSize = "tray"
    pieces: int | None = None


def steps_of(text: str) -> list[StepSaid]:
    """The steps of a line of text, in order, at least one. Refuses with ``Unreadable`` what says no work."""
    plain = "".join(char for char in text if char.isprintable() or char.isspace())
    pieces = [piece.strip(" .\t") for piece in _BETWEEN.split(plain)]
    pieces = [piece for piece in pieces if piece]
    if not pieces:
        raise Unreadable("route empty")
    if len(pieces) > MOST_STEPS:
        raise Unreadable("route too long", most=MOST_STEPS, found=len(pieces))
    return [_said(number, piece) for number, piece in enumerate(pieces, 1)]


def _said(number: int, text: str) -> StepSaid:
    if len(text) > MOST_LETTERS:
        raise Unreadable("route step too long", number=number, text=text[:MOST_LETTERS], most=MOST_LETTERS)
    size, pieces, rest = _load_size(text)
    each = _EACH.search(rest) is not None
    tokens = _A_TRAY.sub("", _EACH.sub("", rest)).split()
    words, time = _words_and_time(tokens)
    if any(re.match(r"-\d", word) for word in words):
        raise Unreadable("route time unreadable", number=number, text=text)
    if not any(char.isalpha() for word in words for char in word):
        raise Unreadable("route step without word", number=number, text=text)
    return StepSaid(number, text, words, time, each, size, pieces)


def _load_size(text: str) -> tuple[LoadSize, int | None, str]:
    load = _LOAD.search(text)
    if load is None or int(load[2]) == 0:
        return "tray", None, text
    return "board" if load[1].lower() == "board" else "jig", int(load[2]), text[: load.start()] + text[load.end() :]


def _words_and_time(tokens: Sequence[str]) -> tuple[tuple[str, ...], timedelta | None]:
    """The words, and the longest span of time that the step ends or begins with."""
    for at in range(len(tokens)):
        time = _time(tokens[at:])
        if time is not None:
            return tuple(tokens[:at]), time
    for at in range(len(tokens), 0, -1):
        time = _time(tokens[:at])
        if time is not None:
            return tuple(tokens[at:]), time
    return tuple(tokens), None


def _time(tokens: Sequence[str]) -> timedelta | None:
    try:
        return parse_duration(" ".join(tokens))
    except Unreadable as refused:
        if refused.code == "time too long":
            raise
        return None


def is_wait(words: Sequence[str]) -> bool:
    """Whether a step is nothing but a wait: 'overnight', 'let it dry', but not 'dry fit'."""
    plain = [word.lower() for word in words]
    return any(word in WAIT_WORDS for word in plain) and all(word in WAIT_WORDS or word in FILLERS for word in plain)
