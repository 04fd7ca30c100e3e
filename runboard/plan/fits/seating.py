"""An insert or a magnet in its hole: how wide, how deep, what stays beneath and beside it.

The maker's hole wins. Without one the hole is the part's own size and a clearance by the fit that is wanted: common practice, no source,
to be tried in scrap; what was found good is kept with the part.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Annotated, Literal

from runboard.plan.before.kind import File, Keep, Record, Told
from runboard.plan.fits.drills import bore_to, drills_around, nearest_drill
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.fasteners import Insert
from runboard.shop.keys import key_for
from runboard.shop.record import Length, Of, to_json
from runboard.shop.units import MM_A_INCH, Unit, format_length

Fit = Literal["press", "snug", "loose"]
Glue = Literal["none", "thin", "thick"]
Sits = Literal["tight", "press", "snug", "loose", "slack", "thread"]
# How much wider than the part its hole is, and what a glue line takes on top (both sides), mm. Common practice, no source.
CLEARANCE: Mapping[Fit, float] = {"press": -0.1, "snug": 0.1, "loose": 0.3}
GLUE: Mapping[Glue, float] = {"none": 0.0, "thin": 0.1, "thick": 0.2}
# A threaded insert cuts into the wood: of its outside, where the maker says nothing. Common practice, no source.
INSERT_SHARE = 0.9
# What a hole needs beneath the part: for glue under a magnet, for the bolt's end and dust under an insert; mm. The same.
BENEATH = {"magnet": 0.2, "insert": 1.0}
# How a smooth part sits in a hole so much wider than it, glue line aside: up to which difference, mm. Common practice, no source.
SITS: tuple[tuple[float, Sits], ...] = ((-0.25, "tight"), (0.05, "press"), (0.2, "snug"), (0.6, "loose"))
# What a form begins with: the wood, and what is kept beneath and beside.
BEGINS: Mapping[Unit, tuple[float, float]] = {"mm": (18.0, 3.0), "in": (float(MM_A_INCH * 3 / 4), float(MM_A_INCH / 8))}
_NEAR = 1e-6


@dataclass(frozen=True)
class Drill:
    """A drill that the shop has, mm, and how the part sits in its hole."""

    mm: float
    fit: Sits


@dataclass(frozen=True)
class Seat:
    """A part and the wood that it goes into. What is typed wins over the shop's part."""

    insert: Annotated[str | None, Of(refers="insert")] = None
    what: Literal["magnet", "insert"] = "magnet"
    diameter: Annotated[Length | None, Of(least=0.5)] = None
    length: Annotated[Length | None, Of(least=0.2)] = None
    hole: Annotated[Length | None, Of(least=0.3)] = None
    depth: Annotated[Length | None, Of(least=0.2)] = None
    fit: Fit = "snug"
    glue: Glue = "none"
    sunk: Length = 0.0
    thickness: Annotated[Length, Of(least=0.1)] = 18.0
    margin: Length = 3.0
    edge: Length | None = None
    wall: Length = 3.0


@dataclass(frozen=True)
class Seated:
    """``hole`` is what is wanted, ``by_maker`` whether its maker says so; ``in_mm`` and ``in_64ths`` are the nearest drills, ``drills``
    the shop's on both sides of it, one alone that is the hole. ``is_slack`` where a smooth part would lie loose. ``beneath`` is what stays under the hole, ``beside`` between it and the edge, below nought where it comes out; None where no edge was said."""

    part: Insert
    hole: float
    by_maker: bool
    clearance: float
    in_mm: float
    in_64ths: float
    drills: tuple[Drill, ...]
    is_slack: bool
    depth: float
    depth_by_maker: bool
    beneath: float
    beside: float | None
    is_thick_enough: bool
    has_wall: bool


