"""What a run uses up, in money: supplies by the price of a packet, cutters by the share of their life."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from runboard.plan.money.cents import exact
from runboard.plan.money.hours import Hours
from runboard.plan.opening import uses_of
from runboard.run.fold.route import Route
from runboard.run.supplies.said import word_of
from runboard.shop.book import Book
from runboard.shop.machines import Cutter
from runboard.shop.stocked import Supply

Row = tuple[str, str, Decimal, str, Decimal]


@dataclass(frozen=True)
class UsedUp:
    """Rows (code, name, quantity, unit, rate) of what is counted; ``unpriced`` and ``other_units`` are not."""

    rows: tuple[Row, ...] = ()
    unpriced: tuple[str, ...] = ()
    other_units: tuple[str, ...] = ()


def used_up_lines(book: Book, route: Route | None, started: int, hours: Sequence[Hours]) -> UsedUp:
    """What so many started pieces use up."""
    if route is None:
        return UsedUp()
    rows: list[Row] = []
    unpriced, other_units = [], []
    for name, (amount, unit) in uses_of(route, started).items():
        supply = supply_called(book, name)
        if supply is None or supply.price is None:
            unpriced.append(supply.name if supply else name)
        elif supply.unit and unit and supply.unit != unit:
            other_units.append(supply.name)
        else:
            rate = exact(supply.price) / exact(supply.pack or 1)
            rows.append(("supply", supply.name, exact(amount), supply.unit or unit or "pieces", rate))
    return UsedUp((*rows, *_cutters(book, route, started, hours)), tuple(unpriced), tuple(other_units))


def supply_called(book: Book, name: str) -> Supply | None:
    """The supply that an operation's ``uses`` mean, by its name as the shopping list reads it, or by its key."""
    word = word_of(name)
    return next((each for each in book.supplies if word in (word_of(each.name), each.key)), None)


def _cutters(book: Book, route: Route, started: int, hours: Sequence[Hours]) -> Iterator[Row]:
    """The share of each cutter's life that the run takes. One that is counted as a supply already is left out."""
    cutters = {each.key: each for each in book.cutters}
    for operation in route.product.operations:
        cutter = cutters.get(operation.cutter or "")
        if cutter is None or cutter.life is None:
            continue
        price = _price_of(book, cutter)
        named = {cutter.supply, cutter.name}
        if price is None or any(use.supply in named for use in operation.uses):
            continue
        cutting = (each.hours for each in hours if (each.code, each.operation) == ("machine", operation.key))
        spent = Decimal(started) if cutter.life_in == "pieces" else sum(cutting, Decimal(0)) * 60
        yield "cutter", cutter.name, spent / exact(cutter.life), "worn", price


def _price_of(book: Book, cutter: Cutter) -> Decimal | None:
    if cutter.price is not None:
        return exact(cutter.price)
    supply = supply_called(book, cutter.supply or "")
    return None if supply is None or supply.price is None else exact(supply.price) / exact(supply.pack or 1)
