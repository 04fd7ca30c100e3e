"""The cards of a run, made from the state: a tray's traveller, the labels at jigs and on the drying shelf, the summary of it all."""

from collections import defaultdict
from collections.abc import Callable, Mapping
from datetime import datetime

from runboard.cards.model import Cell, Foot, JigLabel, Link, RunSheet, ShelfLabel, StepLine, Traveller, TrayLine
from runboard.cards.work import (
    care_of,
    checks_of,
    finish_notes,
    is_done,
    label_times,
    latest_end,
    pieces_in,
    resting_care,
    work_on,
)
from runboard.run.fold.route import Step
from runboard.run.fold.state import OrderLine, RunState, Tray
from runboard.run.rules.resting import wait_after
from runboard.shop.book import Book
from runboard.shop.care import finish_of
from runboard.shop.product import Operation
from runboard.shop.route_words import symbols
from runboard.words.facts import number_in_words
from runboard.words.speech import Speech

Links = Callable[[str, str], Link]
WORDS = (
    "good",
    "scrap",
    "scrap-box",
    "initials",
    "time",
    "notes",
    "measured",
    "continued",
    "trays",
    "orders",
    "supplies",
    "steps",
    "start-list",
    "places",
    "do-not-move",
    "card",
    "slip-text",
    "side",
    "turn-over",
    "texts",
    "on-more-cards",
    "cautions-on-sheet",
    "at-this-station",
    "before-starting",
    "setting-up",
)


def traveller(
    book: Book, run: RunState, tray: Tray, links: Links, speech: Speech, number: int = 0, full: bool = False
) -> Traveller:
    """The card that goes with a tray, as things are now. ``number`` says which print it is; without it the next one. ``full``:
    with what else stands on the stations' sheets."""
    route = run.route_of(tray)
    orders = orders_of(run, tray)
    return Traveller(
        tray=tray.id,
        run=run.name,
        product=route.product.name,
        about=about_tray(run, tray, speech),
        due=_due(orders, bool(tray.places), speech),
        orders=tuple(_order(due, lines, speech) for due, lines in orders.items()) if tray.places else (),
        works=tuple(work_on(book, run, tray, operation, speech) for operation in route.product.operations),
        link=links(run.id, tray.id),
        foot=foot_of(
            book, run, speech, tray.revision, number or tray.print + 1, "bad-piece" if full else "bad-piece-short"
        ),
        picture=route.product.picture,
        full=full,
    )


def about_tray(run: RunState, tray: Tray, speech: Speech) -> tuple[str, ...]:
    """'5 pieces', 'ash', 'tray 4 of 9'."""
    wood = tray.wood or run.wood
    return tuple(
        part
        for part in (
            speech("pieces", pieces=pieces_in(tray)),
            wood,
            speech("tray-of", tray=tray.id, trays=len(run.trays)),
        )
        if part
    )


def orders_of(run: RunState, tray: Tray) -> dict[datetime | None, list[tuple[OrderLine, int]]]:
    """The order lines of a tray's pieces by due moment, earliest first: its own once its pieces carry texts, else all of
    the run's, since good pieces are allotted to orders only when they are done."""
    mine: dict[str, int] = defaultdict(int)
    for line, _ in tray.places.values():
        mine[line] += 1
    found: dict[datetime | None, list[tuple[OrderLine, int]]] = defaultdict(list)
    for order in run.orders:
        pieces = mine.get(order.line, 0) if mine else order.pieces
        if pieces:
            found[order.due].append((order, pieces))
    return dict(sorted(found.items(), key=lambda pair: (pair[0] is None, pair[0].timestamp() if pair[0] else 0)))


def _due(orders: dict[datetime | None, list[tuple[OrderLine, int]]], placed: bool, speech: Speech) -> str:
    """When the tray's own pieces are due first, or the run's as long as no order line is theirs."""
    dates = [due for due in orders if due]
    if not dates:
        return ""
    if placed:
        return speech("due", at=speech.moment(dates[0]))
    if len(dates) == 1:
        return speech("run-due", at=speech.moment(dates[0]))
    return speech("run-due-over", first=speech.moment(dates[0]), last=speech.moment(dates[-1]))


