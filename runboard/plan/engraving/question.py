"""What is asked about an engraving, and its answer as plain figures, which can be handed from a child process to a page."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Annotated, Literal

from runboard.plan.outlines.unclear import Unclear
from runboard.run.fold.route import Route, Step
from runboard.shop.book import Book
from runboard.shop.machines import Motion
from runboard.shop.record import Length, Of

# Of a laser whose own values nobody wrote down: mm/s, mm/s², mm. Common practice, no source; its manual and a trial say more.
SPEED, ACCELERATION, SPACING = 300.0, 3000.0, 0.1
TRACE_SPEED = 20.0  # mm/s, the same

Way = Literal["whole", "rows", "pieces", "trace"]


@dataclass(frozen=True)
class Engraving:
    """How long it takes to engrave a jig full of pieces. A drawing of the jig's layout says where the marks are; without one they
    are boxes of ``mark_width`` by ``mark_height``, one on each place. Null speeds are the station's."""

    product: Annotated[str | None, Of(refers="product")] = None
    step: Annotated[str, Of("The operation that engraves.", most=81)] = ""
    station: Annotated[str | None, Of(refers="station")] = None
    columns: Annotated[int, Of("Places side by side.", least=1, most=100)] = 1
    rows: Annotated[int, Of("Places one behind the other.", least=1, most=100)] = 1
    mark_width: Annotated[Length, Of("Of what is engraved on one piece.", least=0.1, most=10_000)] = 60.0
    mark_height: Annotated[Length, Of(least=0.1, most=10_000)] = 20.0
    pitch_x: Annotated[Length, Of("From one place to the next.", least=0.1, most=10_000)] = 100.0
    pitch_y: Annotated[Length, Of("From one row to the next.", least=0.1, most=10_000)] = 50.0
    filled: Annotated[float, Of("The share of its lines that burn something.", least=0.01, kind="share")] = 1.0
    line: Annotated[Length | None, Of("How long the line of one piece is, if traced.", least=0.1)] = None
    jig_fulls: Annotated[int | None, Of("How many in the run.", least=1)] = None
    pieces: Annotated[int | None, Of("How many in the run.", least=1)] = None
    speed: Annotated[float | None, Of("mm/s, sweeping.", least=0.1, most=100_000)] = None
    accel: Annotated[float | None, Of("mm/s².", least=0.1)] = None
    spacing: Annotated[Length | None, Of("Between two lines.", least=0.005, most=10)] = None
    run_up: Annotated[Length | None, Of("Before and behind each line.", most=1000)] = None
    trims: Annotated[bool, Of("The head turns where the last mark of a line ends.")] = False
    rapid: Annotated[float | None, Of("mm/min, with the beam off.", least=1)] = None
    trace_speed: Annotated[float | None, Of("mm/s, along a line; null: a usual one.", least=0.01, most=100_000)] = None
    apart: Annotated[Length, Of("Marks farther apart are of two pieces.", least=0.1, most=1000)] = 10.0
    left_out: Annotated[str, Of("Groups of the drawing that are not engraved.", most=200)] = "cut"


@dataclass(frozen=True)
class HeadStroke:
    """A part of the head's way, in mm; the beam is ``on`` or off."""

    x1: float
    y1: float
    x2: float
    y2: float
    on: bool


@dataclass(frozen=True)
class Method:
    """One way to engrave a jig-full: ``seconds``, how many ``lines`` in how many ``blocks``, how far the head goes with the beam
    ``on`` and ``off`` (mm); ``strokes`` show some of its lines, ``shown`` of them."""

    name: Way
    seconds: float
    lines: int
    blocks: int
    on: float
    off: float
    strokes: Sequence[HeadStroke] = field(default=(), repr=False)
    shown: int = 0


@dataclass(frozen=True)
class EngravingAnswer:
    """``methods`` of one jig-full in the order in which they are compared; ``best`` is the fastest that does the same work.
    ``box`` is where the marks are: left, top, width, height. ``assumed`` are the values that neither question nor station says;
    ``short`` is by how much the run-up is too short for the head to be at speed, in mm. ``without_splitting`` are the seconds
    of 'rows' if each row were swept as a whole."""

    methods: Sequence[Method]
    best: Way
    jig_fulls: int
    places: int
    box: tuple[float, float, float, float]
    speed: float
    accel: float
    spacing: float
    run_up: float
    trace_speed: float | None
    assumed: tuple[str, ...]
    without_splitting: float
    short: float = 0.0
    fits: bool = True
    file: str = ""
    digest: str = ""
    has_fills: bool = True
    unclear: Sequence[Unclear] = ()

    def method(self, name: str) -> Method | None:
        return next((one for one in self.methods if one.name == name), None)

    @property
    def joined(self) -> Sequence[Sequence[Method]]:
        """The methods, those together that sweep the same lines in as many blocks in the same seconds: what is best first, the
        others as they are compared."""
        found: dict[object, list[Method]] = {}
        for one in self.methods:
            same = "trace" if one.name == "trace" else (round(one.seconds), one.lines, one.blocks)
            found.setdefault(same, []).append(one)
        return sorted(found.values(), key=lambda some: all(one.name != self.best for one in some))

    def does_all(self, method: Method) -> bool:
        """Whether it burns all that the drawing has: tracing leaves bare what is filled. Of sizes nobody knows what is filled."""
        return method.name != "trace" or not (self.has_fills and self.file)


def step_of(book: Book, product: str | None, key: str) -> Step | None:
    """The step of a product with that key ('engrave', 'sand:120')."""
    return next((step for step in _steps(book, product) if step.key == key), None)


def lasers_step(book: Book, product: str | None) -> Step | None:
    """The first step of a product at a laser; None where it has none."""
    lasers = {station.key for station in book.stations if station.kind == "laser"}
    return next((step for step in _steps(book, product) if step.operation.station in lasers), None)


def _steps(book: Book, product: str | None) -> Sequence[Step]:
    found = book.product(product or "")
    return Route(found).steps if found else ()


def begin(book: Book, keys: Mapping[str, str]) -> Engraving:
    """The question that a form begins with: the product's step at a laser, its station and jig."""
    product = book.product(keys.get("product", ""))
    key = product.key if product else None
    step = step_of(book, key, keys.get("step", "")) or lasers_step(book, key)
    station = keys.get("station") or (step.operation.station if step else _laser(book))
    jig = next((one for one in book.jigs if step and one.key == step.operation.jig), None)
    usual = Engraving()
    return Engraving(
        product=key,
        step=step.key if step else "",
        station=station if station and book.station(station) else None,
        columns=jig.columns if jig else (step.most_a_load or 1) if step else 1,
        rows=jig.rows if jig else 1,
        pitch_x=jig.pitch_x if jig else usual.pitch_x,
        pitch_y=jig.pitch_y if jig else usual.pitch_y,
    )


def _laser(book: Book) -> str | None:
    return next((station.key for station in book.stations if station.kind == "laser"), None)


def motion_of(book: Book, station: str | None) -> Motion:
    """How a station moves; as usual where none is named."""
    found = book.station(station or "")
    return found.motion if found else Motion()
