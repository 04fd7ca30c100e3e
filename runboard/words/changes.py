"""What the review says of changes: why one is offered, whether it worked, and what became of it."""

from collections.abc import Mapping
from datetime import timedelta
from typing import Any

from runboard.review.changes.nouns import Adopted, Idea, Span3, Verdict
from runboard.run.fold.state import RunState
from runboard.shop.book import Book
from runboard.words.facts import span_in_words
from runboard.words.sentences import say
from runboard.words.trying import words_of_change


def reason_of(idea: Idea) -> str:
    """What in the run speaks for an idea; '' where a person had it."""
    return say("offered", idea.because, _with_spans(idea.facts)) if idea.because else ""


def range_in_words(span: Span3) -> str:
    """'38–52 min', or '45 min' where both ends are the same."""
    low, high = (span_in_words(abs(each)) for each in (span.low, span.high))
    if span.low < timedelta(0) < span.high or low == high:
        return span_in_words(abs(span.mid))
    return say("change-range", "of", {"low": low, "high": high})


def verdict_in_words(verdict: Verdict) -> str:
    """'Saved 38 min to 52 min of hands for 60 pieces; promised 60 min.'"""
    facts: dict[str, Any] = {"of": verdict.of or "nothing", "pieces": verdict.pieces}
    facts |= {"promised": span_in_words(max(timedelta(0), verdict.promised.mid))}
    if verdict.saved is None:
        return say("verdict", verdict.code, facts)
    low, high = verdict.saved.low, verdict.saved.high
    if verdict.code == "worse":
        low, high = -high, -low
    by = Span3(low, abs(verdict.saved.mid), high)
    ends = {"low": _signed(low), "high": _signed(high)}
    return say("verdict", verdict.code, {**facts, "range": range_in_words(by), **ends})


def adopted_in_words(book: Book, run: RunState | None, line: Adopted) -> str:
    """A line of the ledger: the change and what became of it. ``run`` is the one that it was adopted after, as far as it is
    known."""
    change = "" if line.change is None or run is None else words_of_change(book, run, line.change)
    saved = "" if line.saved is None else range_in_words(line.saved)
    facts = {"change": change or "none", "saved": saved or "unknown", "verdict": line.verdict or "open"}
    return say("change-adopted", "line", facts)


def _signed(span: timedelta) -> str:
    said = span_in_words(abs(span))
    return say("change-range", "less", {"span": said}) if span < timedelta(0) else said


def _with_spans(facts: Mapping[str, Any]) -> dict[str, Any]:
    return {name: span_in_words(fact) if isinstance(fact, timedelta) else fact for name, fact in facts.items()}
