"""A doubt about a program as one sentence, in the shop's units."""

from collections.abc import Mapping
from datetime import timedelta
from typing import Any

from runboard.plan.program.doubt import Doubt
from runboard.shop.units import MM_A_INCH, Unit
from runboard.words.facts import fine_span, length_in_words, number_in_words
from runboard.words.sentences import say, sentence

# Facts of doubts that are lengths (mm) and feeds (mm/min).
_LENGTHS, _FEEDS = frozenset({"z", "by", "reach", "travel", "size", "gap"}), frozenset({"feed", "most"})


def doubt_said(doubt: Doubt, units: Unit) -> str:
    """'Line 31 moves fast across while at Z −4 mm, …'"""
    return say("program-doubt", doubt.code, {"line": doubt.line, **facts_in_words(doubt.facts, units)})


def facts_in_words(facts: Mapping[str, Any], units: Unit) -> dict[str, Any]:
    """Facts about a program as its sentences take them: lengths and feeds in the shop's units."""
    return {name: _in_units(name, value, units) for name, value in facts.items()}


def feed_in_words(mm_per_minute: float, units: Unit) -> str:
    """'1200 mm/min', '47.2 in/min'"""
    if units == "in":
        return sentence("program-feed-inches", {"feed": number_in_words(round(mm_per_minute / float(MM_A_INCH), 1))})
    return sentence("program-feed-mm", {"feed": number_in_words(round(mm_per_minute, 1))})


def _in_units(name: str, value: Any, units: Unit) -> Any:
    if not isinstance(value, float):
        return value
    if name == "lost":
        return fine_span(timedelta(seconds=value))
    if name in _LENGTHS:
        return length_in_words(round(value, 3), units).replace("-", "−")
    return feed_in_words(value, units) if name in _FEEDS else number_in_words(round(value, 3))
