"""One route's operations through forms, for a product in the book and for a run on its way alike."""

from typing import Any

from flask import Blueprint, Flask, Response, abort, request

from runboard.floor.changing.route_change import (
    add_steps,
    move_earlier,
    place_of,
    put_operation,
    remove_operation,
)
from runboard.run.refusal import Refused
from runboard.shop.book_json import product_from_json
from runboard.shop.problem import Unreadable
from runboard.web.door.pages import page, see_other, workshop
from runboard.web.door.pictures import take_pictures
from runboard.web.forms.form import Form, posted, shown
from runboard.web.forms.operation import operation_form, operation_said, operation_shown, spread_steps
from runboard.web.forms.saving import Record, seen
from runboard.web.plan.route_home import Home, home_of
from runboard.web.plan.route_words import route_lines
from runboard.web.shop.page import workshop_record

part = Blueprint("plan_route", __name__)


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_blueprint(part)


@part.get("/plan/<any(products,runs):where>/<key>/route")
def route(where: str, key: str) -> Response:
    """The operations in order; a product's stand on its own page."""
    home = home_of(where, key)
    if where == "products":
        return see_other(home.base)
    return _route_page(home, _empty(home))


@part.post("/plan/<any(products,runs):where>/<key>/route")
def change_route(where: str, key: str) -> Response:
    """One operation earlier or out, or more operations from a line of text."""
    home = home_of(where, key)
    form = _empty(home)

    def change(product: Record) -> None:
        if request.form.get("earlier"):
            move_earlier(product, request.form["earlier"])
        elif request.form.get("remove"):
            remove_operation(product, request.form["remove"])
        else:
            add_steps(product, workshop().book, request.form.get("text", ""), request.form.get("after", ""))

    try:
        done = home.save(form, change, lambda product: [one["key"] for one in product["operations"]], "")
    except Unreadable as unreadable:
        form.problems.append(str(unreadable))
        done = False
    return see_other(home.back) if done else _route_page(home, form, 422)


@part.get("/plan/<any(products,runs):where>/<key>/operations/<operation>")
def one(where: str, key: str, operation: str) -> Response:
    """The form of one operation."""
    home = home_of(where, key)
    return _page(home, operation, _shown(home, operation))


@part.post("/plan/<any(products,runs):where>/<key>/operations/<operation>")
def save_one(where: str, key: str, operation: str) -> Response:
    """Save it: into the book, or as a new revision of the run's route."""
    home = home_of(where, key)
    record = workshop_record()
    texts = spread_steps(take_pictures(request.form, request.files))
    form = posted(operation_form(record, _operation(home, operation)), texts, record["units"])
    form.seen = seen()

    def change(product: Record) -> None:
        put_operation(product, operation, operation_said(form.record()))

    def about(product: Record) -> Any:
        return next((one for one in product["operations"] if one["key"] == operation), None)

    if not form.is_wrong and home.save(form, change, about, operation):
        return see_other(home.back)
    return _page(home, operation, form, 422)


def _shown(home: Home, operation: str) -> Form:
    record, now = workshop_record(), _operation(home, operation)
    form = shown(operation_form(record, now), operation_shown(now), record["units"])
    form.seen = home.revision()
    return form


def _operation(home: Home, operation: str) -> Record:
    product = home.product()
    try:
        found: Record = product["operations"][place_of(product, operation)]
    except Refused:
        abort(404)
    return found


def _empty(home: Home) -> Form:
    form = posted((), request.form)
    form.seen = home.revision()
    return form


def _page(home: Home, operation: str, form: Form, status: int = 200) -> Response:
    title = _operation(home, operation)["name"]
    context: dict[str, Any] = {
        "form": form,
        "home": home,
        "title": title,
        "operation": operation,
        "typed": request.form,
    }
    return page("plan/operation.html", status=status, from_tray=_from_tray(home), **context)


def _route_page(home: Home, form: Form, status: int = 200) -> Response:
    product = product_from_json(home.product())
    lines = route_lines(product, workshop().book)
    context: dict[str, Any] = {
        "lines": lines,
        "form": form,
        "home": home,
        "typed": request.form,
        "from_tray": _from_tray(home),
    }
    return page("plan/route.html", status=status, **context)


def _from_tray(home: Any) -> str:
    return home.from_tray() if home.run is not None else ""
