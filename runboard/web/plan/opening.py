"""Opening a run: what is wanted, what it will take in plain words, and then it is open."""

from dataclasses import dataclass
from typing import Any
from uuid import uuid4

from flask import Blueprint, Response, abort, request

from runboard.floor.changing.run_sheet import run_sheet_of
from runboard.floor.changing.runs import Wish, look_ahead, open_run_once, product_to_run, wish_from_run
from runboard.floor.looking.at_hand import book_now
from runboard.floor.looking.files_looked_at import files_looked_at
from runboard.floor.looking.shopping import shopping_to_open
from runboard.plan.extras import chance_of_enough
from runboard.plan.opening import Opening
from runboard.plan.supplies.looked import found_of
from runboard.run.fold.route import Route
from runboard.run.fold.state import OrderLine
from runboard.run.refusal import Refused
from runboard.shop.numbers import any_number
from runboard.shop.product import ZERO, Product
from runboard.web.door.pages import page, refusal, said, see_other, workshop
from runboard.web.door.run_pages import known_person
from runboard.web.fittings import fittings
from runboard.web.forms.form import Form, posted, shown
from runboard.web.forms.run import opening_form, order_rows, read_begun, read_orders
from runboard.words.before.supplies import found_facts, to_buy_in_words
from runboard.words.facts import number_in_words, span_in_words
from runboard.words.route import route_asks
from runboard.words.sentences import say, share_in_words

part = Blueprint("plan_opening", __name__)


@dataclass(frozen=True)
class Outlook:
    """What a run would take, in words."""

    start: str
    good: str
    enough: str
    trays: str
    hands: str
    machines: tuple[str, ...]
    uses: tuple[str, ...]
    personal: str
    found: tuple[tuple[str, str], ...]
    to_buy: tuple[str, ...]


@part.get("/plan/runs/new")
def new_run() -> Response:
    """The form; filled from an old run where one is copied. Without a product it asks which."""
    copied = request.args.get("copy", "")
    if copied:
        return _copy_page(copied)
    key = request.args.get("product", "")
    now = book_now(workshop())
    if not key and len(now.products) != 1:
        return page("plan/which_product.html", products=now.products)
    product = now.product(key) if key else now.products[0]
    if product is None:
        abort(404)
    record = {"certainty": "0.9", "pieces_a_tray": product.pieces_a_tray, "wood": product.wood}
    return _page(product, shown(opening_form(product), record))


def _copy_page(run: str) -> Response:
    wish = wish_from_run(workshop(), run)
    product = _product(wish.product, run)
    orders = [OrderLine(order["line"], order["pieces"], order["for"], order["text"]) for order in wish.orders]
    record = {
        "certainty": f"{wish.certainty:g}",
        "pieces_a_tray": wish.pieces_a_tray or product.pieces_a_tray,
        "wood": wish.wood,
        "orders": order_rows(orders, book_now(workshop()).time_zone, with_due=False),
    }
    return _page(product, shown(opening_form(product), record), copied=run)


def _product(key: str, copied: str) -> Product:
    return product_to_run(workshop(), key, copied) or abort(404)


@part.post("/plan/runs/preview")
def preview() -> Response:
    """What the run would take, by what is typed so far."""
    product, form = _posted()
    return _page(product, form, block="outlook", copied=request.form.get("copied_from", ""))


@part.post("/plan/runs/new")
def open_it() -> Response:
    """Open the run and go to work. The same form sent twice opens one."""
    product, form = _posted()
    wish = _wish(form, product)
    once = request.form.get("once", "")
    if not form.is_wrong:
        try:
            return see_other(_where_next(open_run_once(workshop(), wish, once, known_person())))
        except Refused as refused:
            form.problems.append(refusal(refused))
    return _page(product, form, status=422, copied=wish.copied_from, once=once)


def _where_next(run: str) -> str:
    """To work, where everything that is checked of the run is right; else to what is to be looked at first."""
    sheet = run_sheet_of(workshop(), run, files_looked_at(fittings().settings))
    return "/" if sheet.is_ready else f"/plan/runs/{run}/before"


def _posted() -> tuple[Product, Form]:
    product = _product(request.form.get("product", ""), request.form.get("copied_from", ""))
    return product, posted(opening_form(product), request.form)


def _wish(form: Form, product: Product) -> Wish:
    record = form.record()
    numbers: dict[str, int | None] = {}
    for name in ("pieces_a_tray", "start"):
        numbers[name] = record[name]
        if record[name] is not None and (not isinstance(record[name], int) or not 0 < record[name] <= 100_000):
            form.errors[name] = say("opening", "whole pieces")
            numbers[name] = None
    return Wish(
        product=product.key,
        orders=read_orders(form, record, book_now(workshop()).time_zone),
        name=record["name"],
        wood=record["wood"],
        pieces_a_tray=numbers["pieces_a_tray"],
        certainty=_certainty(record["certainty"]),
        begun=read_begun(form, record["begun"]),
        start=numbers["start"],
        copied_from=request.form.get("copied_from", ""),
    )


def _certainty(text: str) -> float:
    number = any_number(text)
    return 0.9 if number is None or not 0 <= number <= 1 else number


def _page(
    product: Product, form: Form, status: int = 200, block: str = "", copied: str = "", once: str = ""
) -> Response:
    trial = posted(form.sections, form.texts)
    wish = _wish(trial, product)
    outlook: Outlook | None = None
    not_yet = ""
    if wish.orders and not trial.is_wrong:
        try:
            outlook = _outlook(product, wish, look_ahead(workshop(), wish))
        except Refused as refused:
            not_yet = refusal(refused)
    context: dict[str, Any] = {"product": product, "form": form, "outlook": outlook, "not_yet": not_yet}
    context["asks"] = [ask for asks in route_asks(product, book_now(workshop())).values() for ask in asks]
    return page("plan/open_run.html", block, status, copied=copied, once=once or uuid4().hex, **context)


def _outlook(product: Product, wish: Wish, opening: Opening) -> Outlook:
    list_ = shopping_to_open(workshop(), wish, opening)
    count, wanted = sum(tray.pieces for tray in opening.trays), opening.start.wanted
    rate = opening.good_rate
    chance = chance_of_enough(count, wanted, rate.rate)
    route = Route(product)
    names = {step.key: step.name for step in route.steps}
    machines = [
        f"{names[key]} {span_in_words(machine)}" for key, (_, machine) in opening.work.items() if machine != ZERO
    ]
    personal = next((step.name for step in route.steps if step.operation.personal), "")
    return Outlook(
        start=say(
            "opening", "start", {"count": count, "wanted": wanted, "more": count - wanted, "fewer": wanted - count}
        ),
        good=say("opening", "good", {"share": share_in_words(rate.rate), "source": rate.source, "pieces": rate.pieces}),
        enough=say("opening", "enough", {"chance": share_in_words(chance, "chance")}),
        trays=say("opening", "trays", {"trays": len(opening.trays), "boards": len(opening.boards)}),
        hands=span_in_words(opening.hands),
        machines=tuple(machines),
        uses=tuple(
            f"{number_in_words(amount)} {unit} {supply}".replace("  ", " ")
            for supply, (amount, unit) in opening.uses.items()
        ),
        personal=personal,
        found=tuple((one.level, said("before-found", one.code, found_facts(one))) for one in found_of(list_, "")),
        to_buy=tuple(to_buy_in_words(book_now(workshop()), list_, "")),
    )
