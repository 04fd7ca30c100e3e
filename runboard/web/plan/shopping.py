"""What to buy: the list for what remains of the open runs, what was bought, what was counted, which cutter was changed."""

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from typing import Any
from uuid import uuid4

from flask import Blueprint, Response, abort, request

from runboard.floor.changing.supplies import (
    buy_supply,
    change_cutter,
    count_supplies,
    standing,
    take_back,
    take_learned_use,
)
from runboard.floor.looking.at_hand import book_now
from runboard.floor.looking.shopping import shopping_now
from runboard.plan.supplies.at_hand import AtHand
from runboard.plan.supplies.shopping import Row, Shopping
from runboard.plan.supplies.wear import Wear
from runboard.run.refusal import Refused
from runboard.run.supplies.said import word_of
from runboard.shop.book import Book
from runboard.shop.numbers import any_number
from runboard.web.door.pages import page, refusal, see_other, workshop
from runboard.web.door.run_pages import known_person
from runboard.words.before.supplies import (
    Line,
    amount_in_words,
    boards_in_words,
    boards_there_in_words,
    cutters_to_buy_in_words,
    learned_in_words,
    price_in_words,
    row_in_words,
    there_in_words,
    wear_in_words,
)
from runboard.words.sentences import say

PAGE = "/plan/shopping"
# More than any shop has of a thing, and as much as the log takes.
_MOST = 1_000_000
_SAVED = ("counted", "bought", "changed", "learned", "back")

part = Blueprint("plan_shopping", __name__)


@dataclass(frozen=True)
class ToBuy:
    """A supply to be bought: its line, and what its form begins with."""

    line: Line
    here: AtHand
    amount: str
    once: str = field(default_factory=lambda: uuid4().hex)


@dataclass(frozen=True)
class ToCount:
    """A supply in the form that counts all: what there should be, and what was typed."""

    here: AtHand
    there: str
    known: str
    typed: str = ""
    wrong: str = ""


@dataclass(frozen=True)
class Worn:
    """A cutter: its line, and the stations at which it may have been changed, by key and name. It ``asks`` whether the machine is
    off where it runs by the shop's account."""

    line: Line
    wear: Wear
    stations: tuple[tuple[str, str], ...]
    asks: bool = False
    once: str = field(default_factory=lambda: uuid4().hex)


@dataclass(frozen=True)
class LearnedLine:
    """What was learned of a use, and whether the book's route still writes it as it did."""

    text: str
    word: str
    product: str
    operation: str
    written: float
    may_be_taken: bool


@dataclass
class Typed:
    """What came and was not taken: texts by supply, what is wrong with them; each problem with the place on the page where it is
    mended, and the cutter and the station of which it is asked whether it is off."""

    texts: dict[str, str] = field(default_factory=dict)
    wrong: dict[str, str] = field(default_factory=dict)
    problems: list[tuple[str, str]] = field(default_factory=list)
    at_work: tuple[str, str] = ("", "")


@part.get(PAGE)
def shopping() -> Response:
    """The list."""
    return _page(Typed())


@part.post(f"{PAGE}/count")
def count() -> Response:
    """What is there now, of every supply that somebody wrote a number for."""
    typed, counts = Typed(), list[tuple[str, float]]()
    for place, row in enumerate(shopping_now(workshop()).rows, 1):
        text = request.form.get(f"have.{row.here.word}", "").strip()
        if not text:
            continue
        typed.texts[row.here.word] = text
        try:
            counts.append((row.here.name, _amount(text, row.here.unit)))
        except Refused as refused:
            typed.wrong[row.here.word] = refusal(refused)
            said = say("supplies", "line", {"name": row.here.name, "head": refusal(refused)})
            typed.problems.append((said, f"have-{place}"))
    if typed.wrong:
        return _page(typed, 422)
    return _done(typed, "counted", lambda: count_supplies(workshop(), counts, _once(), known_person()))


@part.post(f"{PAGE}/bought")
def bought() -> Response:
    """So much more of a supply is there."""
    here = _row(request.form.get("supply", "")).here
    typed = Typed()
    try:
        amount = _amount(request.form.get("amount", ""), here.unit, least=1e-6)
    except Refused as refused:
        typed.problems.append((say("supplies", "line", {"name": here.name, "head": refusal(refused)}), "to-buy"))
        return _page(typed, 422)
    said = lambda: buy_supply(workshop(), here.name, amount, _times(), _once(), known_person())  # noqa: E731
    return _done(typed, "bought", said)


@part.post(f"{PAGE}/changed")
def changed() -> Response:
    """A new cutter is in."""
    key, station = request.form.get("cutter", ""), request.form.get("station", "")
    wear = next((one for one in shopping_now(workshop()).wear if one.cutter.key == key), None) or abort(404)
    is_off = "off" in request.form
    said = lambda: change_cutter(workshop(), wear, station, _times(), _once(), known_person(), is_off)  # noqa: E731
    return _done(Typed(at_work=(key, station)), "changed", said)


