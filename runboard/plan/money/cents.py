"""Amounts of money as exact decimals, rounded as they are shown."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_FLOOR, ROUND_HALF_UP, Decimal

from babel.numbers import get_currency_precision

from runboard.shop.money import Money

# An hour is shown to three decimals, which is some four seconds, and a part of it that counts to five.
HOURS, PART_OF_HOURS, RATE = 3, 5, 4


@dataclass(frozen=True)
class Amount:
    """So much of the shop's money, for a fact that words have to write."""

    number: Decimal
    money: Money


def places_of(money: Money) -> int:
    """How many decimals an amount has: two for euros and where no currency is said, none for yen (ISO 4217)."""
    return int(get_currency_precision(money.currency.upper())) if money.currency else 2


def exact(number: float | Decimal) -> Decimal:
    """A number as somebody wrote it: 0.1 is a tenth."""
    return number if isinstance(number, Decimal) else Decimal(str(number))


def rounded(number: Decimal, places: int) -> Decimal:
    """To so many decimals, a half upwards, as on paper."""
    return number.quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP)


def counted(number: Decimal) -> Decimal:
    """How much is used, as it is shown: to two decimals, below one to three figures: 2.82 boards, 0.169 of a cutter."""
    return rounded(number, max(2, 2 - number.adjusted()))


def shared_out(amounts: Sequence[Decimal], pieces: int, places: int) -> list[Decimal]:
    """What each amount is a piece, so rounded that they add up to their total a piece: what is cut off goes to those that lose
    most by it (largest remainders, after Hamilton)."""
    wanted = rounded(sum(amounts, Decimal(0)) / pieces, places)
    exactly = [amount / pieces for amount in amounts]
    found = [each.quantize(Decimal(1).scaleb(-places), ROUND_FLOOR) for each in exactly]
    cent = Decimal(1).scaleb(-places)
    left = int((wanted - sum(found, Decimal(0))) / cent)
    for at in sorted(range(len(found)), key=lambda at: found[at] - exactly[at])[:left]:
        found[at] += cent
    return found
