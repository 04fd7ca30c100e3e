"""What a cutter bites off at some feed and speed, and which of the shop's own values is nearest.

Tables of chip loads by cutter makers and hobby guides disagree: for a 6 mm cutter in hardwood from 0.025 to 0.28 mm. None is taken for
true here.
"""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Annotated, Literal

from runboard.plan.before.kind import File, Keep, Record, Told
from runboard.plan.feeds.arithmetic import chip_load, feed_of, flutes_of, rpm_at_speed, rpm_of, surface_speed
from runboard.plan.fits.keeping import operation_in
from runboard.plan.fits.woods import same_wood
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.keys import key_for
from runboard.shop.machines import Cutter, GoodFeed
from runboard.shop.record import Length, Of, to_json

# Turns and feed that differ by less than this share are the same value. Common practice, no source.
SAME = 0.05
_AT_ODDS = 0.02
Asked = Literal["chip", "feed", "rpm", "flutes", "kept"]


@dataclass(frozen=True)
class Feed:
    """Three of turns, flutes, feed and chip load, of which the fourth follows; turns may be said by the speed of the edge. ``torn``
    pieces of ``torn_of`` tore out with these values in ``torn_in``, as a run's log has it."""

    cutter: Annotated[str | None, Of(refers="cutter")] = None
    diameter: Annotated[Length | None, Of(least=0.1)] = None
    flutes: Annotated[int | None, Of(least=1, most=20)] = None
    rpm: Annotated[float | None, Of(least=1, most=200_000)] = None
    surface: Annotated[Length | None, Of(least=1, most=1e8)] = None
    feed: Annotated[Length | None, Of(least=1)] = None
    chip: Annotated[Length | None, Of(least=0.0001, most=20)] = None
    depth: Annotated[Length | None, Of(least=0.01)] = None
    wood: Annotated[str, Of(most=200)] = ""
    station: Annotated[str | None, Of(refers="station")] = None
    note: Annotated[str, Of(most=1000)] = ""
    torn: int | None = None
    torn_of: int | None = None
    torn_in: Annotated[str, Of(most=200)] = ""
    product: Annotated[str | None, Of(refers="product")] = None
    step: Annotated[str, Of(most=40)] = ""


@dataclass(frozen=True)
class Fed:
    """All four, of which ``solved`` followed from the others, 'kept' where all are the shop's own good value; ``at_odds`` is the chip load that was said and does not follow.
    ``surface`` in mm a minute, None where no diameter is known. ``nearest`` is the shop's nearest good value for this cutter,
    ``is_good`` whether these are its values; ``is_other_wood`` where it is another wood's. ``tore_out`` are values like these
    that tore out. ``spindle_most`` is said where the spindle does not turn so fast."""

    cutter: Cutter | None
    diameter: float | None
    flutes: float
    rpm: float
    feed: float
    chip: float
    surface: float | None
    solved: Asked
    at_odds: float | None
    nearest: GoodFeed | None
    nearest_chip: float | None
    is_good: bool
    is_other_wood: bool
    tore_out: tuple[GoodFeed, ...]
    spindle_most: float | None


def answer(book: Book, question: Feed, file: File | None, told: Told) -> Fed:
    """What follows; where more than one of the four is open, the shop's own good value for this cutter and wood. Refused 'feed too
    little said' where it has none."""
    cutter = cutter_of(book, question)
    diameter = question.diameter or (cutter.diameter if cutter else None)
    flutes = question.flutes or (cutter.flutes if cutter else None)
    rpm = question.rpm
    if rpm is None and question.surface is not None and diameter is not None:
        rpm = rpm_at_speed(question.surface, diameter)
    known = feeds_of(book, cutter)
    given = (rpm, flutes, question.feed, question.chip)
    (rpm, whole, feed, chip), solved = _solved(*given) or _own(known, question.wood, *given)
    odds = question.chip if question.chip is not None and abs(question.chip / chip - 1) > _AT_ODDS else None
    nearest, other = _nearest(known, question.wood, rpm, feed)
    station = book.station(question.station or "")
    most = station.motion.spindle_most if station else None
    return Fed(
        cutter,
        diameter,
        whole,
        rpm,
        feed,
        chip,
        None if diameter is None else surface_speed(diameter, rpm),
        solved,
        odds,
        nearest,
        None if nearest is None else chip_load(nearest.feed, nearest.rpm, whole),
        nearest is not None and not other and is_same(nearest, rpm, feed),
        other and solved != "kept",
        tuple(torn_values(known, question.wood, rpm, feed)),
        most if most is not None and rpm > most * (1 + 1e-9) else None,
    )