def _order(due: datetime | None, lines: list[tuple[OrderLine, int]], speech: Speech) -> str:
    """'2 for Thu 17:00: Meyer, No. 12'."""
    pieces = sum(pieces for _, pieces in lines)
    said = speech("order-dated", pieces=pieces, at=speech.moment(due)) if due else ""
    whom = dict.fromkeys(order.whom or order.line for order, _ in lines)
    return f"{said or speech('order-undated', pieces=pieces)}: {', '.join(whom)}"


# labels


def jig_labels(book: Book, run: RunState, speech: Speech) -> tuple[JigLabel, ...]:
    """A label for each operation of the run's route that has a jig, a setup sheet or a start list."""
    route = run.route
    return tuple(
        jig_label(book, run, operation, speech)
        for operation in route.product.operations
        if operation.setup_sheet or operation.checklist or any(pass_.size == "jig" for pass_ in operation.passes)
    )


def jig_label(book: Book, run: RunState, operation: Operation, speech: Speech) -> JigLabel:
    """What stays at the jig or the machine of an operation."""
    station = book.station(operation.station)
    jig = max((pass_.pieces or 0 for pass_ in operation.passes if pass_.size == "jig"), default=0)
    last = [step for step in run.route.steps if step.operation is operation][-1]
    return JigLabel(
        operation=speech.named(operation),
        station=station.name if station else operation.station,
        product=run.route.product.name,
        places=tuple(Cell(speech("position", place=at)) for at in range(1, jig + 1)),
        setup=speech.setup(operation),
        start=speech.start_list(book, operation),
        checks=checks_of(operation, speech),
        care=care_of(book, run.route, last, speech),
        foot=foot_of(book, run, speech, len(run.revisions), 1),
    )


def shelf_labels(book: Book, run: RunState, links: Links, speech: Speech) -> tuple[ShelfLabel, ...]:
    """A label for each tray of the run that waits now, whatever for."""
    return tuple(
        shelf_label(book, run, tray, step, links, speech)
        for tray in run.trays.values()
        for key, rest in tray.rests.items()
        if rest.ended_at is None and (step := run.route_of(tray).step(key)) is not None
    )


def shelf_label(book: Book, run: RunState, tray: Tray, step: Step, links: Links, speech: Speech) -> ShelfLabel:
    """What stands at a tray after a step, so that nobody moves it too early. Made before the wait has begun, its moments
    are blank, to be written in."""
    rest = tray.rests.get(step.key)
    route = run.route_of(tray)
    operation = step.operation
    wait = wait_after(book, route, step)
    title = speech(f"wait-{wait.why}", span=speech.span(wait.least)) if wait else step.name
    latest = (latest_end(wait.latest, rest, speech),) if wait and wait.latest is not None else ()
    return ShelfLabel(
        tray=tray.id,
        run=run.name,
        product=route.product.name,
        about=about_tray(run, tray, speech),
        title=title,
        until=speech.moment(rest.ready_at) if rest else "",
        cells=(*latest, *label_times(book, route, step, rest, speech)),
        notes=finish_notes(finish_of(book, operation), speech),
        care=resting_care(book, operation, speech),
        link=links(run.id, tray.id),
        foot=foot_of(book, run, speech, tray.revision, tray.print + 1),
    )


# the summary of a run


def run_sheet(book: Book, run: RunState, links: Links, speech: Speech) -> RunSheet:
    """A run as it stands now, to hang on the wall and to go on with if the server is gone."""
    wanted, good = sum(order.pieces for order in run.orders), sum(tray.good for tray in run.trays.values())
    about = (
        speech("wanted", wanted=wanted, started=sum(tray.started for tray in run.trays.values()), good=good),
        run.wood,
        speech("opened", at=speech.day(run.opened_at)),
    )
    return RunSheet(
        run=run.name,
        product=run.product_name,
        about=tuple(part for part in about if part),
        orders=tuple(_order_line(run, at, speech) for at in range(len(run.orders))),
        steps=tuple(_step(book, run, step, speech) for step in run.route.steps),
        trays=tuple(_tray(book, run, tray, links, speech) for tray in run.trays.values()),
        supplies=_supplies(run, speech.locale),
        foot=foot_of(book, run, speech, len(run.revisions), 1),
    )


