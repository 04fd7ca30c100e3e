"""The planner's answers in the middle of a run: the first after an event, and when a better plan is told of."""

import tempfile
import time
from collections.abc import Iterator
from datetime import timedelta
from functools import partial
from itertools import islice
from pathlib import Path
from statistics import median, quantiles

from runboard.app import Settings, open_workshop
from runboard.background.children import Children
from runboard.floor.plans import Planner
from runboard.floor.runs import Wish, new_event, open_run
from runboard.floor.taps import record_events
from runboard.floor.workshop import Workshop
from runboard.plan.move import Move
from runboard.plan.next_move import moves
from runboard.plan.search import search
from tests.bench.now import Row
from tests.conftest import HandClock
from tests.core.instances import FRIDAY, shop_of

TRAYS, PIECES, PEOPLE = 36, 5, ("ann", "ben")
WORKED, EVENTS, SEARCHED = 100, 60, 8
GOAL_FIRST_MS, GOAL_IMPROVED = 100.0, 5.0
QUIET = timedelta(seconds=1)
PRESSES = {"start": "load started", "go on": "load started", "unload": "unloading started"}


def answers(quick: bool = False) -> Iterator[Row]:
    """First answers over some events, and the worst time until an improved plan was published, where one was found."""
    with tempfile.TemporaryDirectory(prefix="runboard-bench-") as place:
        clock = HandClock(FRIDAY)
        store, workshop = open_workshop(Settings(Path(place), clock))
        children = Children()
        try:
            _open(workshop)
            presses = _presses(workshop, clock)
            for _ in islice(presses, WORKED):
                pass
            yield from _first(workshop, children, presses)
            yield from _improved(workshop, children, presses, clock, 3 if quick else SEARCHED)
        finally:
            children.close()
            store.close()


def _first(workshop: Workshop, children: Children, presses: Iterator[None]) -> Iterator[Row]:
    planner = Planner(workshop, children, None, lambda seq: None)
    planner.turn()
    took = []
    for _ in islice(presses, EVENTS):
        started = time.perf_counter()
        planner.turn()
        took.append(1000 * (time.perf_counter() - started))
    blocks = len(workshop.planned.answer.problem.blocks)
    yield Row(f"first answer at {TRAYS} trays ({blocks} blocks left): p50", median(took))
    yield Row(
        f"first answer at {TRAYS} trays: p95 of {len(took)} events", quantiles(took, n=20)[-1], None, GOAL_FIRST_MS
    )


def _improved(
    workshop: Workshop, children: Children, presses: Iterator[None], clock: HandClock, events: int
) -> Iterator[Row]:
    """As the server does it: a second of quiet, a child that searches, and a look at it every half second."""
    planner = Planner(workshop, children, partial(search, clock=time.monotonic), lambda seq: None, quiet=QUIET)
    found = [took for _ in islice(presses, events) if (took := _until_better(planner, workshop, clock)) is not None]
    yield Row(
        f"improved plan published ({len(found)} of {events} events had one): p50", median(found or [0.0]), unit="s"
    )
    yield Row("improved plan published: the last", max(found, default=0.0), None, GOAL_IMPROVED, "s")


def _until_better(planner: Planner, workshop: Workshop, clock: HandClock) -> float | None:
    """Seconds from an event to the first better plan that is told of; None where the search ends without one."""
    started, before = time.monotonic(), clock.now()
    planner.turn()
    first = workshop.planned.version
    while workshop.planned.version == first:
        time.sleep(0.5)
        # The shop's clock goes on: a plan made anew only because a minute passed would be none that was searched for.
        clock.moment = before + timedelta(seconds=min(50.0, time.monotonic() - started))
        planner.turn()
        task = planner.search()
        is_over = task is not None and task.is_over
        if workshop.planned.version == first and (is_over or time.monotonic() - started > 20):
            return None
    return time.monotonic() - started


def _open(workshop: Workshop) -> None:
    workshop.books.save(shop_of(len(PEOPLE)), workshop.clock.now())
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": PIECES * TRAYS}], start=PIECES * TRAYS), PEOPLE[0])
    until = (workshop.clock.now() + timedelta(hours=12)).isoformat()
    for person in PEOPLE:
        record_events(workshop, [new_event(workshop, "person came", {"until": until, "room": "shop"}, person=person)])


def _presses(workshop: Workshop, clock: HandClock) -> Iterator[None]:
    """Press after press of people who take what is offered first, each its own event."""
    while True:
        for person in PEOPLE:
            found = moves(workshop.ledger.state, workshop.book, person, clock.now())
            move = next((one for one in found if one.code in PRESSES), None)
            if move is not None:
                for kind in _of(workshop, move):
                    clock.forward(minutes=1)
                    _press(workshop, kind, move, person)
                    yield
        clock.forward(minutes=1)


def _of(workshop: Workshop, move: Move) -> Iterator[str]:
    yield PRESSES[move.code]
    if workshop.ledger.state.runs[move.run].loads[move.load].state == "loading":
        yield from ("machine started", "machine ended", "unloading started")
    yield "load done"


def _press(workshop: Workshop, kind: str, move: Move, person: str) -> None:
    body = {"pieces": dict(move.pieces)} if kind == "load started" and move.code == "start" else {}
    event = new_event(
        workshop, kind, body, run=move.run, load=move.load, operation=move.step, station=move.station, person=person
    )
    record_events(workshop, [event])
