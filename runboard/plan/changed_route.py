"""A product's route with a change: what a run is tried with, and what is written into the book once a change is adopted."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from datetime import timedelta
from itertools import pairwise
from types import MappingProxyType
from typing import Any

from runboard.plan.change import (
    KINDS_OF_TIME,
    LEAST_GOOD_RATE,
    LEAST_PER_CENT,
    MOST_PER_CENT,
    MOST_PIECES,
    Change,
    Instead,
    LoadSize,
    OneVisit,
    Rested,
    Swapped,
    Times,
    TraySize,
)
from runboard.run.fold.route import Route, Step
from runboard.run.refusal import Refused
from runboard.run.rules.resting import wait_after
from runboard.shop.book import Book
from runboard.shop.product import ZERO, Instruction, Operation, Pass, Product, Wait
from runboard.shop.record import NAME_LENGTH


def product_with(product: Product, book: Book, change: Change) -> Product:
    """The product with a change of its route. Refused where that makes no sense, or is none of a route: 'change not route'."""
    match change:
        case TraySize():
            check_pieces(change.pieces)
            changed = replace(product, pieces_a_tray=change.pieces)
        case Times():
            check_per_cent(change.per_cent)
            operation, _, pass_ = change.operation.partition(":")
            changed = _with_operation(
                product, operation, lambda found: _timed(found, change.kinds, change.per_cent, pass_)
            )
        case Instead():
            changed = _with_operation(product, change.operation, lambda found: _instead(found, change))
            changed = replace(changed, wood=change.name) if change.means == "wood" and change.name else changed
        case Swapped():
            changed = turned(product, change.first)
        case LoadSize():
            changed = with_load(product, change, product.pieces_a_tray, with_times=True)
        case Rested():
            changed = rested(product, book, change)
        case OneVisit():
            changed = merged(product, book, change.first)
        case _:
            raise Refused("change not route")
    if changed == product:
        raise Refused("try the same")
    return changed


def check_per_cent(per_cent: int) -> None:
    """Refused 'try per cent' outside of the bounds."""
    if not LEAST_PER_CENT <= per_cent <= MOST_PER_CENT:
        raise Refused("try per cent", least=LEAST_PER_CENT, most=MOST_PER_CENT)


def check_rate(rate: float | None) -> None:
    """Refused 'try good rate' where a good rate is given that is none."""
    if rate is not None and not LEAST_GOOD_RATE <= rate <= 1:
        raise Refused("try good rate")


def check_pieces(pieces: int) -> None:
    """Refused 'try pieces' outside of the bounds."""
    if not 1 <= pieces <= MOST_PIECES:
        raise Refused("try pieces", most=MOST_PIECES)


def _with_operation(product: Product, key: str, change: Callable[[Operation], Operation]) -> Product:
    if all(operation.key != key for operation in product.operations):
        raise Refused("try no such time")
    some = (change(operation) if operation.key == key else operation for operation in product.operations)
    return replace(product, operations=tuple(some))


def _timed(operation: Operation, kinds: Iterable[str], per_cent: int, key: str = "") -> Operation:
    """Its passes, or the one with a key, with other times, in whole seconds: what is left of a time that there was is never
    nothing."""
    passes = tuple(
        _pass_timed(pass_, kinds, per_cent / 100) if key in ("", pass_.key) else pass_ for pass_ in operation.passes
    )
    if passes == operation.passes and per_cent != 100:
        raise Refused("try no such time")
    return replace(operation, passes=passes)


def _pass_timed(pass_: Pass, kinds: Iterable[str], factor: float) -> Pass:
    times: Mapping[str, Any] = {kind: _scaled(getattr(pass_, kind), factor) for kind in kinds}
    return replace(pass_, **times)


def _scaled(length: timedelta, factor: float) -> timedelta:
    seconds = round(length.total_seconds() * factor)
    return timedelta(seconds=max(1, seconds)) if length else ZERO


def _instead(operation: Operation, change: Instead) -> Operation:
    check_per_cent(change.per_cent)
    check_rate(change.good_rate)
    timed = _timed(operation, KINDS_OF_TIME, change.per_cent)
    if change.good_rate is not None:
        timed = replace(timed, good_rate=change.good_rate)
    said = Instruction(change.name)
    if not change.name or change.means not in ("tool", "abrasive") or said in timed.instructions:
        return timed
    return replace(timed, instructions=(said, *timed.instructions), translations=MappingProxyType({}))


# another wait


def rested(product: Product, book: Book, change: Rested) -> Product:
    """The product with another wait after an operation. Refused 'try no wait' where it has none, or no finish whose label says
    how long, 'try label' with ``least`` where that asks for more, 'try the same'."""
    operation = next((one for one in product.operations if one.key == change.operation), None)
    label = None if operation is None else label_after(product, book, operation)
    if operation is None or operation.wait is None or label is None:
        raise Refused("try no wait")
    minutes = timedelta(minutes=change.minutes)
    if minutes < label:
        raise Refused("try label", least=label)
    if minutes == operation.wait.least:
        raise Refused("try the same")
    wait = replace(operation.wait, least=minutes)
    return _with_operation(product, change.operation, lambda found: replace(found, wait=wait))


def label_after(product: Product, book: Book, operation: Operation) -> timedelta | None:
    """How long the label of an operation's finish asks a tray to wait after it, whatever the route says; None where nobody read
    one."""
    finish = book.finish(operation.finish)
    if operation.wait is None or finish is None or not finish.sheet_date:
        return None
    nothing = Wait(operation.wait.why, ZERO)
    bare = _with_operation(product, operation.key, lambda one: replace(one, wait=nothing))
    step = next(step for step in Route(bare).steps if step.operation.key == operation.key and step.last_pass)
    wait = wait_after(book, Route(bare), step)
    return wait.least if wait is not None and wait.least else None


# another order


def pair_at(product: Product, first: str) -> tuple[Operation, Operation] | None:
    """An operation and the one after it; None where there is none."""
    return next((pair for pair in pairwise(product.operations) if pair[0].key == first), None)


def turned(product: Product, first: str) -> Product:
    """The operation ``first`` and the next change places. Refused 'try order' where one of them is bound."""
    pair = pair_at(product, first)
    if pair is None or is_bound(pair):
        raise Refused("try order")
    places = {pair[0].key: pair[1], pair[1].key: pair[0]}
    return replace(product, operations=tuple(places.get(each.key, each) for each in product.operations))


def is_bound(pair: tuple[Operation, Operation]) -> bool:
    """Whether neighbours cannot change places: a wait follows one, it has a finish, texts begin there, boards are cut."""
    return any(
        operation.wait
        or operation.finish
        or operation.personal
        or any(pass_.size == "board" for pass_ in operation.passes)
        for operation in pair
    )


# another load


def with_load(product: Product, change: LoadSize, a_tray: int, *, with_times: bool = False) -> Product:
    """The product with at most so many pieces on a load of a step. Refused 'try load size' for what is taken piece by piece or
    board by board, 'try load trays' where texts of several trays would be on a load, 'try load hands' where hands take tray by
    tray all the same, 'try the same'."""
    check_pieces(change.pieces)
    step = Route(product).step(change.step)
    if step is None or step.pass_.size in ("piece", "board"):
        raise Refused("try load size")
    several_trays = change.pieces > a_tray
    if several_trays and step.operation.personal:
        raise Refused("try load trays")
    if several_trays and not step.has_machine:
        raise Refused("try load hands")
    size = "run" if several_trays else step.pass_.size
    pass_ = replace(step.pass_, size=size, pieces=change.pieces)
    if pass_ == step.pass_:
        raise Refused("try the same")
    if with_times and change.grows:
        pass_ = replace(pass_, machine=_scaled(pass_.machine, load_factor(step, change, a_tray)), reckoned=None)
    passes = tuple(pass_ if one is step.pass_ else one for one in step.operation.passes)
    return _with_operation(product, step.operation.key, lambda found: replace(found, passes=passes))


def load_factor(step: Step, change: LoadSize, a_tray: int) -> float:
    """How many times as many pieces are on a load as now."""
    return change.pieces / (step.most_a_load or a_tray)


# one visit


def merged(product: Product, book: Book, first: str) -> Product:
    """The product with the hand work of the operation after ``first`` done right after it. Refused 'try visit' where a wait or
    a finish lies between them, the second has a machine, several passes or a bench of its own that is no plain one, or texts
    begin there."""
    pair = pair_at(product, first)
    if pair is None or not can_be_one_visit(book, *pair):
        raise Refused("try visit")
    both = _both(*pair)
    some = (both if operation is pair[0] else operation for operation in product.operations if operation is not pair[1])
    return replace(product, operations=tuple(some))


def can_be_one_visit(book: Book, one: Operation, other: Operation) -> bool:
    """Whether the second of two neighbours can be done where the first is, by whoever does that."""
    here, there = book.station(one.station), book.station(other.station)
    is_plain = one.station == other.station or (there is not None and there.kind == "bench" and not there.services)
    by_hand = len(other.passes) == 1 and not other.passes[0].machine
    extra = set(other.services) - set(one.services)  # which would be drawn on while the first's machine runs
    binds = (extra and one.passes[-1].machine) or one.wait or one.finish or (other.personal and not one.personal)
    skills = {skill for skill in (one.skill, other.skill) if skill}
    return here is not None and is_plain and by_hand and not binds and len(skills) < 2


def _both(one: Operation, other: Operation) -> Operation:
    last = one.passes[-1]
    rates = [rate for rate in (one.good_rate, other.good_rate) if rate is not None]
    taken = {check.key for check in one.checks}
    checks = (
        replace(each, key=each.key if each.key not in taken else f"{other.key}-{each.key}"[:40])
        for each in other.checks
    )
    return replace(
        one,
        name=f"{one.name}, {other.name}"[:NAME_LENGTH],
        passes=(*one.passes[:-1], together(last, other.passes[0])),
        services=tuple(dict.fromkeys((*one.services, *other.services))),
        wait=other.wait,
        finish=other.finish,
        skill=one.skill or other.skill,
        checklist=(*one.checklist, *other.checklist),
        setup_sheet=(*one.setup_sheet, *other.setup_sheet),
        checks=(*one.checks, *checks),
        cautions=tuple(dict.fromkeys((*one.cautions, *other.cautions))),
        uses=(*one.uses, *other.uses),
        instructions=(*one.instructions, *other.instructions),
        good_rate=(rates[0] * rates[-1] if len(rates) == 2 else rates[0]) if rates else None,
        guess=one.guess or other.guess,
        translations=MappingProxyType({}),
    )


def together(one: Pass, other: Pass) -> Pass:
    """One pass with the hand work of both: nothing is set up or loaded for the second."""
    return replace(one, hand=one.hand + other.hand)