_Four = tuple[float, float, float, float]


def _solved(
    rpm: float | None, flutes: float | None, feed: float | None, chip: float | None
) -> tuple[_Four, Asked] | None:
    if rpm and flutes and feed:
        return (rpm, flutes, feed, chip_load(feed, rpm, flutes)), "chip"
    if rpm and flutes and chip:
        return (rpm, flutes, feed_of(rpm, flutes, chip), chip), "feed"
    if flutes and feed and chip:
        return (rpm_of(feed, flutes, chip), flutes, feed, chip), "rpm"
    if rpm and feed and chip:
        return (rpm, flutes_of(feed, rpm, chip), feed, chip), "flutes"
    return None


def _own(
    known: Iterable[GoodFeed],
    wood: str,
    rpm: float | None,
    flutes: float | None,
    feed: float | None,
    chip: float | None,
) -> tuple[_Four, Asked]:
    """The shop's good value that is nearest to what was said."""
    whole = flutes or 0.0
    good = [each for each in known if whole and not each.tore_out and (not wood.strip() or is_for(each, wood))]
    if not good:
        raise Refused("feed too little said")

    def four(kept: GoodFeed) -> _Four:
        return kept.rpm, whole, kept.feed, chip_load(kept.feed, kept.rpm, whole)

    def far(values: _Four) -> float:
        said = zip((rpm, flutes, feed, chip), values, strict=True)
        return sum(abs(math.log(one / value)) for one, value in said if one)

    return min(map(four, good), key=far), "kept"


def cutter_of(book: Book, question: Feed) -> Cutter | None:
    """The cutter that is named, or the shop's one of the size that was typed."""
    if question.cutter:
        return next((each for each in book.cutters if each.key == question.cutter), None)
    size = (question.diameter, question.flutes)
    return next((each for each in book.cutters if None not in size and (each.diameter, each.flutes) == size), None)


def feeds_of(book: Book, cutter: Cutter | None) -> tuple[GoodFeed, ...]:
    """What the shop keeps of a cutter."""
    return tuple(each for each in book.feeds if cutter is not None and each.cutter == cutter.key)


def is_same(kept: GoodFeed, rpm: float, feed: float) -> bool:
    """Whether a kept value is these turns and this feed."""
    return abs(rpm / kept.rpm - 1) <= SAME and abs(feed / kept.feed - 1) <= SAME


def is_for(kept: GoodFeed, wood: str) -> bool:
    """Whether a value is kept for this wood, or for any."""
    return not kept.wood.strip() or same_wood(kept.wood, wood)


def _nearest(known: Iterable[GoodFeed], wood: str, rpm: float, feed: float) -> tuple[GoodFeed | None, bool]:
    """The nearest good value, and whether it is another wood's: those of this wood come first."""
    good = [each for each in known if not each.tore_out]
    own = [each for each in good if is_for(each, wood)]
    found = min(own or good, key=lambda each: _far(each, rpm, feed), default=None)
    return found, not own


def _far(kept: GoodFeed, rpm: float, feed: float) -> float:
    return abs(math.log(feed / rpm * kept.rpm / kept.feed)) + abs(math.log(rpm / kept.rpm))


def torn_values(known: Iterable[GoodFeed], wood: str, rpm: float, feed: float) -> Iterable[GoodFeed]:
    """Kept values like these that tore out in this wood."""
    return (each for each in known if each.tore_out and is_for(each, wood) and is_same(each, rpm, feed))


