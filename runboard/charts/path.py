"""A tool's path from above, to scale: cuts solid, travel dashed, places numbered in their order."""

from collections.abc import Sequence
from dataclasses import dataclass

from markupsafe import Markup

from runboard.charts.svg import Box, Drawing, Stroke, Trace, Word

WIDTH, HIGHEST = 360.0, 420.0
_BELOW, _ABOVE, _RIGHT = 24.0, 16.0, 24.0
# How wide a letter is, of an axis ('mm' is wide) and of a place's number; how high one is.
_LETTER, _DIGIT, _HIGH = 8.2, 7.4, 12.0
# Numbers are so far apart, on an average, that they cover no cuts.
_APART = 48.0

Point = tuple[float, float]
Line = Sequence[Point]


@dataclass(frozen=True)
class Path:
    """All in mm, y upwards. ``box`` is (x least, y least, x greatest, y greatest) of what is to be seen; ``places`` are numbered from
    1; ``frames`` are boxes drawn thin, such as the stock; ``x_marks`` and ``y_marks`` are where an axis has a line, and what is
    said there."""

    box: tuple[float, float, float, float]
    cuts: Sequence[Line] = ()
    travel: Sequence[Line] = ()
    places: Sequence[Point] = ()
    frames: Sequence[tuple[float, float, float, float]] = ()
    x_marks: Sequence[tuple[float, str]] = ()
    y_marks: Sequence[tuple[float, str]] = ()


def path(key: str, label: str, shown: Path, about: str = "") -> Markup:
    """The drawing. A number that would lie on one before is left out, so that those that are there can be read."""
    scale = _Scale(shown)
    drawing = Drawing(key, "path", label, WIDTH, scale.height, about=about)
    _axes(drawing, shown, scale)
    for x_low, y_low, x_high, y_high in shown.frames:
        (left, top), (right, bottom) = scale.at((x_low, y_high)), scale.at((x_high, y_low))
        drawing.boxes.append(Box(left, top, round(right - left, 1), round(bottom - top, 1), "frame"))
    _traces(drawing, shown, scale)
    drawing.words += _numbers(shown, scale, drawing.words)
    return drawing.svg


def _traces(drawing: Drawing, shown: Path, scale: "_Scale") -> None:
    """What is no larger than a pen's point is a hole, and a dot."""
    cuts = [[scale.at(point) for point in line] for line in shown.cuts]
    holes = [line[:1] for line in cuts if _is_dot(line)]
    lines = [line for line in cuts if not _is_dot(line)]
    ways = [[scale.at(point) for point in line] for line in shown.travel]
    for traced, kind in ((ways, "travel"), (lines, "cut"), (holes, "hole")):
        if traced:
            drawing.traces.append(Trace(traced, kind))


def _is_dot(line: Sequence[Point]) -> bool:
    return all(abs(x - line[0][0]) <= 1 and abs(y - line[0][1]) <= 1 for x, y in line)


class _Scale:
    """Where on the paper a point is: as large as the width allows, and the height."""

    def __init__(self, shown: Path) -> None:
        x_low, y_low, x_high, y_high = shown.box
        wide, high = x_high - x_low, y_high - y_low
        self.left = 12 + max((len(text) for _, text in shown.y_marks), default=0) * _LETTER
        room = WIDTH - self.left - _RIGHT
        self.unit = min(room / max(wide, 1e-9), (HIGHEST - _BELOW - _ABOVE) / max(high, 1e-9))
        if wide <= 0 and high <= 0:
            self.unit = 1.0
        self.left += (room - wide * self.unit) / 2
        self.height = round(high * self.unit + _BELOW + _ABOVE, 1)
        self._low = (x_low, y_low)

    def at(self, point: Point) -> Point:
        x, y = point
        return (
            round(self.left + (x - self._low[0]) * self.unit, 1),
            round(self.height - _BELOW - (y - self._low[1]) * self.unit, 1),
        )


