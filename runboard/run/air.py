"""What is in the air of a room: a finish that is wet there, a solvent. No dust then, and nothing that heats or sparks."""

from collections.abc import Iterator
from datetime import datetime, timedelta

from runboard.run.resting import DRIES, done_at, wet_after
from runboard.run.state import Load, RunState, ShopState
from runboard.shop.book import Book
from runboard.shop.care import finish_of
from runboard.shop.finish import Finish

# Where a label with solvent says nothing of how long. Common practice, no source: the label wins.
USUAL_AIRING = timedelta(hours=2)


def clear_at(state: ShopState, book: Book, now: datetime) -> dict[str, datetime]:
    """For each room where a finish is wet or a solvent in the air: when that is over, as far as it is known."""
    found: dict[str, datetime] = {}
    for run in _recent(state, now):
        for room, until in (*_of_rests(run, book), *_of_loads(run, book, now)):
            if until > now:
                found[room] = max(until, found.get(room, until))
    return found


def _recent(state: ShopState, now: datetime) -> Iterator[RunState]:
    """The runs that are open, or were a day ago: what they left in the air is gone after that."""
    return (run for run in state.runs.values() if run.closed_at is None or run.closed_at > now - timedelta(days=1))


def _of_rests(run: RunState, book: Book) -> Iterator[tuple[str, datetime]]:
    for tray in run.trays.values():
        for key, rest in tray.rests.items():
            route = run.route_at(rest.revision or tray.revision)
            step = route.step(key)
            station = book.station(step.operation.station) if step else None
            if step is None or station is None:
                continue
            done = done_at(book, route, step, rest)
            if rest.why in DRIES and rest.ended_at is None:
                yield station.room, done + wet_after(book, route, step)
            finish = finish_of(book, step.operation)
            if finish is not None and finish.solvent:
                yield station.room, done + airing(finish)


def _of_loads(run: RunState, book: Book, now: datetime) -> Iterator[tuple[str, datetime]]:
    """A solvent finish is in the air while it is brought on, and for its airing after that."""
    for load in run.loads.values():
        finish = _solvent_of(run, load, book)
        station = book.station(load.station)
        if finish is not None and station is not None:
            yield station.room, now + airing(finish)


def _solvent_of(run: RunState, load: Load, book: Book) -> Finish | None:
    step = run.step_of(load)
    finish = finish_of(book, step.operation) if step else None
    return finish if finish is not None and finish.solvent else None


def airing(finish: Finish) -> timedelta:
    """How long a finish's solvent is in the air after the coat."""
    return finish.airing if finish.airing is not None else USUAL_AIRING


def heating_there(state: ShopState, book: Book, room: str) -> str:
    """The name of a machine that heats, sparks or makes dust and is at work in a room; '' where there is none."""
    for load in (*(load for _, load in state.open_loads()), *state.said_running.values()):
        station = book.station(load.station)
        at_work = load.state == "running" or bool(load.people)
        if station is not None and station.room == room and at_work and (station.heats or station.kind == "sander"):
            return station.name
    return ""
