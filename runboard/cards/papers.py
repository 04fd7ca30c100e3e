"""Papers, in millimetres, and how many cards of what size each takes."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

MARGIN = 5  # white on each side of a card, so that a cut a little off takes nothing


@dataclass(frozen=True)
class Paper:
    """A sheet, and how many cards of what size it takes, in rows from the top left."""

    key: str
    width: float
    height: float
    columns: int = 1
    rows: int = 1

    @property
    def places(self) -> int:
        return self.columns * self.rows

    @property
    def card(self) -> "Size":
        return Size(self.width / self.columns, self.height / self.rows)

    @property
    def whole(self) -> "Size":
        return Size(self.width, self.height)


@dataclass(frozen=True)
class Size:
    """The size of one card. ``room`` is what its margins leave."""

    width: float
    height: float

    @property
    def room(self) -> tuple[float, float]:
        return self.width - 2 * MARGIN, self.height - 2 * MARGIN


PAPERS: Mapping[str, Paper] = MappingProxyType(
    {
        "a6": Paper("a6", 105, 148),
        "4x6": Paper("4x6", 101.6, 152.4),
        "a4": Paper("a4", 210, 297, 2, 2),
        "letter": Paper("letter", 215.9, 279.4, 2, 2),
    }
)
