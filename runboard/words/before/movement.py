"""What is said of a board that moves with moisture."""

from collections.abc import Iterator, Mapping
from typing import Any

from runboard.plan.fits.moving import Swell, Swollen
from runboard.shop.book import Book
from runboard.words.before.measures import length_about
from runboard.words.before.said import Said
from runboard.words.facts import length_in_words, number_in_words
from runboard.words.sentences import sentence

_NOTHING = 0.02  # mm: nobody can measure it in wood


def said(book: Book, question: Swell, answer: Swollen) -> Said:
    """The answer in words: by how much it becomes wider or narrower first."""
    return Said(
        _head(book, question, answer),
        tuple(_lines(book, question, answer)),
        tuple(_doubts(question, answer)),
        tuple(_cautions(book, question, answer)),
        record=_record(question, answer),
    )


def _head(book: Book, question: Swell, answer: Swollen) -> str:
    code = "still" if abs(answer.by) < _NOTHING else "wider" if answer.by > 0 else "narrower"
    named = question.wood.strip() or _say("a-board")
    return _say(
        code,
        {
            "wood": f"{named[:1].upper()}{named[1:]}",
            "width": length_in_words(question.width, book.units),
            "before": _per_cent(answer.before),
            "after": _per_cent(answer.after),
            "by": length_about(abs(answer.by), book.units),
        },
    )


def _per_cent(share: float) -> str:
    return number_in_words(round(share * 100, 1))


def _lines(book: Book, question: Swell, answer: Swollen) -> Iterator[str]:
    airs = ((question.humidity_before, answer.before), (question.humidity_after, answer.after))
    for humidity, moisture in airs:
        if humidity is not None:
            celsius = number_in_words(question.celsius)
            facts = {"humidity": _per_cent(humidity), "celsius": celsius, "moisture": _per_cent(moisture)}
            yield _say("air", facts)
    if answer.lacks is not None and answer.by > 0 and answer.lacks < _NOTHING:
        yield _say("room", {"room": length_in_words(question.room or 0, book.units)})
    if question.room is not None and answer.by < 0:
        yield _say("gap", {"by": length_about(-answer.by, book.units)})
    yield _say("fix")
    wood = answer.wood
    source = wood.coefficients_source if wood else ""
    coefficient = number_in_words(answer.coefficient)
    yield _say("source", {"coefficient": coefficient, "wood": wood.name if wood else "none", "source": source})


def _cautions(book: Book, question: Swell, answer: Swollen) -> Iterator[str]:
    if answer.lacks is not None and answer.lacks >= _NOTHING:
        lacks = length_about(answer.lacks, book.units)
        yield _say("jams", {"room": length_in_words(question.room or 0, book.units), "lacks": lacks})


def _doubts(question: Swell, answer: Swollen) -> Iterator[str]:
    if answer.is_beyond:
        yield _say("doubt-range")
    if answer.is_beyond_air:
        yield _say("doubt-air")
    if answer.wood is not None:
        yield _say("doubt-like", {"wood": answer.wood.name})
        if question.sawn == "flat":
            yield _say("doubt-sawn")


def _say(name: str, facts: Mapping[str, Any] | None = None) -> str:
    return sentence(f"before-movement-{name}", facts)


def _record(question: Swell, answer: Swollen) -> dict[str, Any]:
    return {
        "kind": "movement",
        "wood": answer.wood.name if answer.wood else None,
        "coefficient": answer.coefficient,
        "moisture": {"before": round(answer.before, 4), "after": round(answer.after, 4)},
        "width_mm": question.width,
        "wider_mm": round(answer.by, 3),
        "lacks_mm": None if answer.lacks is None else round(answer.lacks, 3),
    }
