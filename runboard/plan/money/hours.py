"""The hours of a run for money: setting up, hands, watching and machines of each operation, measured where somebody measured."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import timedelta
from decimal import Decimal
from typing import Literal

from runboard.plan.money.cents import HOURS, exact, rounded
from runboard.plan.money.question import LearnedTime
from runboard.plan.opening import lay_out, loads_in
from runboard.run.fold.route import Route, Step
from runboard.shop.book import Book
from runboard.shop.parts import LoadContents, Part, parts
from runboard.shop.product import ZERO

Code = Literal["setup", "hands", "watched", "machine"]
CODES: tuple[Code, ...] = ("setup", "hands", "watched", "machine")
Known = Literal["guess", "said", "measured", "partly"]


@dataclass(frozen=True)
class Hours:
    """So many hours of an operation, to three decimals: of setting up, of hands at the pieces, of watching its machine, of the
    machine itself, whose ``station`` costs ``rate`` an hour (None: not written down)."""

    code: Code
    name: str
    hours: Decimal
    known: Known
    times: int
    operation: str = ""
    station: str = ""
    rate: float | None = None


@dataclass(frozen=True)
class _Spent:
    code: Code
    span: timedelta
    learned: LearnedTime | None


def hours_of(book: Book, route: Route, started: int, times: Sequence[LearnedTime]) -> Iterator[Hours]:
    """Each operation's hours for so many pieces, those of no length left out; one setup of each step."""
    product = route.product
    trays = [pieces for _, pieces in lay_out(route, started, product.pieces_a_tray, None)[0]]
    known = {(one.step, one.kind): one for one in times}
    for operation in product.operations:
        station = book.station(operation.station)
        spent = [
            each
            for step in route.steps
            if step.operation is operation
            for each in _spent(book, step, trays, {kind: one for (key, kind), one in known.items() if key == step.key})
        ]
        for code in CODES:
            mine = [each for each in spent if each.code == code]
            hours = rounded(exact(sum((each.span for each in mine), ZERO) / timedelta(hours=1)), HOURS)
            if hours:
                name = station.name if station else operation.station
                rate = station.hour_rate if station else None
                yield Hours(code, operation.name, hours, *_known(mine), operation.key, name, rate)


def _spent(book: Book, step: Step, trays: Sequence[int], known: dict[str, LearnedTime]) -> Iterator[_Spent]:
    """The parts of all loads of a step, in all."""
    loads, load = loads_in(step, trays), LoadContents(step.pass_.key, 1, needs_setup=True)
    for part in parts(step.operation, load, book.station(step.operation.station)):
        if part.kind == "wait":
            continue
        learned = known.get(part.kind)
        each = learned.minutes if learned else part.length
        span = each * {"setup": 1, "hand": sum(trays)}.get(part.kind, loads)
        for code in _codes(part):
            yield _Spent(code, span, learned)


def _codes(part: Part) -> tuple[Code, ...]:
    if part.kind == "machine":
        return ("machine",) if part.attendance == "none" else ("watched", "machine")
    return ("setup",) if part.kind == "setup" else ("hands",)


def _known(spent: Sequence[_Spent]) -> tuple[Known, int]:
    """Where hours come from as a whole, and how often the least measured of them was measured."""
    measured = [each.learned.times for each in spent if each.learned and each.learned.times]
    if len(measured) == len(spent):
        return "measured", min(measured)
    if measured:
        return "partly", min(measured)
    return ("said" if all(each.learned for each in spent) else "guess"), 0
