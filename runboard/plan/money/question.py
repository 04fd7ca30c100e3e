"""What is asked about a price: how many of what, at which rates, with which fees and margin; and what the log taught of it."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from typing import Annotated, Literal, get_args

from runboard.plan.estimates import Estimates, estimates_from
from runboard.plan.opening import counted_before
from runboard.run.fold.route import Route
from runboard.run.fold.state import Revision, RunState, ShopState
from runboard.shop.book import Book
from runboard.shop.limits import MOST_PIECES
from runboard.shop.money import Money
from runboard.shop.product import Product
from runboard.shop.record import Name, Of

Element = Literal["setup", "loading", "machine", "unloading", "hand"]
ELEMENTS: tuple[Element, ...] = get_args(Element)
# A run that nobody has opened: times are asked of its product and wood alone.
_NEVER = datetime.min.replace(tzinfo=UTC)


@dataclass(frozen=True)
class Expense:
    """A cost that nothing else names: so much of each good piece, of each started one, or once of the run."""

    name: Name
    amount: float
    each: Literal["good piece", "started piece", "run"] = "good piece"


@dataclass(frozen=True)
class LearnedTime:
    """How long a time element takes, of a load, hand time of a piece: measured so many ``times``, or said by somebody (0)."""

    step: Name
    kind: Element
    minutes: timedelta
    times: int = 0


@dataclass(frozen=True)
class CountedPieces:
    """What was counted at an operation over all runs so far."""

    operation: Name
    good: int = 0
    bad: int = 0


@dataclass(frozen=True)
class Price:
    """What a good piece costs in a run of ``pieces`` good ones, and what it should sell for. What is left empty is the book's.
    ``watched`` is the share of watched time that counts as somebody's work. ``tool`` is what a new jig or tool costs, which
    saves minutes of work or money on each started piece. ``times`` and ``counted`` are what the log taught: nobody is asked for them."""

    product: Annotated[str | None, Of(refers="product")] = None
    pieces: Annotated[int, Of("Good ones.", least=1, most=MOST_PIECES)] = 20
    start: Annotated[int | None, Of("Started in all; empty: as many as it takes.", least=1, most=MOST_PIECES)] = None
    good_rate: Annotated[float | None, Of("Empty: as counted or guessed.", least=0.01, kind="share")] = None
    certainty: Annotated[float, Of("How surely the started ones suffice.", 0, 0.9999, kind="share")] = 0.9
    hour_rate: Annotated[float | None, Of("What an hour of work is worth.")] = None
    watched: Annotated[float, Of("Of watched time, what counts as work.", kind="share")] = 1.0
    material_each: Annotated[float | None, Of("Material of each started piece.")] = None
    packing_each: float | None = None
    others: tuple[Expense, ...] = ()
    price: Annotated[float | None, Of("What one sells for today.")] = None
    margin: Annotated[float | None, Of("What is to stay.", 0, 10, kind="share")] = None
    margin_of: Literal["price", "cost"] = "price"
    fee_share: Annotated[float | None, Of("Of the price.", 0, 0.9, kind="share")] = None
    fee_each: Annotated[float | None, Of("Of each piece sold.")] = None
    tool: Annotated[float | None, Of("What a new jig or tool costs.")] = None
    tool_saves: Annotated[timedelta, Of("Of work, each started piece.")] = timedelta(0)
    tool_saves_money: Annotated[float | None, Of("And in money, each started piece.")] = None
    pieces_a_month: Annotated[float | None, Of("How many are sold.", least=0.01)] = None
    times: tuple[LearnedTime, ...] = ()
    counted: tuple[CountedPieces, ...] = ()


def begin(book: Book, keys: Mapping[str, str]) -> Price:
    """The question of a product, with what the shop has written down of money."""
    product, money = book.product(keys.get("product", "")), book.money
    found = Price(
        hour_rate=book.hour_rate,
        packing_each=money.packing_each,
        margin=money.margin,
        margin_of=money.margin_of,
        fee_share=money.fee_share,
        fee_each=money.fee_each,
    )
    return found if product is None else replace(found, product=product.key, price=product.price)


def with_books_own(book: Book, question: Price) -> Price:
    """The question with what is left empty as the book has it."""
    money: Money = book.money
    product = book.product(question.product or "")
    own = {
        "hour_rate": book.hour_rate,
        "price": product.price if product is not None else None,
        **{name: getattr(money, name) for name in ("packing_each", "margin", "fee_share", "fee_each")},
    }
    return replace(question, **{name: value for name, value in own.items() if getattr(question, name) is None})


def learned(book: Book, state: ShopState, question: Price) -> Price:
    """The question with the times and counts that the log taught of its product."""
    product = book.product(question.product or "")
    if product is None or not product.operations:
        return question
    times = known_times(product, estimates_from(state, book))
    counted = counted_before(state, product.key).items()
    return replace(question, times=times, counted=tuple(CountedPieces(key, good, bad) for key, (good, bad) in counted))


def known_times(product: Product, estimates: Estimates) -> tuple[LearnedTime, ...]:
    """Every time element of a product that somebody measured or said."""
    route, found = Route(product), []
    run = RunState("", "", "draft", _NEVER, product.key, product.name, (Revision(1, "", route),), wood=product.wood)
    for step in route.steps:
        for kind in ELEMENTS:
            known = estimates.of(run, step, kind)
            if known.source != "guess" and known.length:
                found.append(LearnedTime(step.key, kind, known.length, known.times))
    return tuple(found)
