"""What was said of a supply and of a cutter, each with what had been used by then: the nouns. ``noting`` folds what says them."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from types import MappingProxyType
from typing import Literal

# Product, operation, and how much each piece uses as the route wrote it.
UseKey = tuple[str, str, float]
Pieces = Mapping[UseKey, float]
NO_PIECES: Pieces = MappingProxyType({})
NO_WEAR: Mapping[str, tuple[float, float]] = MappingProxyType({})


@dataclass(frozen=True)
class SupplySaid:
    """``what``: so much is there (counted), so much was bought, there is none (out), there is some again (in). ``spent`` are the
    pieces that had used it by then, of a count and of 'out', which counts none. ``run`` is whose step waited for it."""

    what: Literal["counted", "bought", "out", "in"]
    name: str
    amount: float
    at: datetime
    event: str
    person: str = ""
    run: str = ""
    spent: Pieces = field(default_factory=lambda: NO_PIECES)


@dataclass(frozen=True)
class CutterChange:
    """A cutter was changed at a station; ``cutter`` is the book's key of it, '' where nobody said which. ``worn`` has what each
    cutter had done by then: (pieces, minutes)."""

    station: str
    cutter: str
    at: datetime
    event: str
    worn: Mapping[str, tuple[float, float]] = field(default_factory=lambda: NO_WEAR)


def word_of(name: str) -> str:
    """By what one supply is told from another: its name, whatever its capitals and spaces."""
    return " ".join(name.split()).casefold()
