"""JSON that comes from outside, read strictly: files, presses, what machines say.

What could not be stored is turned away here (NaN, half of a character), and so is what would cost far more to read than
it says: endless digits, levels, values. How deep it is and how much it holds is seen before anything is made of it.
"""

import json
import re
from typing import Any

from runboard.shop.problem import Unreadable

MOST_LEVELS = 32  # a run's file has nine
MOST_VALUES = 500_000  # of 20,000 presses; each takes some hundred bytes once it is read
MOST_LETTERS_A_NUMBER = 40
LARGEST = 2**53  # what a browser's numbers hold exactly

# Whatever is said up to the next bracket or comma. A text that nobody ended goes on to the end: looking for its end once
# more from each quote would take for ever.
_PART = re.compile(rb'(?:[^"\[\]{},]++|"[^"\\]*+(?:\\.[^"\\]*+)*+"?)*+([\[\]{},]|\Z)', re.DOTALL)
# Levels and values that each of them adds.
_ADDS = {b"[": (1, 1), b"{": (1, 1), b"]": (-1, 0), b"}": (-1, 0), b",": (0, 1), b"": (0, 0)}
_ESCAPED = re.compile(r"\\(?:u[dD][89abAB]..\\u[dD][c-fC-F]..|(u[dD][89a-fA-F])|.)", re.DOTALL)


def read_json_text(raw: bytes, what: str) -> Any:
    """The value that a JSON text in UTF-8 says. Raises ``Unreadable`` with what is wrong with ``what``: 'the file'."""
    try:
        _measure(raw)
        text = raw.decode("utf-8-sig")
        value = json.loads(text, parse_constant=_no_number, parse_int=_whole, parse_float=_fraction)
        if "\\u" in text and any(found[1] for found in _ESCAPED.finditer(text)):
            raise Unreadable("json half character")
    except UnicodeDecodeError:
        raise Unreadable("json no text", what=what) from None
    except json.JSONDecodeError as error:
        raise Unreadable("json broken", what=what, line=error.lineno, column=error.colno) from None
    except Unreadable as bad:  # before it is known with what
        raise Unreadable(bad.code, what=what, **bad.facts) from None
    return value


def _measure(raw: bytes) -> None:
    levels = values = 0
    for part in _PART.finditer(raw):
        level, value = _ADDS[part[1]]
        levels += level
        values += value
        if levels > MOST_LEVELS:
            raise Unreadable("json too deep", most=MOST_LEVELS)
        if values > MOST_VALUES:
            raise Unreadable("json too much", most=MOST_VALUES)


def _no_number(word: str) -> float:
    raise Unreadable("json number", found=word)


def _whole(digits: str) -> int:
    if len(digits) > 17 or abs(number := int(digits)) > LARGEST:
        raise Unreadable("json number", found=_short(digits))
    return number


def _fraction(digits: str) -> float:
    if len(digits) > MOST_LETTERS_A_NUMBER or abs(number := float(digits)) == float("inf"):
        raise Unreadable("json number", found=_short(digits))
    return number


def _short(digits: str) -> str:
    return digits if len(digits) <= 20 else f"{digits[:17]}..."
