"""The kind of question about machine programs; what it needs to answer is loaded once somebody asks."""

from collections.abc import Iterator
from dataclasses import dataclass
from hashlib import sha256
from typing import Any

from runboard.plan.before.kind import File, Keep, Kind, Told
from runboard.plan.before.taking import takes
from runboard.plan.program.grave import is_trusted
from runboard.plan.program.question import Program, begin, learned
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.machines import Reckoned

ENDINGS = (".ngc", ".nc", ".tap", ".gcode", ".gc", ".cnc", ".txt")


@dataclass(frozen=True)
class Looked:
    """A program that was looked at: what it was called, its digest, and the report on it."""

    name: str
    digest: str
    report: Any


def answer(book: Book, question: Program, file: File | None, told: Told) -> Looked:
    """The report. Refused where the file is no program."""
    from runboard.plan.program.reporting import reported

    if file is None:
        raise Refused("no file chosen")
    return Looked(file.name[:200], sha256(file.content).hexdigest(), reported(book, question, file.content, told))


def keeps(book: Book, question: Program, answer: Looked) -> Iterator[Keep]:
    """Its time into the steps of the product at that machine; nothing where it takes none, or one that nobody can plan with."""
    seconds = float(answer.report.seconds.total)
    if seconds > 0 and is_trusted(answer.report.doubts):
        reckoned = Reckoned("program", answer.name, answer.digest, seconds, "", *_reaches(answer.report))
        yield from takes(
            book, question.product, reckoned, question.factor, station=question.station, step=question.step
        )


def _reaches(report: Any) -> tuple[float, ...]:
    """How far it goes along x, y and z in all; nothing where nothing moves."""
    return tuple(round(high - low, 3) for low, high in report.extent)


KIND = Kind(
    "program",
    Program,
    answer,
    begin,
    lambda book, question, found: tuple(keeps(book, question, found)),
    ENDINGS,
    needs_file=True,
    is_long=True,
    learned=learned,
)
