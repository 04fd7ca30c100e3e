"""The summary of a whole run on paper: orders, steps, every tray, and what is used up."""

from runboard.cards.foot import foot_of
from runboard.cards.model import RunSheet, StepLine, TrayLine
from runboard.cards.traveller import Links
from runboard.cards.work import is_done, pieces_in, step_name
from runboard.run.fold.route import Step
from runboard.run.fold.state import RunState, Tray
from runboard.shop.book import Book
from runboard.shop.route_words import symbols
from runboard.words.card import Speech


def run_sheet(book: Book, run: RunState, links: Links, speech: Speech) -> RunSheet:
    """A run as it stands now, to hang on the wall and to go on with if the server is gone."""
    wanted, good = sum(one.pieces for one in run.orders), sum(one.good for one in run.trays.values())
    about = (
        speech("card-wanted", wanted=wanted, started=sum(one.started for one in run.trays.values()), good=good),
        run.wood,
        speech("card-opened", at=speech.day(run.opened_at)),
    )
    return RunSheet(
        run=run.name,
        product=run.product_name,
        about=tuple(part for part in about if part),
        orders=tuple(_order(run, at, speech) for at in range(len(run.orders))),
        steps=tuple(_step(book, run, step, speech) for step in run.route.steps),
        trays=tuple(_tray(book, run, tray, links, speech) for tray in run.trays.values()),
        supplies=_supplies(run),
        foot=foot_of(book, run, speech, len(run.revisions), 1),
    )


def _order(run: RunState, at: int, speech: Speech) -> tuple[str, str, str]:
    order = run.orders[at]
    whom = ", ".join(dict.fromkeys(part for part in (order.line, order.whom, order.text) if part))
    return speech("card-pieces", pieces=order.pieces), whom, speech.moment(order.due) if order.due else ""


def _step(book: Book, run: RunState, step: Step, speech: Speech) -> StepLine:
    """A step with its process-chart symbols."""
    station = book.station(step.operation.station)
    earlier = run.route.steps[step.index - 1].operation if step.index else None
    ahead, behind = symbols(book, step.operation, earlier)
    name = f"{ahead} {step_name(step, speech)}{f' {behind}' if behind and step.last_pass else ''}"
    return StepLine(step.index + 1, name, station.name if station else step.operation.station)


def _tray(book: Book, run: RunState, tray: Tray, links: Links, speech: Speech) -> TrayLine:
    route = run.route_of(tray)
    marks = tuple(_mark(run, tray, step) for step in route.steps)
    following = next((step for step, mark in zip(route.steps, marks, strict=True) if not mark), None)
    pieces = speech("card-pieces", pieces=pieces_in(tray))
    said = speech("card-next", step=step_name(following, speech)) if following else speech("card-all-done")
    ready = [tray.rests[step.key].ready_at for step, mark in zip(route.steps, marks, strict=True) if mark == "wait"]
    if ready:
        said = f"{said}, {speech('card-not-before', at=speech.moment(max(ready)))}"
    return TrayLine(
        tray.id, ", ".join(part for part in (pieces, tray.wood) if part), said, links(run.id, tray.id).code, marks
    )


def _mark(run: RunState, tray: Tray, step: Step) -> str:
    rest = tray.rests.get(step.key)
    if rest is not None and rest.ended_at is None:
        return "wait"
    return "done" if is_done(run.route_of(tray), tray, step) else ""


def _supplies(run: RunState) -> tuple[tuple[str, str], ...]:
    """What the run uses up in all."""
    pieces = sum(one.started for one in run.trays.values())
    found: dict[str, tuple[float, str]] = {}
    for operation in run.route.product.operations:
        for use in operation.uses:
            before = found.get(use.supply, (0.0, use.unit))
            found[use.supply] = (before[0] + use.each * pieces, use.unit)
    return tuple((supply, f"{amount:g} {unit}".strip()) for supply, (amount, unit) in found.items())
