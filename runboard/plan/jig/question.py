"""What is asked about a jig, and how its places lie."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Annotated, Literal

from runboard.plan.outlines.unclear import Unclear
from runboard.run.fold.route import Route, Step
from runboard.shop.book import Book
from runboard.shop.machines import Jig
from runboard.shop.record import Length, Of

# What a place is larger than its piece, and what a beam burns away. Common practice, no source: a trial cut says more.
CLEARANCE: Mapping[str, float] = {"snug": 0.1, "loose": 0.5}
KERF = 0.15

MOST_PLACES = 1_000


@dataclass(frozen=True)
class Layout:
    """Where the pieces of a tray lie on the bed of a laser. ``columns`` and ``rows`` may be 0: as many as a tray has pieces, else as
    fit. Without a pitch the places lie ``gap`` apart."""

    name: Annotated[str, Of("What it is called.", most=200)] = ""
    product: Annotated[str | None, Of(refers="product")] = None
    step: Annotated[str, Of(most=81)] = ""
    station: Annotated[str | None, Of(refers="station")] = None
    piece_length: Annotated[Length | None, Of("Along x; null: the product's.", least=1, most=10_000)] = None
    piece_width: Annotated[Length | None, Of("Along y; null: the product's.", least=1, most=10_000)] = None
    pieces: Annotated[int | None, Of("A tray.", least=1, most=MOST_PLACES)] = None
    columns: Annotated[int, Of("0: as many as are needed.", most=100)] = 0
    rows: Annotated[int, Of("0: as many as are needed.", most=100)] = 0
    gap: Annotated[Length, Of("From one place to the next.", most=1_000)] = 10.0
    pitch_x: Annotated[
        Length | None, Of("From one place's edge to the next one's same edge.", least=1, most=10_000)
    ] = None
    pitch_y: Annotated[Length | None, Of(least=1, most=10_000)] = None
    fit: Literal["snug", "loose"] = "snug"
    clearance: Annotated[Length | None, Of("A place is larger than its piece by this.", most=10)] = None
    kerf: Annotated[Length, Of("What the beam burns away.", most=5)] = KERF
    margin: Annotated[Length, Of("Around the places, to the edge of the jig.", most=1_000)] = 10.0
    corner_x: Annotated[Length | None, Of("Of the corner mark, on the machine.", most=100_000)] = None
    corner_y: Annotated[Length | None, Of(most=100_000)] = None
    numbers: Annotated[bool, Of("The places are numbered on the jig.")] = True


@dataclass(frozen=True)
class Place:
    """One place: its number, and where its nearest corner lies from the corner mark."""

    number: int
    x: float
    y: float


@dataclass(frozen=True)
class Plate:
    """How a jig comes out: places of ``length`` by ``width`` (a piece and its clearance), so far from one to the next, on a plate
    with a ``margin`` around them. ``kerf`` is what the beam takes: it is cut half of it inside the line."""

    columns: int
    rows: int
    length: float
    width: float
    pitch_x: float
    pitch_y: float
    margin: float
    kerf: float

    @property
    def wide(self) -> float:
        """Of the whole plate, along x."""
        return 2 * self.margin + (self.columns - 1) * self.pitch_x + self.length

    @property
    def high(self) -> float:
        """Of the whole plate, along y."""
        return 2 * self.margin + (self.rows - 1) * self.pitch_y + self.width

    @property
    def places(self) -> Sequence[Place]:
        """In the order in which one reads."""
        return [
            Place(
                row * self.columns + column + 1, self.margin + column * self.pitch_x, self.margin + row * self.pitch_y
            )
            for row in range(self.rows)
            for column in range(self.columns)
        ]

    def place_at(self, x: float, y: float) -> tuple[float, float]:
        """The middle of a place whose corner is there."""
        return x + self.length / 2, y + self.width / 2


@dataclass(frozen=True)
class JigAnswer:
    """``plate`` is what was asked for; ``bed`` what the station reaches, None where that is not known, ``room`` what of it lies
    behind the corner mark; ``fits`` whether it does, and ``fitting`` how many columns and rows would. ``wanted`` are the pieces that it
    was to take. ``piece`` is length and width."""

    plate: Plate
    piece: tuple[float, float]
    clearance: float
    bed: tuple[float, float] | None
    room: tuple[float, float] | None
    fits: bool
    fitting: tuple[int, int] | None
    wanted: int | None
    corner: tuple[float, float] | None
    numbers: bool = True
    from_outline: bool = False
    unclear: Sequence[Unclear] = ()


def plate_of(jig: Jig) -> Plate:
    """A kept jig as it comes out."""
    length, width = jig.piece_length + jig.clearance, jig.piece_width + jig.clearance
    return Plate(jig.columns, jig.rows, length, width, jig.pitch_x, jig.pitch_y, jig.margin, jig.kerf)


def corner_of(jig: Jig) -> tuple[float, float] | None:
    """Where a kept jig's corner mark sits; None where nobody wrote it down."""
    return None if jig.corner_x is None or jig.corner_y is None else (jig.corner_x, jig.corner_y)


def begin(book: Book, keys: Mapping[str, str]) -> Layout:
    """The question that a form begins with: a kept jig as it is, else the product's piece, tray and laser."""
    kept = next((jig for jig in book.jigs if jig.key == keys.get("jig")), None)
    if kept is not None:
        return _of_kept(kept)
    product = book.product(keys.get("product", ""))
    lasers = [station.key for station in book.stations if station.kind == "laser"]
    steps = Route(product).steps if product else ()
    step = _named(steps, keys.get("step", "")) or next((one for one in steps if one.operation.station in lasers), None)
    station = keys.get("station") or (step.operation.station if step else next(iter(lasers), ""))
    pieces = product.pieces_a_tray if product else None
    layout = Layout(
        product=product.key if product else None,
        step=step.key if step else "",
        station=station if book.station(station) else None,
        pieces=(step.most_a_load if step and step.pass_.size == "jig" else None) or pieces,
    )
    now = kept_for(book, step)
    return _as_now(layout, now) if now else layout


def _as_now(layout: Layout, jig: Jig) -> Layout:
    """With what the jig that a step has now says of the next one: what lies between its places, and how the beam cuts."""
    plate = plate_of(jig)
    apart = plate.pitch_y - plate.width if jig.rows > 1 else plate.pitch_x - plate.length
    gap = round(max(0.0, apart), 3) if jig.rows * jig.columns > 1 else layout.gap
    return replace(layout, gap=gap, clearance=jig.clearance, kerf=jig.kerf, margin=jig.margin)


def kept_for(book: Book, step: Step | None) -> Jig | None:
    """The jig that a step's pieces lie in as the book is now."""
    return next((jig for jig in book.jigs if step and jig.key == step.operation.jig), None)


def step_meant(book: Book, question: Layout) -> Step | None:
    """The step that is named, else the product's first on that machine."""
    product = book.product(question.product or "")
    steps = Route(product).steps if product else ()
    here = (step for step in steps if question.station and step.operation.station == question.station)
    return _named(steps, question.step) or next(here, None)


def _named(steps: Sequence[Step], key: str) -> Step | None:
    return next((step for step in steps if step.key == key), None)


def _of_kept(jig: Jig) -> Layout:
    return Layout(
        name=jig.name, station=jig.station, piece_length=jig.piece_length, piece_width=jig.piece_width, columns=jig.columns,
        rows=jig.rows, pitch_x=jig.pitch_x, pitch_y=jig.pitch_y, clearance=jig.clearance, kerf=jig.kerf, margin=jig.margin,
        corner_x=jig.corner_x, corner_y=jig.corner_y,
    )  # fmt: skip