def begin(book: Book, keys: Mapping[str, str]) -> Feed:
    """As the step is cut."""
    product = book.product(keys.get("product", ""))
    step = keys.get("step", "").partition(":")[0]
    operation = next((each for each in product.operations if each.key == step), None) if product else None
    if product is None or operation is None:
        return Feed(cutter=book.cutters[0].key if book.cutters else None, wood=product.wood[:200] if product else "")
    return Feed(
        cutter=operation.cutter,
        rpm=operation.rpm,
        feed=operation.feed,
        wood=product.wood[:200],
        station=operation.station,
        product=product.key,
        step=operation.key,
    )


# what may be kept


def keeps(book: Book, question: Feed, fed: Fed) -> Sequence[Keep]:
    """These values as good ones or as ones that tore out, for this wood and one of the shop's cutters; and in the step."""
    if fed.cutter is None:
        return ()
    facts = {"wood": question.wood.strip() or "any", "cutter": fed.cutter.name, "link": _where(book, question, fed)}
    good = [] if fed.solved == "kept" else [Keep("good", "good", _Kept(question, fed, False), facts)]
    torn = [Keep("torn", "torn", _Kept(question, fed, True), facts)]
    found = [*torn, *good] if question.torn or fed.tore_out else [*good, *torn]
    product = book.product(question.product or "")
    for operation in product.operations if product else ():
        if product and operation.key == question.step.partition(":")[0]:
            into = {"step": operation.name, "product": product.name, "link": f"/plan/products/{product.key}"}
            found.append(Keep("step", "feed-step", _InStep(fed, product.key, operation.key), into))
    return found


def _where(book: Book, question: Feed, fed: Fed) -> str:
    """The page of what is kept of these values; the shop's where nothing is yet."""
    values = _values_of(question, fed)
    kept = (each.key for each in book.feeds if _values(to_json(each)) == values)
    key = next(kept, "")
    return f"/shop/feeds/{key}" if key else "/shop"


@dataclass(frozen=True)
class _Kept:
    """Writes the values among the shop's, in place of what was kept of the same wood, cutter, turns and feed."""

    question: Feed
    fed: Fed
    tore_out: bool

    def __call__(self, record: Record) -> None:
        asked, fed, cutter = self.question, self.fed, self.fed.cutter
        if cutter is None or all(each["key"] != cutter.key for each in record["cutters"]):
            raise Refused("step to keep gone")
        _, wood, rpm, feed = values = _values_of(asked, fed)
        others = [each for each in record["feeds"] if _values(each) != values]
        key = key_for(f"{asked.wood} {cutter.name}", {each["key"] for each in others})
        note = "\n".join(text for text in (asked.note, asked.torn_in if self.tore_out else "") if text)
        torn = (asked.torn, asked.torn_of) if self.tore_out else (None, None)
        kept = GoodFeed(key, cutter.key, rpm, feed, wood, asked.station, asked.depth, note, self.tore_out, *torn)
        record["feeds"] = [*others, to_json(kept)]


def _values_of(question: Feed, fed: Fed) -> tuple[str, str, float, float]:
    return fed.cutter.key if fed.cutter else "", question.wood.strip(), round(fed.rpm, 1), round(fed.feed, 3)


def _values(kept: Record) -> tuple[str, str, float, float]:
    return kept["cutter"], kept["wood"].strip(), round(kept["rpm"], 1), round(kept["feed"], 3)


@dataclass(frozen=True)
class _InStep:
    """Writes cutter, turns and feed into an operation of the book's record."""

    fed: Fed
    product: str
    operation: str

    def __call__(self, record: Record) -> None:
        operation, cutter = operation_in(record, self.product, self.operation), self.fed.cutter
        operation["cutter"] = cutter.key if cutter else None
        operation["rpm"], operation["feed"] = round(self.fed.rpm, 1), round(self.fed.feed, 3)
