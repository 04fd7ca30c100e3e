"""Taking over a watch: who may watch a running machine in another's place, and when a plan wants them to."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from runboard.plan.candidates import WhoAsks, is_allowed, time_left
from runboard.plan.move import Move, of_load
from runboard.plan.schedule.problem.nouns import Placed, Plan, Problem
from runboard.run.care.sight import must_be_watched
from runboard.run.fold.state import Load, RunState
from runboard.shop.book import Book, may_work_while_watching

CODE = "take over"
# Earlier than this nobody is told that they will take over: much may be pressed before.
SOON = timedelta(minutes=15)


@dataclass(frozen=True)
class Taking:
    """A plan's wish that somebody takes over watching a load's machine at ``at``; from ``go_at`` on they are on the way."""

    run: str
    load: str
    at: datetime
    go_at: datetime


def takes(asks: WhoAsks) -> Iterator[Move]:
    """For each machine that another person watches the move that takes over the watch, where the rules allow it: whoever
    is here, with hands and eyes where that machine may be watched too."""
    seen = asks.state.people.get(asks.person)
    if seen is None or seen.came_at is None or seen.away or time_left(asks) <= timedelta(0):
        return
    for run, load in asks.state.open_loads():
        if _is_watched_by_another(asks, run, load) and _may_take(asks, run, load):
            yield _move(asks, run, load)


def takings(problem: Problem, plan: Plan, person: int) -> tuple[Taking, ...]:
    """When a plan has a person take over watching a machine that runs already, by the moment of the change."""
    found = []
    for placed in plan.placed:
        block = problem.blocks[placed.block]
        for tick in _changes(problem, placed, person):
            walk = max((row[problem.stations[block.station].room] for row in problem.walks), default=0)
            found.append(Taking(block.run, block.load, problem.moment(tick), problem.moment(tick - walk)))
    return tuple(sorted(found, key=lambda taking: taking.at))


def with_moments(found: Sequence[Move], wanted: Sequence[Taking], now: datetime) -> list[Move]:
    """The moves, those that a plan wants soon with the moment ``at`` which."""
    at = {(taking.run, taking.load): taking.at for taking in reversed(wanted) if taking.at - now <= SOON}
    return [
        replace(move, facts={**move.facts, "at": at[move.run, move.load]})
        if move.code == CODE and (move.run, move.load) in at
        else move
        for move in found
    ]


def due(found: Sequence[Move], wanted: Sequence[Taking], now: datetime) -> Move | None:
    """The move that takes over what a plan has somebody take over by now: it is time to go there."""
    loads = {(taking.run, taking.load) for taking in wanted if taking.go_at <= now}
    return next((move for move in found if move.code == CODE and (move.run, move.load) in loads), None)


def _changes(problem: Problem, placed: Placed, person: int) -> Iterator[int]:
    block = problem.blocks[placed.block]
    if not block.begun or block.by is None:
        return
    before = block.by
    for who, tick in placed.watchers:
        if who == person and before != person:
            yield tick
        before = who


def _is_watched_by_another(asks: WhoAsks, run: RunState, load: Load) -> bool:
    return must_be_watched(run, load) and load.watcher not in ("", asks.person)


def _may_take(asks: WhoAsks, run: RunState, load: Load) -> bool:
    return is_allowed(asks, "watch taken", run, load.id) and all(
        _are_in_sight(asks.book, load.station, other.station) for other in asks.watched
    )


def _are_in_sight(book: Book, one: str, other: str) -> bool:
    """Whether one person may watch two machines at once: from one room, or from where one is the other may be watched."""
    stations = book.station(one), book.station(other)
    rooms = {station.room for station in stations if station is not None}
    may = may_work_while_watching(book, one, other) or may_work_while_watching(book, other, one)
    return may or (None not in stations and len(rooms) == 1)


def _move(asks: WhoAsks, run: RunState, load: Load) -> Move:
    watcher, seen = asks.book.person(load.watcher), asks.state.people.get(load.watcher)
    name = watcher.name if watcher else (seen.name if seen else "") or load.watcher
    return of_load(asks.book, run, load, CODE, "another watches", (10,), person=name)
