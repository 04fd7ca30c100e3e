"""A drawing of boxes, lines and words, and the SVG that it is: every chart of the pages is one of these, in one style
(``static/charts.css``). Work is filled, watching hatched, what nobody measured dotted, waiting empty.

The file of a review stands alone, so nothing here needs a page around it.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field

from markupsafe import Markup, escape

# What is filled with a pattern: its kind, and the tile of it.
_TILES = {
    "watch": Markup(
        '<pattern id="watch-{}" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">'
        '<rect class="hatch-ground" width="6" height="6"/><rect class="hatch" width="2" height="6"/></pattern>'
    ),
    "unknown": Markup(
        '<pattern id="unknown-{}" width="5" height="5" patternUnits="userSpaceOnUse">'
        '<rect class="hatch-ground" width="5" height="5"/><circle class="hatch" cx="2.5" cy="2.5" r="1"/></pattern>'
    ),
}


@dataclass(frozen=True)
class Box:
    """``kind`` is its class; what is watched or unknown is filled with that pattern, the same where it was planned."""

    x: float
    y: float
    width: float
    height: float
    kind: str


@dataclass(frozen=True)
class Stroke:
    x1: float
    y1: float
    x2: float
    y2: float
    kind: str


@dataclass(frozen=True)
class Word:
    """``turned`` words run upwards; ``anchor`` is start, middle or end."""

    x: float
    y: float
    text: str
    kind: str = ""
    anchor: str = "start"
    turned: bool = False


@dataclass(frozen=True)
class Trace:
    """Lines of points, in one go."""

    lines: Sequence[Sequence[tuple[float, float]]]
    kind: str


@dataclass
class Drawing:
    """``key`` sets its hatching apart from that of others on the page, ``way`` is its class; ``marks`` are the points of
    triangles. ``about`` says in a sentence what is to be seen, beside the ``label``."""

    key: str
    way: str
    label: str
    width: float = 0
    height: float = 0
    boxes: list[Box] = field(default_factory=list)
    lines: list[Stroke] = field(default_factory=list)
    marks: list[str] = field(default_factory=list)
    traces: list[Trace] = field(default_factory=list)
    words: list[Word] = field(default_factory=list)
    about: str = ""

    @property
    def svg(self) -> Markup:
        """Itself, for a page: hours lie below, then boxes, triangles, traces, other lines, words."""
        hours = [_line(line) for line in self.lines if line.kind == "hour"]
        others = [_line(line) for line in self.lines if line.kind != "hour"]
        marks = [Markup('<polygon class="walk" points="{}"/>').format(points) for points in self.marks]
        parts = [
            *self._tiles(),
            *hours,
            *map(self._box, self.boxes),
            *marks,
            *map(_trace, self.traces),
            *others,
            *map(_word, self.words),
        ]
        return self._head() + Markup("\n").join(parts) + Markup("</svg>")

    def _head(self) -> Markup:
        head = Markup('<svg class="chart {}" viewBox="0 0 {:g} {:g}" role="img" aria-label="{}"').format(
            self.way, self.width, self.height, self.label
        )
        if not self.about:
            return head + Markup(">")
        return head + Markup(' aria-describedby="about-{0}"><desc id="about-{0}">{1}</desc>').format(
            self.key, self.about
        )

    def _tiles(self) -> list[Markup]:
        used = [tile.format(self.key) for kind, tile in _TILES.items() if any(_tile(box) == kind for box in self.boxes)]
        return [Markup("<defs>"), *used, Markup("</defs>")] if used else []

    def _box(self, box: Box) -> Markup:
        kind = _tile(box)
        fill = Markup(' fill="url(#{}-{})"').format(kind, self.key) if kind else Markup("")
        return Markup('<rect class="{}" x="{:g}" y="{:g}" width="{:g}" height="{:g}"{}/>').format(
            box.kind, box.x, box.y, box.width, box.height, fill
        )


def _tile(box: Box) -> str:
    return next((kind for kind in _TILES if box.kind.split(" ")[0].removeprefix("planned-") == kind), "")


def _trace(trace: Trace) -> Markup:
    """Of a line of one point a stroke of no length, which is a dot by its round end."""
    data = "".join(
        "M" + "L".join(f"{x:g} {y:g}" for x, y in (line if len(line) > 1 else [*line, *line])) for line in trace.lines
    )
    return Markup('<path class="{}" d="{}"/>').format(trace.kind, data)


def _line(line: Stroke) -> Markup:
    return Markup('<line class="{}" x1="{:g}" y1="{:g}" x2="{:g}" y2="{:g}"/>').format(
        line.kind, line.x1, line.y1, line.x2, line.y2
    )


def _word(word: Word) -> Markup:
    kind = Markup(' class="{}"').format(word.kind) if word.kind else Markup("")
    anchor = Markup("") if word.anchor == "start" else Markup(' text-anchor="{}"').format(word.anchor)
    turned = Markup(' transform="rotate(-90 {:g} {:g})"').format(word.x, word.y) if word.turned else Markup("")
    return Markup('<text{} x="{:g}" y="{:g}"{}{}>{}</text>').format(
        kind, word.x, word.y, anchor, turned, escape(word.text)
    )


def captioned(drawing: Markup, label: str, about: str) -> Markup:
    """A drawing with what is to be seen on it beneath."""
    return Markup('<figure class="drawing">{}<figcaption><b>{}.</b> {}</figcaption></figure>').format(
        drawing, label, about
    )


# How wide a letter of a chart's type (13 px) is, on the wide side.
LETTER = 7.4


def fitting(said: tuple[str, ...] | list[str], wide: float) -> str:
    """The first of these that is no wider, '' where none is."""
    return next((text for text in said if len(text) * LETTER + 4 <= wide), "")


def cut(text: str, most: float) -> str:
    """A text that is no wider: cut short where it was."""
    letters = int(most / LETTER)
    return text if len(text) <= letters else f"{text[: letters - 1].rstrip()}…"
