"""Runs as a whole: opening one, from a product and order lines or as a copy of an old one; closing it."""

import uuid
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from runboard.floor.pressing.taps import record_events
from runboard.floor.warm import catch_up, find_run
from runboard.floor.workshop import Workshop
from runboard.plan.opening import Opening, counted_before, plan_opening
from runboard.run.log.ahead import after_all
from runboard.run.log.event import Event
from runboard.run.log.form import check_form
from runboard.run.refusal import Refused
from runboard.shop.book import Product
from runboard.shop.book_json import product_to_json
from runboard.shop.numbers import whole_number


@dataclass(frozen=True)
class Wish:
    """A run that somebody wants. ``orders`` are records ``{line, pieces, for?, text?, due?}``; ``begun`` puts trays
    half-way (tray → step); ``start`` overrules how many pieces begin."""

    product: str
    orders: Sequence[Mapping[str, Any]]
    name: str = ""
    wood: str = ""
    pieces_a_tray: int | None = None
    certainty: float = 0.9
    begun: Mapping[str, str] = field(default_factory=dict)
    start: int | None = None
    copied_from: str = ""


def look_ahead(workshop: Workshop, wish: Wish) -> Opening:
    """What opening this run would make; nothing is stored. Refused where product or numbers are wrong."""
    catch_up(workshop)
    product = _product(workshop, wish)
    wanted = sum(int(order["pieces"]) for order in wish.orders)
    counted = counted_before(workshop.ledger.state, product.key)
    return plan_opening(product, wanted, wish.certainty, wish.pieces_a_tray, counted, wish.begun, wish.start)


def open_run(workshop: Workshop, wish: Wish, person: str = "", device: str = "server") -> str:
    """Open a run; returns its id. Refused where something is wrong, and then nothing is stored."""
    with workshop.lock:
        opening = look_ahead(workshop, wish)
        product = _product(workshop, wish)
        run = next_run(workshop)
        body: dict[str, Any] = {
            "name": wish.name.strip() or f"{product.name}, run {run[1:]}",
            "product": product_to_json(product),
            "orders": [dict(order) for order in wish.orders],
            "trays": [_tray(one.tray, one.pieces, one.at) for one in opening.trays],
            "boards": {key: dict(pieces) for key, pieces in opening.boards.items()},
            "wood": wish.wood or product.wood,
            "pieces_a_tray": wish.pieces_a_tray or product.pieces_a_tray,
            "certainty": wish.certainty,
            "good_rate": opening.good_rate.rate,
            "good_rate_from": opening.good_rate.said,
            "book_revision": workshop.book.revision,
        }
        if wish.copied_from:
            body["copied_from"] = wish.copied_from
        record_events(workshop, [new_event(workshop, "run opened", body, run=run, person=person, device=device)])
    return run


def _tray(tray: str, pieces: int, at: str) -> dict[str, Any]:
    return {"tray": tray, "pieces": pieces, **({"at": at} if at else {})}


def next_run(workshop: Workshop) -> str:
    """The id of the next run: r1, r2, …"""
    numbers = [whole_number(key[1:]) or 0 for key in workshop.ledger.state.runs]
    return f"r{max(numbers, default=0) + 1}"


def new_event(workshop: Workshop, kind: str, body: Mapping[str, Any], **fields: Any) -> Event:
    """An event that the server makes now, after all that is known; its form is checked."""
    at = after_all(workshop.ledger.held, workshop.clock.now())
    record = {"id": uuid.uuid4().hex, "kind": kind, "at": at.isoformat(), "body": dict(body)}
    return check_form({**record, **fields})


def _product(workshop: Workshop, wish: Wish) -> Product:
    """The product of the book, or for a copy whose product the book has lost the one of the old run."""
    product = workshop.book.product(wish.product)
    if product is None and wish.copied_from in workshop.ledger.state.runs:
        product = workshop.ledger.state.runs[wish.copied_from].route.product
    if product is None:
        raise Refused("product unknown", product=wish.product)
    if not product.operations:
        raise Refused("route empty", product=product.name)
    return product


def wish_from_run(workshop: Workshop, run: str) -> Wish:
    """The wish that opened a run, to open another like it: its orders without their due moments."""
    state = find_run(workshop, run)
    orders = [{"line": one.line, "pieces": one.pieces, "for": one.whom, "text": one.text} for one in state.orders]
    return Wish(state.product, orders, wood=state.wood, certainty=state.certainty, copied_from=run)


def close_run(workshop: Workshop, run: str, kind: str, person: str = "", note: str = "") -> None:
    """'run finished' or 'run abandoned'."""
    body = {"note": note} if kind == "run finished" else {"why": note}
    catch_up(workshop)
    record_events(workshop, [new_event(workshop, kind, body, run=run, person=person, device="server")])
