"""What the material of a run costs: as it was typed, else the boards that it takes."""

from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal
from importlib import import_module
from importlib.util import find_spec
from typing import Any

from runboard.plan.money.cents import exact
from runboard.plan.money.question import Price
from runboard.shop.book import Book
from runboard.shop.product import Product

_NEED = "runboard.plan.stock.need"


@dataclass(frozen=True)
class Material:
    """Rows (code, name, quantity, unit, rate) of what is counted. ``why`` is '' or why there is none: 'no piece', 'no stock',
    'short', 'no price', 'nobody said'."""

    rows: tuple[tuple[str, str, Decimal, str, Decimal], ...] = ()
    why: str = ""


def material_lines(book: Book, product: Product | None, question: Price, started: int) -> Material:
    """The material of so many started pieces."""
    if question.material_each is not None:
        row = ("material", "", Decimal(started), "pieces", exact(question.material_each))
        return Material((row,) if question.material_each else ())
    needed = _needed()
    if product is None or needed is None:
        return Material(why="" if question.others else "nobody said")
    need = needed(book, product, started, question.pieces)
    if need.why:
        return Material(why=need.why)
    if any(row.price is None for row in need.rows):
        return Material(why="no price")
    return Material(tuple(("board", row.name, Decimal(row.use), "pieces", exact(row.price)) for row in need.rows))


def _needed() -> Callable[..., Any] | None:
    return import_module(_NEED).needed if find_spec("runboard.plan.stock") else None
