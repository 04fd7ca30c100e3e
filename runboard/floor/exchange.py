"""A run as one JSON file: its events out, and the same events in again, in this shop or another with the same stations."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any

from runboard.floor.run_file import VERSION, RunFile, read_run_file
from runboard.floor.warm import catch_up, find_run
from runboard.floor.workshop import Workshop
from runboard.floor.writing import writing
from runboard.run.care import reminder_id
from runboard.run.event import Event, event_to_json
from runboard.run.fold import apply, press_of
from runboard.run.refusal import Refused
from runboard.run.state import RunState, ShopState
from runboard.shop.book import Book

_NAMING = ("event undone", "event amended", "entry settled")


def export_run(workshop: Workshop, run: str) -> dict[str, Any]:
    """``{"runboard_run": 1, "run", "name", "time_zone", "events": […], "stand_ins": [{"for", "event"}]}``.

    The events are the run's own and those of the shop that changed it. A stand-in says again, as an event of this run,
    what a press of another run changed in it: a person went over, a station was set up anew. Refused 'run unknown'.
    """
    with workshop.lock:
        known = find_run(workshop, run)
        ledger, book = workshop.ledger, workshop.book
        arrived, held = dict(ledger.arrived), ledger.held
    own = _own(arrived, run)
    outside = Outside(run, book, {one.id for one in own})
    for event in held:
        outside.fold(event)
    return {
        "runboard_run": VERSION,
        "run": run,
        "name": known.name,
        "time_zone": book.time_zone,
        "events": [_record(one) for one in sorted([*own, *outside.shops], key=lambda one: one.order)],
        "stand_ins": [{"for": source, "event": _record(one)} for source, one in outside.stand_ins],
    }


def import_run(workshop: Workshop, record: object) -> int:
    """Take a run that ``export_run`` wrote; answers how many events were new. All or nothing.

    Refused 'file no run', 'file event wrong', 'file zone', 'file unknown names' (a station or person that this shop's
    book does not have), 'run known' (another run of that key is here).
    """
    file = read_run_file(record)
    with workshop.lock:
        catch_up(workshop)
        _fits_the_shop(workshop, file)
        with writing(workshop) as (write, now):
            known = write.known(file.ids)
            fresh = [one for one in file.events if one.id not in known]
            fresh += [one for source, one in file.stand_ins if source not in known and one.id not in known]
            for event in fresh:
                workshop.ledger.keep(workshop.ledger.try_event(event), write.append(event, now))
    return len(fresh)


def _record(event: Event) -> dict[str, Any]:
    """An event without the numbers that mean something in this shop's log only."""
    return event_to_json(replace(event, seq=0, seen=0))


def _own(arrived: Mapping[str, Event], run: str) -> list[Event]:
    """The run's events, the corrections that name one of them, and the answers to its alerts."""
    own = {key for key, one in arrived.items() if one.run == run}
    own |= {press_of(key) for key in own}
    return [
        one
        for one in arrived.values()
        if one.run == run
        or (not one.run and one.kind in _NAMING and one.get("event") in own)
        or (one.kind.startswith("alert ") and run in str(one.get("alert")).split("|")[1:2])
    ]


class Outside:
    """Folds the shop, and beside it the run alone; where the two part, it notes what brings them together again."""

    def __init__(self, run: str, book: Book, own: set[str]) -> None:
        self._run, self._book, self._own = run, book, own
        self._shop = self._alone = ShopState()
        self.shops: list[Event] = []
        self.stand_ins: list[tuple[str, Event]] = []

    def fold(self, event: Event) -> None:
        """One event more, in the fold's order."""
        before = self._shop.runs.get(self._run)
        self._shop = apply(self._shop, event, self._book)
        now = self._shop.runs.get(self._run)
        if event.id in self._own:
            self._alone = apply(self._alone, event, self._book)
        elif not event.run and event.kind not in _NAMING and now is not before:
            self._alone = apply(self._alone, event, self._book)
            self.shops.append(event)
        for change in _answered(event, self._alone):
            self._alone = apply(self._alone, change, self._book)
            self.stand_ins.append((event.id, change))
        if now is not None:
            for change in _parted(event, self._shop, self._alone, self._run):
                self._alone = apply(self._alone, change, self._book)
                self.stand_ins.append((event.id, change))


def _parted(event: Event, shop: ShopState, alone: ShopState, run: str) -> Iterator[Event]:
    number = 0
    for load in shop.runs[run].loads.values():
        for person in alone.runs[run].loads[load.id].people if load.id in alone.runs[run].loads else ():
            if person not in load.people:
                number += 1
                yield _stand_in(event, number, "load put aside", run=run, load=load.id, person=person)
    for key in _stations_of(shop.runs[run]):
        for _ in range(_setups(shop, key) - _setups(alone, key)):
            number += 1
            yield _stand_in(event, number, "setup changed", station=key, body={"what": "other"})


def _answered(event: Event, alone: ShopState) -> Iterator[Event]:
    """What was said of rags, dust or a burnt cut, said of this run's: one answer may have been for several runs."""
    if event.kind != "reminder answered":
        return
    kind, *subject = event.get("reminder").split("|")
    key = "|".join(subject[:3])
    if key in alone.care:
        said = {"reminder": reminder_id(kind, key, alone.care[key]), "done": event.get("done")}
        yield _stand_in(event, 1, event.kind, person=event.person, body=said)


def _stand_in(event: Event, number: int, kind: str, **fields: Any) -> Event:
    # '_' sorts after '.', so it follows every event of the press that it comes from.
    return Event(id=f"{event.id.replace('.', '_')[-56:]}_x{number}", kind=kind, at=event.moment, **fields)


def _setups(state: ShopState, station: str) -> int:
    known = state.stations.get(station)
    return known.setups if known else 0


def _stations_of(run: RunState) -> list[str]:
    return sorted({step.operation.station for revision in run.revisions for step in revision.route.steps})


def _fits_the_shop(workshop: Workshop, file: RunFile) -> None:
    book = workshop.book
    if file.time_zone != book.time_zone:
        raise Refused("file zone", there=file.time_zone, here=book.time_zone)
    if file.run in workshop.ledger.state.runs and file.opened.id not in workshop.ledger.arrived:
        raise Refused("run known", run=file.run)
    stations = {one.station for one in file.events} | {one.station for one in file.product.operations}
    missing = [key for key in stations if key and book.station(key) is None]
    missing += [key for key in {one.person for one in file.events} if key and book.person(key) is None]
    if missing:
        raise Refused("file unknown names", names=sorted(missing))
