"""The Plan screen: products and runs, and a product from one line of text."""

from typing import Any

from flask import Blueprint, Flask, Response, abort, request

from runboard.floor.changing.route_change import copy_of, product_from_text
from runboard.floor.changing.shop_book import book_record, save_book
from runboard.floor.warm import catch_up
from runboard.run.fold.state import RunState
from runboard.shop.book import Book, Product
from runboard.shop.book_json import BookError, product_to_json
from runboard.shop.numbers import whole_number
from runboard.shop.problem import Unreadable
from runboard.shop.route_text import route_to_text
from runboard.web.door.pages import number_asked, page, see_other, workshop
from runboard.web.door.pictures import take_pictures
from runboard.web.forms.form import Form, posted, shown
from runboard.web.forms.operation import product_form
from runboard.web.forms.saving import Record, save_form, seen
from runboard.web.plan.route_words import route_lines
from runboard.web.plan.schedule import planner
from runboard.web.plan.section import when_section

EXAMPLE = "cut 40, clean up 5, sand 25, engrave 20, oil, overnight, hooks 10"

part = Blueprint("plan", __name__)


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_blueprint(part)


def book() -> Book:
    """The book as it is now."""
    shop = workshop()
    catch_up(shop)
    return shop.book


@part.get("/plan")
def plan() -> Response:
    """When it will be done; products, open runs and those that are over."""
    now = book()
    at_hand = planner()
    runs = list(workshop().ledger.state.runs.values())
    return page(
        "plan/plan.html",
        book=now,
        when=when_section(at_hand.latest(), number_asked("from")) if at_hand is not None else None,
        open_runs=[run for run in runs if run.state == "open"],
        past_runs=[run for run in reversed(runs) if run.state != "open"],
        texts={one.key: route_to_text(one.operations, now.stations, one.pieces_a_tray) for one in now.products},
    )


# a new product


@part.get("/plan/products/new")
def new_product() -> Response:
    """One name and one line of text."""
    return _new_page({})


@part.post("/plan/products/preview")
def preview_product() -> Response:
    """The route that the line says so far."""
    return _new_page(request.form, block="preview")


@part.post("/plan/products/new")
def add_product() -> Response:
    """Put the product into the book; it is usable at once."""
    typed = request.form
    if not typed.get("name", "").strip():
        return _new_page(typed, status=422, wrong={"name": "Write something here."})
    try:
        product = _typed_product(typed)
        shop = workshop()
        with shop.lock:
            record = book_record(shop)
            product = _typed_product(typed)
            record["products"].append(product_to_json(product))
            save_book(shop, record)
    except Unreadable as unreadable:
        return _new_page(typed, status=422, wrong={"text": str(unreadable)})
    except BookError as error:
        return _new_page(typed, status=422, wrong={"name": error.problems[0].sentence})
    return see_other(f"/plan/products/{product.key}")


def _typed_product(typed: Record) -> Product:
    a_tray = str(typed.get("pieces_a_tray", ""))
    pieces = whole_number(a_tray, 1000) or 5
    return product_from_text(book(), str(typed.get("name", "")), str(typed.get("text", "")), pieces)


def _new_page(typed: Record, status: int = 200, block: str = "", wrong: Record | None = None) -> Response:
    lines, unread = [], ""
    if str(typed.get("text", "")).strip():
        try:
            lines = route_lines(_typed_product(typed), book())
        except Unreadable as unreadable:
            unread = str(unreadable)
    return page(
        "plan/new_product.html", block, status, book=book(), typed=typed, lines=lines, unread=unread,
        wrong=wrong or {}, example=EXAMPLE,
    )  # fmt: skip


# one product


@part.get("/plan/products/<key>")
def product(key: str) -> Response:
    """A product with its route."""
    return _product_page(key, _shown(key, book_record(workshop())))


@part.post("/plan/products/<key>")
def save_product(key: str) -> Response:
    """Save its name, pieces a tray, wood and picture."""
    at = product_place(book_record(workshop()), key)
    form = posted(product_form(book_record(workshop())), take_pictures(request.form, request.files))
    form.seen = seen()

    def change(record: Record) -> None:
        record["products"][product_place(record, key)].update(form.record())

    def about(record: Record) -> object:
        return [
            {name: one[name] for name in ("name", "pieces_a_tray", "wood", "picture")} for one in _named(record, key)
        ]

    save = not form.is_wrong
    if save and save_form(form, change, about, f"products[{at}]", lambda record: _shown(key, record)):
        return see_other(f"/plan/products/{key}")
    return _product_page(key, form, 422)


@part.post("/plan/products/<key>/copy")
def copy_product(key: str) -> Response:
    """Another product with the same route, to be changed."""
    shop = workshop()
    with shop.lock:
        record = book_record(shop)
        old = record["products"][product_place(record, key)]
        names = {one["name"] for one in record["products"]}
        name = next(
            new for at in range(1, 1000) if (new := f"{old['name'][:180]}, copy{f' {at}' * (at > 1)}") not in names
        )
        fresh = copy_of(old, name, {one["key"] for one in record["products"]})
        record["products"].append(fresh)
        save_book(shop, record)
    return see_other(f"/plan/products/{fresh['key']}")


@part.post("/plan/products/<key>/remove")
def remove_product(key: str) -> Response:
    """Take a product out of the book. Its runs keep their route."""
    shop = workshop()
    with shop.lock:
        record = book_record(shop)
        del record["products"][product_place(record, key)]
        save_book(shop, record)
    return see_other("/plan")


def product_place(record: Record, key: str) -> int:
    """Where in the record a product stands; 404 where it is not there."""
    keys = [one["key"] for one in record["products"]]
    return keys.index(key) if key in keys else abort(404)


def _named(record: Record, key: str) -> list[Record]:
    return [one for one in record["products"] if one["key"] == key]


def _shown(key: str, record: Record) -> Form:
    form = shown(product_form(record), record["products"][product_place(record, key)])
    form.seen = record["revision"]
    return form


def _product_page(key: str, form: Form, status: int = 200) -> Response:
    now = book()
    found = now.product(key)
    if found is None:
        abort(404)
    context: dict[str, Any] = {
        "product": found,
        "lines": route_lines(found, now),
        "older": _older(found),
        "base": f"/plan/products/{key}",
    }
    return page("plan/product.html", status=status, form=form, **context)


def _older(product: Product) -> list[RunState]:
    """The open runs of a product that go by another route than it has in the book now."""
    runs = workshop().ledger.state.runs.values()
    of_it = [run for run in runs if run.state == "open" and run.product == product.key]
    return [run for run in of_it if run.route.product.operations != product.operations]
