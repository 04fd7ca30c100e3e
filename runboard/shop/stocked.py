"""What a shop keeps to make things of, and what making uses up."""

from dataclasses import dataclass
from typing import Annotated, Literal

from runboard.shop.record import Key, Length, Name, Of

Grain = Literal["length", "none"]  # along what the grain of a board or piece runs; 'none': it may lie either way


@dataclass(frozen=True)
class Stock:
    """A board or sheet that the shop has, or can buy: ``have`` of them, all alike."""

    key: Key
    name: Name
    length: Annotated[Length, Of(least=1)]
    width: Annotated[Length, Of(least=1)]
    thickness: Annotated[Length, Of(least=0.1)]
    wood: Annotated[str, Of(most=200)] = ""
    grain: Grain = "length"
    have: Annotated[int, Of("How many are at hand.")] = 0
    for_sale: Annotated[bool, Of("More of it can be bought.")] = True
    price: Annotated[float | None, Of("Of one, in the shop's money.")] = None


@dataclass(frozen=True)
class Supply:
    """What is used up: screws, oil, discs, cartons. An operation's ``uses`` name it. How much there is is counted in the log."""

    key: Key
    name: Name
    unit: Annotated[str, Of("What it is counted in: pieces when empty, else ml, g, m.", most=20)] = ""
    pack: Annotated[float | None, Of("How much one packet holds.", least=0.001)] = None
    price: Annotated[float | None, Of("Of one packet, in the shop's money.")] = None
    low: Annotated[float | None, Of("Below this it is to be bought.")] = None


@dataclass(frozen=True)
class Piece:
    """What one piece of a product is sawn or routed from: a rectangle, with what the cutter takes between two (``gap``) and what
    stays at the stock's edge. ``tabs`` is what one more piece needs beside it for tabs or clamps, at each side."""

    length: Annotated[Length, Of(least=1)]
    width: Annotated[Length, Of(least=1)]
    thickness: Annotated[Length, Of(least=0.1)]
    gap: Annotated[Length, Of("What the cutter takes between two pieces.")] = 0.0
    margin: Annotated[Length, Of("What stays free at the edge of the stock.")] = 0.0
    tabs: Annotated[Length, Of("What each piece needs around it for tabs.")] = 0.0
    grain: Grain = "length"
    stocks: Annotated[tuple[str, ...], Of("What it may be made from; none: whatever fits.", refers="stock")] = ()
