"""A cut list, drawn."""

from itertools import accumulate

from markupsafe import Markup

from runboard.charts.cut_bars import CutBar, cut_bars
from runboard.plan.stock.cut_list import Bar, LengthsAnswer, LengthsQuestion
from runboard.shop.book import Book
from runboard.words.before.lengths import cuts_in_words, stock_name
from runboard.words.facts import length_in_words, list_in_words
from runboard.words.sentences import say

_MOST_DRAWN = 40


def draw_lengths(book: Book, question: LengthsQuestion, answer: LengthsAnswer) -> tuple[Markup, ...]:
    """The boards that are cut otherwise than another, each once."""
    bars = answer.bars[:_MOST_DRAWN]
    about = list_in_words(cuts_in_words(bar, book.units) for bar in bars)
    rows = [_bar(book, question, bar) for bar in bars]
    return (
        cut_bars(
            "lengths", say("before-lengths", "drawn"), rows, say("before-lengths", "drawn about", {"cuts": about})
        ),
    )


def _bar(book: Book, question: LengthsQuestion, bar: Bar) -> CutBar:
    lengths = [length for length, count in bar.cuts for _ in range(count)]
    starts = accumulate((length + question.gap for length in lengths), initial=question.trim)
    pieces = [(start, length, _texts(book, length)) for start, length in zip(starts, lengths, strict=False)]
    facts = {"count": bar.count, "board": stock_name(bar.stock, book.units)}
    return CutBar(say("before-lengths", "boards", facts), bar.stock.length, pieces)


def _texts(book: Book, length: float) -> tuple[str, str]:
    """With its unit where there is room."""
    said = length_in_words(length, book.units)
    return said, said.rpartition(" ")[0]
