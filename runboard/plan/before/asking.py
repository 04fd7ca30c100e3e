"""A question as JSON, and as its dataclass: read by the book's own reader, so that every fault is said at its field."""

from collections.abc import Mapping
from typing import Any

from runboard.plan.before.kind import Kind, Record
from runboard.plan.before.kinds import KINDS
from runboard.shop.book import Book
from runboard.shop.book_json import LAWS, BookError
from runboard.shop.problem import RecordProblem
from runboard.shop.reading import Reading
from runboard.shop.reading import Record as Said
from runboard.shop.record import fields_of, to_json
from runboard.shop.values import shown


def question_from(kind: Kind, record: object, book: Book) -> Any:
    """The question that a record says, its fields at the top of it; keys are of what this book has. Raises ``BookError`` with
    everything that is wrong."""
    if not isinstance(record, Mapping):
        raise BookError([RecordProblem("", "", "not an object", {"what": kind.name, "found": shown(record)})])
    reading = Reading(LAWS, book.units, known_in(book))
    found: Any = Said(record, reading).read(kind.question)
    for ask in reading.at_the_end:
        ask()
    if reading.problems:
        raise BookError(reading.problems)
    return found


def question_to_json(question: Any) -> Record:
    """The record of a question, every field written out."""
    return to_json(question)


def known_in(book: Book) -> dict[str, Mapping[str, Any]]:
    """What a book has, by what one is called ('station') and by key."""
    lists = (field for field in fields_of(Book).values() if field.kind == "records")
    return {
        field.noun: {each.key: each for each in getattr(book, field.attribute) if getattr(each, "key", "")}
        for field in lists
        if field.attribute != "walks"
    }


def kinds_reading(name: str) -> list[Kind]:
    """The kinds that read a file of this name, by its ending."""
    return [kind for kind in KINDS.values() if name.lower().endswith(kind.endings or ("\0",))]
