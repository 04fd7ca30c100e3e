"""One operation on a card: its steps with boxes, its cautions, checks, setup sheet and texts, and the wait after it.

From when a tray may go on is the state's answer (``run/rules/resting.py``); paper only writes it down.
"""

from datetime import datetime, timedelta

from runboard.cards.model import CardWait, Care, Cell, FirstPiece, StepLine, Work
from runboard.run.care.cautions import cautions_at, cautions_for
from runboard.run.fold.route import Route, Step
from runboard.run.fold.state import Rest, RunState, Tray
from runboard.run.rules.resting import done_at, wait_after
from runboard.run.rules.texts import texts_at
from runboard.shop.book import Book
from runboard.shop.care import finish_of
from runboard.shop.finish import Finish
from runboard.shop.product import Check, Operation
from runboard.words.facts import typed_day
from runboard.words.speech import Speech

RESTING = ("solvent-air", "no-smoking", "air-the-room", "dry-not-cured")


def work_on(book: Book, run: RunState, tray: Tray, operation: Operation, speech: Speech) -> Work:
    """What the traveller of a tray says of one operation of its route."""
    route = run.route_of(tray)
    steps = [step for step in route.steps if step.operation is operation]
    rest = tray.rests.get(steps[-1].key)
    over = is_done(route, tray, steps[-1]) and (rest is None or rest.ended_at is not None)
    return Work(
        steps=tuple(_line(book, run, tray, step, speech) for step in steps),
        care=care_of(book, route, steps[-1], speech),
        signs=signs_of(book, route, steps[-1], speech),
        how=tuple(speech.texts(operation, "instructions")),
        setup=_setup(book, operation, speech),
        checks=checks_of(operation, speech),
        places=places_of(route, tray, operation, speech),
        wait=None if over else written_wait(book, route, steps[-1], rest, speech),
    )


def is_done(route: Route, tray: Tray, step: Step) -> bool:
    """Whether all pieces of a tray have passed a step."""
    return not any(pieces and (at := route.step(key)) and at.index <= step.index for key, pieces in tray.at.items())


def _line(book: Book, run: RunState, tray: Tray, step: Step, speech: Speech) -> StepLine:
    done = is_done(run.route_of(tray), tray, step)
    counts = tray.counts.get(step.key, {}).values() if done else ()
    station = book.station(step.operation.station)
    where = [station.name if station else step.operation.station]
    board = _board(run, tray, step)
    if board:
        where.append(speech("board", board=board))
    return StepLine(
        number=step.index + 1,
        name=speech.step(step),
        where=", ".join(where),
        done=done,
        good=str(sum(good for good, _ in counts)) if counts else "",
        scrap=str(sum(scrap for _, scrap in counts)) if counts else "",
    )


def _board(run: RunState, tray: Tray, step: Step) -> str:
    """The number of the board that this step cuts into the tray, if any."""
    fed = (key for key, trays in run.boards.items() if tray.id in trays and key.startswith(f"{step.key}/"))
    return next((key.partition("/")[2] for key in fed), "")


def _setup(book: Book, operation: Operation, speech: Speech) -> tuple[tuple[str, str], ...]:
    """The setup sheet, and where the start list is that it does not repeat."""
    points = speech.start_list(book, operation)
    more = ((speech("start-list"), speech("on-the-jig-label")),) if points else ()
    return (*speech.setup(operation), *more)


def checks_of(operation: Operation, speech: Speech) -> tuple[FirstPiece, ...]:
    """First-piece checks with nominal and tolerance in the shop's units."""
    return tuple(
        FirstPiece(speech(f"first-piece-{check.per}"), text, *_measure(check, speech))
        for check, text in zip(operation.checks, speech.texts(operation, "checks"), strict=True)
    )


def _measure(check: Check, speech: Speech) -> tuple[str, str]:
    """('60 mm +0.3 −0.2', '59.8 to 60.3')."""
    if check.nominal is None:
        return "", ""
    nominal = speech.length(check.nominal)
    if check.plus is None and check.minus is None:
        return nominal, ""
    plus, minus = check.plus or 0.0, check.minus or 0.0
    measure = speech("measure", nominal=nominal, plus=_bare(plus, speech), minus=_bare(minus, speech))
    least, most = _bare(check.nominal - minus, speech), _bare(check.nominal + plus, speech)
    return measure, speech("limits", least=least, most=most)


