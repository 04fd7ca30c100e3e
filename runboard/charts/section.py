"""A screw in its stack, or a part in its hole, cut through, to scale: wood hatched, metal solid, what stays free dashed. Ink only."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from markupsafe import Markup, escape

# Of the drawing: how wide, where the wood stands, how high the stack at most, how wide the screw's head at most; pixels.
WIDE, LEFT, RIGHT, HIGH, HEAD_WIDE = 360.0, 88.0, 196.0, 300.0, 84.0
_TOP, _LINE, _LEAD = 10.0, 17.0, 14.0
_HEAD = 2.0  # of the diameter, how wide a head is
_POINT = 1.2  # and how long the point


@dataclass(frozen=True)
class Layer:
    """A layer of the stack, from the top: ``kind`` is 'metal', 'fastened' or 'wood'; ``label`` stands beside it."""

    thickness: float
    kind: str
    label: str


@dataclass(frozen=True)
class Shape:
    """A screw's sizes. ``head`` is how high its head is: within the wood where it is countersunk, else above it."""

    length: float
    diameter: float
    root: float
    thread: float
    pitch: float
    is_countersunk: bool
    head: float


@dataclass(frozen=True)
class Mark:
    """A depth below the first layer's top, with its words; ``is_line`` where a dashed line runs across there."""

    depth: float
    label: str
    is_line: bool = False


@dataclass(frozen=True)
class _Place:
    """Where the drawing's millimetres lie."""

    scale: float
    top: float

    def y(self, depth: float) -> float:
        return self.top + depth * self.scale

    @property
    def middle(self) -> float:
        return (LEFT + RIGHT) / 2


def section(
    layers: Sequence[Layer], shape: Shape, sunk: float, hole: tuple[float, float], marks: Iterable[Mark], label: str
) -> Markup:
    """The drawing. Depths are in mm below the top of the first layer: the head sits at ``sunk``; ``hole`` is how wide the hole for the
    shank is, and to which depth, nought where there is none."""
    layers = [layer for layer in layers if layer.thickness > 0]
    stack = sum(layer.thickness for layer in layers)
    holes = ((sunk, _HEAD * shape.diameter), (hole[1], hole[0]))  # for a plug, and for the shank
    above = max(0.0, (0.0 if shape.is_countersunk else shape.head) - sunk)
    lowest = max(stack, sunk + max(shape.length, shape.head))
    deep = lowest + above
    scale = min(HIGH / deep, HEAD_WIDE / (_HEAD * shape.diameter))
    place = _Place(scale, _TOP + above * scale)
    parts = [
        *_stack(layers, place, holes),
        _screw(shape, sunk, place),
        *_marks(marks, place),
    ]
    return _drawing(parts, place, lowest, marks, label)


def seat_section(
    wood: Layer, part: tuple[float, float], sunk: float, hole: tuple[float, float], marks: Sequence[Mark], label: str
) -> Markup:
    """A part in its hole: ``part`` and ``hole`` are how wide and how deep, mm, from the wood's face; the part's face lies at ``sunk``."""
    wide, deep = max(part[0], hole[0]), max(wood.thickness, hole[1], sunk + part[1])
    place = _Place(min(HIGH / deep, HEAD_WIDE / wide), _TOP)
    parts = [
        *_stack([wood], place, [(hole[1], hole[0])]),
        *_sides(hole, place),
        _box(part, sunk, place),
        *_marks(marks, place),
    ]
    return _drawing(parts, place, deep, marks, label)


def _drawing(parts: Sequence[Markup], place: _Place, deep: float, marks: Iterable[Mark], label: str) -> Markup:
    lowest = [at for at, _ in _apart([(place.y(mark.depth), mark.label) for mark in _sorted(marks)])]
    height = max([place.y(deep), *lowest]) + _TOP
    head = Markup(
        '<svg class="chart section" viewBox="0 0 {:g} {:.0f}" role="img" aria-label="{}" fill="none" stroke="currentColor">'
    ).format(WIDE, height, label)
    return head + _PATTERNS + Markup("\n").join(parts) + Markup("</svg>")


def _sides(hole: tuple[float, float], place: _Place) -> Iterator[Markup]:
    """The walls and the bottom of a hole."""
    half, bottom = hole[0] / 2 * place.scale, place.y(hole[1])
    yield _line(place.middle - half, place.y(0), place.middle - half, bottom)
    yield _line(place.middle + half, place.y(0), place.middle + half, bottom)
    yield _line(place.middle - half, bottom, place.middle + half, bottom)


def _box(part: tuple[float, float], sunk: float, place: _Place) -> Markup:
    return Markup(
        '<rect x="{:.1f}" y="{:.1f}" width="{:.1f}" height="{:.1f}" fill="currentColor" stroke="none"/>'
    ).format(place.middle - part[0] / 2 * place.scale, place.y(sunk), part[0] * place.scale, part[1] * place.scale)


