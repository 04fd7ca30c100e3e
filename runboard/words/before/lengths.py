"""A cut list in words: what to cut from which board, what to buy, what is left."""

from collections.abc import Iterator
from typing import Any

from runboard.plan.stock.cut_list import Bar, LengthsAnswer, LengthsQuestion
from runboard.plan.stock.question import OWN
from runboard.shop.book import Book
from runboard.shop.stocked import Stock
from runboard.shop.units import Unit
from runboard.words.before.measures import length_about
from runboard.words.before.said import Said, Table
from runboard.words.facts import length_in_words, list_in_words
from runboard.words.sentences import say

_FIRST_SHOWN = 100


def said(book: Book, question: LengthsQuestion, answer: LengthsAnswer) -> Said:
    """The answer in words."""
    return Said(
        head=_head(answer, book.units),
        lines=tuple(_lines(question, answer, book.units)),
        cautions=(() if question.gap else (_word("no gap"),)),
        tables=(_list(answer, book.units),),
        record=_record(answer),
    )


def _word(code: str, /, **facts: Any) -> str:
    return say("before-lengths", code, facts)


def stock_name(stock: Stock, units: Unit) -> str:
    """What a board is called: by its length, where that was typed in."""
    return _word("own", length=length_in_words(stock.length, units)) if stock.key == OWN else stock.name


def cuts_in_words(bar: Bar, units: Unit) -> str:
    """'3 × 450 mm and 1 × 310 mm'"""
    return list_in_words(
        _word("of length", count=count, length=length_in_words(length, units)) for length, count in bar.cuts
    )


def _head(answer: LengthsAnswer, units: Unit) -> str:
    boards = [_word("boards", count=used, board=stock_name(stock, units)) for stock, used, _ in answer.counts]
    buy = [
        _word("boards", count=bought, board=stock_name(stock, units)) for stock, _, bought in answer.counts if bought
    ]
    missing = [
        _word("of length", count=count, length=length_in_words(length, units)) for length, count in answer.missing
    ]
    facts = {"boards": list_in_words(boards), "buy": list_in_words(buy) or "none", "missing": list_in_words(missing)}
    return _word("head short" if missing else "head", **facts)


def _lines(question: LengthsQuestion, answer: LengthsAnswer, units: Unit) -> Iterator[str]:
    percent = round(answer.yield_share * 100)
    yield _word("yield", percent=percent, rest=100 - percent)
    if answer.is_proved:
        yield _word("proved")
    elif not answer.missing:
        yield _word("above", percent=f"{max(0.1, answer.above_bound * 100):.1f}")
    if sum(bar.count for bar in answer.bars) > 1:
        yield _word("ways", ways=len(answer.bars), known="yes" if answer.is_best else "no")
    rests = [bar.rest for bar in answer.bars if bar.rest >= 1]
    if rests:
        yield _word("longest rest", length=length_about(max(rests), units))
    if question.gap:
        yield _word("cuts taken")
    if question.trim:
        yield _word("trim", trim=length_in_words(question.trim, units))


def _list(answer: LengthsAnswer, units: Unit) -> Table:
    rows = tuple(
        (
            _word("boards", count=bar.count, board=stock_name(bar.stock, units)),
            cuts_in_words(bar, units),
            length_about(bar.rest, units),
        )
        for bar in answer.bars[:_FIRST_SHOWN]
    )
    return Table(_word("list"), (_word("board"), _word("cuts"), _word("left")), rows, frozenset({2}))


def _record(answer: LengthsAnswer) -> dict[str, Any]:
    return {
        "kind": "lengths",
        "boards": [{"stock": stock.key, "use": used, "buy": bought} for stock, used, bought in answer.counts],
        "cuts": [
            {
                "stock": bar.stock.key,
                "count": bar.count,
                "lengths_mm": [[length, count] for length, count in bar.cuts],
                "rest_mm": round(bar.rest, 3),
            }
            for bar in answer.bars
        ],
        "missing_mm": [[length, count] for length, count in answer.missing],
        "yield": round(answer.yield_share, 4),
        "proved": answer.is_proved,
        "best_ways": answer.is_best,
        "above_bound": round(answer.above_bound, 6),
    }
