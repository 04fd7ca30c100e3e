"""What the material of a run costs: as it was typed, else the boards that it takes."""

from dataclasses import dataclass
from decimal import Decimal

from runboard.plan.money.cents import exact
from runboard.plan.money.question import Price
from runboard.plan.stock.need import needed
from runboard.shop.book import Book
from runboard.shop.product import Product


@dataclass(frozen=True)
class Material:
    """Rows (code, name, quantity, unit, rate) of what is counted. ``why`` is '' or why there is none: 'no piece', 'no stock',
    'short', 'no price', 'nobody said'. ``is_shared`` where not all that the
    ``boards`` give is counted."""

    rows: tuple[tuple[str, str, Decimal, str, Decimal], ...] = ()
    why: str = ""
    is_shared: bool = False
    boards: int = 0


def material_lines(book: Book, product: Product | None, question: Price, started: int) -> Material:
    """The material of so many started pieces: of boards that would give more, the share that these take."""
    if question.material_each is not None:
        row = ("material", "", Decimal(started), "pieces", exact(question.material_each))
        return Material((row,) if question.material_each else ())
    if product is None:
        return Material(why="" if question.others else "nobody said")
    need = needed(book, product, started, question.pieces)
    if need.why:
        return Material(why=need.why)
    if any(row.price is None for row in need.rows):
        return Material(why="no price")
    share = Decimal(need.pieces) / (need.pieces + need.spare)
    rows = (("board", row.name, row.use * share, "boards", exact(row.price or 0)) for row in need.rows)
    return Material(tuple(rows), is_shared=need.spare > 0, boards=need.boards)
