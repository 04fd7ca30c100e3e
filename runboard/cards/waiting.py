"""The wait after an operation on paper: the earliest and latest time to go on, and what the finish's label says."""

from collections.abc import Iterator
from datetime import datetime, timedelta

from runboard.cards.model import Cell, Wait
from runboard.cards.speech import Speech
from runboard.run.state import Rest
from runboard.shop.book import Book, Operation
from runboard.shop.care import finish_of
from runboard.shop.finish import Finish


def wait_after(book: Book, operation: Operation, rest: Rest | None, speech: Speech) -> Wait | None:
    """The wait after an operation, or what its finish asks for; ``None`` where there is neither.

    ``rest`` is the tray's own once it has begun; before that its moments are blank, to be written in.
    """
    finish = finish_of(book, operation)
    if operation.wait is None and finish is None:
        return None
    title = ""
    if operation.wait is not None:
        title = speech(f"card-wait-{operation.wait.why}", span=speech.span(operation.wait.least))
    return Wait(
        title or speech("card-finish", finish=finish.name if finish else ""),
        (*_bounds(operation, rest, speech), *label_times(finish, done_at(operation, rest), speech)),
        finish_notes(finish, speech),
    )


def done_at(operation: Operation, rest: Rest | None) -> datetime | None:
    """When the last piece was done, from which a finish's times count."""
    if rest is None or operation.wait is None:
        return None
    return rest.ready_at - operation.wait.least


def _bounds(operation: Operation, rest: Rest | None, speech: Speech) -> Iterator[Cell]:
    wait = operation.wait
    if wait is None:
        return
    yield Cell(speech("card-go-on-from"), speech.moment(rest.ready_at) if rest else "")
    if wait.latest is not None:
        latest = speech.moment(rest.latest_at) if rest and rest.latest_at else ""
        yield Cell(speech("card-latest", span=speech.span(wait.latest)), latest)


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
