"""Runs as a whole: opening one, from a product and order lines or as a copy of an old one; closing it."""

import hashlib
import uuid
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from runboard.floor.pressing.taps import record_events
from runboard.floor.warm import catch_up, find_run
from runboard.floor.workshop import Workshop
from runboard.plan.opening import Opening, board_pieces, counted_before, lay_out, plan_opening
from runboard.run.fold.state import RunState
from runboard.run.log.ahead import after_all
from runboard.run.log.event import Event
from runboard.run.log.form import check_form
from runboard.run.refusal import Refused
from runboard.run.rules.allotted import TICKS, lines_of
from runboard.shop.book_json import product_to_json
from runboard.shop.numbers import whole_number
from runboard.shop.product import Product


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
            "trays": [_tray(tray.tray, tray.pieces, tray.at) for tray in opening.trays],
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


def open_run_once(workshop: Workshop, wish: Wish, once: str, person: str = "") -> str:
    """The same for a form that may come twice: with the same ``once`` it opens one run."""
    with workshop.lock:
        opened: dict[str, str] = workshop.kept.setdefault("opened", {})
        if not once or once not in opened:
            opened[once] = open_run(workshop, wish, person)
        return opened[once]


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


def product_to_run(workshop: Workshop, product: str, copied_from: str = "") -> Product | None:
    """The product of the book, or for a copy whose product the book has lost the one of the old run."""
    catch_up(workshop)
    copied = workshop.ledger.state.runs.get(copied_from)
    return workshop.book.product(product) or (copied.route.product if copied is not None else None)


def _product(workshop: Workshop, wish: Wish) -> Product:
    product = product_to_run(workshop, wish.product, wish.copied_from)
    if product is None:
        raise Refused("product unknown", product=wish.product)
    if not product.operations:
        raise Refused("route empty", product=product.name)
    return product


def wish_from_run(workshop: Workshop, run: str) -> Wish:
    """The wish that opened a run, to open another like it: its orders without their due moments."""
    state = find_run(workshop, run)
    orders = [
        {"line": order.line, "pieces": order.pieces, "for": order.whom, "text": order.text} for order in state.orders
    ]
    return Wish(state.product, orders, wood=state.wood, certainty=state.certainty, copied_from=run)


def orders_tag(run: RunState) -> str:
    """What the order lines are, shortened: a form filled from others is outdated."""
    return hashlib.sha256(repr(run.orders).encode()).hexdigest()[:16]


def set_orders(workshop: Workshop, run: str, orders: Sequence[Mapping[str, Any]], person: str) -> None:
    """The order lines are now these. Refused 'nothing wanted'."""
    if not orders:
        raise Refused("nothing wanted")
    _happened(workshop, run, "orders changed", {"orders": list(orders)}, person)


def tick_order(
    workshop: Workshop, run: str, line: str, tick: str, on: bool, person: str, *, some: bool = False
) -> None:
    """An order line is packed, collected or paid, or is not after all; ``some``: as much of it as is ready, which is noted.
    Refused 'line unknown', 'form', 'none ready', 'some ready'."""
    found = next((each for each in lines_of(find_run(workshop, run)) if each.order.line == line), None)
    pieces = found.taken_by(tick, some) if found is not None and on and tick in TICKS else 0
    body = {"line": line, "tick": tick, "on": on} | ({"pieces": pieces} if pieces else {})
    _happened(workshop, run, "order ticked", body, person)


def add_board(workshop: Workshop, run: str, person: str) -> None:
    """One more full board, with new trays behind the last."""
    _happened(workshop, run, "board added", next_board(find_run(workshop, run)), person)


def lose_board(workshop: Workshop, run: str, board: str, why: str, person: str) -> None:
    """A board is lost: its pieces that are not cut yet become scrap."""
    _happened(workshop, run, "board lost", {"board": board, "why": why}, person)


def _happened(workshop: Workshop, run: str, kind: str, body: Mapping[str, Any], person: str) -> None:
    record_events(workshop, [new_event(workshop, kind, body, run=run, person=person, device="server")])


def next_board(run: RunState) -> dict[str, Any]:
    """The body of 'board added' for one more full board: its key, and its trays."""
    step, pieces = run.route.steps[0], board_pieces(run.route) or 1
    number = max((whole_number(key.split("/")[-1]) or 0 for key in run.boards), default=0) + 1
    last = max((whole_number(tray) or 0 for tray in run.trays), default=0)
    a_tray = max((tray.started for tray in run.trays.values()), default=run.route.product.pieces_a_tray)
    trays, _ = lay_out(run.route, pieces, a_tray or 1, pieces)
    return {
        "board": f"{step.key}/{number}",
        "pieces": {str(last + at): count for at, (_, count) in enumerate(trays, 1)},
    }


def losable_boards(run: RunState) -> list[str]:
    """The boards of which something is not cut yet."""
    uncut = [step.key for step in run.route.steps[:1]]
    return [key for key, fed in run.boards.items() if any(run.trays[tray].free(step) for tray in fed for step in uncut)]


def close_run(workshop: Workshop, run: str, kind: str, person: str = "", note: str = "") -> None:
    """'run finished' or 'run abandoned'."""
    body = {"note": note} if kind == "run finished" else {"why": note}
    catch_up(workshop)
    _happened(workshop, run, kind, body, person)
