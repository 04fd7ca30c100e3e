"""How much paper an order will be, before any of it is printed."""

from collections import Counter
from dataclasses import dataclass

from runboard.cards.layout import faces, sheets
from runboard.cards.model import CardOrder, StationSheet, Traveller
from runboard.cards.papers import PAPERS


@dataclass(frozen=True)
class Counted:
    """Cards and printed sides of each sort, and the sheets that go through the printer, each printed on one side."""

    trays: int
    tray_sides: int
    stations: int
    station_sides: int
    other_sides: int
    pages: int


def counted(order: CardOrder) -> Counted:
    """The count of an order."""
    cards, sides = Counter[type](), Counter[type]()
    for card in order.cards:
        cards[type(card)] += 1
        sides[type(card)] += len(faces(card, PAPERS[order.paper], order.words))
    known = sides[Traveller] + sides[StationSheet]
    return Counted(
        cards[Traveller],
        sides[Traveller],
        cards[StationSheet],
        sides[StationSheet],
        sides.total() - known,
        len(sheets(order)),
    )
