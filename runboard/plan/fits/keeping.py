"""What may be kept of a screw's answer: the screw itself, and in a step of a product its pilot, its depth stop and where it goes."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from runboard.plan.before.kind import Keep, Record
from runboard.plan.fits.drills import set_to
from runboard.plan.fits.driving import Drive, Driven, screw_of
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.fasteners import Fastening, Screw
from runboard.shop.keys import key_for
from runboard.shop.product import Operation, Product
from runboard.shop.record import to_json
from runboard.shop.units import Unit, format_length

# The rows of a setup sheet.
PILOT, DEPTH_STOP = "Pilot", "Depth stop"


def keeps(book: Book, question: Drive, answer: Driven) -> Sequence[Keep]:
    """The screw, where the shop has none of its sizes; one for each step of the product that likely drives it, or for the one that is
    named. A screw that comes through or is too short is kept in none."""
    screw = screw_of(book, question)
    found = [] if _known(book, screw) else [Keep("screw", "screw", _putting(screw), {"screw": screw.name})]
    if answer.fits:
        found += _in_steps(book, question, answer, screw)
    return found


def _known(book: Book, screw: Screw) -> str:
    """The key by which the shop has a screw of these sizes; '' where it has none."""
    sizes = (screw.gauge, screw.diameter, screw.length, screw.head)
    named = (each.key for each in book.screws if (each.gauge, each.diameter, each.length, each.head) == sizes)
    return screw.key if any(each == screw for each in book.screws) else next(named, "")


def _in_steps(book: Book, question: Drive, answer: Driven, screw: Screw) -> Iterator[Keep]:
    product, known = book.product(question.product or ""), _known(book, screw)
    if product is None:
        return
    near = format_length(set_to(answer.left, book.units), book.units) if answer.outcome == "near" else "none"
    for operation in _likely_steps(book, product, known, question.step.partition(":")[0]):
        put = _Sheet(question, answer, screw, known, book.units, product.key, operation.key)
        link = f"/plan/products/{product.key}/operations/{operation.key}"
        facts = {"step": operation.name, "product": product.name, "left": near, "link": link}
        yield Keep(f"sheet {operation.key}", "sheet", put, facts)


def _likely_steps(book: Book, product: Product, known: str, named: str) -> Sequence[Operation]:
    """The step that is named; else those that drive screws, this one's first; else those of hands at a bench; else all."""
    steps = product.operations
    if named:
        return [each for each in steps if each.key == named]
    drive = [each for each in steps if each.fastenings]
    drive.sort(key=lambda each: all(placed.screw != known for placed in each.fastenings))
    return drive or [each for each in steps if _is_at_bench(book, each)] or steps


def _is_at_bench(book: Book, operation: Operation) -> bool:
    station = book.station(operation.station)
    return operation.attendance == "hands-on" and station is not None and station.kind == "bench"


def _putting(screw: Screw) -> Any:
    def put(record: Record) -> None:
        put_screw(record, screw)

    return put


def put_screw(record: Record, screw: Screw) -> str:
    """Add a screw to the book's record; its key there."""
    key = key_for(screw.name, {each["key"] for each in record["screws"]})
    record["screws"].append({**to_json(screw), "key": key})
    return key


@dataclass(frozen=True)
class _Sheet:
    """Writes a screw's rows and its place into an operation of the book's record, in place of what stood there of the same screw."""

    question: Drive
    answer: Driven
    screw: Screw
    known: str
    units: Unit
    product: str
    operation: str

    def __call__(self, record: Record) -> None:
        operation = operation_in(record, self.product, self.operation)
        if self.known and all(each["key"] != self.known for each in record["screws"]):
            raise Refused("step to keep gone")
        key = self.known or put_screw(record, self.screw)
        asked = self.question
        placed = to_json(Fastening(key, asked.through, asked.into, asked.margin, asked.washer, asked.sunk))
        others = [each for each in operation["fastenings"] if each["screw"] != key]
        operation["fastenings"] = [*others, placed]
        of_it = f", {self.screw.name}" if others else ""  # of several screws each has its own rows
        put_row(operation, PILOT + of_it, format_length(self.answer.drill, self.units))
        put_row(operation, DEPTH_STOP + of_it, format_length(self.answer.stop, self.units))


def operation_in(record: Record, product: str, operation: str) -> Record:
    """An operation's record within the book's. Refused 'step to keep gone' where it is gone."""
    for each in record["products"]:
        for found in each["operations"] if each["key"] == product else ():
            if found["key"] == operation:
                return found  # type: ignore[no-any-return]
    raise Refused("step to keep gone")


def put_row(operation: Record, label: str, text: str) -> None:
    """Set a row of its setup sheet; one of that label in place."""
    rows = [list(row) for row in operation["setup_sheet"]]
    at = next((at for at, row in enumerate(rows) if row[0].casefold() == label.casefold()), len(rows))
    operation["setup_sheet"] = [*rows[:at], [label, text], *rows[at + 1 :]]