def _axes(drawing: Drawing, shown: Path, scale: "_Scale") -> None:
    """A line at each mark, and what is said at every one, every second, fifth or tenth of them, as there is room."""
    x_low, y_low, x_high, y_high = shown.box
    (left, bottom), (right, top) = scale.at((x_low, y_low)), scale.at((x_high, y_high))
    across = max((len(text) for _, text in shown.x_marks), default=0) * _LETTER + 8
    for mm, text in _spread(shown.x_marks, scale.unit, across):
        x, _ = scale.at((mm, y_low))
        drawing.lines.append(Stroke(x, top, x, bottom + 4, "hour"))
        if text and x + len(text) * _LETTER / 2 <= WIDTH:
            drawing.words.append(Word(x, round(bottom + 18, 1), text, "clock", "middle"))
    for mm, text in _spread(shown.y_marks, scale.unit, _HIGH + 4):
        _, y = scale.at((x_low, mm))
        drawing.lines.append(Stroke(left - 4, y, right, y, "hour"))
        if text:
            drawing.words.append(Word(round(left - 7, 1), round(y + 4.5, 1), text, "clock", "end"))


def _spread(marks: Sequence[tuple[float, str]], unit: float, room: float) -> list[tuple[float, str]]:
    """The marks, with words at so many that they have room."""
    if len(marks) < 2:
        return [*marks]
    apart = (marks[1][0] - marks[0][0]) * unit
    every = next((many for many in (1, 2, 5, 10) if many * apart >= room), 20)
    numbers = [round(mm / (marks[1][0] - marks[0][0])) for mm, _ in marks]
    return [(mm, text if number % every == 0 else "") for number, (mm, text) in zip(numbers, marks, strict=True)]


def _numbers(shown: Path, scale: "_Scale", there: Sequence[Word]) -> list[Word]:
    """The first, the last and every so manieth between, each beside its place on the side where it lies on no other; left out where
    there is none."""
    found: list[Word] = []
    taken = [_taken(word) for word in there]
    numbers, every = range(1, len(shown.places) + 1), every_number(shown)
    for number in dict.fromkeys([*numbers[:1], *numbers[-1:], *numbers[every - 1 :: every]]):
        half = len(str(number)) * _DIGIT / 2
        for x, y in _beside(scale.at(shown.places[number - 1]), half):
            is_in = half <= x <= WIDTH - half and _HIGH <= y <= scale.height
            if is_in and all(abs(x - one) >= half + wide or abs(y - other) >= _HIGH for one, other, wide in taken):
                taken.append((x, y, half))
                found.append(Word(round(x, 1), round(y, 1), str(number), "place", "middle"))
                break
    return found


def every_number(shown: Path) -> int:
    """Every how manieth place has its number: so that what lies between them is to be seen too."""
    scale, many = _Scale(shown), len(shown.places)
    if many < 2:
        return 1
    x_low, y_low, x_high, y_high = shown.box
    room = max(x_high - x_low, 1 / scale.unit) * max(y_high - y_low, 1 / scale.unit) * scale.unit**2
    most = max(2, int(room / _APART**2), int((x_high - x_low + y_high - y_low) * scale.unit / (2 * _APART)))
    steps = (factor * 10**power for power in range(5) for factor in (1, 2, 5))
    return next((step for step in steps if many <= most * step), many)


def _taken(word: Word) -> tuple[float, float, float]:
    """The middle of a word on an axis, where it stands, and half its width."""
    half = len(word.text) * _LETTER / 2
    return word.x - (half if word.anchor == "end" else 0), word.y, half


def _beside(place: Point, half: float) -> tuple[Point, ...]:
    x, y = place
    right, left, above, below = x + half + 3, x - half - 3, y - 4, y + _HIGH + 2
    return (right, above), (left, above), (right, below), (left, below)


def marks(span: float, unit: float, most: int) -> float:
    """How far apart (mm) an axis of this length has its lines: 1, 2, 5, 10, … or a half, a quarter, an eighth of ``unit``, so that there are
    no more than ``most``."""
    steps = [unit * part for part in ((0.125, 0.25, 0.5) if unit > 1 else (0.01, 0.02, 0.05, 0.1, 0.2, 0.5))]
    steps += [unit * factor * 10.0**power for power in range(7) for factor in (1, 2, 5)]
    return next((step for step in steps if span <= step * most), steps[-1])
