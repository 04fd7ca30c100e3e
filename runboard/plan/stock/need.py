"""What a run takes of boards and sheets: for a shopping list and for what its material costs. Quick enough for any page."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from runboard.plan.stock.choose import Aim, Chosen, Offer, chosen
from runboard.plan.stock.suit import pieces_each, sorted_out
from runboard.shop.book import Book
from runboard.shop.product import Product
from runboard.shop.stocked import Piece, Stock

# 1 in × 12 in × 12 in (USDA Wood Handbook; NIST Handbook 44), in mm³.
BOARD_FOOT = 144 * 25.4**3


@dataclass(frozen=True)
class NeedRow:
    """One kind of board: ``each`` pieces from one, ``use`` of them are used, ``buy`` of these are to be bought; ``price`` of
    one is None where it is not known."""

    stock: str
    name: str
    each: int
    use: int
    have: int
    buy: int
    price: float | None


@dataclass(frozen=True)
class StockNeed:
    """``why`` is '' where the boards suffice or can be bought, 'no piece' where the product says no size, 'no stock' where
    nothing suits, 'short' where ``short`` pieces have no board. ``board_feet`` by the boards' own thickness, ``area`` of them in
    mm²; ``yield_share`` is the pieces' area of the boards'. ``cost`` is of all boards used, ``cost_each`` of it a good piece; None
    where a price is not known."""

    rows: tuple[NeedRow, ...] = ()
    pieces: int = 0
    why: str = ""
    short: int = 0
    spare: int = 0
    boards: int = 0
    board_feet: float = 0.0
    area: float = 0.0
    yield_share: float = 0.0
    cost: float | None = None
    cost_each: float | None = None

    @property
    def cost_to_buy(self) -> float | None:
        """What the boards that are not at hand cost; None where a price of theirs is not known."""
        prices = [(row.buy, row.price) for row in self.rows if row.buy]
        return None if any(price is None for _, price in prices) else sum(buy * (price or 0) for buy, price in prices)


def needed(
    book: Book, product: Product, pieces: int, good: int | None = None, wood: str | None = None, aim: Aim = "at hand"
) -> StockNeed:
    """The boards for so many pieces to start, of which ``good`` are to come good (all, where it is None). ``wood`` is the
    run's, the product's where it is None."""
    piece = product.piece
    if piece is None:
        return StockNeed(pieces=pieces, why="no piece")
    stocks, _ = sorted_out(book, piece, product.wood if wood is None else wood)
    if not stocks:
        return StockNeed(pieces=pieces, why="no stock", short=pieces)
    each = pieces_each(stocks, piece)
    return summed(stocks, chosen(offers_of(stocks, each), pieces, aim), piece, pieces, good)


def offers_of(stocks: Iterable[Stock], each: Mapping[str, int]) -> tuple[Offer, ...]:
    """The boards as what can be chosen from."""
    return tuple(
        Offer(stock.key, each[stock.key], stock.have, stock.for_sale, stock.length * stock.width, stock.price)
        for stock in stocks
    )


def summed(stocks: Iterable[Stock], found: Chosen, piece: Piece, pieces: int, good: int | None = None) -> StockNeed:
    """What chosen boards come to."""
    by_key = {stock.key: stock for stock in stocks}
    rows = [(by_key[take.offer.key], take) for take in found.takes]
    area = sum(take.use * stock.length * stock.width for stock, take in rows)
    volume = sum(take.use * stock.length * stock.width * stock.thickness for stock, take in rows)
    got, prices = pieces - found.short, [stock.price for stock, _ in rows]
    cost = None if None in prices or not rows else sum((stock.price or 0) * take.use for stock, take in rows)
    wanted = got if good is None else good
    return StockNeed(
        rows=tuple(
            NeedRow(stock.key, stock.name, take.offer.each, take.use, stock.have, take.buy, stock.price)
            for stock, take in rows
        ),
        pieces=pieces,
        why="short" if found.short else "",
        short=found.short,
        spare=found.pieces - got,
        boards=sum(take.use for _, take in rows),
        board_feet=volume / BOARD_FOOT,
        area=area,
        yield_share=got * piece.length * piece.width / area if area else 0.0,
        cost=cost,
        cost_each=cost / wanted if cost is not None and wanted else None,
    )
