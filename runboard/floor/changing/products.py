"""Products of the book as a whole: one from a line of text, a copy of one, one taken out."""

from typing import Any

from runboard.floor.changing.route_change import copy_of, product_from_text
from runboard.floor.changing.shop_book import book_record, save_book
from runboard.floor.looking.at_hand import runs_now
from runboard.floor.workshop import Workshop
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from runboard.shop.book_json import product_to_json
from runboard.shop.product import Product

Record = dict[str, Any]


def add_product(workshop: Workshop, name: str, text: str, pieces_a_tray: int) -> str:
    """Put a product into the book; returns its key. Raises ``Unreadable`` for the line, ``BookError`` for the name."""
    with workshop.lock:
        record = book_record(workshop)
        product = product_from_text(workshop.book, name, text, pieces_a_tray)
        record["products"].append(product_to_json(product))
        save_book(workshop, record)
    return product.key


def copy_product(workshop: Workshop, key: str) -> str:
    """Another product with the same route, to be changed; returns its key. Refused 'product unknown'."""
    with workshop.lock:
        record = book_record(workshop)
        old = record["products"][product_place(record, key)]
        names = {product["name"] for product in record["products"]}
        name = next(
            new for at in range(1, 1000) if (new := f"{old['name'][:180]}, copy{f' {at}' * (at > 1)}") not in names
        )
        fresh = copy_of(old, name, {product["key"] for product in record["products"]})
        record["products"].append(fresh)
        save_book(workshop, record)
    return str(fresh["key"])


def remove_product(workshop: Workshop, key: str) -> None:
    """Take a product out of the book; its runs keep their route. Refused 'product unknown'."""
    with workshop.lock:
        record = book_record(workshop)
        del record["products"][product_place(record, key)]
        save_book(workshop, record)


def product_place(record: Record, key: str) -> int:
    """Where in the book's record a product stands. Refused 'product unknown'."""
    keys = [product["key"] for product in record["products"]]
    if key not in keys:
        raise Refused("product unknown", product=key)
    return keys.index(key)


def runs_by_another_route(workshop: Workshop, product: Product) -> list[RunState]:
    """The open runs of a product that go by another route than it has in the book now."""
    of_it = [run for run in runs_now(workshop) if run.state == "open" and run.product == product.key]
    return [run for run in of_it if run.route.product.operations != product.operations]
