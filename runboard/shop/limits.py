"""How large things may be, in one place: a run, a route, the book. The help says it to people.

The limits hold where something is saved, opened or sent. What is stored is read without them: it may have been written
down before there were any.
"""

import re
from collections.abc import Iterator, Mapping
from datetime import timedelta
from types import MappingProxyType
from typing import Any

from runboard.shop.book import Book, Station
from runboard.shop.care import seldom_at_most
from runboard.shop.durations import format_duration
from runboard.shop.problem import BookError, RecordProblem
from runboard.shop.product import Product

# A run. 2,000 good pieces are promised; the rest are extras.
MOST_PIECES = 3_000
MOST_TRAYS = 500
MOST_TRAYS_AT_FIRST = 400  # pieces that are taken apart come into more
MOST_BOARDS = 500
# Of all steps together: a route of nine steps over 400 trays has 3,600.
MOST_LOADS = 8_000
# Of two steps that follow each other: each load of a tray waits for each of the same tray before it.
MOST_LINKS = 200_000
MOST_ORDER_LINES = 2_000
# What the planner takes at once, of all that is open: parts of loads, and what waits for what.
MOST_PLANNED = 16_000
MOST_LINKS_PLANNED = 400_000

# A route.
MOST_STEPS = 200
MOST_LETTERS = 200_000

# The book.
MOST_IN_BOOK: Mapping[str, int] = MappingProxyType(
    {"rooms": 100, "walks": 2_000, "services": 100, "stations": 200, "people": 100, "jobs": 200, "finishes": 200,
     "forbidden": 200, "jigs": 200, "products": 300}
)  # fmt: skip
MOST_BOOK_LETTERS = 5_000_000

_NOT_ONE_LINE = re.compile("[\x00-\x1f\x7f-\x9f\u2028\u2029]")

Excess = tuple[str, int, int]


def product_excess(product: Product) -> Excess | None:
    """(what, found, most) of the first thing that a route has too much of: 'steps', 'letters'; None where it is fine."""
    steps = sum(len(operation.passes) for operation in product.operations)
    if steps > MOST_STEPS:
        return "steps", steps, MOST_STEPS
    letters = _letters(product)
    return ("letters", letters, MOST_LETTERS) if letters > MOST_LETTERS else None


def check_limits(book: Book) -> None:
    """Raises ``BookError`` with what there is too much of, each name that is not one line, and each look at a machine that is
    too far from the next."""
    problems = [
        RecordProblem(part, "", "list too long", {"field": part, "most": most, "found": len(getattr(book, part))})
        for part, most in MOST_IN_BOOK.items()
        if len(getattr(book, part)) > most
    ]
    if not problems:
        problems = [*_things(book), *_products(book)]
    if problems:
        raise BookError(problems)


def check_route_limits(book: Book, product: Product) -> None:
    """The same of one product's route alone, as ``product_from_json`` reads it."""
    problems = list(_route(book, product, "product"))
    if problems:
        raise BookError(problems)


def is_one_line(text: str) -> bool:
    """Whether a name can stand in a title."""
    return _NOT_ONE_LINE.search(text) is None


def _things(book: Book) -> Iterator[RecordProblem]:
    for at, station in enumerate(book.stations):
        yield from _seldom(f"stations[{at}]", f"station '{station.key}'", station, station.watch_every)
    for part in ("rooms", "services", "stations", "people", "jobs", "finishes", "jigs"):
        for at, thing in enumerate(getattr(book, part)):
            if not is_one_line(thing.name):
                yield RecordProblem(f"{part}[{at}].name", f"{part}[{at}]", "not one line", {"field": "name"})
    if not is_one_line(book.name):
        yield RecordProblem("name", "", "not one line", {"field": "name"})


def _seldom(path: str, place: str, station: Station | None, every: timedelta | None) -> Iterator[RecordProblem]:
    most = seldom_at_most(station)
    if every is not None and every > most:
        said = {
            "station": station.name if station else "it",
            "most": format_duration(most),
            "found": format_duration(every),
        }
        yield RecordProblem(f"{path}.watch_every_minutes", place, "watched too seldom", said)


def _products(book: Book) -> Iterator[RecordProblem]:
    for at, product in enumerate(book.products):
        yield from _route(book, product, f"products[{at}]")
    letters = sum(_letters(product) for product in book.products)
    if letters > MOST_BOOK_LETTERS:
        yield RecordProblem(
            "products", "", "too long", {"field": "products", "most": MOST_BOOK_LETTERS, "found": letters}
        )


def _route(book: Book, product: Product, path: str) -> Iterator[RecordProblem]:
    place = f"product '{product.key}'"
    excess = product_excess(product)
    if excess is not None:
        what, found, most = excess
        yield RecordProblem(path, place, "too long", {"field": what, "most": most, "found": found})
    names = [product.name, product.wood]
    for at, operation in enumerate(product.operations):
        here, station = f"{place}, operation '{operation.key}'", book.station(operation.station)
        yield from _seldom(f"{path}.operations[{at}]", here, station, operation.watch_every)
        names += [operation.name, *(pass_.name for pass_ in operation.passes), *(use.supply for use in operation.uses)]
    if not all(is_one_line(name) for name in names):
        yield RecordProblem(f"{path}.name", place, "not one line", {"field": "name"})


def _letters(thing: Any) -> int:
    """All that is written in a record, however deep within."""
    if isinstance(thing, str):
        return len(thing)
    if isinstance(thing, tuple):
        return sum(map(_letters, thing))
    if isinstance(thing, Mapping):
        return sum(_letters(value) for value in thing.values())
    fields = getattr(thing, "__dataclass_fields__", None)
    return sum(_letters(getattr(thing, name)) for name in fields) if fields else 0
