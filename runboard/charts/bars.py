"""The charts of a review, each made of plain figures and ready for a page, for paper and for a file that stands alone.

Lengths are in one unit a chart, whichever; None is what nobody measured, which is dotted and never drawn as nought. What is
written on a chart is said by whoever asks for it.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from statistics import median, quantiles

from markupsafe import Markup

from runboard.charts.svg import LETTER, Box, Drawing, Stroke, Word, cut

WIDTH = 328.0
NAMES, MOST_NAMES, FIGURES = 112.0, 140.0, 62.0
ROW = 23.0
# So many observations make a box; fewer are only dots.
BOX_OF = 5

# A figure that stands on ground of its own, over lines: two classes.
OVER_LINES = " ".join(("figure", "over"))


@dataclass(frozen=True)
class Beside:
    """What was guessed beside what it took. ``said`` stands behind the bars. ``machine`` is the machine's part of it."""

    name: str
    guess: float
    taken: float | None
    said: str
    machine: float = 0.0


def bars_beside(key: str, label: str, rows: Sequence[Beside], unknown: str, about: str = "") -> Markup:
    """What each row took, hands filled and then machines hatched, over what was guessed, open. ``unknown`` is written where
    nobody measured it."""
    drawing = Drawing(key, "bars", label, WIDTH, ROW * len(rows) + 2, about=about)
    names = min(MOST_NAMES, max(NAMES, max((len(row.name) for row in rows), default=0) * LETTER + 16))
    room = WIDTH - names - FIGURES
    most = max([1e-9, *(row.guess for row in rows), *(row.taken or 0 for row in rows)])
    for at, row in enumerate(rows):
        top, scale = ROW * at, room / most
        drawing.words.append(Word(0, top + 16, cut(row.name, names - 10), "name"))
        drawing.boxes.append(Box(names, top + 14, _wide(row.guess * scale), 7, "guess"))
        if row.taken is None:
            drawing.boxes.append(Box(names, top + 4, _wide(row.guess * scale), 9, "unknown"))
            drawing.words.append(Word(WIDTH, top + 16, unknown, "over", "end"))
        else:
            drawing.boxes += _hands_then_machine(row, names, top + 4, scale)
            drawing.words.append(Word(WIDTH, top + 16, row.said, "figure", "end"))
    drawing.lines.append(Stroke(names, 0, names, drawing.height, "zero"))
    return drawing.svg


def _hands_then_machine(row: Beside, left: float, top: float, scale: float) -> list[Box]:
    whole = row.taken or 0.0
    machine = round(min(row.machine, whole) * scale, 1)
    hands = round(_wide(whole * scale) - machine, 1)
    found = [Box(left, top, hands, 9, "work")] if hands > 0 else []
    return [*found, Box(round(left + hands, 1), top, machine, 9, "watch")] if machine > 0 else found


@dataclass(frozen=True)
class Bar:
    """One bar: ``length`` is None where nobody knows it. ``is_marked`` bars are those that the chart is about."""

    name: str
    length: float | None
    said: str
    is_marked: bool = True


def bars(key: str, label: str, rows: Sequence[Bar], unknown: str = "", about: str = "") -> Markup:
    """Bars one under the other, as they come, their names above them. A length of nought has no bar, only its figure."""
    high = 40.0
    drawing = Drawing(key, "bars", label, WIDTH, high * len(rows), about=about)
    scale = (WIDTH - 2) / max([1e-9, *(row.length or 0 for row in rows)])
    for at, row in enumerate(rows):
        top = high * at
        drawing.words.append(Word(0, top + 14, cut(row.name, WIDTH - len(row.said) * LETTER - 8), "name"))
        drawing.words.append(Word(WIDTH, top + 14, row.said, "figure", "end"))
        if row.length is None:
            drawing.boxes.append(Box(0, top + 19, WIDTH, 12, "unknown"))
            drawing.words.append(Word(6, top + 29, unknown, "over"))
        elif row.length > 0:
            kind = "work" if row.is_marked else "setup"
            drawing.boxes.append(Box(0, top + 19, _wide(row.length * scale), 12, kind))
        drawing.lines.append(Stroke(0, top + 17, 0, top + 33, "zero"))
    return drawing.svg


def pareto(rows: Iterable[tuple[str, float, str]]) -> list[Bar]:
    """(name, length, said) as bars, the longest first; those that together make the first four fifths are marked."""
    ordered = sorted(rows, key=lambda row: -row[1])
    whole, before, found = sum(length for _, length, _ in ordered), 0.0, []
    for name, length, said in ordered:
        found.append(Bar(name, length, said, before < 0.8 * whole))
        before += length
    return found


@dataclass(frozen=True)
class Strip:
    """The observations of one thing in their order, against its guess. ``out`` were left out."""

    lengths: Sequence[float]
    guess: float
    out: Sequence[float] = field(default=())


def strip(
    key: str, label: str, shown: Strip, most: float, words: tuple[str, str] = ("", ""), about: str = ""
) -> Markup:
    """One dot an observation, crosses for those left out; from five on a box over the middle half with its median. The
    guess is an open triangle. ``most`` is the right end; ``words`` what stands at nought and there."""
    drawing = Drawing(key, "strip", label, WIDTH, 52, about=about)
    scale = (WIDTH - 12) / most if most else 0.0

    def x(length: float) -> float:
        return round(6 + min(length, most) * scale, 1)

    drawing.lines.append(Stroke(6, 32, WIDTH - 6, 32, "zero"))
    if len(shown.lengths) >= BOX_OF:
        low, _, high = quantiles(shown.lengths, n=4)
        drawing.boxes.append(Box(x(low), 10, _wide(x(high) - x(low)), 18, "middle"))
    for at, length in enumerate(shown.lengths):
        drawing.boxes.append(Box(x(length) - 2.5, 12 + at * 5 % 14, 5, 5, "dot"))
    for length in shown.out:
        drawing.lines += [
            Stroke(x(length) - 3, 16, x(length) + 3, 22, "out"),
            Stroke(x(length) - 3, 22, x(length) + 3, 16, "out"),
        ]
    if shown.lengths:
        at_median = x(median(shown.lengths))
        drawing.lines.append(Stroke(at_median, 6, at_median, 32, "median"))
    drawing.lines.append(Stroke(x(shown.guess), 4, x(shown.guess), 36, "guess"))
    drawing.words.append(Word(6, 50, words[0], "clock"))
    drawing.words.append(Word(WIDTH - 6, 50, words[1], "clock", "end"))
    return drawing.svg