@part.post(f"{PAGE}/back")
def back() -> Response:
    """What the last form said is taken back."""
    return _done(Typed(), "back", lambda: take_back(workshop(), _once(), known_person()))


@part.post(f"{PAGE}/learned")
def learned() -> Response:
    """What a piece was measured to use, taken into the route."""
    asked = request.form
    written = any_number(asked.get("written", ""))
    names = asked.get("supply", ""), asked.get("product", ""), asked.get("operation", "")
    if written is None:
        abort(404)
    return _done(Typed(), "learned", lambda: take_learned_use(workshop(), *names, written))


def _done(typed: Typed, what: str, do: Callable[[], None]) -> Response:
    """Back to the list once it is done; where it is refused, the list with why."""
    try:
        do()
    except Refused as refused:
        typed = replace(typed, at_work=typed.at_work if refused.code == "cutter at work" else ("", ""))
        typed.problems.append((refusal(refused), f"cutter-{typed.at_work[0]}" if typed.at_work[0] else ""))
        return _page(typed, 409)
    return see_other(f"{PAGE}?saved={what}&press={_once()}#saved")


def _once() -> str:
    return request.form.get("once", "")


def _times() -> int:
    said = any_number(request.form.get("times", ""))
    return -1 if said is None else int(said)


def _row(word: str) -> Row:
    return next((row for row in shopping_now(workshop()).rows if row.here.word == word), None) or abort(404)


def _amount(text: str, unit: str, least: float = 0.0) -> float:
    """'500', '500 ml', '0,5'. Refused 'no amount', 'amount below nothing'."""
    number = any_number(text.strip().removesuffix(unit).strip())
    if number is not None and number < 0:
        raise Refused("amount below nothing")
    if number is None or not least <= number <= _MOST:
        raise Refused("no amount")
    return number


def _page(typed: Typed, status: int = 200) -> Response:
    list_, book = shopping_now(workshop()), book_now(workshop())
    saved, press = request.args.get("saved", ""), request.args.get("press", "")
    return page(
        "plan/shopping.html",
        status=status,
        runs=[run.name for run in list_.runs if run.trays],
        saved=saved if saved in _SAVED else "",
        press=press if standing(workshop(), press) else "",
        problems=typed.problems,
        once=uuid4().hex,
        to_buy=[_to_buy(book, row) for row in list_.to_buy],
        uncounted=[row_in_words(book, row) for row in list_.to_count],
        enough=[row_in_words(book, row) for row in list_.rows if row.how == "enough"]
        + boards_there_in_words(book, list_),
        others=cutters_to_buy_in_words(book, list_) + boards_in_words(book, list_),
        cost=price_in_words(book, list_.cost) if list_.cost else "",
        cutters=[_worn(book, wear, *typed.at_work) for wear in list_.wear],
        count=[_to_count(book, row.here, typed) for row in list_.rows],
        is_wrong=bool(typed.wrong),
        learned=_learned(book, list_),
    )


def _to_buy(book: Book, row: Row) -> ToBuy:
    return ToBuy(row_in_words(book, row), row.here, _plain(row.buy or 0.0))


def _plain(amount: float) -> str:
    """A number as one types it."""
    return f"{amount:.10g}"


def _to_count(book: Book, here: AtHand, typed: Typed) -> ToCount:
    there = amount_in_words(here.there, here.unit) if here.there is not None else ""
    known = there_in_words(book, here)
    return ToCount(here, there, known, typed.texts.get(here.word, ""), typed.wrong.get(here.word, ""))


def _worn(book: Book, wear: Wear, cutter: str, station: str) -> Worn:
    asks = wear.cutter.key == cutter
    names = {known.key: known.name for known in book.stations if not asks or known.key == station}
    places = tuple((key, names[key]) for key in wear.stations if key in names)
    return Worn(wear_in_words(book, wear), wear, places, asks)


def _learned(book: Book, list_: Shopping) -> list[LearnedLine]:
    """What was learned of each use that the book's routes write as it was measured, or that an open run goes by."""
    found = []
    for row in list_.rows:
        for (product, operation, written), use in row.here.learned.items():
            may = use.is_enough and _plain(written) != _plain(float(f"{use.each:.3g}"))
            if _is_written(book, row.here, product, operation, written):
                text = learned_in_words(book, row.here, use)
                found.append(LearnedLine(text, row.here.word, product, operation, written, may))
    return found


def _is_written(book: Book, here: AtHand, product: str, operation: str, written: float) -> bool:
    known: Any = book.product(product)
    steps = known.operations if known is not None else ()
    uses = [use for step in steps if step.key == operation for use in step.uses]
    return any(use.each == written and word_of(use.supply) == here.word for use in uses)
