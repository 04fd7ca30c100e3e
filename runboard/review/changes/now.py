"""What a change makes of the shop as it is now, which need not be the shop in which it was tried.

A change was tried on a run, so what it means is what that run's route and that shop's book would have said with it. Where
the shop says that now, or has more of it, nothing is left to do.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import timedelta
from itertools import pairwise
from typing import Any

from runboard.plan.change import (
    KINDS_OF_TIME,
    Capacity,
    Change,
    Helper,
    HoursAdded,
    Instead,
    LoadSize,
    OnePersonMore,
    OneVisit,
    Rested,
    Single,
    Swapped,
    Times,
    TraySize,
    in_order,
)
from runboard.plan.changed import book_with
from runboard.plan.changed_route import pair_at, product_with
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.product import Operation, Pass, Product


@dataclass(frozen=True)
class Moved:
    """One thing of the shop that is another with a change. ``what`` is 'capacity' or 'trays' (numbers), 'time' (of the ``kind``)
    or 'wait' (spans), 'load' or 'rate' (numbers, None where there is none), 'wood', 'instruction', 'order' or 'visit' (texts).
    ``measured`` is what a time was on average in the run that the change was tried on, None where nobody knows."""

    what: str
    name: str = ""
    kind: str = ""
    before: Any = None
    after: Any = None
    measured: timedelta | None = None


@dataclass(frozen=True)
class Made:
    """The book with a change, and all that is another in it. ``did`` says where that stands: 'route' (with or without what is
    shared), 'book', or 'noted' where no book can say it."""

    did: str
    book: Book
    product: Product | None
    moved: tuple[Moved, ...] = ()

    @property
    def is_done(self) -> bool:
        """Whether the shop says all of it already."""
        return self.did != "noted" and not self.moved


def is_of_route(single: Single) -> bool:
    """Whether a change is written into a product's route."""
    if isinstance(single, Instead):
        return single.means not in ("hour", "board")  # no route says when, or of which board
    return not isinstance(single, HoursAdded | OnePersonMore | Helper | Capacity)


def made_of(change: Change, then: Book, tried: Product, now: Book) -> Made:
    """What a change that was tried with the product ``tried`` in the shop ``then`` makes of the shop ``now``. Refused as the
    change itself is where it makes no sense any more, and 'product unknown'."""
    book, product = now, now.product(tried.key)
    before, did = product, "noted"
    for single in in_order(change):
        if isinstance(single, Capacity):
            did = "book" if did == "noted" else did
            book = _with_capacity(book, then, single)
        elif is_of_route(single):
            did = "route"
            if product is None:
                raise Refused("product unknown", product=tried.key)
            wished = product_with(tried, then, single)
            product = _with_route(product, book, tried, wished, single)
            tried = wished
    return Made(did, book, product, tuple(moved_in(now, before, book, product)))


def _reached(then: Any, wish: Any, now: Any) -> bool:
    """Whether what is now is at the wish, or beyond it."""
    return bool(now >= wish if wish > then else now <= wish if wish < then else now == wish)


def _with_capacity(book: Book, then: Book, single: Capacity) -> Book:
    counts = {one.key: one.capacity for one in book.services}
    before = {one.key: one.capacity for one in then.services}
    now = counts.get(single.service)
    if now is not None and _reached(before.get(single.service, now), single.capacity, now):
        return book
    return book_with(book, single)


def _with_route(product: Product, book: Book, tried: Product, wished: Product, single: Single) -> Product:
    match single:
        case TraySize() if _reached(tried.pieces_a_tray, single.pieces, product.pieces_a_tray):
            return product
        case Times():
            return _with_times(product, tried, wished, single.operation.partition(":")[0])
        case Instead():
            return _instead(product, book, tried, wished, single)
        case LoadSize() if _has_load(product, tried, wished):
            return product
        case Rested():
            waits = [_wait(one, single.operation) for one in (tried, wished, product)]
            if all(wait is not None for wait in waits) and _reached(*waits):
                return product
        case Swapped() | OneVisit():
            return _in_order(product, book, tried, single)
    return product_with(product, book, single)


def _operation(product: Product, key: str) -> Operation | None:
    return next((one for one in product.operations if one.key == key), None)


def _wait(product: Product, key: str) -> Any:
    operation = _operation(product, key)
    return operation.wait.least if operation is not None and operation.wait is not None else None


# times, means, loads


def _with_times(product: Product, tried: Product, wished: Product, key: str) -> Product:
    """Each time as it was wished, where it is not that or beyond it already. Refused 'try no such time'."""
    now, before, after = (_operation(one, key) for one in (product, tried, wished))
    if now is None or before is None or after is None:
        raise Refused("try no such time")
    wishes = {one.key: (one, other) for one, other in zip(before.passes, after.passes, strict=True)}
    passes = tuple(_timed(one, *wishes[one.key]) if one.key in wishes else one for one in now.passes)
    some = (replace(now, passes=passes) if one is now else one for one in product.operations)
    return replace(product, operations=tuple(some))