def answer(book: Book, question: Seat, file: File | None, told: Told) -> Seated:
    """The hole and what is left of the wood. Refused 'insert size needed' without a diameter and a length, 'insert hole too wide' where a
    thread would hold nothing."""
    part = part_of(book, question)
    by_maker = part.hole is not None
    wanted = part.hole if part.hole is not None else _hole(part, question)
    if part.what == "insert" and wanted >= part.diameter - _NEAR:
        raise Refused("insert hole too wide", hole=_said(wanted, book), diameter=_said(part.diameter, book))
    depth = bore_to(question.sunk + (part.depth or part.length + BENEATH[part.what]), book.units)
    beneath = question.thickness - depth
    beside = None if question.edge is None else question.edge - wanted / 2
    return Seated(
        part,
        wanted,
        by_maker,
        wanted - part.diameter,
        nearest_drill(wanted, "mm"),
        nearest_drill(wanted, "in"),
        tuple(Drill(each, _sits(each, part, question)) for each in drills_around(wanted, book.units)),
        _sits(wanted, part, question) == "slack",
        depth,
        part.depth is not None,
        beneath,
        beside,
        beneath >= question.margin - _NEAR,
        beside is None or beside >= question.wall - _NEAR,
    )


def part_of(book: Book, question: Seat) -> Insert:
    """The part that is asked about."""
    known = next((each for each in book.inserts if each.key == question.insert), None)
    diameter = question.diameter or (known.diameter if known else None)
    length = question.length or (known.length if known else None)
    if diameter is None or length is None:
        raise Refused("insert size needed")
    name = known.name if known else f"{format_length(diameter, book.units)} × {format_length(length, book.units)}"
    same = known is not None and (diameter, length) == (known.diameter, known.length)
    return Insert(
        known.key if known and same else "",
        name,
        diameter,
        length,
        known.what if known else question.what,
        question.hole or (known.hole if known and same else None),
        question.depth or (known.depth if known and same else None),
        known.source if known and same else "",
    )


def _hole(part: Insert, question: Seat) -> float:
    if part.what == "insert":
        return max(0.3, part.diameter * INSERT_SHARE)
    return max(0.3, part.diameter + CLEARANCE[question.fit] + GLUE[question.glue])


def _sits(hole: float, part: Insert, question: Seat) -> Sits:
    if part.what == "insert":
        return "thread"
    room = hole - part.diameter - GLUE[question.glue]
    return next((fit for most, fit in SITS if room <= most + _NEAR), "slack")


def _said(mm: float, book: Book) -> str:
    return format_length(round(mm, 2) if book.units == "mm" else mm, book.units)


def begin(book: Book, keys: Mapping[str, str]) -> Seat:
    """The shop's first part, in the product's piece. A smooth part is glued in."""
    product = book.product(keys.get("product", ""))
    thickness, kept = BEGINS[book.units]
    thickness = product.piece.thickness if product and product.piece else thickness
    first = book.inserts[0] if book.inserts else None
    what = first.what if first else Seat.what
    glue: Glue = "thin" if what == "magnet" else "none"
    return Seat(first.key if first else None, what=what, glue=glue, thickness=thickness, margin=kept, wall=kept)


def keeps(book: Book, question: Seat, seated: Seated) -> Sequence[Keep]:
    """The hole, with the part that the shop has or as a part of its own."""
    part = seated.part
    kept = Insert(
        part.key,
        part.name,
        part.diameter,
        part.length,
        part.what,
        seated.hole,
        seated.depth - question.sunk,
        part.source,
    )
    if kept in book.inserts:
        return ()

    def put(record: Record) -> None:
        parts = record["inserts"]
        at = next((at for at, each in enumerate(parts) if each["key"] == kept.key), len(parts))
        key = kept.key if at < len(parts) else key_for(kept.name, {each["key"] for each in parts})
        record["inserts"] = [*parts[:at], {**to_json(kept), "key": key}, *parts[at + 1 :]]

    return (Keep("hole", "hole", put, {"part": part.name}),)
