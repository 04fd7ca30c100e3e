"""Keeping a part of an answer in the book."""

from runboard.floor.changing.shop_book import Record, change_book
from runboard.floor.looking.answers import Answered, Answers
from runboard.floor.workshop import Workshop
from runboard.plan.before.taking import undated
from runboard.run.refusal import Refused
from runboard.shop.hours import local_day


def keep_of(workshop: Workshop, answers: Answers, found: Answered, key: str, seen: int) -> None:
    """Put the part of that key into the book, dated where it is from a file. Refused 'nothing to keep' where the answer offers none
    of that key, and 'book outdated' where the book is not the one that the person saw, since the answer may be another one now.
    Raises ``BookError`` where the book does not take it."""
    keep = next((keep for keep in found.keeps() if keep.key == key), None)
    if keep is None:
        raise Refused("nothing to keep")

    def put(record: Record) -> None:
        before = {id(found) for found in undated(record)}
        keep.put(record)
        for taken in undated(record):
            if id(taken) not in before:
                taken["day"] = local_day(workshop.clock.now(), record["time_zone"]).isoformat()

    saved = change_book(workshop, seen, put, _all_of)
    answers.still_so(found, saved)


def _all_of(record: Record) -> object:
    return {name: value for name, value in record.items() if name != "revision"}