@dataclass(frozen=True)
class Limits:
    """The centre of a control chart and its limits; None where there are too few points for any."""

    centre: float
    lower: float | None = None
    upper: float | None = None


def control(
    key: str,
    label: str,
    points: Sequence[float],
    limits: Limits,
    said: tuple[str, str, str],
    out: Iterable[int] = (),
    about: str = "",
) -> Markup:
    """A control chart: the points in their order, centre and limits as lines with what is ``said`` of lower, centre and
    upper. The points at ``out`` (from 0) lie outside: they are open squares, not a colour alone."""
    high, left = 150.0, 8.0
    right = WIDTH - max(len(text) for text in said) * LETTER - 14  # no line runs through what is said of it
    drawing = Drawing(key, "control", label, WIDTH, high, about=about)
    known = [*points, *(line for line in (limits.centre, limits.lower, limits.upper) if line is not None)]
    low, top = min(known), max(known)
    scale = (high - 24) / ((top - low) or 1.0)

    def y(value: float) -> float:
        return round(high - 12 - (value - low) * scale, 1)

    free = high
    for value, kind, text in zip(
        (limits.lower, limits.centre, limits.upper), ("limit", "centre", "limit"), said, strict=True
    ):
        if value is not None:
            drawing.lines.append(Stroke(0, y(value), right + 6, y(value), kind))
            drawing.words.append(Word(WIDTH, min(y(value) + 4.5, free), text, OVER_LINES, "end"))
            free = min(y(value) + 4.5, free) - 15  # nor do they lie on one another
    step = (right - left) / max(1, len(points) - 1)
    at = [(round(left + step * number, 1), y(value)) for number, value in enumerate(points)]
    drawing.lines += [Stroke(*one, *after, "path") for one, after in pairwise(at)]
    outside = set(out)
    for number, (x, middle) in enumerate(at):
        size = 9.0 if number in outside else 6.0
        drawing.boxes.append(
            Box(x - size / 2, middle - size / 2, size, size, "outside" if number in outside else "dot")
        )
    return drawing.svg


@dataclass(frozen=True)
class Held:
    """One row of a strip over time: from where to where, in one unit."""

    name: str
    said: str
    stretches: Sequence[tuple[float, float]]
    is_marked: bool = True


def over_time(
    key: str,
    label: str,
    rows: Sequence[Held],
    end: float,
    ticks: Sequence[tuple[float, Sequence[str]]],
    away: Sequence[tuple[float, float]] = (),
    about: str = "",
) -> Markup:
    """Rows over one time from 0 to ``end``, their names above them. ``ticks`` have their words from the longest to the
    shortest: all say the longest that fits all. ``away`` is hatched: nobody was there."""
    high, head = 42.0, 18.0
    drawing = Drawing(key, "over-time", label, WIDTH, head + high * len(rows) + 2, about=about)
    scale = (WIDTH - 2) / end if end else 0.0
    free = 0.0
    for x, text in _fitting([(round(at * scale, 1), said) for at, said in ticks]):
        at_x = min(x, WIDTH - len(text) * LETTER)
        if at_x >= free:
            is_last = at_x < x  # one that would go over the edge ends there, however wide its letters are
            drawing.words.append(Word(*((WIDTH, 12, text, "clock", "end") if is_last else (at_x, 12, text, "clock"))))
            free = at_x + (len(text) + 1) * LETTER
    for number, row in enumerate(rows):
        top = head + high * number
        drawing.boxes.append(Box(0, top + 20, WIDTH - 2, 14, "row"))
        for start, stop in away:
            drawing.boxes.append(Box(round(start * scale, 1), top + 20, _wide((stop - start) * scale), 14, "watch"))
        for start, stop in row.stretches:
            kind = "work" if row.is_marked else "setup"
            drawing.boxes.append(Box(round(start * scale, 1), top + 20, _wide((stop - start) * scale), 14, kind))
        for at, _ in ticks:
            x = round(at * scale, 1)
            drawing.lines.append(Stroke(x, top + 17, x, top + 37, "zero"))
        drawing.words.append(Word(0, top + 14, cut(row.name, WIDTH - len(row.said) * LETTER - 8), "name"))
        drawing.words.append(Word(WIDTH, top + 14, row.said, "figure", "end"))
    return drawing.svg


def _fitting(ticks: Sequence[tuple[float, Sequence[str]]]) -> list[tuple[float, str]]:
    """Each with the longest words with which all fit; with the shortest where none do."""
    for size in range(min((len(said) for _, said in ticks), default=0)):
        found = [(min(x, WIDTH - len(said[size]) * LETTER), said[size]) for x, said in ticks]
        if all(x + (len(text) + 1) * LETTER <= after for (x, text), (after, _) in pairwise(found)):
            return [(x, said[size]) for x, said in ticks]
    return [(x, said[-1]) for x, said in ticks]


def _wide(length: float) -> float:
    """What is there is seen, however short."""
    return round(max(1.0, length), 1)
