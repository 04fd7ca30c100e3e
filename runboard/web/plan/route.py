"""One route's operations through forms, for a product in the book and for a run on its way alike."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from flask import Blueprint, Response, abort, request

from runboard.floor.changing.route_change import (
    add_steps,
    first_untouched,
    move_earlier,
    put_operation,
    remove_operation,
    revise_route,
    run_product,
)
from runboard.floor.changing.shop_book import book_record, record_at_work
from runboard.floor.looking.at_hand import book_now
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from runboard.shop.book_json import BookError, product_from_json
from runboard.shop.problem import Unreadable
from runboard.web.door.pages import page, refusal, said, see_other, workshop
from runboard.web.door.pictures import take_pictures
from runboard.web.door.run_pages import known_person, known_run
from runboard.web.forms.form import Form, posted, shown
from runboard.web.forms.operation import operation_form, operation_said, operation_shown, spread_steps
from runboard.web.forms.saving import Record, save_form, seen
from runboard.words.route import route_lines

About = Callable[[Record], object]

part = Blueprint("plan_route", __name__)


@dataclass(frozen=True)
class Home:
    """Where a route lives: in the book, or in a ``run`` on its way, in which every change is an event that says from which
    tray on it holds. ``product`` is its record; ``place`` says where in the book's that stands, '' for a run's."""

    base: str
    product: Record
    revision: int
    place: str = ""
    run: RunState | None = None

    @property
    def back(self) -> str:
        return self.base if self.run is None else f"{self.base}/route"

    @property
    def screen_title(self) -> str:
        return str(self.product["name"]) if self.run is None else self.run.name

    @property
    def from_tray(self) -> str:
        """The tray that the form names, else the first one that nobody has begun; '' in the book."""
        return "" if self.run is None else request.form.get("from_tray") or first_untouched(self.run)

    def at(self, operation: str) -> str:
        """Where in the route's record an operation stands, '' for none."""
        keys = [operation["key"] for operation in self.product["operations"]]
        return f".operations[{keys.index(operation)}]" if operation in keys else ""


def home_of(where: str, key: str) -> Home:
    """The home of a route by its address: 'products' or 'runs', and the key. 404 for what nobody knows."""
    if where == "runs":
        product, run = run_product(workshop(), key), known_run(key)
        return Home(f"/plan/runs/{key}", product, len(run.revisions), run=run)
    record = book_record(workshop())
    keys = [product["key"] for product in record["products"]]
    at = keys.index(key) if key in keys else abort(404)
    return Home(f"/plan/products/{key}", record["products"][at], record["revision"], f"products[{at}]")


def save(home: Home, form: Form, change: Callable[[Record], None], about: About, operation: str = "") -> bool:
    """Whether a change of the route was put in its home; if not, the form says why."""
    if home.run is not None:
        return _revise(home, home.run, form, change, operation)
    key = home.product["key"]

    def within(latest: Record) -> None:
        change(next(product for product in latest["products"] if product["key"] == key))

    def shown_of(latest: Record) -> object:
        return next((about(product) for product in latest["products"] if product["key"] == key), None)

    return save_form(form, within, shown_of, f"{home.place}{home.at(operation)}", lambda latest: form)


def _revise(home: Home, run: RunState, form: Form, change: Callable[[Record], None], operation: str) -> bool:
    was, form.seen = seen(), home.revision
    if was != home.revision:
        form.problems.append(said("refused", "book outdated"))
        return False
    why = request.form.get("why", "").strip()
    try:
        revise_route(workshop(), run.id, change, home.from_tray, why, known_person())
    except BookError as error:
        form.take(error.problems, f"product{home.at(operation)}")
    except Refused as refused:
        form.problems.append(refusal(refused))
    return not form.is_wrong


@part.get("/plan/<any(products,runs):where>/<key>/route")
def route(where: str, key: str) -> Response:
    """The operations in order; a product's stand on its own page."""
    home = home_of(where, key)
    return see_other(home.base) if home.run is None else _route_page(home, _empty(home))


@part.post("/plan/<any(products,runs):where>/<key>/route")
def change_route(where: str, key: str) -> Response:
    """One operation earlier or out, or more operations from a line of text."""
    home = home_of(where, key)
    form = _empty(home)
    try:
        done = save(home, form, _change, lambda product: [operation["key"] for operation in product["operations"]])
    except Unreadable as unreadable:
        form.problems.append(str(unreadable))
        done = False
    return see_other(home.back) if done else _route_page(home, form, 422)


def _change(product: Record) -> None:
    asked = request.form
    if asked.get("earlier"):
        move_earlier(product, asked["earlier"])
    elif asked.get("remove"):
        remove_operation(product, asked["remove"])
    else:
        add_steps(product, book_now(workshop()), asked.get("text", ""), asked.get("after", ""))


@part.get("/plan/<any(products,runs):where>/<key>/operations/<operation>")
def one(where: str, key: str, operation: str) -> Response:
    """The form of one operation."""
    home = home_of(where, key)
    record, now = record_at_work(workshop()), _operation(home, operation)
    form = shown(operation_form(record, now), operation_shown(now), record["units"])
    form.seen = home.revision
    return _page(home, operation, form)


@part.post("/plan/<any(products,runs):where>/<key>/operations/<operation>")
def save_one(where: str, key: str, operation: str) -> Response:
    """Save it: into the book, or as a new revision of the run's route."""
    home = home_of(where, key)
    record = record_at_work(workshop())
    texts = spread_steps(take_pictures(request.form, request.files))
    form = posted(operation_form(record, _operation(home, operation)), texts, record["units"])
    form.seen = seen()

    def change(product: Record) -> None:
        put_operation(product, operation, operation_said(form.record()))

    if not form.is_wrong and save(home, form, change, lambda product: _named(product, operation), operation):
        return see_other(home.back)
    return _page(home, operation, form, 422)


def _named(product: Record, operation: str) -> Record | None:
    return next((said for said in product["operations"] if said["key"] == operation), None)


def _operation(home: Home, operation: str) -> Record:
    return _named(home.product, operation) or abort(404)


def _empty(home: Home) -> Form:
    form = posted((), request.form)
    form.seen = home.revision
    return form


def _page(home: Home, operation: str, form: Form, status: int = 200) -> Response:
    title = _operation(home, operation)["name"]
    return page("plan/operation.html", status=status, title=title, operation=operation, **_about(home, form))


def _route_page(home: Home, form: Form, status: int = 200) -> Response:
    lines = route_lines(product_from_json(home.product), book_now(workshop()))
    return page("plan/route.html", status=status, lines=lines, **_about(home, form))


def _about(home: Home, form: Form) -> dict[str, Any]:
    return {"form": form, "home": home, "typed": request.form, "from_tray": home.from_tray}
