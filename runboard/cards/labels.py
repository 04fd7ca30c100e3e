"""Labels that stay where they are: at a jig or machine, and at a tray on the drying shelf."""

from runboard.cards.care import care_of, comes_after_finish, name_of, resting_care, start_list
from runboard.cards.foot import foot_of
from runboard.cards.model import Cell, JigLabel, ShelfLabel
from runboard.cards.traveller import Links, about_tray
from runboard.cards.waiting import finish_notes, label_times, latest_end
from runboard.cards.work import checks_of
from runboard.run.fold.route import Step
from runboard.run.fold.state import RunState, Tray
from runboard.run.rules.resting import wait_after
from runboard.shop.book import Book, Operation
from runboard.shop.care import finish_of
from runboard.words.card import Speech


def jig_labels(book: Book, run: RunState, speech: Speech) -> tuple[JigLabel, ...]:
    """A label for each operation of the run's route that has a jig, a setup sheet or a start list."""
    route = run.route
    return tuple(
        jig_label(book, run, operation, speech)
        for operation in route.product.operations
        if operation.setup_sheet or operation.checklist or any(one.size == "jig" for one in operation.passes)
    )


def jig_label(book: Book, run: RunState, operation: Operation, speech: Speech) -> JigLabel:
    """What stays at the jig or the machine of an operation."""
    station = book.station(operation.station)
    jig = max((one.pieces or 0 for one in operation.passes if one.size == "jig"), default=0)
    after = comes_after_finish(book, run.route.product.operations, operation)
    return JigLabel(
        operation=name_of(operation, speech.language),
        station=station.name if station else operation.station,
        product=run.route.product.name,
        places=tuple(Cell(speech("card-position", place=at)) for at in range(1, jig + 1)),
        setup=operation.setup_sheet,
        start=start_list(book, operation, speech),
        checks=checks_of(operation, speech),
        care=care_of(book, operation, speech, after),
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
    title = speech(f"card-wait-{wait.why}", span=speech.span(wait.least)) if wait else step.name
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
