"""A screw in its stack: does its point stay inside, how much of its thread holds, which hole it wants and how deep.

Depths are measured from the surface that the drill enters. Published: pilot in hardwood to the screw's full depth, in softwood to three
quarters of its thread, the shank's hole as wide as the shank (Audel, Carpenters and Builders Math); two thirds of a screw in what holds
it, half in thick wood (makers' advice). Common practice, no source: 3 mm between point or drill and the far face.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Annotated, Literal

from runboard.plan.before.kind import File, Told
from runboard.plan.fits.drills import drill_not_below, set_to
from runboard.plan.fits.screws import Pilot, Sizes, allowable, pilot_for, sizes_of, ultimate
from runboard.plan.fits.woods import Wood, wood_named
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.common_screws import usual_lengths
from runboard.shop.fasteners import Fastening, Screw
from runboard.shop.product import Operation
from runboard.shop.record import Length, Of
from runboard.shop.units import MM_A_INCH, Unit, format_length

SOFT_DEPTH = 3 / 4
TWO_THIRDS, HALF = 2 / 3, 1 / 2
# Less thread than this many diameters holds little. Common practice, no source.
LEAST_DIAMETERS = 3
# What is kept before the far face where nobody says otherwise. Common practice, no source.
MARGIN: Mapping[Unit, float] = {"mm": 3.0, "in": float(MM_A_INCH / 8)}
# What a form begins with as the wood that holds it.
INTO: Mapping[Unit, float] = {"mm": 18.0, "in": float(MM_A_INCH * 3 / 4)}
Outcome = Literal["through", "near", "inside", "short"]
_NEAR = 1e-6


@dataclass(frozen=True)
class Drive:
    """A screw and what it is driven through and into. A size that is typed wins over the shop's screw; hard or soft and a specific
    gravity over what is known of the wood."""

    screw: Annotated[str | None, Of(refers="screw")] = None
    gauge: Annotated[int | None, Of(most=24)] = None
    diameter: Annotated[Length | None, Of(least=0.5)] = None
    length: Annotated[Length | None, Of(least=1)] = None
    head: Literal["countersunk", "round"] = "countersunk"
    washer: Length = 0.0
    sunk: Length = 0.0
    through: Length = 0.0
    into: Annotated[Length, Of(least=0.1)] = 18.0
    margin: Length = 3.0
    wood: Annotated[str, Of(most=200)] = ""
    hardness: Literal["wood", "hard", "soft"] = "wood"
    gravity: Annotated[float | None, Of(least=0.05, most=1.5)] = None
    grain: Literal["side", "end"] = "side"
    product: Annotated[str | None, Of(refers="product")] = None
    step: Annotated[str, Of(most=40)] = ""


@dataclass(frozen=True)
class Driven:
    """``left`` is what stays between point and far face, below nought where it comes through; 'short' is one that does not reach what
    should hold it. ``safe`` is the longest usual length
    that leaves the margin. ``held`` mm of thread are in what holds, about so many ``threads``; ``share`` of the screw's length is in
    it. ``drill`` is the shop's for the pilot; ``stop`` is how deep its tip goes from the surface, ``below`` from the surface of what
    holds. ``clear`` is the hole for the shank, to ``clear_to``. Forces in newtons; None where the wood is not known, or in end grain."""

    screw: Sizes
    wood: Wood | None
    is_hard: bool
    hardness_from: Literal["said", "wood", "nobody"]
    gravity: float | None
    outcome: Outcome
    left: float
    safe: float | None
    held: float
    threads: float
    share: float
    pilot: Pilot
    drill: float
    stop: float
    below: float
    clear: float | None
    clear_to: float
    allowable: float | None
    ultimate: float | None

    @property
    def fits(self) -> bool:
        """Whether it can be driven there at all."""
        return self.outcome in ("near", "inside")

    @property
    def holds_little(self) -> bool:
        """Whether less of it holds than even thick wood asks for."""
        return self.share < HALF - _NEAR or self.held < LEAST_DIAMETERS * self.screw.diameter - _NEAR


def answer(book: Book, question: Drive, file: File | None, told: Told) -> Driven:
    """What becomes of it. Refused 'screw size needed' without a length, or neither gauge nor diameter."""
    screw = sizes_of(screw_of(book, question))
    if screw is None:
        raise Refused("screw size needed")
    return drive(screw, question, book.units)


def screw_of(book: Book, question: Drive) -> Screw:
    """The screw that is asked about: the shop's, with the sizes that were typed, or one of sizes alone."""
    known = next((each for each in book.screws if each.key == question.screw), None)
    if known is None:
        if question.length is None:
            raise Refused("screw size needed")
        named = Screw("", "", question.length, question.gauge, question.diameter, head=question.head)
        return replace(named, name=name_of(named, book.units))
    if question.length is None or question.length == known.length:
        return known
    other = replace(known, length=question.length, thread=None)
    return replace(other, name=name_of(other, book.units))


