"""A jig on its bed, to scale and with its measures. Ink only: what is cut is solid, the bed dashed, marks are heavy."""

from collections.abc import Sequence
from dataclasses import dataclass

from markupsafe import Markup

from runboard.charts.svg import LETTER

WIDTH = 328.0
_TOP, _LEFT, _RIGHT, _BOTTOM, _MOST_HIGH = 26.0, 24.0, 24.0, 26.0, 420.0


@dataclass(frozen=True)
class JigDrawn:
    """Sizes in mm: ``plate`` and ``bed`` along x and y, where the plate's ``corner`` lies on the bed, the ``places`` as (left, top)
    from it, each of ``size``, the pitches."""

    plate: tuple[float, float]
    places: Sequence[tuple[float, float]]
    size: tuple[float, float]
    pitch: tuple[float, float]
    bed: tuple[float, float] | None = None
    corner: tuple[float, float] = (0.0, 0.0)


@dataclass(frozen=True)
class JigSaid:
    """What stands at the measures: of the whole plate along x and y, from one place to the next, and of one place."""

    wide: str
    high: str
    pitch_x: str
    pitch_y: str
    place: str


def jig(label: str, shown: JigDrawn, said: JigSaid, about: str = "") -> Markup:
    """The drawing; the first number is at the corner mark."""
    left, top = shown.corner if shown.bed else (0.0, 0.0)
    whole = [max(at + size, bed) for at, size, bed in zip((left, top), shown.plate, shown.bed or (0, 0), strict=True)]
    scale = min((WIDTH - _LEFT - _RIGHT) / whole[0], _MOST_HIGH / whole[1])
    at = _At(_LEFT + left * scale, _TOP + top * scale, scale)
    high = _TOP + whole[1] * scale + _BOTTOM + 18
    bed = _rect(_LEFT, _TOP, shown.bed[0] * scale, shown.bed[1] * scale, dashed=True) if shown.bed else Markup("")
    cut = [_rect(*at(0, 0), shown.plate[0] * scale, shown.plate[1] * scale)]
    cut += [_rect(*at(*place), shown.size[0] * scale, shown.size[1] * scale) for place in shown.places]
    numbers = [_number(at, place, shown.size, number) for number, place in enumerate(shown.places, 1)]
    parts = [bed, *cut, *numbers, _marks(at, shown), *_measures(at, shown, said)]
    place = Markup('<text x="{:g}" y="{:g}" fill="currentColor">{}</text>').format(0, round(high - 4, 1), said.place)
    head = Markup('<svg class="chart jig" viewBox="0 0 {:g} {:g}" role="img" aria-label="{}"><desc>{}</desc>').format(
        WIDTH, round(high, 1), label, about
    )
    return head + Markup("").join(parts) + place + Markup("</svg>")


@dataclass(frozen=True)
class _At:
    """Where a point of the plate is drawn."""

    left: float
    top: float
    scale: float

    def __call__(self, x: float, y: float) -> tuple[float, float]:
        return round(self.left + x * self.scale, 1), round(self.top + y * self.scale, 1)


def _rect(x: float, y: float, wide: float, high: float, *, dashed: bool = False) -> Markup:
    dashes = Markup(' stroke-dasharray="5 4"') if dashed else Markup("")
    return Markup(
        '<rect x="{:g}" y="{:g}" width="{:g}" height="{:g}" fill="none" stroke="currentColor" stroke-width="1.2"{}/>'
    ).format(round(x, 1), round(y, 1), round(wide, 1), round(high, 1), dashes)


def _number(at: _At, place: tuple[float, float], size: tuple[float, float], number: int) -> Markup:
    x, y = at(place[0] + size[0] / 2, place[1] + size[1] / 2)
    room = min(size[0] * at.scale / (len(str(number)) * 0.62), size[1] * at.scale)
    if room < 7:
        return Markup("")
    type_size = min(13.0, room)
    return Markup('<text x="{:g}" y="{:g}" text-anchor="middle" font-size="{:g}" fill="currentColor">{}</text>').format(
        x, round(y + type_size * 0.36, 1), round(type_size, 1), number
    )


def _marks(at: _At, shown: JigDrawn) -> Markup:
    """The corner mark, and its fellow at the other end of the edge."""
    (x, y), (end, _) = at(0, 0), at(shown.plate[0], 0)
    return Markup(
        '<path fill="none" stroke="currentColor" stroke-width="3.5" d="M{0:g} {1:g}v-12M{0:g} {1:g}h-12M{2:g} {1:g}v-12"/>'
    ).format(x, y, end)


def _measures(at: _At, shown: JigDrawn, said: JigSaid) -> list[Markup]:
    (left, top), (right, bottom) = at(0, 0), at(*shown.plate)
    found = [_across(left, right, bottom + 8, said.wide), _along(right + 8, top, bottom, said.high)]
    xs, ys = sorted({x for x, _ in shown.places}), sorted({y for _, y in shown.places})
    if len(xs) > 1:
        found.append(_across(at(xs[0], 0)[0], at(xs[1], 0)[0], top - 6, said.pitch_x, above=True))
    if len(ys) > 1:
        found.append(_along(left - 6, at(0, ys[0])[1], at(0, ys[1])[1], said.pitch_y, before=True))
    return found


def _across(start: float, end: float, y: float, text: str, *, above: bool = False) -> Markup:
    middle = max(len(text) * LETTER / 2, min((start + end) / 2, WIDTH - len(text) * LETTER / 2))
    return _line(f"M{start:g} {y - 3:g}v6M{start:g} {y:g}H{end:g}M{end:g} {y - 3:g}v6") + Markup(
        '<text x="{:g}" y="{:g}" text-anchor="middle" fill="currentColor">{}</text>'
    ).format(round(middle, 1), round(y - 5 if above else y + 14, 1), text)


def _along(x: float, start: float, end: float, text: str, *, before: bool = False) -> Markup:
    middle = round(max((start + end) / 2, len(text) * LETTER / 2), 1)
    at = round(x - 4 if before else x + 14, 1)
    return _line(f"M{x - 3:g} {start:g}h6M{x:g} {start:g}V{end:g}M{x - 3:g} {end:g}h6") + Markup(
        '<text x="{0:g}" y="{1:g}" text-anchor="middle" transform="rotate(-90 {0:g} {1:g})" fill="currentColor">{2}</text>'
    ).format(at, middle, text)


def _line(path: str) -> Markup:
    return Markup('<path fill="none" stroke="currentColor" stroke-width="0.9" d="{}"/>').format(path)
