"""Keeping a part of an answer in the book."""

from runboard.floor.changing.shop_book import Record, change_book
from runboard.floor.looking.answers import Answered, Answers
from runboard.floor.workshop import Workshop
from runboard.run.refusal import Refused


def keep_of(workshop: Workshop, answers: Answers, found: Answered, key: str, seen: int) -> None:
    """Put the part of that key into the book. Refused 'nothing to keep' where the answer offers none of that key, and 'book
    outdated' where the book is not the one that the person saw, since the answer may be another one now. Raises ``BookError``
    where the book does not take it."""
    keep = next((keep for keep in found.keeps() if keep.key == key), None)
    if keep is None:
        raise Refused("nothing to keep")
    saved = change_book(workshop, seen, keep.put, _all_of)
    answers.still_so(found, saved)


def _all_of(record: Record) -> object:
    return {name: value for name, value in record.items() if name != "revision"}
