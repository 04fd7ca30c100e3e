"""A run told without the rest of its shop: its own events, and stand-ins for what others changed in it.

A stand-in says again, as an event of this run or of its station, what a press of another run or of the shop changed in
the run: a person went over or home, a station was set up anew, a list was ticked, rags were asked about.
"""

from collections.abc import Collection, Iterator
from typing import Any

from runboard.run.care.care import reminder_id
from runboard.run.fold.fold import apply
from runboard.run.fold.state import RunState, ShopState
from runboard.run.log.event import Event
from runboard.shop.book import Book

# What a stand-in may be; those of a station and of care are kept only where they change nothing else.
STAND_INS = frozenset(("load put aside", "setup changed", "checklist ticked", "reminder answered"))


class Alone:
    """Folds the shop, and beside it the run alone; where the two part, it notes what brings them together again."""

    def __init__(self, run: str, book: Book, own: Collection[str]) -> None:
        self._run, self._book, self._own = run, book, own
        self._shop = self._alone = ShopState()
        self.stand_ins: list[tuple[str, Event]] = []

    @property
    def state(self) -> ShopState:
        """The run as it is without the rest of the shop."""
        return self._alone

    def fold(self, event: Event) -> None:
        """One event more, in the fold's order."""
        self._shop = apply(self._shop, event, self._book)
        is_own = event.id in self._own
        if is_own:
            self._alone = apply(self._alone, event, self._book)
        for change in () if is_own else _answered(event, self._alone):
            self._put(event, change)
        if self._run in self._shop.runs:
            for change in _parted(event, self._shop, self._alone, self._run):
                self._put(event, change)

    def _put(self, event: Event, change: Event) -> None:
        self._alone = apply(self._alone, change, self._book)
        self.stand_ins.append((event.id, change))


def _parted(event: Event, shop: ShopState, alone: ShopState, run: str) -> Iterator[Event]:
    number = 0
    for load in shop.runs[run].loads.values():
        for person in alone.runs[run].loads[load.id].people if load.id in alone.runs[run].loads else ():
            if person not in load.people:
                number += 1
                yield stand_in(event, number, "load put aside", run=run, load=load.id, person=person)
    for key in _stations_of(shop.runs[run]):
        for _ in range(_setups(shop, key) - _setups(alone, key)):
            number += 1
            yield stand_in(event, number, "setup changed", station=key, body=_setup_body(event))
    if event.kind == "checklist ticked":
        for load in shop.runs[run].loads.values():
            there = alone.runs[run].loads.get(load.id)
            if there is not None and there.fresh and not load.fresh:
                number += 1
                yield stand_in(event, number, event.kind, station=load.station, person=event.person, body=event.body)


def _answered(event: Event, alone: ShopState) -> Iterator[Event]:
    """What was said of rags, dust or a burnt cut, said of this run's: one answer may have been for several runs."""
    if event.kind != "reminder answered":
        return
    kind, *subject = event.get("reminder").split("|")
    key = "|".join(subject[:3])
    if key in alone.care:
        said = {"reminder": reminder_id(kind, key, alone.care[key]), "done": event.get("done")}
        yield stand_in(event, 1, event.kind, person=event.person, body=said)


def stand_in(event: Event, number: int, kind: str, **fields: Any) -> Event:
    """An event that follows ``event``; the same each time."""
    # '_' sorts after '.', so it follows every event of the press that it comes from.
    return Event(id=f"{event.id.replace('.', '_')[-56:]}_x{number}", kind=kind, at=event.moment, **fields)


def _setup_body(event: Event) -> dict[str, Any]:
    return dict(event.body or {}) if event.kind == "setup changed" else {"what": "other"}


def _setups(state: ShopState, station: str) -> int:
    known = state.stations.get(station)
    return known.setups if known else 0


def _stations_of(run: RunState) -> list[str]:
    return sorted({step.operation.station for revision in run.revisions for step in revision.route.steps})
