"""The wait after an operation on paper: the earliest and latest time to go on, and what the finish's label says.

From when a tray may go on is the state's answer (``run/rules/resting.py``); paper only writes it down.
"""

from datetime import datetime, timedelta

from runboard.cards.model import Cell, Wait
from runboard.run.fold.route import Route, Step
from runboard.run.fold.state import Rest
from runboard.run.rules.resting import done_at, wait_after
from runboard.shop.book import Book
from runboard.shop.care import finish_of
from runboard.shop.finish import Finish
from runboard.words.card import Speech


def written_wait(book: Book, route: Route, step: Step, rest: Rest | None, speech: Speech) -> Wait | None:
    """The wait after the last step of an operation, or what its finish asks for; ``None`` where there is neither.

    ``rest`` is the tray's own once it has begun; before that its moments are blank, to be written in.
    """
    finish, wait = finish_of(book, step.operation), wait_after(book, route, step)
    if wait is None and finish is None:
        return None
    title = speech("card-finish", finish=finish.name) if finish and finish.name else speech("card-finish-unknown")
    cells: tuple[Cell, ...] = ()
    if wait is not None:
        title = speech(f"card-wait-{wait.why}", span=speech.span(wait.least))
        cells = (Cell(speech("card-go-on-from"), speech.moment(rest.ready_at) if rest else ""),)
    if wait is not None and wait.latest is not None:
        cells = (*cells, latest_end(wait.latest, rest, speech))
    return Wait(title, (*cells, *label_times(book, route, step, rest, speech)), finish_notes(finish, speech))


def latest_end(latest: timedelta, rest: Rest | None, speech: Speech) -> Cell:
    """The latest moment to go on, counted from the first piece."""
    at = speech.moment(rest.latest_at) if rest and rest.latest_at else ""
    return Cell(speech("card-latest", span=speech.span(latest)), at)


def label_times(book: Book, route: Route, step: Step, rest: Rest | None, speech: Speech) -> tuple[Cell, ...]:
    """Earliest recoat, earliest handling and full cure as the label says; moments once the coat is done."""
    finish = finish_of(book, step.operation)
    if finish is None:
        return ()
    done = done_at(book, route, step, rest) if rest is not None else None
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
