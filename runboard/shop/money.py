"""What the shop's money is called, and what a price has besides the work."""

from dataclasses import dataclass
from typing import Annotated, Literal

from runboard.shop.record import Of


@dataclass(frozen=True)
class Money:
    """``currency`` is a code of ISO 4217, ``locale`` says how amounts are written (de-DE). ``margin`` is a share: of the price
    (a margin) or of the cost (a mark-up), as ``margin_of`` says. Fees are a share of the price, and so much an order."""

    currency: Annotated[str, Of("Three letters of ISO 4217: EUR, USD.", most=3)] = ""
    locale: Annotated[str, Of("How amounts are written: de-DE, en-US.", most=20)] = ""
    margin: Annotated[float, Of("What is to stay of it.", 0, 10, kind="share")] = 0.3
    margin_of: Literal["price", "cost"] = "price"
    fee_share: Annotated[float, Of("What a market or a bank takes of the price.", 0, 0.9, kind="share")] = 0.0
    fee_each: Annotated[float, Of("And so much of each piece sold.")] = 0.0
    packing_each: Annotated[float, Of("What packing one piece costs.")] = 0.0
