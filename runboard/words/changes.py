"""What the review says of changes: why one is offered, and whether it worked."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import timedelta
from typing import Any

from runboard.review.changes.nouns import Idea, Span3, Verdict
from runboard.words.facts import list_in_words, span_in_words
from runboard.words.review_things import piece_time, within
from runboard.words.sentences import say

_A_MINUTE, _AN_HOUR, _HOURS_FROM = timedelta(minutes=1), timedelta(hours=1), timedelta(hours=10)


def reason_of(idea: Idea) -> str:
    """What in the run speaks for an idea; '' where a person had it."""
    return say("offered", idea.because, _with_spans(idea.facts)) if idea.because else ""


def range_in_words(span: Span3) -> str:
    """'38–52 min', or '45 min' where both ends are the same."""
    low, high = (span_in_words(abs(each)) for each in (span.low, span.high))
    if span.low < timedelta(0) < span.high or low == high:
        return span_in_words(abs(span.mid))
    return say("change-range", "of", {"low": low, "high": high})


def verdict_in_words(verdict: Verdict, services: Iterable[str] = ()) -> str:
    """'Saved 38 min to 52 min of hands for 60 pieces; promised 60 min.' ``services`` are the names of those that it changed."""
    facts: dict[str, Any] = {"of": verdict.of or "nothing", "pieces": verdict.pieces}
    facts |= {"promised": span_in_words(max(timedelta(0), verdict.promised.mid))}
    if verdict.saved is None:
        return say("verdict", verdict.code, facts)
    if verdict.of == "waiting":
        return " ".join(_of_waiting(verdict, services))
    low, high = verdict.saved.low, verdict.saved.high
    if verdict.code == "worse":
        low, high = -high, -low
    by = Span3(low, abs(verdict.saved.mid), high)
    ends = {"low": _signed(low), "high": _signed(high)}
    return say("verdict", verdict.code, {**facts, "range": range_in_words(by), **ends})


def _of_waiting(verdict: Verdict, services: Iterable[str]) -> Iterator[str]:
    """How much sooner the run was done where that can be compared, what was waited less, and the hands of a good piece where
    some were promised."""
    took = "none" if verdict.took is None else "earlier" if verdict.took[1] < verdict.took[0] else "no"
    before, after = map(span_in_words, verdict.took or (None, None))
    yield say(
        "verdict",
        "waiting",
        {
            "code": verdict.code.replace(" ", "-"),
            "by": _roughly(verdict.saved.mid) if verdict.saved is not None else "",
            "took": took,
            "before": before,
            "after": after,
            "services": list_in_words(map(within, services)) or "none",
        },
    )
    if verdict.a_good_piece is not None and verdict.hands_promised >= _A_MINUTE:
        was, is_ = map(piece_time, verdict.a_good_piece)
        is_less = was != is_ and verdict.a_good_piece[1] < verdict.a_good_piece[0]
        yield say("verdict", "hands", {"less": "yes" if is_less else "no", "before": was, "after": is_})


def _roughly(span: timedelta) -> str:
    """In whole hours where it is many: 'Trays waited 21 h less'."""
    span = abs(span)
    return span_in_words(round(span / _AN_HOUR) * _AN_HOUR if span >= _HOURS_FROM else span)


def _signed(span: timedelta) -> str:
    said = span_in_words(abs(span))
    return say("change-range", "less", {"span": said}) if span < timedelta(0) else said


def _with_spans(facts: Mapping[str, Any]) -> dict[str, Any]:
    return {name: span_in_words(fact) if isinstance(fact, timedelta) else fact for name, fact in facts.items()}
