"""Short forms of steps, for bars of charts: 'Cut', 'S120', 'Eng'. All of them differ, and each has a letter of its own for
bars that have room for no more."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import count
from string import ascii_uppercase
from unicodedata import normalize

# A number with its decimals, or letters in a row.
_PARTS = re.compile(r"\d+(?:[.,]\d+)?|[^\W\d_]+")
# A short form has so many letters of a word, and a number no longer than this.
_LETTERS, _FIGURES = 3, 5


@dataclass(frozen=True)
class Short:
    """What stands on a bar instead of a name; where there is no room, the letter alone."""

    form: str
    letter: str


def short_forms(names: Iterable[str]) -> dict[str, Short]:
    """Of each name its short form, in their order: two that would be alike are told apart by the later one."""
    found, forms, letters = dict[str, Short](), set[str](), set[str]()
    for name in dict.fromkeys(names):
        form = next(one for one in _forms(name) if one.casefold() not in forms)
        letter = next(one for one in _letters(name) if one not in letters)
        found[name] = Short(form, letter)
        forms.add(form.casefold())
        letters.add(letter)
    return found


def _forms(name: str) -> Iterator[str]:
    """'Sand 120' is S120, then Sa120; 'Flatten A' FlaA; 'Engrave back' Eng, then EngB, Engr, …"""
    first, *others = _parts(name)
    tails = [part for part in others if part[0].isdigit() or len(part) == 1]
    if tails:
        tail = tails[-1][:_FIGURES]
        least = 1 if tail[0].isdigit() else _LETTERS
        yield from (_raised(first[:long]) + tail for long in range(min(least, len(first)), len(first) + 1))
    else:
        yield _raised(first if len(first) <= _LETTERS + 1 else first[:_LETTERS])
        yield _raised(first[:_LETTERS]) + "".join(_raised(part[:1]) for part in others[:2])
        yield from (_raised(first[:long]) for long in range(_LETTERS + 1, len(first) + 1))
    yield from (f"{_raised(first[:2])}{number}" for number in count(2))


def _letters(name: str) -> Iterator[str]:
    """Its own letters first; no figure, which would be read as a tray's number."""
    every = "".join(_parts(name))
    own = [letter.upper() for letter in every if letter.isalpha() and len(letter.upper()) == 1]
    yield from own
    yield from ascii_uppercase
    yield from ascii_uppercase.lower()
    yield from (f"{one}{number}" for number in count(2) for one in ascii_uppercase)


def _parts(name: str) -> list[str]:
    return _PARTS.findall(normalize("NFC", name)) or ["?"]


def _raised(text: str) -> str:
    return text[:1].upper() + text[1:]
