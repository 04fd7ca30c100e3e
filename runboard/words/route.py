"""A route in a few plain words, as the Plan screen lists it, and the times that it is reckoned with."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from runboard.plan.before.looked_at import LookedAt
from runboard.plan.estimates import Estimates
from runboard.plan.program.looked import changed_steps
from runboard.run.fold.route import Route, Step
from runboard.run.fold.state import RunState
from runboard.run.rules.resting import shorter_than_label
from runboard.shop.book import Book
from runboard.shop.care import finish_is_unclear
from runboard.shop.product import ZERO, Operation, Pass, Product, Wait
from runboard.words.facts import date_in_words, number_in_words
from runboard.words.facts import exact_span_in_words as exactly
from runboard.words.sentences import say, sentence

KINDS = ("setup", "loading", "machine", "unloading", "hand")


@dataclass(frozen=True)
class RouteLine:
    """One operation in words: its ``times`` are a line a pass, ``asks`` what somebody should say or know before a run."""

    key: str
    number: int
    name: str
    station: str
    attendance: str
    times: tuple[str, ...]
    wait: str
    guess: bool
    uses: tuple[str, ...]
    asks: tuple[str, ...] = ()


@dataclass(frozen=True)
class Time:
    """One time element: of which step, how long, and 'a guess', 'from the program rail.ngc', 'set by hand' or 'measured 9 times'."""

    step: str
    what: str
    length: timedelta
    source: str
    is_measured: bool


def route_lines(product: Product, book: Book, looked: LookedAt | None = None) -> list[RouteLine]:
    """The route of a product, an operation a line. ``looked`` are the files that were looked at for it."""
    asks = route_asks(product, book)
    for step, reckoned, day in changed_steps(product, looked or LookedAt()):
        facts = {
            "step": step.name,
            "file": reckoned.name,
            "day": date_in_words(date.fromisoformat(day), with_year=True),
        }
        asks.setdefault(step.operation.key, []).append(sentence("before-time-changed", facts))
    return [
        _line(operation, number, book, asks.get(operation.key, []))
        for number, operation in enumerate(product.operations, 1)
    ]


def route_asks(product: Product, book: Book) -> dict[str, list[str]]:
    """What somebody should say or know of each operation before a run: which finish it is, a wait that its label makes longer."""
    route, asks = Route(product), dict[str, list[str]]()
    for step in route.steps:
        operation, longer = step.operation, shorter_than_label(book, route, step)
        if step.last_pass and finish_is_unclear(book, operation):
            asks.setdefault(operation.key, []).append(say("plan", "finish unclear", {"step": operation.name}))
        if longer is not None:
            own = operation.wait.least if operation.wait else ZERO
            facts = {"step": operation.name, "own": exactly(own), "label": exactly(longer)}
            asks.setdefault(operation.key, []).append(say("plan", "wait short" if own else "wait missing", facts))
    return asks


def route_times(estimates: Estimates, run: RunState) -> list[Time]:
    """Every time element of the run's route that takes time, in order."""
    return [time for step in run.route.steps for time in _times(estimates, run, step)]


def _times(estimates: Estimates, run: RunState, step: Step) -> Iterator[Time]:
    for kind in KINDS:
        known = estimates.of(run, step, kind)
        if known.length:
            what = sentence("plan-element", {"kind": kind, "size": "piece" if kind == "hand" else step.pass_.size})
            source = sentence("plan-source", {"times": known.times, "source": known.source, "file": known.file})
            yield Time(step.name, what, known.length, source, known.source == "measured")


def _line(operation: Operation, number: int, book: Book, asks: list[str]) -> RouteLine:
    station = book.station(operation.station)
    has_machine = any(pass_.machine for pass_ in operation.passes)
    return RouteLine(
        operation.key,
        number,
        operation.name,
        station.name if station else operation.station,
        say("route-attendance", operation.attendance if has_machine else "hands-on"),
        tuple(_pass_words(pass_, len(operation.passes) > 1) for pass_ in operation.passes),
        _wait_words(operation.wait) if operation.wait else "",
        operation.guess,
        tuple(
            sentence("route-use", {"each": number_in_words(use.each), "unit": use.unit or "none", "supply": use.supply})
            for use in operation.uses
        ),
        tuple(asks),
    )


def _pass_words(pass_: Pass, named: bool) -> str:
    """'120: 3 min by hand a piece', '38 min machine time a board of 15, loading 2 min, unloading 2 min, setup 4 min'."""
    spans = {kind: getattr(pass_, kind) for kind in ("machine", "hand", "loading", "unloading", "setup")}
    facts = {"size": pass_.size, "pieces": pass_.pieces or 0}
    said = [sentence(f"route-{kind}", {"span": exactly(span), **facts}) for kind, span in spans.items() if span]
    if pass_.machine and pass_.reckoned:  # right behind the machine time, which comes first
        said.insert(1, sentence(f"route-reckoned-{pass_.reckoned.what}", {"file": pass_.reckoned.name}))
    words = ", ".join(said) or sentence("route-no-time")
    return f"{pass_.name}: {words}" if named else words


def _wait_words(wait: Wait) -> str:
    latest = exactly(wait.latest) if wait.latest else "none"
    return sentence("route-wait", {"why": wait.why, "least": exactly(wait.least), "latest": latest})
