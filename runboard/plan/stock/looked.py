"""What is found of a run's boards before it starts: do they suffice, is it as the route says, how does the grain run."""

from collections.abc import Iterator, Mapping
from typing import Any

from runboard.plan.before.finding import BeforeRun, Finding
from runboard.plan.stock.need import StockNeed, needed
from runboard.plan.stock.suit import laid_at_once, nest_of
from runboard.plan.supplies.boards import less, taken_before
from runboard.run.fold.route import Route
from runboard.run.fold.state import RunState
from runboard.shop.book import Book
from runboard.shop.product import Product


def findings(asked: BeforeRun) -> Iterator[Finding]:
    """Nothing where the shop wrote down no boards, or nothing of what the product is made of. What open runs that were opened
    before it still take of the boards is theirs."""
    run = asked.run
    product = asked.book.product(run.product) or run.route.product
    if product.piece is None or not asked.book.stocks:
        return
    pieces = _uncut(run) if run.trays else sum(order.pieces for order in run.orders)
    if not pieces:
        yield Finding("stock", "green", "stock-cut")
        return
    taken = taken_before(asked.book, asked.state, run)
    left = less(asked.book, {stock: sum(kept.values()) for stock, kept in taken.items()})
    need = needed(left, product, pieces, wood=run.wood or product.wood)
    link = f"/before/stock?product={product.key}&run={run.id}"
    yield _enough(need, link, _kept(asked.book, need, taken))
    if need.rows:
        yield from _loads(run.route, need, link)
        yield from _grain(asked, product, need, link)


def _uncut(run: RunState) -> int:
    """The pieces that wait for their first step: of a run at work the others are cut."""
    return sum(tray.at.get(run.route_of(tray).steps[0].key, 0) for tray in run.trays.values())


def _kept(book: Book, need: StockNeed, taken: Mapping[str, Mapping[str, int]]) -> dict[str, Any]:
    """What earlier runs take of the boards that this one uses, and which runs they are."""
    wanted = {row.stock for row in need.rows} or taken.keys()
    mine = [(stock.name, taken[stock.key]) for stock in book.stocks if stock.key in wanted and taken.get(stock.key)]
    kept = [f"{sum(runs.values())} × {name}" for name, runs in mine]
    return {"kept": kept or "none", "runs": sorted({name for _, runs in mine for name in runs})}


def _enough(need: StockNeed, link: str, kept: Mapping[str, Any]) -> Finding:
    boards = [f"{row.use} × {row.name}" for row in need.rows]
    buy = [f"{row.buy} × {row.name}" for row in need.rows if row.buy]
    facts = {"pieces": need.pieces, "boards": boards, "buy": buy, "short": need.short, **kept}
    if need.why == "no stock":
        return Finding("stock", "stop", "stock-none", facts, link)
    if need.why == "short":
        return Finding("stock", "stop", "stock-short", facts, link)
    if buy:
        return Finding("stock", "look", "stock-buy", facts, link)
    return Finding("stock", "green", "stock-enough", facts, link)


def _loads(route: Route, need: StockNeed, link: str) -> Iterator[Finding]:
    """Where the route has another number of pieces on a board than the layout of the board that most pieces come from."""
    row = max(need.rows, key=lambda row: row.use * row.each)
    for step in route.steps:
        said = step.pass_.pieces
        if step.pass_.size != "board" or said is None or said == row.each:
            continue
        facts = {"step": step.name, "said": said, "each": row.each, "board": row.name}
        if said > row.each:
            yield Finding(f"board {step.key}", "look", "stock-board-holds-fewer", facts, link)
        else:
            yield Finding(f"board {step.key}", "green", "stock-board-holds-more", facts, link)


def _grain(asked: BeforeRun, product: Product, need: StockNeed, link: str) -> Iterator[Finding]:
    piece, used = product.piece, {row.stock for row in need.rows}
    stocks = [stock for stock in asked.book.stocks if stock.key in used and stock.grain == "length"]
    if piece is None or not stocks:
        return
    across = [stock.name for stock in stocks if any(spot.turned for spot in laid_at_once(nest_of(stock, piece)))]
    code = "stock-across" if across else "stock-along"
    yield Finding("grain", "green", code, {"boards": across}, link)
