"""What is in the air of a room: a finish that is wet there, and keeps dust out; its solvent, and nothing heats or sparks."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import TypeVar

from runboard.run.fold.route import Route, Step
from runboard.run.fold.state import Load, RunState, ShopState
from runboard.run.rules.resting import done_at, wet_after
from runboard.shop.book import Book, Station
from runboard.shop.care import finish_of
from runboard.shop.finish import Finish
from runboard.shop.product import ZERO

# Where a label with solvent says nothing of how long. Common practice, no source: the label wins.
USUAL_AIRING = timedelta(hours=2)

Span = TypeVar("Span", int, timedelta)


@dataclass(frozen=True)
class Coat:
    """What a finish leaves in its room after it was brought on: for how long it is ``wet``, and for how long its solvent
    ``airs``; ``None`` where it has none."""

    wet: timedelta
    airs: timedelta | None

    def keeps_off(self, station: Station) -> timedelta | None:
        """For how long after it a station of its room may not be at work; ``None`` where it may all the time."""
        return kept_off(self.wet, self.airs, heats=station.heats, dusty=raises_dust(station))


@dataclass(frozen=True)
class InAir:
    """A coat that is in the air of ``room`` after the step ``key`` of a tray, or of a load that is not done."""

    run: str
    of: str
    key: str
    station: str
    room: str
    done_at: datetime
    coat: Coat


def kept_off(wet: Span, airs: Span | None, *, heats: bool, dusty: bool) -> Span | None:
    """For how long after a coat what ``heats`` or makes dust must stay away from it: dust from all that is wet and from
    solvent, heat from solvent alone. ``None`` where it need not, not even while the coat is brought on."""
    if dusty:
        return (wet or None) if airs is None else max(wet, airs)
    return airs if heats else None


def raises_dust(station: Station) -> bool:
    """Whether work at a station leaves dust in the air. A cutter's goes with its chips."""
    return station.kind == "sander"


def coat_of(book: Book, route: Route, step: Step) -> Coat | None:
    """What a step leaves in the air; ``None`` where that is nothing."""
    wet, finish = wet_after(book, route, step), finish_of(book, step.operation)
    airs = airing(finish) if finish is not None and finish.solvent else None
    return Coat(wet, airs) if wet or airs is not None else None


def airing(finish: Finish) -> timedelta:
    """How long a finish's solvent is in the air after the coat."""
    return finish.airing if finish.airing is not None else USUAL_AIRING


def in_the_air(state: ShopState, book: Book, now: datetime) -> list[InAir]:
    """Every coat that keeps anything off at ``now``."""
    found = (known for run in _recent(state, now) for known in (*_of_rests(run, book), *_of_loads(run, book, now)))
    return [known for known in found if known.done_at + max(known.coat.wet, known.coat.airs or ZERO) > now]


def clear_at(some: Iterable[InAir], station: Station, now: datetime) -> datetime | None:
    """Until when what is in the air keeps a station from work; ``None`` where nothing does."""
    there = ((known, known.coat.keeps_off(station)) for known in some if known.room == station.room)
    return max((at for known, off in there if off is not None and (at := known.done_at + off) > now), default=None)


def _recent(state: ShopState, now: datetime) -> Iterator[RunState]:
    """The runs that are open, or were a day ago: what they left in the air is gone after that."""
    return (run for run in state.runs.values() if run.closed_at is None or run.closed_at > now - timedelta(days=1))


def _of_rests(run: RunState, book: Book) -> Iterator[InAir]:
    for tray in run.trays.values():
        for key, rest in tray.rests.items():
            route = run.route_at(rest.revision or tray.revision)
            step = route.step(key)
            coat = coat_of(book, route, step) if step else None
            station = book.station(step.operation.station) if step else None
            if step is None or coat is None or station is None:
                continue
            if rest.ended_at is not None:  # whoever goes on with it finds it dry
                coat = replace(coat, wet=ZERO)
            yield InAir(run.id, tray.id, key, station.key, station.room, done_at(book, route, step, rest), coat)


def _of_loads(run: RunState, book: Book, now: datetime) -> Iterator[InAir]:
    """A coat is in the air while it is brought on, and after that as if it ended now; solvent also after a load that no wait
    follows."""
    for load in (*run.loads.values(), *(load for load in run.past.values() if _is_recent(run, load, now))):
        step, station = run.step_of(load), book.station(load.station)
        coat = coat_of(book, run.route_at(run.revision_of(load)), step) if step else None
        if coat is not None and station is not None:
            over = load.done_at or load.phase_at if load.id in run.past else None
            coat = replace(coat, wet=ZERO) if over is not None else coat
            yield InAir(run.id, load.id, load.step, station.key, station.room, over or now, coat)


def _is_recent(run: RunState, load: Load, now: datetime) -> bool:
    """Whether a load that is over may have left solvent that is told by no wait: that of its trays tells of the others."""
    over = load.done_at or load.phase_at
    rests = (run.trays[tray].rests for tray in load.pieces if tray in run.trays)
    return over is not None and over > now - timedelta(days=1) and not any(load.step in rest for rest in rests)


def at_work_in(state: ShopState, book: Book, room: str) -> Iterator[Station]:
    """The stations of a room at which a load is at work, those that only a press says to run among them."""
    for load in (*(load for _, load in state.open_loads()), *state.said_running.values()):
        station = book.station(load.station)
        if station is not None and station.room == room and (load.state == "running" or load.people):
            yield station
