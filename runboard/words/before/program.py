"""A machine's program in words: how long it takes and with what, how far it goes, and each line that is doubtful."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta
from typing import Any

from runboard.plan.program.doubt import Doubt
from runboard.plan.program.grave import WITHOUT_FEED, is_trusted, sorted_out
from runboard.plan.program.kind import Looked
from runboard.plan.program.question import Program
from runboard.shop.book import Book
from runboard.shop.units import Unit
from runboard.words.before.doubts import doubt_said, facts_in_words
from runboard.words.before.said import Said, Table
from runboard.words.facts import (
    date_in_words,
    exact_span_in_words,
    fine,
    fine_span,
    length_in_words,
    list_in_words,
    number_in_words,
)
from runboard.words.sentences import say, sentence

_PARTS = ("cutting", "rapid", "plunge", "dwell", "tool_change")
_MOST_STOPS = 5
# Seconds a load: less is not worth saying.
LEAST_SAVING = 1.0
_MM_A_METRE, _MM_A_FOOT = 1000.0, 304.8


def said(book: Book, question: Program, answer: Looked) -> Said:
    """The answer: a load's time by the station's own factor where it has one; the record has what was reckoned."""
    report, units = answer.report, book.units
    grave, others = sorted_out(report.doubts)
    return Said(
        head=_head(report, question.factor),
        lines=tuple(_lines(book, question, answer)),
        doubts=tuple(doubt_said(doubt, units) for doubt in others),
        cautions=tuple(_cautions(grave, report, units)),
        tables=tuple(_tables(report, question.factor, units, question.loads)),
        record=record(answer, question, units),
        changes_time=report.changes_time,
    )


def _cautions(grave: Sequence[tuple[Doubt, int]], report: Any, units: Unit) -> Iterator[str]:
    for doubt, more in grave:
        said_once = doubt_said(doubt, units)
        yield sentence("program-caution-more", {"doubt": said_once, "more": more}) if more else said_once
    if report.seconds.total and not is_trusted(report.doubts):
        yield sentence("program-not-taken")


def _head(report: Any, factor: float) -> str:
    seconds = report.seconds
    if not seconds.total:
        return sentence("program-head-nothing")
    total = exact_span_in_words(timedelta(seconds=max(1, round(seconds.total * factor))))  # as it is taken
    if any(doubt.code in WITHOUT_FEED for doubt in report.doubts):
        return sentence("program-head-without-feed", {"total": total})
    does, length = ("cutting", seconds.cutting) if seconds.cutting else ("drilling", seconds.plunge)
    facts = {"total": total, "does": does if length else "travel", "span": fine_span(span_of(length * factor))}
    return sentence("program-head", facts)


def span_of(seconds: float) -> timedelta:
    """So many seconds, as finely as they are said."""
    return fine(timedelta(seconds=seconds))


def _lines(book: Book, question: Program, answer: Looked) -> Iterator[str]:
    report = answer.report
    station = book.station(question.station) if question.station else None
    if station and question.factor_times:
        facts = {
            "station": station.name,
            "factor": number_in_words(round(question.factor, 2)),
            "times": question.factor_times,
        }
        yield sentence("program-factor", facts | {"reckoned": fine_span(span_of(report.seconds.total))})
    if report.seconds.total:
        yield sentence("program-air", {"percent": round(100 * report.air_share)})
    if report.back_to is not None:
        change = fine_span(span_of(report.change * question.factor))
        yield sentence("program-change-back", {"tool": report.back_to, "change": change})
    if report.stops:
        lines = list_in_words(str(line) for line in report.stops[:_MOST_STOPS])
        more = max(0, len(report.stops) - _MOST_STOPS)
        yield sentence("program-stops", {"count": len(report.stops), "lines": lines, "more": more})
    if report.visits.places > 1:
        yield from _visits(report.visits, question)
    yield sentence("program-read", {"lines": report.lines, "units": report.units})
    if station is None:
        yield sentence("program-usual-motion")


def _visits(visits: Any, question: Program) -> Iterator[str]:
    """What one visit a place, and a better order, would save in travel, and what to do for it."""
    most = max(0.0, visits.most)
    facts = {"places": visits.places, "visits": len(visits.before), "most": fine_span(span_of(most))}
    if not visits.is_searched:
        yield sentence("program-visits-too-many", facts)
    elif visits.saving < LEAST_SAVING:
        yield sentence("program-visits-fine" if most >= LEAST_SAVING else "program-visits-best", facts)
    else:
        loads = question.loads or 1
        saving = fine_span(span_of(visits.saving))
        is_best = visits.is_proved or saving == facts["most"]
        facts |= {"saving": saving, "loads": loads, "in_all": fine_span(span_of(visits.saving * loads))}
        yield sentence("program-visits", facts | {"proved": "yes" if is_best else "no"})
        by_place = visits.saving_by_place >= LEAST_SAVING
        yield sentence("program-order-by-place-advice" if by_place else "program-order-round-advice")


# tables


def _tables(report: Any, factor: float, units: Unit, loads: int | None) -> Iterator[Table]:
    yield _by_kind(report, factor, units)
    if len(report.tools) > 1:
        yield _by_tool(report, factor, units)
    if report.visits.places > 1 and report.visits.saving >= LEAST_SAVING:
        yield _orders(report.visits, loads)
    if report.extent:
        yield _extents(report, units)


def _heads(*names: str) -> tuple[str, ...]:
    return tuple(say("program-column", name) for name in names)


def _by_kind(report: Any, factor: float, units: Unit) -> Table:
    rows = []
    for part in _PARTS:
        seconds, way = getattr(report.seconds, part), getattr(report.length, part, 0.0)
        if seconds or way:
            rows.append(
                (
                    say("program-part", part),
                    fine_span(span_of(seconds * factor)),
                    way_in_words(way, units) if way else "",
                )
            )
    return Table("", _heads("part", "time", "length"), tuple(rows), frozenset({1, 2}))


def _by_tool(report: Any, factor: float, units: Unit) -> Table:
    rows = tuple(
        (
            sentence("program-tool", {"number": tool.number}),
            fine_span(span_of(tool.seconds.total * factor)),
            fine_span(span_of(tool.seconds.cutting * factor)) if tool.seconds.cutting else "",
            "" if tool.lowest is None else length_in_words(tool.lowest, units),
        )
        for tool in report.tools
    )
    return Table(
        sentence("program-by-tool"),
        _heads("tool", "time", "cutting", "lowest"),
        rows,
        frozenset({1, 2, 3}),
        folded=True,
    )


def _orders(visits: Any, loads: int | None) -> Table:
    """Travel between places as the program has it, and in a better order: a load, and of all loads where they are known."""
    found = [
        ("now", visits.now),
        ("by-place", min(visits.now, visits.by_place)),
        ("ordered", visits.ordered),
        ("bound", visits.bound),
    ]
    rows = tuple(
        (say("program-order", name), *(fine_span(span_of(seconds * many)) for many in (1, *([loads] if loads else []))))
        for name, seconds in found
    )
    heads = _heads("order", "a load", *(["a run"] if loads else []))
    return Table(sentence("program-orders"), heads, rows, frozenset({1, 2}))


def _extents(report: Any, units: Unit) -> Table:
    rows = tuple(
        (axis, *(length_in_words(round(mm, 3), units) for mm in (low, high, high - low)))
        for axis, (low, high) in zip("XYZ", report.extent, strict=True)
    )
    return Table(
        sentence("program-extents"), _heads("axis", "from", "to", "in all"), rows, frozenset({1, 2, 3}), folded=True
    )


def way_in_words(mm: float, units: Unit) -> str:
    """A length of path: '12.3 m', '40 ft', '480 mm'."""
    if mm < _MM_A_METRE:
        return length_in_words(round(mm), units) if units == "mm" else length_in_words(mm, units)
    far = mm / (_MM_A_FOOT if units == "in" else _MM_A_METRE)
    number = number_in_words(round(far, 1) if far < 100 else round(far))
    return sentence("program-way", {"units": units, "number": number})


def found_facts(book: Book, facts: Mapping[str, Any]) -> dict[str, Any]:
    """The facts of a finding about a program as its sentence takes them."""
    found = facts_in_words(facts, book.units)
    if found.get("day"):
        found["day"] = date_in_words(date.fromisoformat(found["day"]), with_year=True)
    return found


# as JSON


def record(answer: Looked, question: Program, units: Unit) -> dict[str, Any]:
    """The answer for other programs: seconds as they were reckoned, without the station's own factor, and millimetres. Cutting is
    all feed moves but straight plunges; ``bound_seconds`` is what no order of visits could save more than."""
    report = answer.report
    found: dict[str, Any] = {
        "kind": "program",
        "file": answer.name,
        "lines": report.lines,
        "seconds": _seconds(report.seconds),
        "length_mm": _lengths(report.length),
        "extent_mm": {
            axis: [round(low, 4), round(high, 4)] for axis, (low, high) in zip("xyz", report.extent, strict=False)
        },
        "air_share": round(report.air_share, 4),
        "tools": [
            {
                "tool": tool.number,
                "seconds": _seconds(tool.seconds),
                "length_mm": _lengths(tool.length),
                "lowest_mm": None if tool.lowest is None else round(tool.lowest, 4),
            }
            for tool in report.tools
        ],
        "visit_order": {
            "places": report.visits.places,
            "visits": len(report.visits.before),
            "saving_seconds": round(report.visits.saving, 3),
            "bound_seconds": round(max(report.visits.saving, report.visits.most), 3),
        },
        "doubts": [{"line": doubt.line, "text": doubt_said(doubt, units)} for doubt in report.doubts],
    }
    if question.factor_times:
        expected = round(report.seconds.total * question.factor, 3)
        found["station_factor"] = {
            "factor": round(question.factor, 4),
            "times": question.factor_times,
            "expected_seconds": expected,
        }
    return found


def _seconds(seconds: Any) -> dict[str, float]:
    return {name: round(getattr(seconds, name), 3) for name in ("total", *_PARTS)}


def _lengths(lengths: Any) -> dict[str, float]:
    return {name: round(getattr(lengths, name), 3) for name in ("cutting", "rapid", "plunge")}
