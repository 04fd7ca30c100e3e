"""The drawings of an engraving: where the head goes, by the best way, and folded by the others."""

from collections.abc import Sequence

from markupsafe import Markup

from runboard.charts.head import HeadSaid, Way, head
from runboard.plan.engraving.question import Engraving, EngravingAnswer, HeadStroke, Method
from runboard.shop.book import Book
from runboard.words.before.engraving import methods_in_words, others_in_words, shown_in_words
from runboard.words.facts import length_in_words
from runboard.words.sentences import sentence


def draw_engraving(book: Book, question: Engraving, answer: EngravingAnswer) -> tuple[Markup, ...]:
    """The best; then all others in one fold."""
    best, *others = (_drawn(book, some) for some in answer.joined)
    fold = Markup("<details><summary>{}</summary>{}</details>").format(others_in_words(), Markup("").join(others))
    return (best, fold) if others else (best,)


def _drawn(book: Book, some: Sequence[Method]) -> Markup:
    """Ways that come to the same, drawn once."""
    strokes = some[0].strokes
    return head(
        f"swept-{some[0].name}",
        methods_in_words(some),
        [Way(one.x1, one.y1, one.x2, one.y2, one.on) for one in strokes],
        HeadSaid(*shown_in_words(some), _wide(book, strokes)),
        sentence("before-engraving-drawing"),
    )


def _wide(book: Book, strokes: Sequence[HeadStroke]) -> str:
    xs = [x for one in strokes for x in (one.x1, one.x2)]
    return length_in_words(round(max(xs) - min(xs), 1), book.units) if xs else ""
