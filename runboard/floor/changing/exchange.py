"""A run as one JSON file: its events out, and the same events in again, in this shop or another with the same stations.

What is taken in touches its own run and nothing else: it is tried on a ledger beside the shop's, and what the shop is
outside of the run must be as it was.
"""

from collections import Counter
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from runboard.floor.changing.run_alone import Alone, stand_in
from runboard.floor.changing.run_file import VERSION, RunFile, own_events, read_run_file
from runboard.floor.warm import catch_up, find_run
from runboard.floor.workshop import Workshop
from runboard.floor.writing import writing
from runboard.run.fold.ledger import Ledger
from runboard.run.fold.outside import first_difference
from runboard.run.fold.state import RunState, ShopState
from runboard.run.log.ahead import check_not_ahead
from runboard.run.log.corrections import effective
from runboard.run.log.event import Event, event_to_json
from runboard.run.log.size import check_run
from runboard.run.refusal import Refused
from runboard.shop.book import Book


def export_run(workshop: Workshop, run: str) -> dict[str, Any]:
    """``{"runboard_run": 1, "run", "name", "time_zone", "events": […], "stand_ins": [{"for", "event"}]}``.

    The events are the run's own. A stand-in says again, as an event of this run, what a press of another run or of the
    shop changed in it: a person went over, a station was set up anew. Refused 'run unknown'.
    """
    with workshop.lock:
        known = find_run(workshop, run)
        ledger, book = workshop.ledger, workshop.book
        arrived, held = list(ledger.arrived.values()), ledger.held
    own = own_events(arrived, run)
    alone = Alone(run, book, {event.id for event in own})
    for event in held:
        alone.fold(event)
    return {
        "runboard_run": VERSION,
        "run": run,
        "name": known.name,
        "time_zone": book.time_zone,
        "events": [_record(event) for event in sorted(own, key=lambda event: event.order)],
        "stand_ins": [{"for": source, "event": _record(event)} for source, event in alone.stand_ins],
    }


def _record(event: Event) -> dict[str, Any]:
    """An event without the numbers that mean something in this shop's log only."""
    return event_to_json(replace(event, seq=0, seen=0))


@dataclass(frozen=True)
class Coming:
    """A run's file before it is taken: the run as it would be, the events that would be new, and by kind how many of the
    shop's own that it was worked in are left out. ``ledger`` is the shop's with the new ones, after arrival ``seq``."""

    file: RunFile
    run: RunState
    is_new: bool
    fresh: tuple[Event, ...]
    left_out: Mapping[str, int]
    ledger: Ledger
    seq: int


def look_at_run(workshop: Workshop, record: object) -> Coming:
    """What taking a run that ``export_run`` wrote would do; nothing is stored.

    Refused 'run too large', 'file no run', 'file event wrong', 'file other run', 'file zone', 'file unknown names' (a station or person
    that this shop's book does not have), 'run known' (another run of that key is here), 'file outside' with ``what`` and
    ``name`` of the first thing beside the run that would change here, 'file does not fit', 'ahead' (dated after now).
    """
    file = read_run_file(record)
    with workshop.lock:
        catch_up(workshop)
        ledger = workshop.ledger
        arrived, before = dict(ledger.arrived), ledger.state
        seq, book = ledger.last_seq, workshop.book
    _fits_the_shop(book, file, before, arrived)
    alone = _told_alone(file, book)
    wanted = [*((event.id, event) for event in file.own), *file.stand_ins, *alone.stand_ins]
    fresh = [event for source, event in wanted if source not in arrived and event.id not in arrived]
    for event in fresh:
        check_not_ahead(event, workshop.clock.now())
    found = _tried(ledger, fresh, before, file, alone.state)
    left_out = Counter(event.kind for event in file.shops)
    run = found.state.runs[file.run]
    check_run(run)
    return Coming(file, run, file.run not in before.runs, tuple(found.events), left_out, found.ledger, seq)


def import_run(workshop: Workshop, record: object) -> int:
    """Take a run that ``export_run`` wrote; answers how many events were new. All or nothing. Refused as in
    ``look_at_run``."""
    coming = look_at_run(workshop, record)
    with writing(workshop) as (write, now):
        if workshop.ledger.last_seq != coming.seq or coming.ledger.book is not workshop.book:  # somebody was quicker
            coming = look_at_run(workshop, record)
        if write.known([event.id for event in coming.fresh]):
            raise Refused("run known", run=coming.file.run)
        for event in coming.fresh:
            coming.ledger.number(event, write.append(event, now))
        workshop.ledger = coming.ledger
    return len(coming.fresh)


def _told_alone(file: RunFile, book: Book) -> Alone:
    """The run alone, as its file tells it: what it says of the shop that it was worked in becomes stand-ins."""
    own = [*file.own, *(event for _, event in file.stand_ins)]
    alone = Alone(file.run, book, {event.id for event in own})
    for event in sorted(effective([*own, *file.shops]), key=lambda event: event.order):
        alone.fold(event)
    if file.run not in alone.state.runs:
        raise Refused("file no run")
    return alone


@dataclass(frozen=True)
class _Tried:
    events: list[Event]
    ledger: Ledger

    @property
    def state(self) -> ShopState:
        return self.ledger.state


def _tried(ledger: Ledger, fresh: list[Event], before: ShopState, file: RunFile, alone: ShopState) -> _Tried:
    """The shop's ledger with the new events, or with fewer where those would change what is not the run's."""
    differs = None
    for events in _choices(fresh, file):
        found = _Tried(events, ledger.joined(events))
        differs = first_difference(before, found.state, ledger.book, file.run)
        if differs is None:
            _still_fits(found.state, before, file, alone.unsettled)
            return found
    what, name = differs or ("other", "")
    raise Refused("file outside", what=what, name=name)


def _choices(fresh: list[Event], file: RunFile) -> Iterator[list[Event]]:
    """All of them; without those of stations and of care; and then with everybody gone after their last press, whom the
    shop would otherwise take to stand near its machines."""
    yield fresh
    of_run = [
        event for event in fresh if event.run == file.run or event.kind.startswith(("event ", "entry ", "alert "))
    ]
    yield of_run
    last = {event.person: event for event in sorted(of_run, key=lambda event: event.order) if event.person}
    yield [*of_run, *(stand_in(event, 0, "person went", person=key) for key, event in last.items())]


def _still_fits(state: ShopState, before: ShopState, file: RunFile, alone: Collection[str]) -> None:
    """What fitted where the run was worked fits here too."""
    for key in state.unsettled.keys() - before.unsettled.keys() - set(alone):
        raise Refused("file does not fit", at=state.unsettled[key].at)


def _fits_the_shop(book: Book, file: RunFile, state: ShopState, arrived: Mapping[str, Event]) -> None:
    if file.time_zone != book.time_zone:
        raise Refused("file zone", there=file.time_zone[:80], here=book.time_zone)
    if file.run in state.runs and file.opened.id not in arrived:
        raise Refused("run known", run=file.run)
    events = [*file.own, *(event for _, event in file.stand_ins)]
    stations = {event.station for event in events} | {
        operation.station for product in file.products for operation in product.operations
    }
    missing = [key for key in stations if key and book.station(key) is None]
    missing += [key for key in {event.person for event in events} if key and book.person(key) is None]
    if missing:
        raise Refused("file unknown names", names=sorted(missing)[:20])
