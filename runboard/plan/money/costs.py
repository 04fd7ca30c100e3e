"""What a run costs, line by line: material, work, machines, what is used up, packing; and a good piece of it."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Literal

from runboard.plan.extras import pieces_to_start
from runboard.plan.good_rate import GoodRate, route_good_rate
from runboard.plan.money.cents import PART_OF_HOURS, RATE, counted, exact, places_of, rounded, shared_out
from runboard.plan.money.hours import Hours, hours_of
from runboard.plan.money.material import material_lines
from runboard.plan.money.question import Price
from runboard.plan.money.used_up import used_up_lines
from runboard.plan.opening import board_pieces
from runboard.run.fold.route import Route
from runboard.run.log.size import check_size
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.product import Product

Of = Literal["material", "hands", "machine", "supply", "packing", "other"]


@dataclass(frozen=True)
class CostLine:
    """``quantity`` × ``rate`` = ``amount``, ``each`` of it a good piece. ``code`` is what it is: setup, hands, watched, machine,
    board, material, supply, cutter, packing, other; ``name`` whose: an operation's, a board's, a supply's. ``unit`` is what the
    quantity is counted in ('h', 'pieces', 'boards', 'worn' of a cutter, 'run', a supply's own). ``known`` says where hours come from: guess, said, measured, partly, of
    at least ``times``."""

    of: Of
    code: str
    name: str
    quantity: Decimal
    unit: str
    rate: Decimal
    amount: Decimal
    each: Decimal = Decimal(0)
    known: str = ""
    times: int = 0


@dataclass(frozen=True)
class Loads:
    """The route's loads of the operation ``name`` that cuts boards: ``loads`` of ``each`` pieces, ``last`` in the last of them (0: it is
    full), each reckoned in full as it is when the run is opened. ``boards`` are those that the material takes; 0 where nobody
    said them."""

    name: str
    each: int
    loads: int
    last: int
    boards: int


@dataclass(frozen=True)
class Costs:
    """A run of ``pieces`` good ones of ``started``. ``a_piece`` is the total over the good ones. ``hours`` is work that is paid,
    ``hands`` what it costs. ``unpriced`` are supplies, and ``no_rate`` machines, that nobody wrote a price for, ``other_units``
    supplies that are used in another unit than they are bought in; none of them is counted."""

    pieces: int
    started: int
    good_rate: GoodRate
    lines: tuple[CostLine, ...]
    total: Decimal
    a_piece: Decimal
    hours: Decimal
    hands: Decimal
    unpriced: tuple[str, ...] = ()
    no_rate: tuple[str, ...] = ()
    other_units: tuple[str, ...] = ()
    no_material: str = ""
    no_hour_rate: bool = False
    is_board_shared: bool = False
    loads: Loads | None = None


def costs_of(book: Book, question: Price) -> Costs:
    """What a run of these pieces costs. All that are started are reckoned to the last step. Refused 'fewer started', 'run too
    large', and as extras refuse."""
    places = places_of(book.money)
    product = book.product(question.product or "")
    route = Route(product) if product is not None and product.operations else None
    rate = _good_rate(product, question)
    started = _started(route, question, rate.rate)
    hours = list(hours_of(book, route, started, question.times)) if route else []
    material = material_lines(book, product, question, started)
    used = used_up_lines(book, route, started, hours)
    lines = [
        *_lines("material", material.rows, places),
        *_hour_lines(book, question, hours, places),
        *_lines("supply", used.rows, places),
        *_packing(question, places),
        *_others(question, started, places),
    ]
    each = shared_out([line.amount for line in lines], question.pieces, places)
    lines = [replace(line, each=part) for line, part in zip(lines, each, strict=True)]
    paid = [line for line in lines if line.of == "hands"]
    return Costs(
        question.pieces,
        started,
        rate,
        tuple(lines),
        sum((line.amount for line in lines), Decimal(0)),
        sum(each, Decimal(0)),
        sum((line.quantity for line in paid), Decimal(0)),
        sum((line.amount for line in paid), Decimal(0)),
        used.unpriced,
        tuple(dict.fromkeys(each.station for each in hours if each.code == "machine" and each.rate is None)),
        used.other_units,
        material.why,
        bool(paid) and question.hour_rate is None,
        material.is_shared,
        _loads(route, started, material.boards),
    )


def _loads(route: Route | None, started: int, boards: int) -> Loads | None:
    each = board_pieces(route) if route is not None else None
    if route is None or not each:
        return None
    return Loads(route.steps[0].operation.name, each, -(-started // each), started % each, boards)


def _good_rate(product: Product | None, question: Price) -> GoodRate:
    if question.good_rate is not None:
        return GoodRate(question.good_rate, "guess")
    if product is None:
        return GoodRate(1.0, "guess")
    return route_good_rate(product.operations, {one.operation: (one.good, one.bad) for one in question.counted})


def _started(route: Route | None, question: Price, good_rate: float) -> int:
    """How many are started: as many as was said, else so many that they suffice as surely as was wanted. What more a last board
    would give is not reckoned: it is worth something too."""
    started = question.start or pieces_to_start(question.pieces, good_rate, question.certainty).fewest
    if started < question.pieces:
        raise Refused("fewer started", started=started, pieces=question.pieces)
    if route is not None:
        check_size(route, [], started)
    return started


Row = tuple[str, str, Decimal, str, Decimal]  # code, name, quantity, unit, rate


def _lines(of: Of, rows: Iterable[Row], places: int) -> Iterator[CostLine]:
    for code, name, quantity, unit, rate in rows:
        quantity = rounded(quantity, PART_OF_HOURS) if unit == "h" else counted(quantity)
        rate = rounded(rate, max(RATE, places))
        yield CostLine(of, code, name, quantity, unit, rate, rounded(quantity * rate, places))


def _hour_lines(book: Book, question: Price, hours: Sequence[Hours], places: int) -> Iterator[CostLine]:
    for one in hours:
        of: Of = "machine" if one.code == "machine" else "hands"
        rate = exact(one.rate or 0) if of == "machine" else exact(question.hour_rate or 0)
        quantity = one.hours * exact(question.watched) if one.code == "watched" else one.hours
        if of == "machine" and one.rate is None:
            continue
        for line in _lines(of, [(one.code, one.name, quantity, "h", rate)], places):
            yield replace(line, known=one.known, times=one.times)


def _packing(question: Price, places: int) -> Iterator[CostLine]:
    if question.packing_each:
        yield from _lines(
            "packing", [("packing", "", Decimal(question.pieces), "pieces", exact(question.packing_each))], places
        )


def _others(question: Price, started: int, places: int) -> Iterator[CostLine]:
    counts = {"good piece": question.pieces, "started piece": started, "run": 1}
    rows = [
        ("other", one.name, Decimal(counts[one.each]), "run" if one.each == "run" else "pieces", exact(one.amount))
        for one in question.others
    ]
    return _lines("other", rows, places)
