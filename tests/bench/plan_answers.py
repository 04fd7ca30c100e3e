"""The planner's answers in the middle of a run: the first after an event, and when a better plan is told of."""

import tempfile
import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import timedelta
from functools import partial
from itertools import islice
from math import inf
from pathlib import Path
from statistics import median, quantiles
from typing import Any

from runboard.background import pauses
from runboard.background.kept_child import KeptChild
from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.planning.planner import Planner
from runboard.floor.pressing.taps import record_events
from runboard.floor.workshop import Workshop
from runboard.opening import open_workshop
from runboard.plan.move import Move
from runboard.plan.next_move import moves
from runboard.plan.schedule.problem.nouns import Plan
from runboard.plan.schedule.problem.worth import worth
from runboard.plan.search import come_up, search
from tests.bench.now import Row
from tests.conftest import HandClock
from tests.core.instances import FRIDAY, shop_of

TRAYS, PIECES, PEOPLE = 36, 5, ("ann", "ben")
WORKED, EVENTS, SEARCHED = 100, 60, 8
GOAL_FIRST_MS, GOAL_IMPROVED = 100.0, 5.0
LONGEST, NEAR = 25.0, 5.0
PRESSES = {"start": "load started", "go on": "load started", "unload": "unloading started"}


def answers(quick: bool = False) -> Iterator[Row]:
    """First answers over some events; then, of events whose search finds a better plan, how soon one was published and how
    far the plan at five seconds was from the best that was found in the end."""
    with tempfile.TemporaryDirectory(prefix="runboard-bench-") as place:
        clock = HandClock(FRIDAY)
        store, workshop = open_workshop(Path(place), clock)
        child = KeptChild("search", come_up, partial(search, clock=time.monotonic))
        try:
            child.begin()
            _open(workshop)
            presses = _presses(workshop, clock)
            for _ in islice(presses, WORKED):
                pass
            yield from _first(workshop, presses)
            while child.prepared is None:
                time.sleep(0.1)
            yield from _improved(workshop, child, presses, clock, 3 if quick else SEARCHED)
        finally:
            child.close()
            store.close()


def _first(workshop: Workshop, presses: Iterator[None]) -> Iterator[Row]:
    planner = Planner(workshop, None, lambda seq: None)
    planner.turn()
    pauses.keep_short()  # as a server does once it is up
    took = []
    for _ in islice(presses, EVENTS):
        started = time.perf_counter()
        planner.turn()
        took.append(1000 * (time.perf_counter() - started))
    pauses.as_usual()
    blocks = len(workshop.planned.answer.problem.blocks)
    yield Row(f"first answer at {TRAYS} trays ({blocks} blocks left): p50", median(took))
    yield Row(
        f"first answer at {TRAYS} trays: p95 of {len(took)} events", quantiles(took, n=20)[-1], None, GOAL_FIRST_MS
    )


@dataclass(frozen=True)
class Searched:
    """What the search after one event came to: seconds to the first plan published (None where none was), and to the first
    that is less than five minutes from the best one found; and by how much the plan at five seconds was worse than that, in
    open minutes of finish and walks."""

    first: float | None
    near: float
    worse: float


def _improved(
    workshop: Workshop, child: KeptChild, presses: Iterator[None], clock: HandClock, events: int
) -> Iterator[Row]:
    """As the server does it: one child that goes over to each plan, and a look at it whenever it has told of something."""
    planner, heard = Planner(workshop, child, lambda seq: None), threading.Event()
    child.heard = heard.set
    found = [_searched(planner, workshop, clock, heard) for _ in islice(presses, events)]
    firsts = [one.first for one in found if one.first is not None]
    nears = [one.near for one in found]
    said = f"improved plan published ({len(firsts)} of {events} events had one)"
    yield Row(f"{said}: p50", median(firsts or [0.0]), unit="s")
    yield Row(f"{said}: the last of the firsts", max(firsts, default=0.0), None, GOAL_IMPROVED, "s")
    yield Row(f"a plan within {NEAR:g} min of the best of {planner.seconds:g} s: p50", median(nears), unit="s")
    yield Row(f"a plan within {NEAR:g} min of the best: the last", max(nears), None, GOAL_IMPROVED, "s")
    worse = [one.worse for one in found]
    yield Row(f"plan at 5 s against the best of {planner.seconds:g} s, open minutes: p50", median(worse), unit="min")
    yield Row(f"plan at 5 s against the best of {planner.seconds:g} s, open minutes: most", max(worse), unit="min")


def _searched(planner: Planner, workshop: Workshop, clock: HandClock, heard: threading.Event) -> Searched:
    """One event: a plan at once, and what its search publishes till it ends."""
    started, before = time.monotonic(), clock.now()
    planner.turn()
    published: list[tuple[float, Plan | None]] = [(0.0, workshop.planned.plan)]
    version = workshop.planned.version
    while (passed := time.monotonic() - started) < LONGEST:
        # The shop's clock goes on: a plan made anew only because a minute passed would be none that was searched for.
        clock.moment = before + timedelta(seconds=min(50.0, passed))
        did = planner.turn()
        if workshop.planned.version != version:
            version = workshop.planned.version
            published.append((time.monotonic() - started, workshop.planned.plan))
        task = planner.search()
        if not did and (task is None or task.is_over):
            break
        if not did:
            heard.wait(0.5)
            heard.clear()
    clock.moment = before + timedelta(seconds=50)
    problem = workshop.planned.answer.problem
    result = task.result.plan if task is not None and task.result is not None else None
    plans = [(at, worth(problem, plan)) for at, plan in published if plan is not None]
    best = min([one for _, one in plans] + ([] if result is None else [worth(problem, result)]), default=None)
    if best is None:
        return Searched(None, LONGEST, 0.0)
    far = [(at, _minutes(one, best)) for at, one in plans]
    near = next((at for at, minutes in far if minutes < NEAR), LONGEST)
    worse = [minutes for at, minutes in far if at <= GOAL_IMPROVED]
    return Searched(plans[1][0] if len(plans) > 1 else None, near, worse[-1] if worse else 0.0)


def _minutes(one: tuple[Any, ...], best: tuple[Any, ...]) -> float:
    """Open minutes of finish and walks between two plans; as good as for ever where one is later for the order lines."""
    return (one[1] - best[1]) / 2 if one[0] == best[0] else inf


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
