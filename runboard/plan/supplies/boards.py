"""The boards of the open runs: for what is not cut yet, run by run in the order in which they were opened; what one takes, the next
has not. The shopping list, the preview of a run and the run sheet go by it."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from runboard.plan.opening import Tally
from runboard.plan.stock.need import StockNeed, needed
from runboard.run.fold.route import Route
from runboard.run.fold.state import RunState, ShopState
from runboard.shop.book import Book
from runboard.shop.product import Product


@dataclass(frozen=True)
class Uncut:
    """Pieces of a run, '' for one to be opened, that wait for their first step."""

    run: str
    product: Product
    wood: str
    pieces: int


@dataclass(frozen=True)
class BoardsNeeded:
    """One kind of board for the ``runs`` of one product: ``use`` of them are sawn up, of ``have``; ``buy`` are missing, at
    ``price`` each."""

    stock: str
    name: str
    product: str
    use: int
    have: int
    buy: int
    price: float | None
    runs: tuple[str, ...] = ()


@dataclass(frozen=True)
class NoBoards:
    """Boards of a product that nobody can reckon: ``why`` is 'no piece', 'no stock' or 'short' (by so many pieces)."""

    product: str
    why: str
    short: int
    run: str = ""


def boards_needed(book: Book, uncut: Iterable[Uncut]) -> tuple[tuple[BoardsNeeded, ...], tuple[NoBoards, ...]]:
    """The boards for pieces that are not cut yet, those of one product together."""
    rows: dict[tuple[str, str], BoardsNeeded] = {}
    none: list[NoBoards] = []
    for one, need in _in_turn(book, uncut):
        if need.why and one.product.piece is not None:
            none.append(NoBoards(one.product.name, need.why, need.short, one.run))
        for row in need.rows:
            key, name = (row.stock, one.product.key), one.product.name
            mine = BoardsNeeded(row.stock, row.name, name, row.use, row.have, row.buy, row.price, (one.run,))
            rows[key] = _together(rows[key], mine) if key in rows else mine
    return tuple(rows.values()), tuple(none)


def _together(before: BoardsNeeded, more: BoardsNeeded) -> BoardsNeeded:
    use, buy = before.use + more.use, before.buy + more.buy
    return replace(before, use=use, have=use - buy if buy else before.have, buy=buy, runs=before.runs + more.runs)


def _in_turn(book: Book, uncut: Iterable[Uncut]) -> Iterator[tuple[Uncut, StockNeed]]:
    for one in uncut:
        need = needed(book, one.product, one.pieces, wood=one.wood)
        yield one, need
        book = less(book, {row.stock: row.use for row in need.rows})


def taken_before(book: Book, state: ShopState, run: RunState) -> dict[str, dict[str, int]]:
    """How many of the boards at hand, by their keys, each open run still takes that was opened before this one, by its name."""
    earlier = [one for one in in_order(state) if (one.opened_at, one.id) < (run.opened_at, run.id)]
    names = {one.id: one.name for one in earlier}
    found: dict[str, dict[str, int]] = {}
    for one, need in _in_turn(book, uncut(book, earlier)):
        for row in need.rows:
            kept = found.setdefault(row.stock, {})
            at_hand = min(row.use, row.have)
            if at_hand:
                kept[names[one.run]] = kept.get(names[one.run], 0) + at_hand
    return found


def less(book: Book, used: Mapping[str, int]) -> Book:
    """The shop once so many of its boards are used."""
    stocks = tuple(replace(stock, have=max(0, stock.have - used.get(stock.key, 0))) for stock in book.stocks)
    return replace(book, stocks=stocks)


def in_order(state: ShopState) -> list[RunState]:
    """The open runs, the one that was opened first before the others."""
    return sorted(state.open_runs(), key=lambda run: (run.opened_at, run.id))


def uncut(
    book: Book, runs: Iterable[RunState], product: Product | None = None, trays: Iterable[Tally] = (), wood: str = ""
) -> list[Uncut]:
    """The pieces that wait for their first step: of runs, in their order, and of a product to be started. A piece is as large as
    the book says by now."""
    found: dict[tuple[str, str, str], Uncut] = {}
    for run in runs:
        for tray in run.trays.values():
            route = run.route_of(tray)
            pieces = tray.at.get(route.steps[0].key, 0) if route.steps else 0
            known = book.product(route.product.key) or route.product
            _add(found, Uncut(run.id, known, tray.wood or run.wood or known.wood, pieces))
    if product is not None and product.operations:
        first = Route(product).steps[0].key
        started = sum(tally.pieces for tally in trays if tally.at in ("", first))
        _add(found, Uncut("", product, wood or product.wood, started))
    return list(found.values())


def _add(found: dict[tuple[str, str, str], Uncut], more: Uncut) -> None:
    if more.pieces:
        key = more.run, more.product.key, more.wood
        found[key] = replace(more, pieces=more.pieces + found[key].pieces) if key in found else more
