"""A board that takes up or gives off moisture: how much wider or narrower it becomes, and whether a slot or a frame has room for it."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Literal

from runboard.plan.before.kind import File, Told
from runboard.plan.fits.moisture import (
    LEAST_HUMIDITY,
    LEAST_MOISTURE,
    MOST_HUMIDITY,
    MOST_MOISTURE,
    change_of_width,
    emc,
)
from runboard.plan.fits.woods import Wood, wood_named
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.record import Length, Of
from runboard.shop.units import MM_A_INCH, Unit

# What a board is, and what it comes to where people live. Common practice, no source.
WORKED_AT, LIVES_AT = 0.08, 0.12
# The width that a form begins with.
WIDTH: Mapping[Unit, float] = {"mm": 100.0, "in": float(4 * MM_A_INCH)}
_NEAR = 1e-6

Humidity = Annotated[float | None, Of(least=0, most=0.98, kind="share")]
Moisture = Annotated[float | None, Of(least=0, most=0.3, kind="share")]


@dataclass(frozen=True)
class Swell:
    """A board's width across the grain, and its moisture before and after: said, or as air of some humidity makes it. A coefficient
    that is said wins over the wood's."""

    wood: Annotated[str, Of(most=200)] = ""
    width: Annotated[Length, Of(least=0.1)] = 100.0
    sawn: Literal["flat", "quarter"] = "flat"
    before: Moisture = WORKED_AT
    after: Moisture = LIVES_AT
    humidity_before: Humidity = None
    humidity_after: Humidity = None
    celsius: Annotated[float, Of(most=60)] = 20.0
    coefficient: Annotated[float | None, Of(most=0.02)] = None
    room: Length | None = None


@dataclass(frozen=True)
class Swollen:
    """``by`` is how much wider it becomes, below nought narrower. ``lacks`` is what the play is too small by, nought where it does.
    ``is_beyond`` where the moisture leaves the range of the coefficients, ``is_beyond_air`` where the air leaves that of its table."""

    wood: Wood | None
    coefficient: float
    before: float
    after: float
    by: float
    lacks: float | None
    is_beyond: bool
    is_beyond_air: bool


def answer(book: Book, question: Swell, file: File | None, told: Told) -> Swollen:
    """By how much it moves. Refused 'wood unknown' where neither the table nor the question has a coefficient, 'moisture needed'
    without a moisture or humidity on both sides."""
    wood = wood_named(question.wood)
    if question.coefficient is None and wood is None:
        raise Refused("wood unknown", wood=question.wood.strip() or "none")
    before = _moisture(question.before, question.humidity_before, question.celsius)
    after = _moisture(question.after, question.humidity_after, question.celsius)
    by = change_of_width(_coefficient(question, wood), question.width, before, after)
    airs = [air for air in (question.humidity_before, question.humidity_after) if air is not None]
    return Swollen(
        wood if question.coefficient is None else None,
        _coefficient(question, wood),
        before,
        after,
        by,
        None if question.room is None else max(0.0, by - question.room),
        not all(LEAST_MOISTURE - _NEAR <= one <= MOST_MOISTURE + _NEAR for one in (before, after)),
        not all(LEAST_HUMIDITY <= air <= MOST_HUMIDITY for air in airs),
    )


def _coefficient(question: Swell, wood: Wood | None) -> float:
    if question.coefficient is not None or wood is None:
        return question.coefficient or 0.0
    return wood.tangential if question.sawn == "flat" else wood.radial


def _moisture(said: float | None, humidity: float | None, celsius: float) -> float:
    if humidity is not None:
        return emc(celsius, humidity)
    if said is None:
        raise Refused("moisture needed")
    return said


def begin(book: Book, keys: Mapping[str, str]) -> Swell:
    """The product's piece and wood."""
    product = book.product(keys.get("product", ""))
    width = product.piece.width if product and product.piece else WIDTH[book.units]
    return Swell(product.wood[:200] if product else "", width)
