"""The multiple-activity chart, sitting by sitting: drawn, and the same as a list.

Work is filled, watching hatched, idle empty; an ended load that waits is an open box, a walk a triangle, a wait a thin
line.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from runboard.charts.svg import Drawing
from runboard.plan.schedule.problem.nouns import Span
from runboard.plan.schedule.told.figures import Bar, ChartRow, ChartSitting, Figures
from runboard.web.plan.drawing import PHONE, TABLET, Drawn, row_name
from runboard.words.facts import span_in_words
from runboard.words.plan import Names, span_of
from runboard.words.sentences import trays_in_words

MOST_BARS = 400  # on one page: what comes after is a press away


@dataclass(frozen=True)
class Sitting:
    """One stretch of work: drawn both ways, and as a list. ``after`` says what is left out before it."""

    title: str
    drawings: tuple[Drawing, Drawing]
    said: tuple[str, ...]
    after: str = ""


def sittings(found: Figures, first: int, names: Names) -> list[Sitting]:
    """The chart of a plan from its sitting ``first`` on, as many as a page has room for: one at least."""
    some, bars = list[Sitting](), 0
    for at in range(first, len(found.charts)):
        part = found.part(at)
        bars += part.bars
        if some and bars > MOST_BARS:
            break
        some.append(_sitting(part, at, names))
    return some


def _sitting(part: ChartSitting, at: int, names: Names) -> Sitting:
    label = names.say("chart-label", **_when(names, part.span))
    drawings = Drawn(part, names, PHONE, f"{at}a", label).drawing, Drawn(part, names, TABLET, f"{at}b", label).drawing
    return Sitting(_title(names, part.span), drawings, tuple(_said(part, names)), _break(part, names))


def opens_on(found: Figures, at: int, names: Names) -> str:
    """The day of a sitting."""
    return names.day(found.part(at).span[0])


def _title(names: Names, span: Span) -> str:
    said = names.say("sitting", **_when(names, span))
    return said[:1].upper() + said[1:]


def _when(names: Names, span: Span) -> dict[str, str]:
    return {"day": names.day(span[0]), "from": names.clock(span[0]), "to": names.clock(span[1])}


# the same as a list


def _said(part: ChartSitting, names: Names) -> Iterator[str]:
    """Who does what, one after the other."""
    lines = [
        (bar.start, bar.end, text) for row in part.rows for bar in row.bars if (text := _line_said(row, bar, names))
    ]
    for start, end, text in sorted(lines):
        yield f"{names.clock(start)}–{names.clock(end)} {text}"


def _line_said(row: ChartRow, bar: Bar, names: Names) -> str:
    facts = {}
    if bar.block >= 0:
        trays = trays_in_words(names.problem.blocks[bar.block].trays)
        facts = {"step": names.block_step(bar.block), "trays": trays}
    if row.kind == "person":
        who = row_name(names, row)
        if bar.kind == "walk":
            return names.say("does-walk", who=who, room=names.room(bar.room))
        return names.say(f"does-{bar.part}", who=who, **facts)
    if (
        row.kind == "station"
        and bar.kind == "work"
        and bar.part == "machine"
        and names.problem.blocks[bar.block].watched is None
    ):
        return names.say("does-runs", station=row_name(names, row), **facts)
    if bar.kind == "wait":
        return names.say("does-wait", until=names.tick(bar.end), **facts)
    return ""


def _break(part: ChartSitting, names: Names) -> str:
    """What is left out between two stretches of work; '' before the first."""
    if part.gap is None:
        return ""
    trays = dict.fromkeys(tray for block in part.waiting for tray in names.problem.blocks[block].trays)
    said, span = trays_in_words(trays), span_in_words(span_of(part.gap[1] - part.gap[0]))
    return names.say("break", span=span, count=len(trays), trays=said)