def name_of(screw: Screw, units: Unit) -> str:
    """'#6 × 5/8 in', '3.5 mm × 16 mm'"""
    first = f"#{screw.gauge}" if screw.gauge is not None else format_length(screw.diameter or 0, units)
    return f"{first} × {format_length(screw.length, units)}"


def drive(screw: Sizes, question: Drive, units: Unit) -> Driven:
    """The same for a screw whose sizes are all said."""
    head = question.sunk - question.washer
    point, far = head + screw.length, question.through + question.into
    left, most = far - point, far - question.margin
    held = max(0.0, min(point, far) - max(point - screw.thread, question.through))
    wood = wood_named(question.wood)
    is_hard, known_from = _hardness(question, wood)
    gravity = question.gravity or (wood.gravity if wood else None)
    pilot = pilot_for(screw, is_hard)
    stop = set_to(min(point if is_hard else point - (1 - SOFT_DEPTH) * screw.thread, most), units)
    shank = 0.0 if "thread" in screw.assumed else point - screw.thread
    clear_to = min(max(question.through, shank, 0.0), stop)
    pulls = gravity is not None and question.grain == "side"
    return Driven(
        screw,
        wood,
        is_hard,
        known_from,
        gravity,
        _outcome(left, question.margin, point - question.through),
        left,
        max((each for each in usual_lengths(units) if each + head <= most + _NEAR), default=None),
        held,
        held / screw.pitch,
        min(1.0, max(0.0, min(point, far) - question.through) / screw.length),
        pilot,
        pilot.in_units(units),
        stop,
        max(0.0, stop - question.through),
        drill_not_below(screw.diameter, units) if clear_to > 0 else None,
        clear_to,
        allowable(gravity, screw.diameter, held) if pulls and gravity else None,
        ultimate(gravity, screw.diameter, held) if pulls and gravity else None,
    )


def _outcome(left: float, margin: float, reaches: float) -> Outcome:
    if reaches <= _NEAR:
        return "short"
    return "through" if left < -_NEAR else "near" if left < margin - _NEAR else "inside"


def _hardness(question: Drive, wood: Wood | None) -> tuple[bool, Literal["said", "wood", "nobody"]]:
    """A wood that nobody knows counts as hard: the wider hole neither splits it nor breaks the screw."""
    if question.hardness != "wood":
        return question.hardness == "hard", "said"
    return (True, "nobody") if wood is None else (wood.hard, "wood")


def begin(book: Book, keys: Mapping[str, str]) -> Drive:
    """As the step drives its first screw, or the product's first step that drives any; else the shop's first screw into the product's piece."""
    product = book.product(keys.get("product", ""))
    first = book.screws[0].key if book.screws else None
    fresh = Drive(first, into=INTO[book.units], margin=MARGIN[book.units])
    if product is None:
        return fresh
    step = keys.get("step", "").partition(":")[0]
    operation = next((each for each in product.operations if (each.key == step if step else each.fastenings)), None)
    if operation is not None and operation.fastenings:
        return asked_of(operation.fastenings[0], product.wood, product.key, operation)
    into = product.piece.thickness if product.piece else fresh.into
    key = operation.key if operation else ""
    return replace(fresh, into=into, wood=product.wood[:200], product=product.key, step=key)


def asked_of(fastening: Fastening, wood: str, product: str | None = None, operation: Operation | None = None) -> Drive:
    """What is asked of a screw that an operation drives into this wood."""
    return Drive(
        screw=fastening.screw,
        washer=fastening.washer,
        sunk=fastening.sunk,
        through=fastening.through,
        into=fastening.into,
        margin=fastening.margin,
        wood=wood[:200],
        product=product,
        step=operation.key if operation else "",
    )
