"""How long an engraving takes, in words."""

from collections.abc import Iterator, Sequence
from datetime import timedelta
from typing import Any

from runboard.plan.engraving.question import Engraving, EngravingAnswer, Method
from runboard.shop.book import Book
from runboard.words.before.said import Said, Table
from runboard.words.facts import exact_span_in_words, length_in_words
from runboard.words.sentences import say, sentence

# What a drawing may hold that is told of and changes no time.
QUIET = ("script", "no-unit", "moving", "marker")


def said(book: Book, question: Engraving, answer: EngravingAnswer) -> Said:
    """The minutes of each method beside the others, which is fastest, and what that does not say."""
    unclear = tuple(say("outline-unclear", one.code, {**one.facts, "line": one.line}) for one in answer.unclear)
    return Said(
        _head(answer),
        tuple(_lines(book, question, answer)),
        (*_doubts(book, answer), *unclear),
        tuple(say("before-engraving", f"caution-{what}") for what in ("watch", "air", "material")),
        (_table(answer),),
        record=_record(answer),
        changes_time=answer.short > 0 or any(one.code not in QUIET for one in answer.unclear),
    )


def method_in_words(name: str) -> str:
    return say("before-engraving-method", name)


def methods_in_words(some: Sequence[Method]) -> str:
    """Methods that come to the same: 'Row by row, or each piece by itself'."""
    return method_in_words("-".join(one.name for one in some))


def others_in_words() -> str:
    return sentence("before-engraving-others")


def seconds_in_words(seconds: float) -> str:
    """A machine's time to the second, as it is taken into a route; long ones in hours: no machine runs through the night by itself."""
    hours = round(seconds / 3600)
    if hours >= 48:
        return sentence("before-engraving-hours", {"hours": hours})
    return exact_span_in_words(timedelta(seconds=max(1, round(seconds))))


def shown_in_words(some: Sequence[Method]) -> tuple[str, str]:
    """The two lines above the drawing of methods that come to the same."""
    method = some[0]
    facts = {"method": method_in_words(method.name), "shown": method.shown, "lines": method.lines}
    first = sentence("before-engraving-drawn", {**facts, "span": seconds_in_words(method.seconds)})
    return first, say("before-engraving-shown", "all" if method.shown == method.lines else "some", facts)


def _head(answer: EngravingAnswer) -> str:
    best, whole = answer.method(answer.best), answer.method("whole")
    others = [one for one in answer.methods if one.name not in (answer.best, "trace")]
    alike = next((some for some in answer.joined if best in some), ())
    if best is None or whole is None:
        return ""
    facts: dict[str, Any] = {
        "method": methods_in_words(alike),
        "span": seconds_in_words(best.seconds),
        "whole": seconds_in_words(whole.seconds),
        "less": seconds_in_words(round(whole.seconds) - round(best.seconds)),
    }
    no_matter = all(one.seconds <= best.seconds * 1.05 for one in others)
    return say("before-engraving-head", "alike" if no_matter else "best", facts)


def _lines(book: Book, question: Engraving, answer: EngravingAnswer) -> Iterator[str]:
    best, units = answer.method(answer.best), book.units
    if best is not None and answer.jig_fulls > 1:
        facts = {"count": answer.jig_fulls, "span": _of_run(best, answer)}
        yield sentence("before-engraving-run", facts)
    size = {
        "wide": length_in_words(round(answer.box[2], 1), units),
        "high": length_in_words(round(answer.box[3], 1), units),
    }
    yield sentence("before-engraving-marks", {**size, "pieces": answer.places})
    rows = answer.method("rows")
    if rows is not None and answer.without_splitting > rows.seconds * 1.02:
        spans = {"span": seconds_in_words(answer.without_splitting), "rows": seconds_in_words(rows.seconds)}
        yield sentence("before-engraving-unsplit", spans)
    trace = answer.method("trace")
    if trace is not None and answer.has_fills:
        yield sentence("before-engraving-trace", {"span": seconds_in_words(trace.seconds)})
    if trace is not None and question.trace_speed is None:
        yield sentence("before-engraving-trace-usual", {"speed": answer.trace_speed})
    yield sentence(
        "before-engraving-values",
        {"speed": answer.speed, "accel": answer.accel, "spacing": length_in_words(answer.spacing, units),
         "run_up": length_in_words(round(answer.run_up, 1), units)},
    )  # fmt: skip
    yield sentence("before-engraving-looks")
    yield sentence("before-engraving-method-says")


def _of_run(method: Method, answer: EngravingAnswer) -> str:
    """As often as it is done the seconds that are said of one."""
    return seconds_in_words(max(1, round(method.seconds)) * answer.jig_fulls)


def _doubts(book: Book, answer: EngravingAnswer) -> Iterator[str]:
    if answer.assumed:
        names = [say("before-engraving-value", name) for name in answer.assumed]
        yield sentence("before-engraving-assumed", {"names": names})
    if answer.short > 0:
        facts = {"short": length_in_words(round(answer.short, 1), book.units)}
        yield sentence("before-engraving-short", facts)
    if not answer.fits:
        yield sentence("before-engraving-too-wide", {"run_up": length_in_words(round(answer.run_up, 1), book.units)})


def _table(answer: EngravingAnswer) -> Table:
    has_run = answer.jig_fulls > 1
    columns = ("method", "full", *(("run",) if has_run else ()), "lines", "blocks", "on")
    rows = []
    for some in answer.joined:
        one = some[0]
        on = round(100 * one.on / max(one.on + one.off, 1e-9))
        run = (_of_run(one, answer),) if has_run else ()
        cells = (str(one.lines), str(one.blocks), sentence("before-engraving-share", {"share": on}))
        rows.append((methods_in_words(some), seconds_in_words(one.seconds), *run, *cells))
    heads = tuple(say("before-engraving-column", name) for name in columns)
    return Table(sentence("before-engraving-table"), heads, tuple(rows), frozenset(range(1, len(columns))))


def _record(answer: EngravingAnswer) -> dict[str, Any]:
    methods = [
        {
            "name": one.name,
            "minutes": round(one.seconds / 60, 4),
            "run_minutes": round(one.seconds * answer.jig_fulls / 60, 4),
            "lines": one.lines,
            "blocks": one.blocks,
            "beam_on_mm": round(one.on, 3),
            "beam_off_mm": round(one.off, 3),
        }
        for one in answer.methods
    ]
    return {
        "kind": "engraving",
        "methods": methods,
        "best": answer.best,
        "jig_fulls": answer.jig_fulls,
        "places": answer.places,
        "box_mm": [round(each, 3) for each in answer.box],
        "speed_mm_s": answer.speed,
        "accel_mm_s2": answer.accel,
        "spacing_mm": answer.spacing,
        "run_up_mm": round(answer.run_up, 3),
        "assumed": list(answer.assumed),
        "doubts": [
            {"line": one.line, "text": say("outline-unclear", one.code, {**one.facts, "line": one.line})}
            for one in answer.unclear
        ],
    }