def _bare(mm: float, speech: Speech) -> str:
    """A length without its unit, which stands at the nominal."""
    return speech.length(mm).rpartition(" ")[0]


def places_of(route: Route, tray: Tray, operation: Operation, speech: Speech) -> tuple[Cell, ...]:
    """The text of each position of the jig where pieces become personal; blank ones, to be written in, until they are
    placed."""
    first = route.personal_from
    if first is None or route.steps[first].operation is not operation:
        return ()
    found = texts_at(tray) or dict.fromkeys(range(1, pieces_in(tray) + 1), "")
    return tuple(Cell(speech("position", place=at), text, str(at)) for at, text in found.items())


def pieces_in(tray: Tray) -> int:
    """The pieces that a tray holds, or will once they are cut."""
    return tray.in_process + tray.good


# cautions


def care_of(book: Book, route: Route, step: Step, speech: Speech) -> tuple[Care, ...]:
    """The cautions beside a step, those of the catalogue in the card's language."""
    shown = cautions_at(book, route, step)
    return tuple(Care(speech.caution(step.operation, caution), caution.signs) for caution in shown)


def signs_of(book: Book, route: Route, step: Step, speech: Speech) -> tuple[Care, ...]:
    """The same in two words each; the shop's own as far as a line goes."""
    shown = cautions_at(book, route, step)
    return tuple(
        Care(speech(f"sign-{caution.key}") if caution.key else speech.caution(step.operation, caution), caution.signs)
        for caution in shown
    )


def resting_care(book: Book, operation: Operation, speech: Speech) -> tuple[Care, ...]:
    """The cautions that still hold beside a tray while what was brought on it dries."""
    shown = cautions_for(book, operation)
    return tuple(Care(speech.care(caution.key), caution.signs) for caution in shown if caution.key in RESTING)


# the wait after it


def written_wait(book: Book, route: Route, step: Step, rest: Rest | None, speech: Speech) -> CardWait | None:
    """The wait after the last step of an operation, or what its finish asks for; ``None`` where there is neither.

    ``rest`` is the tray's own once it has begun; before that its moments are blank, to be written in.
    """
    finish, wait = finish_of(book, step.operation), wait_after(book, route, step)
    if wait is None and finish is None:
        return None
    title = speech("finish", finish=finish.name) if finish and finish.name else speech("finish-unknown")
    cells: tuple[Cell, ...] = ()
    if wait is not None:
        title = speech(f"wait-{wait.why}", span=speech.span(wait.least))
        cells = (Cell(speech("go-on-from"), speech.moment(rest.ready_at) if rest else ""),)
    if wait is not None and wait.latest is not None:
        cells = (*cells, latest_end(wait.latest, rest, speech))
    times = label_times(book, route, step, rest, speech)
    return CardWait(title, (*cells, *times), finish_notes(finish, speech), len(cells))


def latest_end(latest: timedelta, rest: Rest | None, speech: Speech) -> Cell:
    """The latest moment to go on, counted from the first piece."""
    at = speech.moment(rest.latest_at) if rest and rest.latest_at else ""
    return Cell(speech("latest", span=speech.span(latest)), at)


def label_times(book: Book, route: Route, step: Step, rest: Rest | None, speech: Speech) -> tuple[Cell, ...]:
    """Earliest recoat, earliest handling and full cure as the label says; moments once the coat is done."""
    finish = finish_of(book, step.operation)
    if finish is None:
        return ()
    done = done_at(book, route, step, rest) if rest is not None else None
    said = (("recoat", finish.recoat), ("handle", finish.handle), ("cure", finish.cure))
    return tuple(
        Cell(speech(f"{name}", span=speech.span(span)), _moment(done, span, speech))
        for name, span in said
        if span is not None
    )


def _moment(done: datetime | None, span: timedelta, speech: Speech) -> str:
    return "" if done is None else speech.moment(done + span)


def finish_notes(finish: Finish | None, speech: Speech) -> tuple[str, ...]:
    """What a finish's label says about air, and where its times come from."""
    if finish is None:
        return ()
    source = (
        speech("label-of", date=typed_day(finish.sheet_date, speech.locale))
        if finish.sheet_date
        else speech("read-the-label")
    )
    return (*((finish.ventilation,) if finish.ventilation else ()), source)
