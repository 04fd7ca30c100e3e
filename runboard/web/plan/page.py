"""The Plan screen: products and runs, when it will be done, and a product from one line of text."""

from datetime import datetime
from typing import Any

from flask import Blueprint, Response, abort, render_template, request
from markupsafe import Markup

from runboard.floor.changing import products
from runboard.floor.changing.first_evening import first_steps
from runboard.floor.changing.route_change import product_from_text
from runboard.floor.changing.shop_book import book_record
from runboard.floor.looking.at_hand import as_read, book_now, made_once, runs_now
from runboard.floor.looking.files_looked_at import files_looked_at
from runboard.floor.looking.shopping import shopping_now
from runboard.floor.planning.plans import ShownPlan
from runboard.run.refusal import Refused
from runboard.shop.book_json import BookError
from runboard.shop.numbers import whole_number
from runboard.shop.problem import Unreadable
from runboard.shop.product import Product
from runboard.shop.route_text import UnclearLoad, route_to_text, unclear_loads, with_loads
from runboard.web.door.pages import number_asked, page, see_other, workshop
from runboard.web.door.pictures import take_pictures
from runboard.web.door.run_pages import known_person
from runboard.web.fittings import fittings
from runboard.web.forms.form import Form, posted, shown
from runboard.web.forms.kinds import kinds_shown
from runboard.web.forms.operation import product_form, product_said
from runboard.web.forms.saving import Record, save_form, seen
from runboard.web.plan.schedule import gave_up, planner
from runboard.web.plan.when import when_done
from runboard.words.before.stock import made_of
from runboard.words.before.supplies import top_in_words
from runboard.words.route import route_lines
from runboard.words.sentences import sentence

EXAMPLE = "cut 40 board of 10, clean up 5, sand 25, engrave 20 a tray, oil, overnight, hooks 10"

part = Blueprint("plan", __name__)


@part.get("/plan")
def plan() -> Response:
    """When it will be done; products, open runs and those that are over."""
    runs, now, at_hand = runs_now(workshop()), book_now(workshop()), planner()
    return page(
        "plan/plan.html",
        book=now,
        first_steps=first_steps(workshop()),
        runs_out=top_in_words(shopping_now(workshop())),
        when=_when(at_hand.latest(), number_asked("from")) if at_hand is not None else None,
        open_runs=[(run, sum(order.pieces for order in run.orders)) for run in runs if run.state == "open"],
        past_runs=[run for run in reversed(runs) if run.state != "open"],
        texts={
            product.key: route_to_text(product.operations, now.stations, product.pieces_a_tray)
            for product in now.products
        },
    )


def _when(shown: ShownPlan | None, first: int) -> Markup:
    """The section about when it will be done, its chart from the sitting ``first`` on, for whoever asks: twelve reloads of
    the same plan render it once."""

    def made() -> Markup:
        return Markup(render_template("plan/_when.html", when=when_done(shown, first)))  # noqa: S704 - escaped there

    return made_once(workshop(), "when", (known_person(), first), _stands(shown), made)


def _stands(shown: ShownPlan | None) -> tuple[Any, ...]:
    """Everything that the section says, so that another is rendered where any of it is another."""
    shop = workshop()
    now: datetime = shop.clock.now().replace(second=0, microsecond=0)
    if shown is None:
        return now, gave_up(), _Same(shop.planned)
    book, known = as_read(shop)
    runs = [(run.id, run.name, run.state, run.orders, len(run.revisions)) for run in known.values()]
    calmer = shown.planned.calmer
    return now, gave_up(), _Same(shown.figures), _Same(shown.plan), calmer, shown.is_older, book.revision, runs


class _Same:
    """Equal to itself alone, and kept as long as it is compared with."""

    def __init__(self, thing: Any) -> None:
        self._thing = thing

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Same) and other._thing is self._thing

    def __hash__(self) -> int:
        return id(self._thing)


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
        return _new_page(typed, status=422, wrong={"name": sentence("plan-nameless")})
    try:
        if unsaid := _loads(typed)[1]:
            return _new_page(
                typed, status=422, wrong={f"load.{number}": sentence("plan-load-unsaid") for number in unsaid}
            )
        key = products.add_product(workshop(), *_typed(typed))
    except Unreadable as unreadable:
        return _new_page(typed, status=422, wrong={"text": str(unreadable)})
    except BookError as error:
        return _new_page(typed, status=422, wrong={"name": error.problems[0].sentence})
    return see_other(f"/plan/products/{key}")


