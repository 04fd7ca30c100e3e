"""A jig on its bed, to scale and with its measures: plate and places solid, the bed dashed, the corner marks heavy arrows."""

from collections.abc import Sequence
from dataclasses import dataclass

from markupsafe import Markup

from runboard.charts.bars import WIDTH
from runboard.charts.svg import LETTER, Box, Drawing, Stroke, Word

_TOP, _LEFT, _RIGHT, _BELOW, _HIGHEST = 26.0, 26.0, 26.0, 46.0, 420.0
_LINE = 13.0
_MEASURED, _CALLED = 21.0, 14.0  # px below the plate, of its measure; of what the bed is called


@dataclass(frozen=True)
class JigDrawn:
    """Sizes in mm: ``plate`` and ``bed`` along x and y, where the plate's ``corner`` lies on the bed, the ``places`` as (left, top)
    from it, each of ``size``."""

    plate: tuple[float, float]
    places: Sequence[tuple[float, float]]
    size: tuple[float, float]
    bed: tuple[float, float] | None = None
    corner: tuple[float, float] = (0.0, 0.0)


@dataclass(frozen=True)
class JigSaid:
    """What stands at the measures: of the whole plate along x and y, from one place to the next, and of one place; what the
    bed is called."""

    wide: str
    high: str
    pitch_x: str
    pitch_y: str
    place: str
    bed: str = ""


def jig(key: str, label: str, shown: JigDrawn, said: JigSaid, about: str = "") -> Markup:
    """The drawing, its places numbered."""
    left, top = shown.corner if shown.bed else (0.0, 0.0)
    bed = shown.bed or (0.0, 0.0)
    wide, high = max(left + shown.plate[0], bed[0]), max(top + shown.plate[1], bed[1])
    scale = min((WIDTH - _LEFT - _RIGHT) / wide, _HIGHEST / high)
    at = _At(_LEFT + left * scale, _TOP + top * scale, scale)
    below = _BELOW + (_CALLED if shown.bed else 0.0)
    drawing = Drawing(key, "jig-plate", label, WIDTH, round(_TOP + high * scale + below, 1), about=about)
    if shown.bed:
        drawing.boxes.append(Box(_LEFT, _TOP, round(bed[0] * scale, 1), round(bed[1] * scale, 1), "bed"))
        drawing.words.append(_bed_called(said.bed, scale * (top + shown.plate[1]), scale * bed[1]))
    drawing.boxes.append(at.box((0.0, 0.0), shown.plate, "plate"))
    for number, place in enumerate(shown.places, 1):
        box = at.box(place, shown.size, "place")
        drawing.boxes.append(box)
        if box.height >= _LINE and box.width >= len(str(number)) * LETTER + 2:
            x, y = round(box.x + box.width / 2, 1), round(box.y + box.height / 2 + 4.5, 1)
            drawing.words.append(Word(x, y, str(number), "figure", "middle"))
    _corner_marks(drawing, at, shown)
    _measures(drawing, at, shown, said)
    drawing.words.append(Word(0, drawing.height - 4, said.place))
    return drawing.svg


def _bed_called(text: str, plate_ends: float, bed_ends: float) -> Word:
    """Right below the bed, or below the plate's measure where that is there."""
    is_free = bed_ends - plate_ends >= _MEASURED
    return Word(_LEFT, round(_TOP + (bed_ends + 14 if is_free else max(bed_ends, plate_ends) + 36), 1), text)


@dataclass(frozen=True)
class _At:
    """Where a point of the plate is drawn."""

    left: float
    top: float
    scale: float

    def __call__(self, x: float, y: float) -> tuple[float, float]:
        return round(self.left + x * self.scale, 1), round(self.top + y * self.scale, 1)

    def box(self, corner: tuple[float, float], size: tuple[float, float], kind: str) -> Box:
        return Box(*self(*corner), round(size[0] * self.scale, 1), round(size[1] * self.scale, 1), kind)


def _corner_marks(drawing: Drawing, at: _At, shown: JigDrawn) -> None:
    """The corner mark, and its fellow at the other end of the edge."""
    (x, y), (end, _) = at(0, 0), at(shown.plate[0], 0)
    off, barb, arm = 4.0, 6.0, 9.0
    for tip, way in ((round(x + off, 1), 1), (round(end - off, 1), -1)):
        low = round(y + off, 1)
        drawing.lines += [
            Stroke(tip - 1.2 * way, low, tip + barb * way, low, "corner"),
            Stroke(tip, low, tip, low + barb, "corner"),
            Stroke(tip, low, tip + arm * way, low + arm, "corner"),
        ]


def _measures(drawing: Drawing, at: _At, shown: JigDrawn, said: JigSaid) -> None:
    (left, top), (right, low) = at(0, 0), at(*shown.plate)
    _across(drawing, left, right, low + 8, said.wide)
    _along(drawing, right + 8, top, low, said.high)
    xs, ys = sorted({x for x, _ in shown.places}), sorted({y for _, y in shown.places})
    if len(xs) > 1:
        _across(drawing, at(xs[0], 0)[0], at(xs[1], 0)[0], top - 6, said.pitch_x, above=True)
    if len(ys) > 1:
        _along(drawing, left - 6, at(0, ys[0])[1], at(0, ys[1])[1], said.pitch_y, before=True)


def _across(drawing: Drawing, start: float, end: float, y: float, text: str, *, above: bool = False) -> None:
    half = len(text) * LETTER / 2
    middle = max(half, min((start + end) / 2, WIDTH - half))
    drawing.lines += [
        Stroke(start, y, end, y, "measure"),
        Stroke(start, y - 3, start, y + 3, "measure"),
        Stroke(end, y - 3, end, y + 3, "measure"),
    ]
    drawing.words.append(Word(round(middle, 1), round(y - 5 if above else y + 14, 1), text, "measured", "middle"))


def _along(drawing: Drawing, x: float, start: float, end: float, text: str, *, before: bool = False) -> None:
    middle = round(max((start + end) / 2, len(text) * LETTER / 2), 1)
    drawing.lines += [
        Stroke(x, start, x, end, "measure"),
        Stroke(x - 3, start, x + 3, start, "measure"),
        Stroke(x - 3, end, x + 3, end, "measure"),
    ]
    drawing.words.append(Word(round(x - 4 if before else x + 14, 1), middle, text, "measured", "middle", turned=True))
