"""One sitting of the multiple-activity chart as a drawing: boxes, lines and words in the units of an SVG.

One layout serves both ways: time runs down on a phone and across on a tablet. Times stand on both sides of it, and every bar
says what is done in it (``bars.py``).
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from runboard.charts.labels import LINE, wide, wrapped
from runboard.charts.svg import Box, Drawing, Stroke, Word
from runboard.plan.schedule.problem.nouns import TICK, Span
from runboard.plan.schedule.told.figures import ChartRow
from runboard.web.plan.bars import RowBars
from runboard.words.facts import time_of_day
from runboard.words.plan import Names
from runboard.words.short_forms import Short

MINUTE = timedelta(minutes=1) // TICK


@dataclass(frozen=True)
class Way:
    """How a drawing lies: ``length`` is how long time may be, ``clock`` the room for the times of day on each side, ``rows`` how
    wide each kind of row is (on a phone beside the others), ``apart`` how far times of day are from each other. ``most`` and
    ``least`` are the scale, in units a minute."""

    key: str
    down: bool
    length: float
    clock: float
    rows: dict[str, float]
    apart: float
    most: float
    least: float


# A phone's column, filled whatever the number of rows; a tablet's width, filled with names and time.
PHONE = Way("phone", True, 1500, 37, {"person": 2.7, "nobody": 1.2, "station": 1.7, "service": 1.0}, 40, 3.6, 1.5)
TABLET = Way("tablet", False, 800, 20, {"person": 40, "nobody": 22, "station": 34, "service": 18}, 58, 10.0, 0.0)
PHONE_WIDTH = 328.0
NAMES = 170.0  # as wide as names may be before their row: longer ones are in lines
NARROW = 16.0  # no row of a phone is less wide: then the drawing is wider
BEFORE = 13.0  # between names and time, for what comes from before
EDGE = 22.0  # behind the end of time, for half a time of day and for what goes on
NEAR = {True: 16.0, False: 48.0}  # a time of day this near to 'now' or 'done' makes room for it
GAP = 3.0


class Drawn:
    """The rows of one sitting being drawn one way. Along is the way that time runs, across the rows. ``letters`` are those
    that stand alone on a bar."""

    def __init__(
        self,
        rows: Sequence[ChartRow],
        span: Span,
        names: Names,
        shorts: dict[str, Short],
        drawn: tuple[Way, str, str],
        finish: int | None = None,
    ) -> None:
        self.names, self.span, self.shorts = names, span, shorts
        self.way, key, label = drawn
        now = names.problem.tick(names.now)
        self.now = now if span[0] <= now <= span[1] else None
        self.finish = finish if finish is not None and span[0] < finish <= span[1] else None
        self.letters = set[str]()
        self.rows = list(self._laid_out(rows))
        self.first = self._room_for_names()
        self.scale = self._scale()
        self.ends = self._along(span[1])
        self.across = max((start + size for _, start, size in self.rows), default=self.way.clock)
        whole, high = self.ends + EDGE, self.across + self.way.clock + (GAP if self.way.down else 0)
        self.drawing = Drawing(key, self.way.key, label, *self._turned(whole, high))
        self._times()
        for row, start, size in self.rows:
            self._row(row, start, size)
        for tick, kind, text in self._marked():
            at = self._along(tick)
            self._line(at, self.way.clock - 5, at, self.across + 3, kind)
            self._clock(at, names.say(text), kind)

    def _marked(self) -> Iterator[tuple[int, str, str]]:
        """The moments that stand in place of a time of day: now, and when all is done; of two that are close, now."""
        if self.now is not None:
            yield self.now, "now", "now"
        if self.finish is not None and (self.now is None or not self._is_near(self.finish, self.now)):
            yield self.finish, "finish", "chart-done"

    def _is_near(self, tick: float, other: float) -> bool:
        return abs(self._along(tick) - self._along(other)) < NEAR[self.way.down]

    def _laid_out(self, rows: Sequence[ChartRow]) -> Iterator[tuple[ChartRow, float, float]]:
        sizes = [self.way.rows["nobody" if row.kind == "person" and not row.bars else row.kind] for row in rows]
        if self.way.down:
            unit = (PHONE_WIDTH - 2 * self.way.clock - GAP * len(rows)) / max(1.0, sum(sizes))
            sizes = [max(NARROW, size * unit) for size in sizes]
        else:
            sizes = [
                max(size, LINE * len(wrapped(row_name(self.names, row), NAMES)))
                for row, size in zip(rows, sizes, strict=True)
            ]
        at = self.way.clock
        for row, size in zip(rows, sizes, strict=True):
            yield row, at, size
            at += size + GAP

    def _scale(self) -> float:
        minutes = max(1.0, (self.span[1] - self.span[0]) / MINUTE)
        length = self.way.length if self.way.down else self.way.length - self.first - EDGE
        return min(self.way.most, max(self.way.least, length / minutes)) / MINUTE

    def _along(self, tick: float) -> float:
        return self.first + (tick - self.span[0]) * self.scale

    def _turned(self, along: float, across: float) -> tuple[float, float]:
        x, y = (across, along) if self.way.down else (along, across)
        return round(x, 1), round(y, 1)

    def _line(self, along: float, across: float, along2: float, across2: float, kind: str) -> None:
        self.drawing.lines.append(Stroke(*self._turned(along, across), *self._turned(along2, across2), kind))

    # times of day

    def _times(self) -> None:
        step = next((step for step in (15, 30, 60, 120) if step * MINUTE * self.scale >= self.way.apart), 240)
        problem, zone = self.names.problem, self.names.zone
        marked = [tick for tick, _, _ in self._marked()]
        moment = _next_full(problem.moment(self.span[0]).astimezone(zone), timedelta(minutes=step))
        while (at := self._along(tick := (moment - problem.start) / TICK)) <= self.ends:
            self._line(at, self.way.clock - 3, at, self.across + 2, "hour")
            if not any(self._is_near(tick, other) for other in marked):
                self._clock(at, time_of_day(moment, zone), "clock")
            moment += timedelta(minutes=step)

    def _clock(self, at: float, text: str, kind: str) -> None:
        """A time of day, on both sides."""
        if self.way.down:
            y = round(at + 4.2, 1)
            self.drawing.words += [Word(0, y, text, kind), Word(self.drawing.width, y, text, kind, "end")]
        else:
            x = round(at, 1)
            self.drawing.words += [Word(x, y, text, kind, "middle") for y in (12.0, round(self.across + 15, 1))]

    # rows and their names

    def _room_for_names(self) -> float:
        named = [(row_name(self.names, row), size) for row, _, size in self.rows]
        if not self.way.down:
            return min(NAMES, max((wide(name) for name, _ in named), default=0.0)) + BEFORE
        turned = [max(map(wide, _turned_name(name, size))) for name, size in named if wide(name) > size]
        return max([LINE, *turned]) + BEFORE

    def _row(self, row: ChartRow, across: float, size: float) -> None:
        self._name(row_name(self.names, row), row.kind, across, size)
        x, y = self._turned(self.first, across)
        width, height = self._turned(self.ends - self.first, size)
        self.drawing.boxes.append(Box(x, y, width, height, f"row {row.kind}"))
        lies = ((self.first, self.ends), (across, size))
        bars = RowBars(row, self.names, self.shorts, lies, self._along, down=self.way.down)
        bars.draw(self.drawing)
        self.letters |= bars.letters

    def _name(self, name: str, kind: str, across: float, size: float) -> None:
        middle = across + size / 2 + 4.5
        if not self.way.down:
            lines = wrapped(name, NAMES)
            for number, line in enumerate(lines):
                y = middle + LINE * (number - (len(lines) - 1) / 2)
                self.drawing.words.append(Word(0, round(y, 1), line, kind))
        elif wide(name) <= size:
            self.drawing.words.append(Word(round(across + size / 2, 1), self.first - BEFORE + 2, name, kind, "middle"))
        else:
            lines = _turned_name(name, size)
            for number, line in enumerate(lines):
                x = middle + LINE * (number - (len(lines) - 1) / 2)
                self.drawing.words.append(Word(round(x, 1), self.first - BEFORE + 2, line, kind, "start", True))


def _turned_name(name: str, size: float) -> list[str]:
    """A name in as many lines as a column has room for, each as short as it can be."""
    many = max(1, int(size / LINE))
    most = max(wide(name) / many, 0.0, *map(wide, name.split()))
    while len(lines := wrapped(name, most)) > many:
        most += 6
    return lines


def _next_full(local: datetime, step: timedelta) -> datetime:
    """The next full step of the day, in UTC: from there on steps are real time."""
    past = timedelta(hours=local.hour, minutes=local.minute, seconds=local.second, microseconds=local.microsecond)
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
