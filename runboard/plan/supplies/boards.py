"""Boards on the shopping list: for what is not cut yet of the open runs, and for a run to be opened."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from runboard.plan.opening import Tally
from runboard.plan.stock.need import needed
from runboard.run.fold.route import Route
from runboard.run.fold.state import RunState
from runboard.shop.book import Book
from runboard.shop.product import Product


@dataclass(frozen=True)
class BoardsNeeded:
    """One kind of board for the runs of one product: ``use`` of them are sawn up, of ``have``; ``buy`` are missing, at
    ``price`` each."""

    stock: str
    name: str
    product: str
    use: int
    have: int
    buy: int
    price: float | None


@dataclass(frozen=True)
class NoBoards:
    """Boards of a product that nobody can reckon: ``why`` is 'no piece', 'no stock' or 'short' (by so many pieces)."""

    product: str
    why: str
    short: int


Uncut = Mapping[tuple[str, str], tuple[Product, int]]


def boards_needed(book: Book, uncut: Uncut) -> tuple[tuple[BoardsNeeded, ...], tuple[NoBoards, ...]]:
    """The boards for pieces that are not cut yet, product by product and wood by wood: what one takes, the next has not."""
    rows: list[BoardsNeeded] = []
    none: list[NoBoards] = []
    for (_, wood), (product, pieces) in uncut.items():
        need = needed(book, product, pieces, wood=wood)
        if need.why and product.piece is not None:
            none.append(NoBoards(product.name, need.why, need.short))
        for row in need.rows:
            rows.append(BoardsNeeded(row.stock, row.name, product.name, row.use, row.have, row.buy, row.price))
        book = _less(book, {row.stock: row.use for row in need.rows})
    return tuple(rows), tuple(none)


def _less(book: Book, used: Mapping[str, int]) -> Book:
    stocks = tuple(replace(stock, have=max(0, stock.have - used.get(stock.key, 0))) for stock in book.stocks)
    return replace(book, stocks=stocks)


def uncut(
    runs: Iterable[RunState], product: Product | None = None, trays: Iterable[Tally] = (), wood: str = ""
) -> Uncut:
    """The pieces that wait for their first step, by product and wood: of open runs, and of a product to be started."""
    found: dict[tuple[str, str], tuple[Product, int]] = {}
    for run in runs:
        for tray in run.trays.values():
            route = run.route_of(tray)
            pieces = tray.at.get(route.steps[0].key, 0) if route.steps else 0
            _add(found, route.product, tray.wood or run.wood, pieces)
    if product is not None and product.operations:
        first = Route(product).steps[0].key
        started = sum(tally.pieces for tally in trays if tally.at in ("", first))
        _add(found, product, wood or product.wood, started)
    return found


def _add(found: dict[tuple[str, str], tuple[Product, int]], product: Product, wood: str, pieces: int) -> None:
    if pieces:
        before = found.get((product.key, wood), (product, 0))
        found[product.key, wood] = product, before[1] + pieces
