"""A program looked at as a question asks: read, timed on the station's motion, its places looked for."""

from runboard.plan.before.kind import Told
from runboard.plan.program.motion import of_all_axes, timed
from runboard.plan.program.question import Program
from runboard.plan.program.read import read_program
from runboard.plan.program.report import ProgramReport, report
from runboard.plan.program.suspects import Stock
from runboard.shop.book import Book
from runboard.shop.machines import Motion


def motion_of(book: Book, question: Program) -> Motion:
    """How the machine moves: as its station says, where the question says nothing else; as usual where there is none."""
    station = book.station(question.station) if question.station else None
    return of_all_axes(station.motion if station else Motion(), question.rapid, question.accel, question.corner)


def reported(book: Book, question: Program, content: bytes, told: Told) -> ProgramReport:
    """The report on a program. Refused as ``read_program`` refuses."""
    motion, moves = motion_of(book, question), read_program(content, told)
    stock = Stock(question.stock_length, question.stock_width, question.stock_thickness)
    return report(moves, motion, stock, timed(moves, motion))
