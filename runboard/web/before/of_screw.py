"""The drawing of a screw in its stack."""

from markupsafe import Markup

from runboard.charts.section import Layer, Mark, Shape, section
from runboard.plan.fits.driving import Drive, Driven
from runboard.shop.book import Book
from runboard.shop.units import Unit
from runboard.words.before.measures import length_about
from runboard.words.before.screw import head_of
from runboard.words.facts import length_in_words
from runboard.words.sentences import sentence


def draw_screw(book: Book, question: Drive, answer: Driven) -> tuple[Markup, ...]:
    """The stack cut through, with where the point ends, where the drill has to, and what is to stay free."""
    units = book.units
    above = question.washer
    layers = (
        Layer(question.washer, "metal", length_in_words(question.washer, units)),
        Layer(question.through, "fastened", length_in_words(question.through, units)),
        Layer(question.into, "wood", length_in_words(question.into, units)),
    )
    screw = answer.screw
    shape = Shape(
        screw.length,
        screw.diameter,
        screw.root,
        screw.thread,
        screw.pitch,
        screw.is_countersunk,
        screw.head_height if screw.is_countersunk else 0.6 * screw.diameter,
    )
    hole = (answer.clear or 0.0, above + answer.clear_to if answer.clear else 0.0)
    return (
        section(layers, shape, question.sunk, hole, _marks(question, answer, units), head_of(question, answer, units)),
    )


def _marks(question: Drive, answer: Driven, units: Unit) -> list[Mark]:
    far = question.washer + question.through + question.into
    marks = [
        Mark(far - question.margin, _say("margin", length_in_words(question.margin, units)), is_line=True),
        Mark(
            far - answer.left,
            _say("point" if answer.left >= 0 else "out", length_about(abs(answer.left), units)),
        ),
    ]
    if answer.fits:
        marks.append(
            Mark(question.washer + answer.stop, _say("stop", length_in_words(answer.stop, units)), is_line=True)
        )
    return marks


def _say(name: str, length: str) -> str:
    return sentence(f"before-screw-drawing-{name}", {"length": length})