def _timed(now: Pass, then: Pass, wish: Pass) -> Pass:
    times = {
        kind: getattr(wish, kind)
        for kind in KINDS_OF_TIME
        if getattr(then, kind) != getattr(wish, kind)
        and not _reached(getattr(then, kind), getattr(wish, kind), getattr(now, kind))
    }
    return replace(now, **times)


def _instead(product: Product, book: Book, tried: Product, wished: Product, single: Instead) -> Product:
    timed = _with_times(product, tried, wished, single.operation)
    now, before = _operation(timed, single.operation), _operation(tried, single.operation)
    rate = single.good_rate
    if rate is not None and now is not None and before is not None and now.good_rate is not None:
        rate = None if _reached(min(before.good_rate or 0, rate), rate, now.good_rate) else rate
    try:
        return product_with(timed, book, replace(single, per_cent=100, good_rate=rate))
    except Refused as refused:
        if refused.code != "try the same":
            raise
        return timed


def _has_load(product: Product, tried: Product, wished: Product) -> bool:
    """Whether the pass whose load is another in what was wished takes as many now."""
    for before, after in zip(tried.operations, wished.operations, strict=True):
        now = _operation(product, before.key)
        passes = {} if now is None else {one.key: one for one in now.passes}
        for one, wish in zip(before.passes, after.passes, strict=True):
            here = passes.get(one.key)
            if (one.size, one.pieces) != (wish.size, wish.pieces) and here is not None:
                is_far = one.pieces is not None and here.pieces is not None and wish.size == here.size
                return (here.size, here.pieces) == (wish.size, wish.pieces) or (
                    is_far and _reached(one.pieces, wish.pieces, here.pieces)
                )
    return False


# order


def _in_order(product: Product, book: Book, tried: Product, single: Swapped | OneVisit) -> Product:
    """Refused as a change of order is, and where the two are no neighbours any more: another pair is not what was tried."""
    pair = pair_at(tried, single.first)
    then = pair[1].key if pair else ""
    keys = [one.key for one in product.operations]
    if isinstance(single, OneVisit) and single.first in keys and then not in keys:
        return product
    if isinstance(single, Swapped) and (then, single.first) in pairwise(keys):
        return product
    if (single.first, then) not in pairwise(keys):
        if isinstance(single, Swapped):
            raise Refused("try order")
        raise Refused("try visit")
    return product_with(product, book, single)


# what is another


def moved_in(before: Book, was: Product | None, after: Book, is_: Product | None) -> Iterator[Moved]:
    """What is another of what is shared, and of a product."""
    counts = {one.key: one.capacity for one in after.services}
    for service in before.services:
        if counts.get(service.key, service.capacity) != service.capacity:
            yield Moved("capacity", service.name, before=service.capacity, after=counts[service.key])
    if was is None or is_ is None:
        return
    if was.pieces_a_tray != is_.pieces_a_tray:
        yield Moved("trays", before=was.pieces_a_tray, after=is_.pieces_a_tray)
    if was.wood != is_.wood:
        yield Moved("wood", before=was.wood, after=is_.wood)
    yield from _of_order(was.operations, is_.operations)
    for one in was.operations:
        other = _operation(is_, one.key)
        if other is not None:
            yield from _of_operation(one, other)


def _of_order(was: Sequence[Operation], is_: Sequence[Operation]) -> Iterator[Moved]:
    here = {one.key: one.name for one in is_}
    for one, other in pairwise(was):
        if other.key not in here and one.key in here:
            yield Moved("visit", before=f"{one.name}, {other.name}", after=here[one.key])
    if len(was) == len(is_):
        turned = [pair for pair in zip(was, is_, strict=True) if pair[0].key != pair[1].key]
        if turned:
            before, after = (", ".join(pair[at].name for pair in turned) for at in (0, 1))
            yield Moved("order", before=before, after=after)


def _of_operation(one: Operation, other: Operation) -> Iterator[Moved]:
    if one.good_rate != other.good_rate:
        yield Moved("rate", one.name, before=one.good_rate, after=other.good_rate)
    if one.wait and other.wait and one.wait.least != other.wait.least:
        yield Moved("wait", one.name, before=one.wait.least, after=other.wait.least)
    if one.instructions != other.instructions and other.instructions:
        yield Moved("instruction", one.name, after=other.instructions[0].text)
    for pass_, wish in zip(one.passes, other.passes, strict=False):
        name = f"{one.name} {pass_.name}" if len(one.passes) > 1 else one.name
        for kind in KINDS_OF_TIME:
            if getattr(pass_, kind) != getattr(wish, kind):
                yield Moved("time", name, kind, getattr(pass_, kind), getattr(wish, kind))
        if (pass_.size, pass_.pieces) != (wish.size, wish.pieces):
            yield Moved("load", name, before=pass_.pieces, after=wish.pieces)
