"""A state being changed by one event: copies what it touches once, and is thrown away where the event does not fit."""

from collections.abc import Callable, Hashable, Mapping
from typing import Any, TypeVar

from runboard.run.change import replace
from runboard.run.fold.route import Step
from runboard.run.fold.state import Load, PersonState, RunState, ShopState, StationState, Tray
from runboard.run.log.event import Event
from runboard.run.refusal import Refused
from runboard.shop.book import Book

K = TypeVar("K")
V = TypeVar("V")


def put(mapping: Mapping[K, V], key: K, value: V) -> dict[K, V]:
    """A copy of ``mapping`` with ``key`` set."""
    copy = dict(mapping)
    copy[key] = value
    return copy


def without(mapping: Mapping[K, V], key: K) -> dict[K, V]:
    """A copy of ``mapping`` that lacks ``key``."""
    copy = dict(mapping)
    copy.pop(key, None)
    return copy


def open_run(draft: "Draft", event: Event) -> RunState:
    """The run that an event is of. Refused 'run unknown', 'run closed'."""
    run = draft.run(event.run)
    if run.state != "open":
        raise Refused("run closed", run=run.name, state=run.state)
    return run


class Draft:
    """What one event is making of a state. Records in it are replaced, never changed."""

    def __init__(self, state: ShopState, book: Book) -> None:
        self.base = state
        self.book = book
        self.people: dict[str, PersonState] | None = None
        self.stations: dict[str, StationState] | None = None
        self.runs: dict[str, RunState] | None = None
        self.trays: dict[str, dict[str, Tray]] = {}
        self.loads: dict[str, dict[str, Load]] = {}
        self.past: dict[str, dict[str, Load]] = {}
        self.changes: dict[str, Any] = {}
        self._found: dict[Hashable, Any] = {}

    # reading

    def once(self, key: Hashable, find: Callable[[], Any]) -> Any:
        """What ``find`` says of the state that this began from: found once, however many rules ask."""
        if key not in self._found:
            self._found[key] = find()
        return self._found[key]

    def run(self, key: str) -> RunState:
        found = (self.runs or self.base.runs).get(key)
        if found is None:
            raise Refused("run unknown", run=key)
        return found

    def tray(self, run: str, key: str) -> Tray:
        found = self.trays[run].get(key) if run in self.trays else self.run(run).trays.get(key)
        if found is None:
            raise Refused("tray unknown", tray=key)
        return found

    def has_tray(self, run: str, key: str) -> bool:
        return key in (self.trays[run] if run in self.trays else self.run(run).trays)

    def trays_of(self, run: str) -> Mapping[str, Tray]:
        """The trays of a run by their ids, as they are now."""
        return self.trays[run] if run in self.trays else self.run(run).trays

    def load(self, run: str, key: str) -> Load | None:
        return self._loads(run).get(key) or self._past(run).get(key)

    def open_loads(self, run: str) -> list[Load]:
        """The loads of a run that are begun and not done."""
        return list(self._loads(run).values())

    def _loads(self, run: str) -> Mapping[str, Load]:
        return self.loads[run] if run in self.loads else self.run(run).loads

    def _past(self, run: str) -> Mapping[str, Load]:
        return self.past[run] if run in self.past else self.run(run).past

    def person(self, key: str) -> PersonState:
        return (self.people or self.base.people).get(key) or PersonState(key)

    def station(self, key: str) -> StationState:
        return (self.stations or self.base.stations).get(key) or StationState(key)

    def station_name(self, key: str) -> str:
        """The name of a station; its key where the book has lost it."""
        station = self.book.station(key)
        return station.name if station else key

    def step(self, run: str, tray: str, key: str) -> Step:
        """The step ``key`` in the route that holds for ``tray``."""
        found = self.run(run).route_of(self.tray(run, tray)).step(key)
        if found is None:
            raise Refused("step unknown", step=key, tray=tray)
        return found

    def shop(self, name: str) -> Mapping[str, Any]:
        """One of the shop's own mappings as it is now: answers, reminders, care, said_running, calls, asks, jobs_done, changes, supplies,
        cutters."""
        found: Mapping[str, Any] = self.changes.get(name, getattr(self.base, name))
        return found

    # writing

    def put_run(self, run: RunState) -> None:
        if self.runs is None:
            self.runs = dict(self.base.runs)
        self.runs[run.id] = run

    def put_tray(self, run: str, tray: Tray) -> None:
        if run not in self.trays:
            self.trays[run] = dict(self.run(run).trays)
        self.trays[run][tray.id] = tray

    def put_load(self, load: Load) -> None:
        if load.run not in self.loads:
            self.loads[load.run] = dict(self.run(load.run).loads)
        over = load.state in ("done", "off")
        if over or load.id in self._past(load.run):
            if load.run not in self.past:
                self.past[load.run] = dict(self.run(load.run).past)
            self.past[load.run].pop(load.id, None)
        self.loads[load.run].pop(load.id, None)
        (self.past if over else self.loads)[load.run][load.id] = load

    def put_person(self, person: PersonState) -> None:
        if not person.key:
            return
        if self.people is None:
            self.people = dict(self.base.people)
        self.people[person.key] = person

    def put_station(self, station: StationState) -> None:
        if self.stations is None:
            self.stations = dict(self.base.stations)
        self.stations[station.key] = station

    def finish(self) -> ShopState:
        """The new state."""
        for run in {*self.trays, *self.loads}:
            state = self.run(run)
            self.put_run(
                replace(
                    state,
                    trays=self.trays.get(run, state.trays),
                    loads=self.loads.get(run, state.loads),
                    past=self.past.get(run, state.past),
                )
            )
        changed = dict(self.changes)
        for name in ("people", "stations", "runs"):
            made = getattr(self, name)
            if made is not None:
                changed[name] = made
        return replace(self.base, **changed) if changed else self.base