_TILE = Markup(
    '<pattern id="section-{0}" width="{1}" height="{1}" patternUnits="userSpaceOnUse" patternTransform="rotate({2})">'
    '<path d="M0 0V{1}" stroke="currentColor" stroke-width="1.2"/></pattern>'
)
_PATTERNS = (
    Markup("<defs>")
    + _TILE.format("wood", 9, 45)
    + _TILE.format("fastened", 9, -45)
    + _TILE.format("metal", 3, 45)
    + Markup("</defs>")
)


def _stack(layers: Sequence[Layer], place: _Place, holes: Sequence[tuple[float, float]]) -> Iterator[Markup]:
    """Each layer hatched, without the holes, and its label to the left."""
    depth, texts = 0.0, []
    for layer in layers:
        ends = depth + layer.thickness
        upper = depth
        for to, wide in (*holes, (ends, 0.0)):
            lower = min(to, ends)
            if lower > upper:
                yield from _hatched(layer.kind, place, upper, lower, wide)
                upper = lower
        yield _line(LEFT, place.y(depth), RIGHT, place.y(depth))
        texts.append((place.y((depth + ends) / 2), layer.label))
        depth = ends
    yield _line(LEFT, place.y(depth), RIGHT, place.y(depth))
    yield from (_text(LEFT - 8, at + 4, label, "end") for at, label in _apart(texts))


def _hatched(kind: str, place: _Place, upper: float, lower: float, wide: float) -> Iterator[Markup]:
    half = wide / 2 * place.scale
    sides = ((LEFT, place.middle - half), (place.middle + half, RIGHT)) if wide else ((LEFT, RIGHT),)
    for left, right in sides:
        yield Markup(
            '<rect x="{:.1f}" y="{:.1f}" width="{:.1f}" height="{:.1f}" fill="url(#section-{})" stroke="none"/>'
        ).format(left, place.y(upper), right - left, (lower - upper) * place.scale, kind)


def _screw(shape: Shape, sunk: float, place: _Place) -> Markup:
    """Its outline on one side of its axis and back on the other, solid."""
    side = list(_side(shape, sunk))
    outline = [(place.middle + r * place.scale, place.y(z)) for r, z in side]
    outline += [(place.middle - r * place.scale, place.y(z)) for r, z in reversed(side)]
    points = " ".join(f"{x:.1f},{y:.1f}" for x, y in outline)
    return Markup('<polygon points="{}" fill="currentColor" stroke="none"/>').format(points)


def _side(shape: Shape, sunk: float) -> Iterator[tuple[float, float]]:
    """(radius, depth) from the head to the point."""
    radius, root, wide = shape.diameter / 2, shape.root / 2, _HEAD * shape.diameter / 2
    if shape.is_countersunk:
        yield wide, sunk
        yield radius, sunk + shape.head
    else:
        for share in (1.0, 0.7, 0.35, 0.0):  # a dome
            yield wide * (1 - share**2) ** 0.5, sunk - shape.head * share
        yield radius, sunk
    point = sunk + shape.length
    begins = max(point - shape.thread, sunk + (shape.head if shape.is_countersunk else 0))
    yield radius, begins
    step, tip = shape.pitch / 2, min(_POINT * shape.diameter, shape.thread)
    turns = max(1, int((point - begins) / step))
    for turn in range(1, turns):
        depth = begins + turn * step
        taper = min(1.0, (point - depth) / tip)
        yield (root if turn % 2 else radius) * taper, depth
    yield 0.0, point


def _marks(marks: Iterable[Mark], place: _Place) -> Iterator[Markup]:
    """Each depth with a tick at the wood's right, and its words, none over another."""
    found = _sorted(marks)
    texts = _apart([(place.y(mark.depth), mark.label) for mark in found])
    for mark, (at, label) in zip(found, texts, strict=True):
        y = place.y(mark.depth)
        if mark.is_line:
            yield _line(LEFT, y, RIGHT, y, dashed=True)
        yield Markup('<path d="M{:g} {:.1f}h4L{:g} {:.1f}"/>').format(RIGHT, y, RIGHT + _LEAD, at)
        yield _text(RIGHT + _LEAD + 4, at + 4, label, "start")


def _sorted(marks: Iterable[Mark]) -> list[Mark]:
    """Those that lie in the stack or below it, from the top."""
    return sorted((mark for mark in marks if mark.depth >= 0), key=lambda mark: mark.depth)


def _apart(texts: Sequence[tuple[float, str]]) -> list[tuple[float, str]]:
    """The same, moved down where one would stand over the one before."""
    found: list[tuple[float, str]] = []
    for at, label in texts:
        found.append((max(at, found[-1][0] + _LINE) if found else at, label))
    return found


def _line(x1: float, y1: float, x2: float, y2: float, dashed: bool = False) -> Markup:
    dashes = Markup(' stroke-dasharray="5 4"') if dashed else Markup("")
    return Markup('<path d="M{:g} {:.1f}L{:g} {:.1f}" stroke-width="1.5"{}/>').format(x1, y1, x2, y2, dashes)


def _text(x: float, y: float, text: str, anchor: str) -> Markup:
    return Markup('<text x="{:g}" y="{:.1f}" text-anchor="{}" fill="currentColor" stroke="none">{}</text>').format(
        x, y, anchor, escape(text)
    )
