"""The sheet of a station: all that is done there in a run, in the route's order, with what is too long for a tray's card."""

from collections.abc import Sequence
from dataclasses import replace

from runboard.cards.model import Care, Shown, StationSheet, StationWork
from runboard.cards.of_a_run import foot_of
from runboard.cards.work import care_of, checks_of, finish_notes, label_times
from runboard.run.care.cautions import start_points
from runboard.run.fold.route import Step
from runboard.run.fold.state import RunState
from runboard.run.rules.resting import wait_after
from runboard.shop.book import Book
from runboard.shop.care import finish_of
from runboard.shop.product import Operation
from runboard.words.facts import number_in_words
from runboard.words.speech import Speech


def station_sheets(book: Book, run: RunState, speech: Speech) -> tuple[StationSheet, ...]:
    """One for each station of the run's route, in the order in which trays come to them; a bench has one too."""
    found: dict[str, list[Operation]] = {}
    for operation in run.route.product.operations:
        found.setdefault(operation.station, []).append(operation)
    return tuple(station_sheet(book, run, key, operations, speech) for key, operations in found.items())


def station_sheet(book: Book, run: RunState, key: str, operations: Sequence[Operation], speech: Speech) -> StationSheet:
    """What stays at a station. What all its operations have alike of cautions and start list stands once, before them."""
    station, steps = book.station(key), {one.key: _steps(run, one) for one in operations}
    care = {one.key: care_of(book, run.route, steps[one.key][-1], speech) for one in operations}
    common = tuple(each for each in care[operations[0].key] if all(each in of_one for of_one in care.values()))
    product = run.route.product.name
    start = tuple(speech.care(point) for point in start_points(book, operations[0]))
    works = tuple(_work(book, run, one, steps[one.key], care[one.key], common, speech) for one in operations)
    if len(works) == 1:  # one list, ticked in one go
        start, works = (*start, *works[0].start), (replace(works[0], start=()),)
    return StationSheet(
        station=station.name if station else key,
        about=" · ".join(dict.fromkeys((speech("station-sheet"), product, run.name))),
        care=common,
        start=start,
        works=works,
        on_a_phone=speech("on-a-phone"),
        foot=foot_of(book, run, speech, len(run.revisions), 1, "bad-piece-short"),
    )


def _steps(run: RunState, operation: Operation) -> list[Step]:
    return [step for step in run.route.steps if step.operation is operation]


def _work(
    book: Book,
    run: RunState,
    operation: Operation,
    steps: Sequence[Step],
    care: Sequence[Care],
    common: Sequence[Care],
    speech: Speech,
) -> StationWork:
    first, last = steps[0].index + 1, steps[-1].index + 1
    texts = speech.texts(operation, "instructions")
    return StationWork(
        name=_called(operation, steps, speech),
        at=speech("at-step", first=first, last=last if last > first else 0, steps=len(run.route.steps)),
        care=tuple(each for each in care if each not in common),
        start=tuple(speech.texts(operation, "checklist")),
        setup=speech.setup(operation),
        how=tuple(Shown(text, one.picture) for text, one in zip(texts, operation.instructions, strict=True)),
        checks=checks_of(operation, speech),
        supplies=_supplies(operation, speech),
        wait=_wait(book, run, steps[-1], speech),
    )


def _called(operation: Operation, steps: Sequence[Step], speech: Speech) -> str:
    """'Sand 120, 180'"""
    passes = [step.pass_.name for step in steps if ":" in step.key]
    name = speech.named(operation)
    return type(name)(f"{name} {', '.join(passes)}".strip())


def _supplies(operation: Operation, speech: Speech) -> str:
    """'Used for each piece: brass hooks: 4; hard oil: 6 ml'; '' where it uses nothing up."""
    used = [f"{use.supply}: {number_in_words(use.each, speech.locale)} {use.unit}".strip() for use in operation.uses]
    return speech("supplies-each", supplies="; ".join(used)) if used else ""


def _wait(book: Book, run: RunState, step: Step, speech: Speech) -> tuple[str, ...]:
    """The wait after it with the label's times, and where they come from."""
    wait, finish = wait_after(book, run.route, step), finish_of(book, step.operation)
    if wait is None and finish is None:
        return ()
    said = [speech("finish", finish=finish.name)] if finish and finish.name else []
    if wait is not None:
        said.append(speech(f"wait-{wait.why}", span=speech.span(wait.least)))
        if wait.latest is not None:
            said.append(speech("latest", span=speech.span(wait.latest)))
    said += [cell.label for cell in label_times(book, run.route, step, None, speech)]
    return (" · ".join(said), *finish_notes(finish, speech))
