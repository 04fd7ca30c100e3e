"""The drawing of a jig that is asked about."""

from markupsafe import Markup

from runboard.plan.jig.question import JigAnswer, Layout
from runboard.shop.book import Book
from runboard.web.forms.jig_drawn import jig_drawn


def draw_jig(book: Book, question: Layout, answer: JigAnswer) -> tuple[Markup, ...]:
    """One: the jig on its bed."""
    return (jig_drawn(book, question.name, answer.plate, answer.bed, answer.corner),)
