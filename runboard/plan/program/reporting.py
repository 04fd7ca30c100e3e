"""A program looked at as a question asks: read, timed on the station's motion, its places looked for."""

import re
from collections.abc import Iterator
from dataclasses import replace

from runboard.plan.before.kind import Told
from runboard.plan.program.motion import of_all_axes, timed
from runboard.plan.program.moves import FEED, Doubt, Moves
from runboard.plan.program.question import Program
from runboard.plan.program.read import read_program
from runboard.plan.program.report import ProgramReport, report
from runboard.plan.program.suspects import Stock
from runboard.shop.book import Book
from runboard.shop.machines import Motion

# M3 or M4, wherever it stands: in a comment too, since a note that is not made hurts less than one that is wrong.
_SPINDLE = re.compile(rb"[Mm][ \t]*0*[ \t]*[34](?![\d.])")


def motion_of(book: Book, question: Program) -> Motion:
    """How the machine moves: as its station says, where the question says nothing else; as usual where there is none."""
    station = book.station(question.station) if question.station else None
    return of_all_axes(station.motion if station else Motion(), question.rapid, question.accel, question.corner)


def reported(book: Book, question: Program, content: bytes, told: Told) -> ProgramReport:
    """The report on a program. Refused as ``read_program`` refuses."""
    motion, moves = motion_of(book, question), read_program(content, told)
    moves = replace(moves, doubts=[*moves.doubts, *_spindle(content, moves)])
    stock = Stock(question.stock_length, question.stock_width, question.stock_thickness)
    return report(moves, motion, stock, timed(moves, motion), runs_once=question.loads == 1)


def _spindle(content: bytes, moves: Moves) -> Iterator[Doubt]:
    """Whether it cuts and never starts the spindle."""
    cuts = moves.kind == FEED
    if cuts.any() and not _SPINDLE.search(content):
        yield Doubt(int(moves.line[cuts][0]), "spindle-never-on")
