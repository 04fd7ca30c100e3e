"""The drawings of an engraving: where the head goes, a method each."""

from collections.abc import Sequence

from markupsafe import Markup

from runboard.charts.head import HeadSaid, Way, head
from runboard.plan.engraving.question import Engraving, EngravingAnswer, HeadStroke
from runboard.shop.book import Book
from runboard.words.before.engraving import method_in_words, shown_in_words
from runboard.words.facts import length_in_words
from runboard.words.sentences import sentence


def draw_engraving(book: Book, question: Engraving, answer: EngravingAnswer) -> tuple[Markup, ...]:
    """The fastest first."""
    return tuple(
        head(
            f"swept-{method.name}",
            method_in_words(method.name),
            [Way(one.x1, one.y1, one.x2, one.y2, one.on) for one in method.strokes],
            HeadSaid(*shown_in_words(method), _wide(book, method.strokes)),
            sentence("before-engraving-drawing"),
        )
        for method in sorted(answer.methods, key=lambda one: one.name != answer.best)
    )


def _wide(book: Book, strokes: Sequence[HeadStroke]) -> str:
    xs = [x for one in strokes for x in (one.x1, one.x2)]
    return length_in_words(round(max(xs) - min(xs), 1), book.units) if xs else ""
