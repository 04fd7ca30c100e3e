"""Changing a route, of a product in the book or of a run on the way: operations put in, taken out, in another order.

The functions on a product work on its JSON record and change it in place; the validator has the last word.
"""

import copy
from collections.abc import Callable
from datetime import timedelta
from typing import Any

from runboard.floor.changing.runs import new_event
from runboard.floor.pressing.taps import record_events
from runboard.floor.warm import find_run
from runboard.floor.workshop import Workshop
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.book_json import operation_to_json, product_from_json, product_to_json
from runboard.shop.durations import parse_duration
from runboard.shop.keys import key_for
from runboard.shop.limits import check_route_limits
from runboard.shop.problem import Unreadable
from runboard.shop.product import Product
from runboard.shop.route_text import route_from_text

Record = dict[str, Any]


def product_from_text(book: Book, name: str, text: str, pieces_a_tray: int = 5) -> Product:
    """A product from its name and a line of text, its key unlike those in the book. ``Unreadable`` where the line is."""
    key = key_for(name, {product.key for product in book.products})
    return Product(key, name.strip(), route_from_text(text, book.stations, pieces_a_tray), pieces_a_tray)


def copy_of(record: Record, name: str, taken: set[str]) -> Record:
    """Another product with the same route."""
    return {**copy.deepcopy(record), "key": key_for(name, taken), "name": name}


def put_operation(product: Record, key: str, operation: Record) -> None:
    """Put an operation in the place of the one with this key. A pass or check without a key gets one from its name. What a pass's
    machine time was reckoned from stays while that time does."""
    at = place_of(product, key)
    before = {pass_["key"]: pass_ for pass_ in product["operations"][at]["passes"]}
    product["operations"][at] = {**product["operations"][at], **operation, "key": key}
    for part in (*product["operations"][at]["passes"], *product["operations"][at]["checks"]):
        part["key"] = part.get("key") or ""
    for several, name in (("passes", "name"), ("checks", "text")):
        for part in product["operations"][at][several]:
            taken = {other["key"] for other in product["operations"][at][several]}
            part["key"] = part["key"] or key_for(str(part.get(name) or "1"), taken)
    for pass_ in product["operations"][at]["passes"]:
        old = before.get(pass_["key"], {})
        if old.get("reckoned") and "reckoned" not in pass_ and _is_same_time(old, pass_):
            pass_["reckoned"] = old["reckoned"]


def _is_same_time(one: Record, other: Record) -> bool:
    """Whether two passes' machine times are one, however they are written. What cannot be read is another."""
    try:
        found = [
            parse_duration(said) if isinstance(said, str) else timedelta(minutes=said)
            for said in (one.get("machine_minutes", 0), other.get("machine_minutes", 0))
        ]
    except Unreadable:
        return False
    return found[0] == found[1]


def add_steps(product: Record, book: Book, text: str, after: str = "") -> None:
    """Put the operations that a line of text says behind the one named, or at the end. ``Unreadable`` where it is none."""
    taken = {operation["key"] for operation in product["operations"]}
    fresh = []
    for operation in route_from_text(text, book.stations, product["pieces_a_tray"]):
        record = operation_to_json(operation)
        if record["key"] in taken:
            record["key"] = key_for(operation.name, taken)
        taken.add(record["key"])
        fresh.append(record)
    at = place_of(product, after) + 1 if after else len(product["operations"])
    product["operations"][at:at] = fresh


def remove_operation(product: Record, key: str) -> None:
    """Take an operation out. Refused 'last operation'."""
    at = place_of(product, key)
    if len(product["operations"]) == 1:
        raise Refused("last operation")
    del product["operations"][at]


def move_earlier(product: Record, key: str) -> None:
    """Let an operation change places with the one before it; the first stays."""
    at = place_of(product, key)
    operations = product["operations"]
    operations[max(0, at - 1) : at + 1] = reversed(operations[max(0, at - 1) : at + 1])


def place_of(product: Record, key: str) -> int:
    """Where in the route an operation stands, from 0. Refused 'operation unknown'."""
    for at, operation in enumerate(product["operations"]):
        if operation["key"] == key:
            return at
    raise Refused("operation unknown", operation=key)


def run_product(workshop: Workshop, run: str) -> Record:
    """The route of a run as its last revision has it, as a record. Refused 'run unknown'."""
    return product_to_json(find_run(workshop, run).route.product)


def revise_route(
    workshop: Workshop, run: str, change: Callable[[Record], None], from_tray: str, why: str = "", person: str = ""
) -> None:
    """Change the route of a run on the way, from a tray on.

    Raises ``BookError`` where the route is wrong; refused 'would strand' where pieces are at an operation that it
    lacks, 'would repeat' where they have done one that comes after it.
    """
    with workshop.lock:
        product = run_product(workshop, run)
        change(product)
        checked = product_from_json(product, workshop.book)
        check_route_limits(workshop.book, checked)
        body = {"product": product_to_json(checked), "from_tray": from_tray, **({"why": why} if why else {})}
        fields = {"run": run, "person": person, "device": "server"}
        record_events(workshop, [new_event(workshop, "route revised", body, **fields)])


def first_untouched(run: RunState) -> str:
    """The tray from which on nothing has been begun, else the last: where a change of the route does least."""
    trays = list(run.trays.values())
    for at, tray in enumerate(trays):
        if not any(tray.counts or tray.busy for tray in trays[at:]):
            return tray.id
    return trays[-1].id if trays else ""
