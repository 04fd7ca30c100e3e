"""The traveller of a tray, made from the state."""

from collections import defaultdict
from collections.abc import Callable
from datetime import datetime

from runboard.cards.foot import foot_of
from runboard.cards.model import Link, Traveller
from runboard.cards.work import pieces_in, work_on
from runboard.run.fold.state import Order, RunState, Tray
from runboard.shop.book import Book
from runboard.words.card import Speech

Links = Callable[[str, str], Link]


def traveller(book: Book, run: RunState, tray: Tray, links: Links, speech: Speech, number: int = 0) -> Traveller:
    """The card that goes with a tray, as things are now. ``number`` says which print it is; without it the next one."""
    route = run.route_of(tray)
    orders = orders_of(run, tray)
    return Traveller(
        tray=tray.id,
        run=run.name,
        product=route.product.name,
        about=about_tray(run, tray, speech),
        due=_due(orders, bool(tray.places), speech),
        orders=tuple(_order(due, lines, speech) for due, lines in orders.items()) if tray.places else (),
        works=tuple(work_on(book, run, tray, operation, speech) for operation in route.product.operations),
        link=links(run.id, tray.id),
        foot=foot_of(book, run, speech, tray.revision, number or tray.print + 1),
        picture=route.product.picture,
    )


def about_tray(run: RunState, tray: Tray, speech: Speech) -> tuple[str, ...]:
    """'5 pieces', 'ash', 'tray 4 of 9'."""
    wood = tray.wood or run.wood
    return tuple(
        part
        for part in (
            speech("card-pieces", pieces=pieces_in(tray)),
            wood,
            speech("card-tray-of", trays=len(run.trays)),
        )
        if part
    )


def orders_of(run: RunState, tray: Tray) -> dict[datetime | None, list[tuple[Order, int]]]:
    """The order lines of a tray's pieces by due moment, earliest first: its own once its pieces carry texts, else all of
    the run's, since good pieces are allotted to orders only when they are done."""
    mine: dict[str, int] = defaultdict(int)
    for line, _ in tray.places.values():
        mine[line] += 1
    found: dict[datetime | None, list[tuple[Order, int]]] = defaultdict(list)
    for order in run.orders:
        pieces = mine.get(order.line, 0) if mine else order.pieces
        if pieces:
            found[order.due].append((order, pieces))
    return dict(sorted(found.items(), key=lambda one: (one[0] is None, one[0].timestamp() if one[0] else 0)))


def _due(orders: dict[datetime | None, list[tuple[Order, int]]], placed: bool, speech: Speech) -> str:
    """When the tray's own pieces are due first, or the run's as long as no order line is theirs."""
    dates = [due for due in orders if due]
    if not dates:
        return ""
    if placed:
        return speech("card-due", at=speech.moment(dates[0]))
    if len(dates) == 1:
        return speech("card-run-due", at=speech.moment(dates[0]))
    return speech("card-run-due-over", first=speech.moment(dates[0]), last=speech.moment(dates[-1]))


def _order(due: datetime | None, lines: list[tuple[Order, int]], speech: Speech) -> str:
    """'2 for Thu 17:00: Meyer, No. 12'."""
    pieces = sum(pieces for _, pieces in lines)
    said = speech("card-order-dated", pieces=pieces, at=speech.moment(due)) if due else ""
    whom = dict.fromkeys(order.whom or order.line for order, _ in lines)
    return f"{said or speech('card-order-undated', pieces=pieces)}: {', '.join(whom)}"
