"""The wait after an operation on paper: the earliest and latest time to go on, and what the finish's label says."""

from collections.abc import Iterator
from datetime import datetime, timedelta

from runboard.cards.model import Cell, Wait
from runboard.cards.speech import Speech
from runboard.run.route import Route, Step
from runboard.run.state import Rest
from runboard.shop.book import Book, Operation
from runboard.shop.care import finish_of
from runboard.shop.finish import Finish


def wait_after(book: Book, route: Route, step: Step, rest: Rest | None, speech: Speech) -> Wait | None:
    """The wait after the last step of an operation, or what its finish asks for; ``None`` where there is neither.

    ``rest`` is the tray's own once it has begun; before that its moments are blank, to be written in.
    """
    finish, wait = finish_of(book, step.operation), step.operation.wait
    if wait is None and finish is None:
        return None
    title = speech("card-finish", finish=finish.name) if finish and finish.name else speech("card-finish-unknown")
    if wait is not None:
        title = speech(f"card-wait-{wait.why}", span=speech.span(wait.least))
    cells = (*_bounds(book, route, step, rest, speech), *label_times(finish, done_at(step.operation, rest), speech))
    return Wait(title, cells, finish_notes(finish, speech))


def done_at(operation: Operation, rest: Rest | None) -> datetime | None:
    """When the last piece was done, from which a finish's times count."""
    if rest is None or operation.wait is None:
        return None
    return rest.ready_at - operation.wait.least


def goes_on_at(book: Book, route: Route, step: Step, rest: Rest | None) -> datetime | None:
    """The moment before which a tray stays where it is: the end of its wait, and of the time to handling that the
    label gives, unless the next operation is another coat. ``None`` before the wait has begun."""
    done = done_at(step.operation, rest)
    if rest is None or done is None:
        return None
    finish = finish_of(book, step.operation)
    following = route.step(route.after(step.key))
    another_coat = following is not None and finish_of(book, following.operation) is not None
    if finish is None or finish.handle is None or another_coat:
        return rest.ready_at
    return max(rest.ready_at, done + finish.handle)


def _bounds(book: Book, route: Route, step: Step, rest: Rest | None, speech: Speech) -> Iterator[Cell]:
    wait = step.operation.wait
    if wait is None:
        return
    earliest = goes_on_at(book, route, step, rest)
    yield Cell(speech("card-go-on-from"), speech.moment(earliest) if earliest else "")
    if wait.latest is not None:
        yield latest_end(wait.latest, rest, speech)


def latest_end(latest: timedelta, rest: Rest | None, speech: Speech) -> Cell:
    """The latest moment to go on, counted from the first piece."""
    at = speech.moment(rest.latest_at) if rest and rest.latest_at else ""
    return Cell(speech("card-latest", span=speech.span(latest)), at)


def label_times(finish: Finish | None, done: datetime | None, speech: Speech) -> tuple[Cell, ...]:
    """Earliest recoat, earliest handling and full cure as the label says; moments once the coat is done."""
    if finish is None:
        return ()
    said = (("recoat", finish.recoat), ("handle", finish.handle), ("cure", finish.cure))
    return tuple(
        Cell(speech(f"card-{name}", span=speech.span(span)), _moment(done, span, speech))
        for name, span in said
        if span is not None
    )


def _moment(done: datetime | None, span: timedelta, speech: Speech) -> str:
    return "" if done is None else speech.moment(done + span)


def finish_notes(finish: Finish | None, speech: Speech) -> tuple[str, ...]:
    """What a finish's label says about air, and where its times come from."""
    if finish is None:
        return ()
    source = speech("card-label-of", date=finish.sheet_date) if finish.sheet_date else speech("card-read-the-label")
    return (*((finish.ventilation,) if finish.ventilation else ()), source)
