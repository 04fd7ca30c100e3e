"""Woods: how dense one is, how far it moves with moisture, whether it is hard; known by its name in several languages.

The table is the Wood Handbook's (USDA Forest Products Laboratory, public domain); ``woods.json`` says what of it was read and what
is from memory. A wood that is not in it is asked for: hard or soft, and its specific gravity.
"""

import json
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files

from runboard.shop.finish import plain_words


@dataclass(frozen=True)
class Wood:
    """``gravity`` on oven-dry weight and volume at 12 % moisture. ``radial`` and ``tangential`` are the change of width, as a share
    of it, for one per cent of moisture: across the rings (quarter-sawn) and along them (flat-sawn)."""

    key: str
    name: str
    hard: bool
    gravity: float
    gravity_source: str
    radial: float
    tangential: float
    coefficients_source: str
    words: tuple[str, ...]


@cache
def woods() -> tuple[Wood, ...]:
    """The woods of the table."""
    told = json.loads(files("runboard.plan.fits").joinpath("woods.json").read_text("utf-8"))["woods"]
    return tuple(Wood(**{**each, "words": tuple(each["words"])}) for each in told)


@lru_cache(maxsize=256)
def wood_named(text: str) -> Wood | None:
    """The wood that a text names, by the longest word that stands in it: 'Ash, steamed' is white ash, 'red oak' no white one."""
    plain = f" {plain_words(text)} "
    found = [
        (len(word), wood) for wood in woods() for word in (plain_words(wood.name), *wood.words) if f" {word} " in plain
    ]
    return max(found, key=lambda one: one[0])[1] if found else None


def same_wood(one: str, other: str) -> bool:
    """Whether two texts name the same wood: by the same words, or as one of the table."""
    if plain_words(one) == plain_words(other):
        return True
    first = wood_named(one)
    return first is not None and first == wood_named(other)