def _typed(typed: Record) -> tuple[str, str, int]:
    """Name, line of text and pieces a tray."""
    a_tray = whole_number(str(typed.get("pieces_a_tray", "")), 1000) or 5
    text, stations = str(typed.get("text", "")), book_now(workshop()).stations
    loads = _loads(typed)[0]
    return str(typed.get("name", "")), with_loads(text, loads, stations, a_tray) if loads else text, a_tray


def _loads(typed: Record) -> tuple[dict[int, int], list[int]]:
    """How many pieces go on at once at the machines that the line does not say it of: what was typed, and what was not."""
    unclear = unclear_loads(str(typed.get("text", "")), book_now(workshop()).stations)
    said = {one.number: whole_number(str(typed.get(f"load.{one.number}", "")), 1000) for one in unclear}
    return {number: pieces for number, pieces in said.items() if pieces}, [
        number for number, pieces in said.items() if not pieces
    ]


def _new_page(typed: Record, status: int = 200, block: str = "", wrong: Record | None = None) -> Response:
    now, lines, unread = book_now(workshop()), [], ""
    unclear: tuple[UnclearLoad, ...] = ()
    if str(typed.get("text", "")).strip():
        try:
            unclear = unclear_loads(str(typed["text"]), now.stations)
            lines = route_lines(product_from_text(now, *_typed(typed)), now)
        except Unreadable as unreadable:
            unread = str(unreadable)
    return page(
        "plan/new_product.html", block, status, book=now, typed=typed, lines=lines, unread=unread,
        wrong=wrong or {}, example=EXAMPLE, unclear=unclear, first_steps=first_steps(workshop()),
    )  # fmt: skip


# one product


@part.get("/plan/products/<key>")
def product(key: str) -> Response:
    """A product with its route."""
    return _product_page(key, _shown(key, book_record(workshop())))


@part.post("/plan/products/<key>")
def save_product(key: str) -> Response:
    """Save its name, pieces a tray, wood, picture and what it is made of."""
    at = product_place(book_record(workshop()), key)
    book = book_record(workshop())
    form = posted(product_form(book), take_pictures(request.form, request.files), book["units"])
    form.seen = seen()

    def change(record: Record) -> None:
        record["products"][product_place(record, key)].update(product_said(form.record()))

    def about(record: Record) -> object:
        return [
            {name: product[name] for name in ("name", "pieces_a_tray", "wood", "picture", "piece")}
            for product in _named(record, key)
        ]

    save = not form.is_wrong
    if save and save_form(form, change, about, f"products[{at}]", lambda record: _shown(key, record)):
        return see_other(f"/plan/products/{key}")
    return _product_page(key, form, 422)


@part.post("/plan/products/<key>/copy")
def copy_product(key: str) -> Response:
    """Another product with the same route, to be changed."""
    product_place(book_record(workshop()), key)
    return see_other(f"/plan/products/{products.copy_product(workshop(), key)}")


@part.post("/plan/products/<key>/remove")
def remove_product(key: str) -> Response:
    """Take a product out of the book. Its runs keep their route."""
    product_place(book_record(workshop()), key)
    products.remove_product(workshop(), key)
    return see_other("/plan")


def product_place(record: Record, key: str) -> int:
    """Where in the record a product stands; 404 where it is not there."""
    try:
        return products.product_place(record, key)
    except Refused:
        abort(404)


def _named(record: Record, key: str) -> list[Record]:
    return [product for product in record["products"] if product["key"] == key]


def _shown(key: str, record: Record) -> Form:
    form = shown(product_form(record), record["products"][product_place(record, key)], record["units"])
    form.seen = record["revision"]
    return form


def _product_page(key: str, form: Form, status: int = 200) -> Response:
    now = book_now(workshop())
    found: Product = now.product(key) or abort(404)
    context: dict[str, Any] = {
        "product": found,
        "lines": route_lines(found, now, files_looked_at(fittings().settings)),
        "older": products.runs_by_another_route(workshop(), found),
        "home": {"base": f"/plan/products/{key}"},
        "before": kinds_shown(),
        "first_steps": first_steps(workshop()),
        "made_of": made_of(now, found.piece) if found.piece else "",
    }
    return page("plan/product.html", status=status, form=form, typed={}, **context)
