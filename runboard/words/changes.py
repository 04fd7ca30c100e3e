"""What the review says of changes: why one is offered, and whether it worked."""

from collections.abc import Iterator, Mapping
from datetime import timedelta
from typing import Any

from runboard.review.changes.nouns import Idea, Span3, Verdict
from runboard.words.facts import span_in_words
from runboard.words.sentences import say

_A_MINUTE = timedelta(minutes=1)


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
    if verdict.of == "waiting":
        return " ".join(_of_waiting(verdict, facts))
    low, high = verdict.saved.low, verdict.saved.high
    if verdict.code == "worse":
        low, high = -high, -low
    by = Span3(low, abs(verdict.saved.mid), high)
    ends = {"low": _signed(low), "high": _signed(high)}
    return say("verdict", verdict.code, {**facts, "range": range_in_words(by), **ends})


def _of_waiting(verdict: Verdict, facts: Mapping[str, Any]) -> Iterator[str]:
    """What was waited less, and of the hands that were promised what can be seen."""
    by = span_in_words(abs(verdict.saved.mid)) if verdict.saved is not None else ""
    yield say("verdict", "waiting", {**facts, "code": verdict.code.replace(" ", "-"), "by": by})
    if verdict.hands is not None and verdict.hands_promised >= _A_MINUTE:
        hands = {"way": _way(verdict.hands), "hands": span_in_words(abs(verdict.hands))}
        yield say("verdict", "hands", {**hands, "promised": span_in_words(verdict.hands_promised)})


def _way(span: timedelta) -> str:
    return "same" if abs(span) < _A_MINUTE else "less" if span > timedelta(0) else "more"


def _signed(span: timedelta) -> str:
    said = span_in_words(abs(span))
    return say("change-range", "less", {"span": said}) if span < timedelta(0) else said


def _with_spans(facts: Mapping[str, Any]) -> dict[str, Any]:
    return {name: span_in_words(fact) if isinstance(fact, timedelta) else fact for name, fact in facts.items()}