def _order_line(run: RunState, at: int, speech: Speech) -> tuple[str, str, str]:
    order = run.orders[at]
    whom = ", ".join(dict.fromkeys(part for part in (order.line, order.whom, order.text) if part))
    return speech("pieces", pieces=order.pieces), whom, speech.moment(order.due) if order.due else ""


def _step(book: Book, run: RunState, step: Step, speech: Speech) -> StepLine:
    """A step with its process-chart symbols."""
    station = book.station(step.operation.station)
    earlier = run.route.steps[step.index - 1].operation if step.index else None
    ahead, behind = symbols(book, step.operation, earlier)
    name = f"{ahead} {speech.step(step)}{f' {behind}' if behind and step.last_pass else ''}"
    return StepLine(step.index + 1, name, station.name if station else step.operation.station)


def _tray(book: Book, run: RunState, tray: Tray, links: Links, speech: Speech) -> TrayLine:
    route = run.route_of(tray)
    marks = tuple(_mark(run, tray, step) for step in route.steps)
    following = next((step for step, mark in zip(route.steps, marks, strict=True) if not mark), None)
    pieces = speech("pieces", pieces=pieces_in(tray))
    said = speech("next", step=speech.step(following)) if following else speech("all-done")
    ready = [tray.rests[step.key].ready_at for step, mark in zip(route.steps, marks, strict=True) if mark == "wait"]
    if ready:
        said = f"{said}, {speech('not-before', at=speech.moment(max(ready)))}"
    return TrayLine(
        tray.id, ", ".join(part for part in (pieces, tray.wood) if part), said, links(run.id, tray.id).code, marks
    )


def _mark(run: RunState, tray: Tray, step: Step) -> str:
    rest = tray.rests.get(step.key)
    if rest is not None and rest.ended_at is None:
        return "wait"
    return "done" if is_done(run.route_of(tray), tray, step) else ""


def _supplies(run: RunState, locale: str) -> tuple[tuple[str, str], ...]:
    """What the run uses up in all."""
    pieces = sum(tray.started for tray in run.trays.values())
    found: dict[str, tuple[float, str]] = {}
    for operation in run.route.product.operations:
        for use in operation.uses:
            before = found.get(use.supply, (0.0, use.unit))
            found[use.supply] = (before[0] + use.each * pieces, use.unit)
    return tuple(
        (supply, f"{number_in_words(amount, locale)} {unit}".strip()) for supply, (amount, unit) in found.items()
    )


# on every card


def page_words(speech: Speech) -> Mapping[str, str]:
    """The words that stand on a page whatever is on its cards."""
    return {word: speech(f"{word}") for word in WORDS}


def foot_of(book: Book, run: RunState, speech: Speech, revision: int, number: int, bad: str = "bad-piece") -> Foot:
    """What to do with a bad piece, at fire or injury, and which print this is."""
    lead = next((person.name for person in book.people if person.access == "lead" and not person.removed), "")
    return Foot(
        bad=speech(bad, lead=lead or speech("the-lead")),
        danger=_with_number_kept(speech.care("emergency", number=book.emergency), book.emergency),
        print=speech("print", run=run.id, revision=revision, number=number, at=speech.printed()),
    )


_SHORT = 24  # letters of a number to call that stay in one line


def _with_number_kept(said: str, number: str) -> str:
    """A sentence in which the number to call stands whole, on the line of the words beside it."""
    whole = number.replace(" ", "\u00a0") if len(number) <= _SHORT else number
    return said.replace(f" {number}", f"\u00a0{whole}").replace(f"{whole} ", f"{whole}\u00a0")
