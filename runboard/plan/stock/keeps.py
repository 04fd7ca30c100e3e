"""What of an answer may be kept in the book: what a product is made of, and how many pieces a board holds in its route."""

from collections.abc import Iterator, Sequence

from runboard.plan.before.kind import Keep, Record
from runboard.plan.stock.question import StockAnswer, StockQuestion
from runboard.run.fold.route import Route, Step
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.product import Product
from runboard.shop.record import to_json
from runboard.shop.stocked import Piece
from runboard.shop.units import Unit, format_length


def keeps(book: Book, question: StockQuestion, answer: StockAnswer) -> Sequence[Keep]:
    """Nothing without a product that is asked about."""
    product = book.product(question.product or "")
    if product is None:
        return ()
    found = []
    if answer.has_thickness:
        found.append(_keep_piece(product, answer.piece, book.units))
    if answer.used:
        steps = [step for step in Route(product).steps if step.pass_.size == "board"]
        found += _keep_loads(product.key, steps, answer.used[0].each)
    return found


def _keep_piece(product: Product, piece: Piece, units: Unit) -> Keep:
    def put(record: Record) -> None:
        _product(record, product.key)["piece"] = to_json(piece)

    facts = {
        "product": product.name,
        "size": " × ".join(format_length(side, units) for side in (piece.length, piece.width, piece.thickness)),
        "gap": format_length(piece.gap, units),
        "link": f"/plan/products/{product.key}",
    }
    return Keep("piece", "stock piece", put, facts, is_so=product.piece == piece)


def _keep_loads(key: str, steps: Sequence[Step], each: int) -> Iterator[Keep]:
    for step in steps:
        yield _keep_load(key, step, each)


def _keep_load(key: str, step: Step, each: int) -> Keep:
    def put(record: Record) -> None:
        operations = [one for one in _product(record, key)["operations"] if one["key"] == step.operation.key]
        passes = [one for operation in operations for one in operation["passes"] if one["key"] == step.pass_.key]
        if not passes or passes[0]["size"] != "board":
            raise Refused("nothing to keep")
        passes[0]["pieces"] = each

    facts = {"pieces": each, "step": step.name, "link": f"/plan/products/{key}"}
    return Keep(f"board {step.key}", "stock board", put, facts, is_so=step.pass_.pieces == each)


def _product(record: Record, key: str) -> Record:
    found: Record | None = next((product for product in record["products"] if product["key"] == key), None)
    if found is None:
        raise Refused("nothing to keep")
    return found
