"""Typing in what was written on a tray's card while nothing else could record it: looked at first, then stored whole or
not at all. Nothing typed from paper teaches a time."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from runboard.floor.changing.runs import new_event
from runboard.floor.pressing.paper_rows import CardRow, Meant, RowRefused, meant, totals
from runboard.floor.pressing.taps import record_events
from runboard.floor.warm import find_run
from runboard.floor.workshop import Workshop
from runboard.run.change import replace
from runboard.run.fold.decide import decide
from runboard.run.fold.ledger import Ledger
from runboard.run.fold.state import RunState, Tray
from runboard.run.log.ahead import after_all
from runboard.run.log.event import Event
from runboard.run.refusal import Refused
from runboard.shop.book import Book


@dataclass(frozen=True)
class TypedCard:
    """A card: whose tray, its rows, who types them in, and an id of this typing: the same twice is entered once."""

    run: str
    tray: str
    rows: Sequence[CardRow]
    entered_by: str = ""
    once: str = ""


@dataclass(frozen=True)
class StepTyped:
    """What becomes of one step: ``written`` on the card, ``as it was`` (pressed before, and the card says the same), or
    ``assumed``: not on the card, and taken as done since a later step is. ``at`` is None where no time was written."""

    step: str
    name: str
    how: Literal["written", "as it was", "assumed"]
    good: int
    scrap: int
    person: str = ""
    at: datetime | None = None


@dataclass(frozen=True)
class Outcome:
    """What a card would make: its lines in the order of the route, where pieces lie then, and how many are good."""

    lines: tuple[StepTyped, ...]
    left: tuple[tuple[str, int], ...]
    good: int


def find_tray(workshop: Workshop, run: str, tray: str) -> tuple[RunState, Tray]:
    """The run and the tray as they are now. Refused 'run unknown', 'tray unknown'."""
    found = find_run(workshop, run)
    if tray not in found.trays:
        raise Refused("tray unknown", tray=tray)
    return found, found.trays[tray]


def try_paper(workshop: Workshop, paper: TypedCard) -> Outcome:
    """What would be entered; nothing is stored. Raises ``RowRefused``."""
    with workshop.lock:
        run, tray = find_tray(workshop, paper.run, paper.tray)
        known = list(meant(run, tray, paper.rows, after_all(workshop.ledger.held, workshop.clock.now())))
        events, book, log = _events(workshop, paper, known), workshop.book, list(workshop.ledger.arrived.values())
    after = _trial(book, log, events, paper, tray)  # it takes a while, and nobody who presses waits for a look
    return _outcome(run, tray, after, paper.rows, known)


def enter_paper(workshop: Workshop, paper: TypedCard) -> Outcome:
    """Enter it: all of it or nothing. Raises ``RowRefused``; Refused 'nothing written' where it says nothing new."""
    with workshop.lock:
        run, tray = find_tray(workshop, paper.run, paper.tray)
        if any(key.startswith(f"{paper.once}-") for key in workshop.ledger.arrived if paper.once):
            return _outcome(run, tray, tray, paper.rows, [])
        known = list(meant(run, tray, paper.rows, after_all(workshop.ledger.held, workshop.clock.now())))
        if not known:
            raise Refused("nothing written", tray=paper.tray)
        events = _events(workshop, paper, known)
        after = _trial(workshop.book, list(workshop.ledger.arrived.values()), events, paper, tray)
        record_events(workshop, events)
    return _outcome(run, tray, after, paper.rows, known)


def _trial(book: Book, log: list[Event], events: Sequence[Event], paper: TypedCard, tray: Tray) -> Tray:
    """The tray as the events would leave it, tried on a ledger beside the shop's."""
    if not events:
        return tray
    beside = Ledger(book)
    beside.load(log)
    for event in events:
        try:
            beside.keep(decide(beside, replace(event, seen=beside.last_seq)), beside.last_seq + 1)
        except Refused as refused:
            raise RowRefused(event.operation, refused) from None
    after = beside.state.runs[paper.run].trays[paper.tray]
    for row in paper.rows:
        good, scrap = totals(after, row.step)
        if good != row.good or scrap != (scrap if row.scrap is None else row.scrap):
            raise RowRefused(row.step, Refused("counted later", good=good, scrap=scrap))
    return after


def _events(workshop: Workshop, paper: TypedCard, known: Sequence[Meant]) -> list[Event]:
    made = []
    for number, said in enumerate(known):
        fields = {"run": paper.run, "tray": paper.tray, "operation": said.row.step, "load": said.load, "basis": "paper"}
        more = {
            "person": said.row.person,
            "entered_by": paper.entered_by,
            "device": "server",
            "at": said.at.isoformat(),
        }
        named = {"id": f"{paper.once}-{number}"} if paper.once else {}
        made.append(new_event(workshop, said.kind, said.body, **fields, **more, **named))
    return made


def _outcome(run: RunState, before: Tray, after: Tray, rows: Sequence[CardRow], known: Sequence[Meant]) -> Outcome:
    written = {meant.row.step: meant for meant in known}
    asked = {row.step for row in rows}
    lines = []
    route = run.route_of(after)
    for step in route.steps:
        good, scrap = totals(after, step.key)
        if step.key in written:
            meant = written[step.key]
            lines.append(StepTyped(step.key, step.name, "written", good, scrap, meant.row.person, meant.row.at))
        elif step.key in asked:
            lines.append(StepTyped(step.key, step.name, "as it was", good, scrap))
        elif (good, scrap) != totals(before, step.key):
            lines.append(StepTyped(step.key, step.name, "assumed", good, scrap))
    left = tuple((step.name, after.at[step.key]) for step in route.steps if after.at.get(step.key))
    return Outcome(tuple(lines), left, after.good)
