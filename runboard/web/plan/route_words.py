"""An operation in a few plain words, as the Plan screen lists it."""

from dataclasses import dataclass, replace

from runboard.run.fold.route import Route
from runboard.run.rules.resting import shorter_than_label
from runboard.shop.book import ZERO, Book, Operation, Pass, Product, Wait
from runboard.shop.care import finish_is_unclear
from runboard.shop.durations import format_duration
from runboard.web.forms.asked import choice_word
from runboard.words.sentences import say

_LOADS = {"piece": "a piece", "tray": "a tray", "run": "the whole run"}
_WAITS = {"dry": "drying", "cure": "curing", "clamp": "in clamps", "cool": "cooling", "settle": "settling"}


@dataclass(frozen=True)
class Line:
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


def route_lines(product: Product, book: Book) -> list[Line]:
    """The route of a product, an operation a line."""
    asks = route_asks(product, book)
    return [
        replace(_line(operation, number, book), asks=tuple(asks.get(operation.key, ())))
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
            facts = {"step": operation.name, "own": format_duration(own), "label": format_duration(longer)}
            asks.setdefault(operation.key, []).append(say("plan", "wait short" if own else "wait missing", facts))
    return asks


def _line(operation: Operation, number: int, book: Book) -> Line:
    station = book.station(operation.station)
    has_machine = any(one.machine for one in operation.passes)
    return Line(
        operation.key,
        number,
        operation.name,
        station.name if station else operation.station,
        choice_word(Operation, "attendance", operation.attendance).partition(":")[0] if has_machine else "hands on",
        tuple(_pass_words(one, len(operation.passes) > 1) for one in operation.passes),
        _wait_words(operation.wait) if operation.wait else "",
        operation.guess,
        tuple(f"{use.each:g} {use.unit} {use.supply}".replace("  ", " ") for use in operation.uses),
    )


def _pass_words(one: Pass, named: bool) -> str:
    """'120: 3 min a piece', '38 min machine a board of 15, loading 2 min, unloading 2 min, setup 4 min'."""
    size = f"a {one.size} of {one.pieces}" if one.size in ("board", "jig") else _LOADS[one.size]
    said = []
    if one.machine:
        said.append(f"{format_duration(one.machine)} machine time {size}")
    if one.hand:
        said.append(f"{format_duration(one.hand)} by hand a piece")
    for word, span in (("loading", one.loading), ("unloading", one.unloading), ("setup", one.setup)):
        if span != ZERO:
            said.append(f"{word} {format_duration(span)}")
    words = ", ".join(said) or "no time said yet"
    return f"{one.name}: {words}" if named else words


def _wait_words(wait: Wait) -> str:
    until = f", {format_duration(wait.latest)} at most" if wait.latest else ""
    return f"then {_WAITS[wait.why]} {format_duration(wait.least)}{until}"
