"""The drawing of a part in its hole."""

from markupsafe import Markup

from runboard.charts.section import Layer, Mark, seat_section
from runboard.plan.fits.seating import Seat, Seated
from runboard.shop.book import Book
from runboard.words.before.fit import head_of
from runboard.words.before.measures import length_about
from runboard.words.facts import length_in_words
from runboard.words.sentences import sentence


def draw_fit(book: Book, question: Seat, answer: Seated) -> tuple[Markup, ...]:
    """The wood cut through: the part, the bottom of its hole, and what is to stay beneath it."""
    units, part = book.units, answer.part
    wood = Layer(question.thickness, "wood", length_in_words(question.thickness, units))
    marks = [
        Mark(answer.depth, _say("hole", length_in_words(answer.depth, units)), is_line=True),
        Mark(
            question.thickness - question.margin, _say("margin", length_in_words(question.margin, units)), is_line=True
        ),
    ]
    if answer.beneath > 0:
        marks.append(Mark(question.thickness, _say("beneath", length_about(answer.beneath, units))))
    size, hole = (part.diameter, part.length), (answer.hole, answer.depth)
    return (seat_section(wood, size, question.sunk, hole, marks, head_of(question, answer, units)),)


def _say(name: str, length: str) -> str:
    return sentence(f"before-fit-drawing-{name}", {"length": length})
