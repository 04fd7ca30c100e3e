"""One sitting of the multiple-activity chart as a drawing: boxes, lines and words in the units of an SVG.

One layout serves both ways: time runs down on a phone and across on a tablet.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from runboard.charts.svg import Box, Drawing, Stroke, Word, cut, fitting
from runboard.plan.schedule.problem.nouns import TICK
from runboard.plan.schedule.told.figures import Bar, ChartRow, ChartSitting
from runboard.words.facts import time_of_day
from runboard.words.plan import Names

MINUTE = timedelta(minutes=1) // TICK
LINE = 17.0


@dataclass(frozen=True)
class Way:
    """How a drawing lies: ``length`` is how long time may be, ``rows`` how wide each kind of row, ``names`` the room for
    their names, ``clock`` that for the times of day. ``most`` is the scale of a short sitting, in units a minute."""

    key: str
    down: bool
    length: float
    names: float
    clock: float
    rows: dict[str, float]
    most: float
    least: float


# A phone's column, filled whatever the number of rows; a tablet's width.
PHONE = Way("phone", True, 900, 92, 44, {"person": 3.0, "station": 1.5, "service": 0.8}, 3.0, 0.9)
TABLET = Way("tablet", False, 660, 124, 22, {"person": 34, "station": 26, "service": 16}, 6.0, 0.0)
PHONE_WIDTH = 328.0
EDGE = 18.0  # behind the end of time, for half a time of day
NEAR = 46.0  # a time of day this near to 'now' makes room for it
GAP = 3.0


class Drawn:
    """One sitting being drawn one way. Along is the way that time runs, across the rows."""

    def __init__(self, part: ChartSitting, names: Names, way: Way, key: str, label: str) -> None:
        self.names, self.way, self.span = names, way, part.span
        span, now = part.span, names.problem.tick(names.now)
        self.now = now if span[0] <= now <= span[1] else None
        longest = part.longest / MINUTE
        self.scale = min(way.most, max(way.least, way.length / longest)) / MINUTE
        self.rows = list(self._laid_out(part.rows))
        across = max((start + size for _, start, size in self.rows), default=0) + GAP
        self.ends = self._along(span[1])
        self.across = across
        whole = self.ends + EDGE if way.down else way.names + way.length + EDGE
        self.drawing = Drawing(key, way.key, label, *self._turned(whole, across))
        self._scale_of_time()
        for row, start, size in self.rows:
            self._row(row, start, size)
        if self.now is not None:
            at = self._along(self.now)
            self._line(at, way.clock - 6, at, across, "now")
            self._clock(at, names.say("now"), "now")

    def _laid_out(self, rows: Sequence[ChartRow]) -> Iterator[tuple[ChartRow, float, float]]:
        sizes = [self.way.rows[row.kind] for row in rows]
        unit = (PHONE_WIDTH - self.way.clock - GAP * len(rows)) / sum(sizes) if self.way.down else 1.0
        at = self.way.clock
        for row, size in zip(rows, sizes, strict=True):
            yield row, at, size * unit
            at += size * unit + GAP

    def _along(self, tick: float) -> float:
        return self.way.names + (tick - self.span[0]) * self.scale

    def _turned(self, along: float, across: float) -> tuple[float, float]:
        x, y = (across, along) if self.way.down else (along, across)
        return round(x, 1), round(y, 1)

    def _line(self, along: float, across: float, along2: float, across2: float, kind: str) -> None:
        self.drawing.lines.append(Stroke(*self._turned(along, across), *self._turned(along2, across2), kind))

    def _box(self, start: float, end: float, across: float, size: float, kind: str) -> None:
        x, y = self._turned(start, across)
        width, height = self._turned(max(1.0, end - start), size)
        self.drawing.boxes.append(Box(x, y, width, height, kind))

    # what stands still: names, hours

    def _scale_of_time(self) -> None:
        step = timedelta(minutes=60 if self.scale * MINUTE * 30 < 44 else 30)
        problem, near = self.names.problem, 16 if self.way.down else NEAR
        moment = _next_full(problem.moment(self.span[0]).astimezone(self.names.zone), step)
        while (at := self._along((moment - problem.start) / TICK)) <= self.ends:
            self._line(at, self.way.clock - 4, at, self.across, "hour")
            if self.now is None or abs(at - self._along(self.now)) >= near:
                self._clock(at, time_of_day(moment, self.names.zone), "clock")
            moment += step

    def _clock(self, at: float, text: str, kind: str) -> None:
        x, y = (0.0, at + 4.5) if self.way.down else (at, 14.0)
        anchor = "start" if self.way.down else "middle"
        self.drawing.words.append(Word(round(x, 1), round(y, 1), text, kind, anchor))

    def _row(self, row: ChartRow, across: float, size: float) -> None:
        self._name(row, across, size)
        self._box(self.way.names, self.ends, across, size, f"row {row.kind}")
        for bar in row.bars:
            self._bar(row, bar, across, size)

    def _name(self, row: ChartRow, across: float, size: float) -> None:
        name = row_name(self.names, row)
        if self.way.down:
            fits = fitting((name,), size) if row.kind == "person" else ""
            most = self.way.names - 10
            if fits:
                word = Word(round(across + size / 2, 1), self.way.names - 6, fits, row.kind, "middle")
            else:
                word = Word(
                    round(across + size / 2 + 4.5, 1), self.way.names - 6, cut(name, most), row.kind, "start", True
                )
        else:
            word = Word(0, round(across + size / 2 + 4.5, 1), cut(name, self.way.names - 8), row.kind)
        self.drawing.words.append(word)

    # what moves

    def _bar(self, row: ChartRow, bar: Bar, across: float, size: float) -> None:
        start, end = self._along(bar.start), self._along(bar.end)
        match bar.kind:
            case "wait":
                self._line(start, across + size - 2, end, across + size - 2, "wait")
            case "walk":
                self._walk(start, end, across, size)
            case "drawn":
                self._box(start, end, across, size * bar.share, "drawn")
            case "held":
                self._box(start, end, across + size * 0.25, size * 0.5, "held")
            case _:
                kind = bar.kind if bar.kind == "watch" else f"work {bar.part}"
                self._box(start, end, across, size, kind)
                self._label(row, bar, start, end, across, size)

    def _walk(self, start: float, end: float, across: float, size: float) -> None:
        tip = max(end, start + 5)
        points = ((tip - 5, across), (tip - 5, across + size), (tip, across + size / 2))
        self.drawing.marks.append(" ".join("{:g},{:g}".format(*self._turned(*one)) for one in points))

    def _label(self, row: ChartRow, bar: Bar, start: float, end: float, across: float, size: float) -> None:
        step, trays = self.names.block_step(bar.block), self.names.block_trays(bar.block)
        said = (f"{step} {trays}", step, trays) if row.kind == "person" else (trays,)
        wide, high = (size, end - start) if self.way.down else (end - start, size)
        text = fitting(said, wide)
        if text and high >= LINE - 3:
            x, y = self._turned((start + end) / 2, across + size / 2)
            kind = "on-watch" if bar.kind == "watch" else "on-work"
            self.drawing.words.append(Word(x, round(y + 4.5, 1), text, kind, "middle"))


def _next_full(local: datetime, step: timedelta) -> datetime:
    """The next full hour, or half hour, in UTC: from there on steps are real time."""
    past = timedelta(minutes=local.minute, seconds=local.second, microseconds=local.microsecond)
    return (local + -past % step).astimezone(UTC)


def row_name(names: Names, row: ChartRow) -> str:
    """What a row is about, by its own name."""
    problem = names.problem
    match row.kind:
        case "person":
            return problem.people[row.at].name
        case "station":
            return problem.stations[row.at].name
    return names.service(row.at)
