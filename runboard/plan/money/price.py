"""The kind of question 'price': what a good piece costs, what it should sell for, and what stays of a price."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import timedelta
from decimal import Decimal
from typing import Literal

from runboard.plan.before.kind import File, Keep, Kind, Record, Told
from runboard.plan.money.break_even import break_even
from runboard.plan.money.cents import Amount, exact, places_of, rounded
from runboard.plan.money.costs import Costs, costs_of
from runboard.plan.money.question import Price, begin, learned, with_books_own
from runboard.run.refusal import Refused
from runboard.shop.book import Book

# Counts that somebody asks a quote for, beside the one that was asked about.
USUAL = (1, 2, 5, 10, 20, 50, 100)
# Decimals of what is divided: so few that 60.000…1 is 60.
FINE = 6

Named = Literal["today", "margin", "markup", "typed"]


@dataclass(frozen=True)
class AtPrice:
    """A price of one, what is taken off it as fees, and what ``stays`` of it beyond the cost; ``of_price`` and ``of_cost`` are that
    as shares. ``an_hour`` is what an hour of work earns at it: what stays and what the work was counted at, over the hours."""

    name: Named
    price: Decimal
    fees: Decimal
    stays: Decimal
    of_price: Decimal
    of_cost: Decimal
    an_hour: Decimal | None


@dataclass(frozen=True)
class Quote:
    """A run of so many: what a good piece costs in it, and what one and all of them should sell for (None where no price does)."""

    pieces: int
    started: int
    a_piece: Decimal
    price: Decimal | None
    whole: Decimal | None


@dataclass(frozen=True)
class Paid:
    """A tool of ``cost``: a good piece brings ``each``, by what it ``saves`` or, where it saves nothing, by what stays of the price.
    What it saves, ``a_started`` of each started one, is saved on those that do not come good too. It has paid after so many good
    ``pieces``, ``runs`` of as many as was asked, ``months``; None: never, or nobody said how many are sold."""

    cost: Decimal
    saves: bool
    a_started: Decimal
    each: Decimal
    pieces: Decimal | None
    runs: Decimal | None
    months: Decimal | None


@dataclass(frozen=True)
class Priced:
    """The answer. ``asked`` is the question with what was left empty as the book has it. ``prices`` are today's where there is one,
    then at the margin and at the mark-up, where a price gives them."""

    asked: Price
    costs: Costs
    prices: tuple[AtPrice, ...]
    quotes: tuple[Quote, ...]
    paid: Paid | None = None

    def at(self, name: Named) -> AtPrice | None:
        """The price of that name."""
        return next((each for each in self.prices if each.name == name), None)

    @property
    def meant(self) -> AtPrice | None:
        """The price that the shop's own margin or mark-up makes."""
        return self.at("margin" if self.asked.margin_of == "price" else "markup")


def answer(book: Book, question: Price, file: File | None = None, told: Told | None = None) -> Priced:
    """See ``Priced``. Refused as ``priced`` is."""
    found = priced(book, question)
    return replace(found, quotes=tuple(_quotes(book, found.asked, places_of(book.money))))


def priced(book: Book, question: Price) -> Priced:
    """The same of the pieces that are asked about alone, without quotes. Refused as costs are, and 'nothing to reckon' without a product and
    without a cost."""
    asked = with_books_own(book, question)
    costs = costs_of(book, asked)
    if asked.product is None and not (asked.others or asked.material_each):
        raise Refused("nothing to reckon")
    places = places_of(book.money)
    prices = tuple(_prices(asked, costs, places))
    found = Priced(asked, costs, prices, ())
    return replace(found, paid=_paid(found))


