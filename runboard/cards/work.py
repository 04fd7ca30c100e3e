"""One operation on a tray's traveller: its steps with boxes, its cautions, checks, setup sheet, texts and wait."""

from runboard.cards.care import care_of, comes_after_finish, name_of, start_list, translated, translation_of
from runboard.cards.model import Cell, FirstPiece, StepLine, Work
from runboard.cards.waiting import written_wait
from runboard.run.fold.route import Route, Step
from runboard.run.fold.state import RunState, Tray
from runboard.run.rules.texts import texts_at
from runboard.shop.book import Book, Check, Operation
from runboard.words.card import Speech


def work_on(book: Book, run: RunState, tray: Tray, operation: Operation, speech: Speech) -> Work:
    """What the traveller of a tray says of one operation of its route."""
    route = run.route_of(tray)
    steps = [step for step in route.steps if step.operation is operation]
    translation = translation_of(operation, speech.language)
    after = comes_after_finish(book, route.product.operations, operation)
    own = translated([one.text for one in operation.instructions], translation.instructions)
    rest = tray.rests.get(steps[-1].key)
    over = is_done(route, tray, steps[-1]) and (rest is None or rest.ended_at is not None)
    return Work(
        steps=tuple(_line(book, run, tray, step, speech) for step in steps),
        care=care_of(book, operation, speech, after),
        how=own,
        setup=_setup(book, operation, speech),
        checks=checks_of(operation, speech),
        places=places_of(route, tray, operation, speech),
        wait=None if over else written_wait(book, route, steps[-1], rest, speech),
    )


def is_done(route: Route, tray: Tray, step: Step) -> bool:
    """Whether all pieces of a tray have passed a step."""
    return not any(pieces and (one := route.step(key)) and one.index <= step.index for key, pieces in tray.at.items())


def step_name(step: Step, speech: Speech) -> str:
    """'Sand 120' in the card's language."""
    name = name_of(step.operation, speech.language)
    return name if ":" not in step.key else f"{name} {step.pass_.name}"


def _line(book: Book, run: RunState, tray: Tray, step: Step, speech: Speech) -> StepLine:
    done = is_done(run.route_of(tray), tray, step)
    counts = tray.counts.get(step.key, {}).values() if done else ()
    station = book.station(step.operation.station)
    where = [station.name if station else step.operation.station]
    board = _board(run, tray, step)
    if board:
        where.append(speech("card-board", board=board))
    return StepLine(
        number=step.index + 1,
        name=step_name(step, speech),
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
    points = start_list(book, operation, speech)
    more = ((speech("card-start-list"), speech("card-on-the-jig-label")),) if points else ()
    return (*operation.setup_sheet, *more)


def checks_of(operation: Operation, speech: Speech) -> tuple[FirstPiece, ...]:
    """First-piece checks with nominal and tolerance in the shop's units."""
    texts = translated([one.text for one in operation.checks], translation_of(operation, speech.language).checks)
    return tuple(
        FirstPiece(speech(f"card-first-piece-{one.per}"), text, *_measure(one, speech))
        for one, text in zip(operation.checks, texts, strict=True)
    )


def _measure(check: Check, speech: Speech) -> tuple[str, str]:
    """('60 mm +0.3 −0.2', '59.8 to 60.3')."""
    if check.nominal is None:
        return "", ""
    nominal = speech.length(check.nominal)
    if check.plus is None and check.minus is None:
        return nominal, ""
    plus, minus = check.plus or 0.0, check.minus or 0.0
    measure = speech("card-measure", nominal=nominal, plus=_bare(plus, speech), minus=_bare(minus, speech))
    least, most = _bare(check.nominal - minus, speech), _bare(check.nominal + plus, speech)
    return measure, speech("card-limits", least=least, most=most)


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
    return tuple(Cell(speech("card-position", place=at), text) for at, text in found.items())


def pieces_in(tray: Tray) -> int:
    """The pieces that a tray holds, or will once they are cut."""
    return tray.in_process + tray.good
