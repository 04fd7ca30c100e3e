"""Which boards and sheets suit a piece, and how many of it come from one."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from runboard.plan.stock.blocks import laid
from runboard.plan.stock.nest import Nest, Spot, whole
from runboard.shop.book import Book
from runboard.shop.stocked import Piece, Stock

# A board that holds more is no board of this piece: its layout could not be drawn, nor cut.
MOST_EACH = 3000
# What a thickness may be short of: less than any shop measures.
_SAME_MM = 1e-6


@dataclass(frozen=True)
class Unsuited:
    """A board that does not suit, and why: 'wood', 'thin', 'small' or 'many'."""

    stock: Stock
    why: str


def sorted_out(book: Book, piece: Piece, wood: str = "") -> tuple[list[Stock], list[Unsuited]]:
    """The boards of the shop that suit a piece, and the others with why not. Those that the piece itself names are taken
    whatever wood they are of; of the others a wood that is named must be the same where both are."""
    named = [stock for stock in book.stocks if stock.key in piece.stocks]
    good, bad = [], []
    for stock in named or book.stocks:
        why = "wood" if not named and _is_other_wood(stock.wood, wood) else why_not(stock, piece)
        if why:
            bad.append(Unsuited(stock, why))
        else:
            good.append(stock)
    return good, bad


def _is_other_wood(one: str, other: str) -> bool:
    return bool(one.strip() and other.strip() and one.strip().casefold() != other.strip().casefold())


def why_not(stock: Stock, piece: Piece) -> str:
    """'thin' where the board is less thick than the piece, 'small' where none fits on it, 'many' where more do than can be
    laid out; '' where it suits."""
    if stock.thickness < piece.thickness - _SAME_MM:
        return "thin"
    nest = nest_of(stock, piece)
    if not nest.fits:
        return "small"
    return "many" if nest.x * nest.y > MOST_EACH * nest.long * nest.wide else ""


def nest_of(stock: Stock, piece: Piece) -> Nest:
    """The layout that is asked for, in 1/8000 mm: the margin off the board's edges, tabs round each piece, the gap put on.
    Where board and piece both have a grain, it runs along the length of either, and pieces are not turned."""
    gap, around = whole(piece.gap), 2 * whole(piece.tabs)
    free = 2 * whole(piece.margin) - gap
    return Nest(
        max(0, whole(stock.length) - free),
        max(0, whole(stock.width) - free),
        whole(piece.length) + around + gap,
        whole(piece.width) + around + gap,
        turned="none" in (stock.grain, piece.grain),
    )


@lru_cache(maxsize=512)
def laid_at_once(nest: Nest) -> tuple[Spot, ...]:
    """As ``blocks.laid``, remembered: pages ask again and again."""
    return laid(nest)


def pieces_each(stocks: Iterable[Stock], piece: Piece) -> dict[str, int]:
    """How many pieces come from one of each board, by its key, found at once."""
    return {stock.key: len(laid_at_once(nest_of(stock, piece))) for stock in stocks}