def price_for(asked: Price, cost: Decimal, margin_of: Literal["price", "cost"], places: int) -> Decimal | None:
    """What one must sell for so that fees, the cost and the share ``margin`` are in it.

    Of the price, (cost + fee) / (1 − fee share − margin): what stays is that share of the price. Of the cost, a mark-up, (cost × (1 +
    margin) + fee) / (1 − fee share): what stays is that share of the cost. None where the shares leave nothing of the price.
    """
    share, fee, margin = exact(asked.fee_share or 0), exact(asked.fee_each or 0), exact(asked.margin or 0)
    over = cost + fee if margin_of == "price" else cost * (1 + margin) + fee
    under = 1 - share - margin if margin_of == "price" else 1 - share
    return rounded(over / under, places) if under > 0 else None


def _prices(asked: Price, costs: Costs, places: int) -> Iterator[AtPrice]:
    cost = costs.a_piece
    wanted: list[tuple[Named, Decimal | None]] = [
        ("today", None if asked.price is None else rounded(exact(asked.price), places)),
        ("margin", price_for(asked, cost, "price", places)),
        ("markup", price_for(asked, cost, "cost", places)),
    ]
    for name, price in wanted:
        if price is not None:
            yield _at(name, price, asked, costs, places)


def _at(name: Named, price: Decimal, asked: Price, costs: Costs, places: int) -> AtPrice:
    fees = rounded(price * exact(asked.fee_share or 0) + exact(asked.fee_each or 0), places)
    stays = price - fees - costs.a_piece
    an_hour = None
    if costs.hours:
        an_hour = rounded((stays * costs.pieces + costs.hands) / costs.hours, places)
    return AtPrice(name, price, fees, stays, _share(stays, price), _share(stays, costs.a_piece), an_hour)


def _share(part: Decimal, whole: Decimal) -> Decimal:
    return rounded(part / whole, 3) if whole else Decimal(0)


def _quotes(book: Book, asked: Price, places: int) -> Iterator[Quote]:
    for pieces in sorted({*USUAL, asked.pieces}):
        start = asked.start if pieces == asked.pieces else None
        try:
            costs = costs_of(book, replace(asked, pieces=pieces, start=start))
        except Refused:
            continue  # more than a run may have: nobody is quoted for it
        price = price_for(asked, costs.a_piece, asked.margin_of, places)
        yield Quote(pieces, costs.started, costs.a_piece, price, None if price is None else price * pieces)


def _paid(found: Priced) -> Paid | None:
    asked = found.asked
    if asked.tool is None:
        return None
    seconds = exact(asked.tool_saves / timedelta(seconds=1))
    saved = seconds * exact(asked.hour_rate or 0) / 3600 + exact(asked.tool_saves_money or 0)
    at = found.at("today") or found.meant
    stays = at.stays if at is not None else Decimal(0)
    each = saved * found.costs.started / found.costs.pieces if saved else stays
    pieces = break_even(exact(asked.tool), each)
    if pieces is None:
        return Paid(exact(asked.tool), bool(saved), saved, each, None, None, None)
    months = rounded(pieces / exact(asked.pieces_a_month), FINE) if asked.pieces_a_month else None
    runs = rounded(pieces / asked.pieces, FINE)
    return Paid(exact(asked.tool), bool(saved), saved, each, rounded(pieces, FINE), runs, months)


def keeps(book: Book, question: Price, found: Priced) -> Sequence[Keep]:
    """The price that the margin makes, and one that was typed, as the product's price."""
    product = book.product(question.product or "")
    if product is None:
        return ()
    prices = {"meant": found.meant, "today": found.at("today")}
    return [
        Keep(
            f"price {name}",
            "price",
            Put(product.key, float(at.price)),
            {"price": Amount(at.price, book.money), "product": product.name},
        )
        for name, at in prices.items()
        if at is not None and float(at.price) != product.price
    ]


@dataclass(frozen=True)
class Put:
    """Writes a product's price into the book's record. Refused 'product unknown'."""

    product: str
    price: float

    def __call__(self, record: Record) -> None:
        found = next((each for each in record["products"] if each["key"] == self.product), None)
        if found is None:
            raise Refused("product unknown", product=self.product)
        found["price"] = self.price


KIND = Kind("price", Price, answer, begin, keeps, learned=learned)
