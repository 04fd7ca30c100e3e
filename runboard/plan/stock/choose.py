"""Which boards to take for so many pieces: an exact covering of the pieces wanted by boards at hand and for sale.

What is least is asked for in this order:
- 'at hand': money for what is bought, then the area of what is used. What is there already costs nothing;
- 'cost': money for all that is used, what is at hand at its price too, then area;
- 'waste': the area of all that is used, then money.
Where a price is not known, none counts, and area stands for money.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

Aim = Literal["at hand", "cost", "waste"]

# Up to here each piece is a row of the covering; what is wanted beyond comes from the best board for its pieces.
MOST_EXACT = 5000
_FIRST = 10**16  # what is asked first outweighs all of what is asked after it


@dataclass(frozen=True)
class Offer:
    """A board that suits: ``each`` pieces come from one, ``have`` are at hand; ``area`` in mm²."""

    key: str
    each: int
    have: int
    for_sale: bool
    area: float
    price: float | None = None


@dataclass(frozen=True)
class Take:
    """How many of an offer are used, and how many of them are to be bought."""

    offer: Offer
    use: int
    buy: int


@dataclass(frozen=True)
class Chosen:
    """``short`` is how many pieces no board is there for, nor for sale. ``by_price`` is whether money was counted."""

    takes: tuple[Take, ...]
    short: int
    by_price: bool

    @property
    def pieces(self) -> int:
        """How many pieces the boards give."""
        return sum(take.use * take.offer.each for take in self.takes)


@dataclass(frozen=True)
class _Lot:
    """So many boards of one offer that are taken together, or again and again."""

    at: int
    boards: int
    gain: int
    cost: int
    bought: bool


@lru_cache(maxsize=256)
def chosen(offers: tuple[Offer, ...], pieces: int, aim: Aim) -> Chosen:
    """The boards to take, each kind once, in the order of the offers; what is at hand of a kind is used before more is bought."""
    by_price = all(offer.price is not None for offer in offers if offer.for_sale or aim == "cost")
    reach = pieces if any(offer.for_sale and offer.each for offer in offers) else min(pieces, _at_hand(offers))
    lots = _lots(offers, reach, aim, by_price)
    used = [[0, 0] for _ in offers]  # at hand, bought
    bulk = _in_bulk(lots, reach)
    for lot, times in [*bulk, *_covering(_unused(lots, bulk), _rest(reach, bulk))]:
        used[lot.at][lot.bought] += lot.boards * times
    takes = []
    for offer, (own, bought) in zip(offers, used, strict=True):
        use = own + bought
        if use:
            takes.append(Take(offer, use, max(0, use - offer.have)))
    return Chosen(tuple(takes), pieces - reach, by_price)


def _at_hand(offers: Sequence[Offer]) -> int:
    return sum(offer.have * offer.each for offer in offers)


def _lots(offers: Sequence[Offer], pieces: int, aim: Aim, by_price: bool) -> list[_Lot]:
    lots = []
    for at, offer in enumerate(offers):
        if not offer.each:
            continue
        own, bought = _cost(offer, aim, by_price, bought=False), _cost(offer, aim, by_price, bought=True)
        left, boards = min(offer.have, -(-pieces // offer.each)), 1
        while left > 0:
            boards = min(boards, left)
            lots.append(_Lot(at, boards, boards * offer.each, boards * own, False))
            left, boards = left - boards, boards * 2
        if offer.for_sale:
            lots.append(_Lot(at, 1, offer.each, bought, True))
    return lots


def _cost(offer: Offer, aim: Aim, by_price: bool, bought: bool) -> int:
    """Of one board, as one whole number."""
    area = round(offer.area)
    money = round((offer.price or 0) * 1000) if by_price else area
    if aim == "waste":
        return area * _FIRST + (money if bought else 0)
    return (money if bought or aim == "cost" else 0) * _FIRST + area


def _covering(lots: Sequence[_Lot], pieces: int) -> list[tuple[_Lot, int]]:
    """The cheapest lots that have so many pieces together, each how often: lots at hand once at most, bought ones ever again.
    A table over the pieces wanted, one lot after another."""
    nothing = 10**40
    best, taken = [0] + [nothing] * pieces, []
    for lot in lots:
        took = bytearray(pieces + 1)
        order = range(1, pieces + 1) if lot.bought else range(pieces, 0, -1)
        for wanted in order:
            cost = best[wanted - lot.gain if wanted > lot.gain else 0] + lot.cost
            if cost < best[wanted]:
                best[wanted] = cost
                took[wanted] = 1
        taken.append(took)
    found, wanted = [], pieces
    for lot, took in zip(reversed(lots), reversed(taken), strict=True):
        times = 0
        while wanted > 0 and took[wanted]:
            times, wanted = times + 1, max(0, wanted - lot.gain)
            if not lot.bought:
                break
        if times:
            found.append((lot, times))
    return found


def _in_bulk(lots: Sequence[_Lot], pieces: int) -> list[tuple[_Lot, int]]:
    """Lots to take, by what a piece of them costs, until the rest can be covered exactly."""
    found = []
    for lot in sorted(lots, key=lambda lot: (lot.cost / lot.gain, lot.bought)):
        times = max(0, (pieces - MOST_EXACT) // lot.gain)
        times = times if lot.bought else min(times, 1)
        if times:
            found.append((lot, times))
            pieces -= times * lot.gain
    return found


def _unused(lots: Sequence[_Lot], bulk: Sequence[tuple[_Lot, int]]) -> list[_Lot]:
    gone = {id(lot) for lot, _ in bulk if not lot.bought}
    return [lot for lot in lots if id(lot) not in gone]


def _rest(pieces: int, bulk: Sequence[tuple[_Lot, int]]) -> int:
    return max(0, pieces - sum(lot.gain * times for lot, times in bulk))
