"""A jig as an SVG file in millimetres, to be cut and marked. What is cut and what is marked are two groups by name; lines that are
marked are dashed where they only show where something lies, so that no colour has to tell them apart."""

from collections.abc import Iterator, Sequence

from runboard.plan.jig.digits import Line, number_lines
from runboard.plan.jig.question import Place, Plate

_MARK, _INSIDE = 8.0, 2.0  # mm, how far a corner mark reaches in, and where it begins
_MOST_HIGH, _LEAST_HIGH = 6.0, 1.5  # mm, of a place's number
_HAIR = 0.1


def svg_of(plate: Plate, numbers: bool = True) -> str:
    """The file. The corner that its mark points at lies at 0 0; all around is room for the beam's half width. A place is cut half the kerf inside its
    line and the plate half of it outside, so that both come out right."""
    half = plate.kerf / 2
    wide, high = plate.wide + plate.kerf, plate.high + plate.kerf
    cut = [
        _box(place.x + half, place.y + half, plate.length - plate.kerf, plate.width - plate.kerf)
        for place in plate.places
    ]
    cut.append(_box(-half, -half, wide, high))
    marked = [_path(line) for line in corner_marks(plate)]
    if numbers:
        marked += [_path(line) for line in numbers_of(plate)]
    look = f'fill="none" stroke="black" stroke-width="{_HAIR}"'
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{_n(wide)}mm" height="{_n(high)}mm" '
        f'viewBox="{_n(-half)} {_n(-half)} {_n(wide)} {_n(high)}">\n<g id="cut" {look}>\n{chr(10).join(cut)}\n</g>\n'
        f'<g id="mark" {look} stroke-dasharray="1 0.5">\n{chr(10).join(marked)}\n</g>\n</svg>\n'
    )


def corner_marks(plate: Plate) -> Iterator[Line]:
    """The corner mark, an arrow at the corner 0 0, and its fellow at the other end of the same edge, by which the jig is turned
    straight. They lie in the margin, off the edge that is cut, where they would not show."""
    arm = min(_MARK, plate.margin, plate.wide / 4, plate.high / 2)
    inside = min(_INSIDE, arm / 4)
    barb = (inside + arm) / 2
    for x, way in ((0, 1), (plate.wide, -1)) if arm > 0 else ():
        yield [(x + way * inside, barb), (x + way * inside, inside), (x + way * barb, inside)]
        yield [(x + way * inside, inside), (x + way * arm, arm)]


def numbers_of(plate: Plate) -> Iterator[Line]:
    """The numbers of the places, each in the strip above its place; none where that is too narrow."""
    strip = min(plate.margin, plate.pitch_y - plate.width if plate.rows > 1 else plate.margin)
    high = min(_MOST_HIGH, strip * 0.6)
    if high < _LEAST_HIGH:
        return
    for place in plate.places:
        x, y = _above(place, strip, high)
        yield from number_lines(place.number, x, y, high)


def _above(place: Place, strip: float, high: float) -> tuple[float, float]:
    return place.x + high, place.y - (strip + high) / 2


def _box(x: float, y: float, wide: float, high: float) -> str:
    return f'<rect x="{_n(x)}" y="{_n(y)}" width="{_n(wide)}" height="{_n(high)}"/>'


def _path(line: Sequence[tuple[float, float]]) -> str:
    return f'<path d="M{"L".join(f"{_n(x)} {_n(y)}" for x, y in line)}"/>'


def _n(mm: float) -> str:
    """A tenth of a thousandth of a millimetre is finer than any machine goes."""
    return f"{mm:.4f}".rstrip("0").rstrip(".") if round(mm, 4) else "0"
