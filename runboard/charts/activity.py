"""A multiple-activity chart of what was, with what was planned in a narrow row beside each: time runs down on a phone and
across on a tablet, and CSS shows one of the two."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from runboard.charts.labels import LINE, Label, on_bar, wide, wrapped
from runboard.charts.svg import Box, Drawing, Stroke, Word

PHONE_WIDTH, TABLET_WIDTH = 328.0, 800.0
CLOCK = 44.0
# What names may have at most, turned above their column or before their row: they have as much as the longest needs,
# and a longer one is in lines.
NAMES = 190.0
EDGE, GAP = 20.0, 4.0
# How wide a planned row is beside its real one.
PLANNED = 0.35


@dataclass(frozen=True)
class Stretch:
    """From when to when, in minutes of the chart; ``kind`` is work, setup, watch, walk or idle. ``text`` is written on it where
    it fits, else its ``short`` form, or that one's letter. ``goes_on`` where it ends later than the chart."""

    start: float
    end: float
    kind: str
    text: str = ""
    short: tuple[str, str] = ("", "")
    goes_on: bool = False


@dataclass(frozen=True)
class Row:
    """Somebody or a station: as it was, and as it was planned."""

    name: str
    real: Sequence[Stretch]
    planned: Sequence[Stretch] = ()


def activity(
    key: str, label: str, rows: Sequence[Row], end: float, hours: Sequence[tuple[float, str]], about: str = ""
) -> Markup:
    """Both ways of the chart; ``hours`` are (minute, what is written there)."""
    drawn = (_Drawn(key, label, rows, end, hours, about, is_down=is_down).drawing.svg for is_down in (True, False))
    return Markup("\n").join(drawn)


class _Drawn:
    """Along is the way that time runs, across the rows."""

    def __init__(
        self,
        key: str,
        label: str,
        rows: Sequence[Row],
        end: float,
        hours: Sequence[tuple[float, str]],
        about: str,
        *,
        is_down: bool,
    ) -> None:
        self.is_down = is_down
        self.first = min(NAMES, max((wide(row.name) for row in rows), default=0.0) + 12)
        self.length = min(640.0, max(180.0, end * 1.6)) if is_down else TABLET_WIDTH - self.first - EDGE - GAP
        self.scale = self.length / end if end else 0.0
        self.start = CLOCK if is_down else 22.0
        unit = (PHONE_WIDTH - CLOCK) / max(1, len(rows)) if is_down else 52.0
        across = self.start + unit * len(rows)
        way, letter = ("phone", "a") if is_down else ("tablet", "b")
        whole = self.first + self.length + EDGE
        width, height = self._turned(whole, across)
        self.drawing = Drawing(f"{key}{letter}", way, label, width, height, about=about)
        for at, text in hours:
            self._hour(self.first + at * self.scale, across, text)
        for number, row in enumerate(rows):
            self._row(row, self.start + unit * number, unit - GAP)

    def _turned(self, along: float, across: float) -> tuple[float, float]:
        x, y = (across, along) if self.is_down else (along, across)
        return round(x, 1), round(y, 1)

    def _hour(self, at: float, across: float, text: str) -> None:
        start, stop = self._turned(at, self.start - 4), self._turned(at, across)
        self.drawing.lines.append(Stroke(*start, *stop, "hour"))
        x, y = (0.0, at + 4.5) if self.is_down else (at, 14.0)
        self.drawing.words.append(Word(round(x, 1), round(y, 1), text, "clock", "start" if self.is_down else "middle"))

    def _row(self, row: Row, across: float, size: float) -> None:
        planned = size * PLANNED
        real = size - planned - 1
        lines = wrapped(row.name, self.first - 12)
        for number, line in enumerate(lines):
            at = round(across + real / 2 + 4.5 + LINE * (number - (len(lines) - 1) / 2), 1)
            x, y = (at, self.first - 6) if self.is_down else (0, at)
            self.drawing.words.append(Word(x, y, line, "name", "start", self.is_down))
        for stretch in row.real:
            self._stretch(stretch, across, real)
        for stretch in row.planned:
            self._box(stretch, across + real + 1, planned, f"planned-{_class(stretch.kind)}")

    def _stretch(self, stretch: Stretch, across: float, size: float) -> None:
        if stretch.kind == "walk":
            self.drawing.marks.append(self._triangle(stretch, across, size))
            return
        self._box(stretch, across, size, _class(stretch.kind))
        if stretch.goes_on:
            self._arrow(across + size / 2)
        if stretch.text and stretch.kind != "idle":
            label = Label(stretch.short[0] or stretch.text, "", stretch.short[1], stretch.text)
            kind = "on-watch" if stretch.kind == "watch" else "on-work"
            self.drawing.words += on_bar(self.drawing.boxes[-1], label, kind)

    def _box(self, stretch: Stretch, across: float, size: float, kind: str) -> None:
        x, y = self._turned(self.first + stretch.start * self.scale, across)
        width, height = self._turned(max(1.0, (stretch.end - stretch.start) * self.scale), size)
        self.drawing.boxes.append(Box(x, y, width, height, kind))

    def _arrow(self, across: float) -> None:
        """Behind the end of time."""
        tip = self.first + self.length + 9
        for side in (-5, 5):
            ends = self._turned(tip - 6, across + side), self._turned(tip, across)
            self.drawing.lines.append(Stroke(*ends[0], *ends[1], "goes-on"))

    def _triangle(self, stretch: Stretch, across: float, size: float) -> str:
        tip = self.first + max(stretch.end * self.scale, stretch.start * self.scale + 5)
        points = ((tip - 5, across), (tip - 5, across + size), (tip, across + size / 2))
        return " ".join("{:g},{:g}".format(*self._turned(*one)) for one in points)


def _class(kind: str) -> str:
    return kind if kind in ("work", "setup", "watch") else "row"


def hours_of(start: float, end: float, least: float) -> Iterator[float]:
    """The quarters of an hour between two minutes of a day, so far apart that their words have room: every one, every half hour,
    every hour, …"""
    step = next(step for step in (15, 30, 60, 120, 180, 240, 360, 720) if step >= least or step == 720)
    at = -(-start // step) * step
    while at <= end:
        yield at
        at += step
