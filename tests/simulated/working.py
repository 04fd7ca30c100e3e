"""People at work in a made-up shop, from event to event: whoever has free hands takes off what has ended, then keeps the
machines busy, then does the hand work that is furthest along the route. Nothing is planned ahead.

Nobody begins what would not be over by closing time as it usually takes; what was begun is finished. A machine that is
watched is never left; one that is not may end when nobody is there, and its sensor says so.
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from heapq import heappop, heappush
from itertools import count

from tests.simulated.log import Log
from tests.simulated.luck import Luck
from tests.simulated.world import DAY, WEEK, Bench, Somebody, Work, World

# No run of a made-up shop takes longer: one that did stands still.
LONGEST = 200 * DAY


@dataclass
class _Person:
    known: Somebody
    room: str = ""
    closes: float = 0.0
    here: bool = False
    busy: bool = False
    watches: "_Load | None" = None


@dataclass
class _Load:
    id: str
    work: Work
    trays: list["_Tray"]
    fresh: bool
    number: int
    watcher: _Person | None = None


@dataclass
class _Tray:
    id: str
    pieces: int
    rests_on: str = ""


@dataclass
class _Station:
    known: Bench
    key: str
    load: _Load | None = None
    ended: bool = False
    last: str = ""


@dataclass
class Course:
    """How a run went: its beginning and its end in minutes from the first Monday, and how long hands were at it."""

    began: float
    finished: float
    hands: float
    good: int


@dataclass
class _Shop:
    world: World
    luck: Luck
    start: float
    log: Log | None
    now: float = 0.0
    heap: list[tuple[float, int, Callable[[], None]]] = field(default_factory=list)
    turn: Iterator[int] = field(default_factory=count)

    def __post_init__(self) -> None:
        world = self.world
        self.now = self.start
        self.people = [_Person(somebody) for somebody in world.people]
        self.stations = {key: _Station(bench, key) for key, bench in world.stations.items()}
        self.taken = dict.fromkeys(world.services, 0)
        self.trays = [_Tray(str(at + 1), world.a_tray) for at in range(world.trays)]
        self.ready: dict[str, list[list[_Tray]]] = {work.key: [] for work in world.works}
        self.begun = dict.fromkeys(self.ready, 0)
        first = world.works[0]
        a_load = world.a_board if first.size == "board" else 1
        self.ready[first.key] = [self.trays[at : at + a_load] for at in range(0, len(self.trays), a_load)]
        self.boards = {f"{first.key}/{at + 1}": trays for at, trays in enumerate(self.ready[first.key])}
        last_first = [*reversed(world.works)]
        self.in_turn = [work for work in last_first if work.has_machine]
        self.in_turn += [work for work in last_first if not work.has_machine]
        self.after = {work.key: other for work, other in zip(world.works, (*world.works[1:], None), strict=True)}
        self.left = len(self.trays)
        self.hands = 0.0
        self.finished: float | None = None

    def at(self, when: float, what: Callable[[], None]) -> None:
        heappush(self.heap, (when, next(self.turn), what))

    def go(self) -> Course:
        for person in self.people:
            self._next_session(person)
        while self.finished is None:
            self.now, _, what = heappop(self.heap)
            assert self.now < self.start + LONGEST, f"{self.world.name} stands still"
            what()
            while self.heap and self.heap[0][0] <= self.now:
                heappop(self.heap)[2]()
            self._hand_out()
        for person in self.people:
            if person.here:
                self._leaves(person)
        good = sum(tray.pieces for tray in self.trays)
        return Course(self.start, self.finished, self.hands, good)

    # people

    def _next_session(self, person: _Person) -> None:
        opens, closes = next(sessions(person.known, self.now))
        self.at(max(opens, self.now), lambda: self._comes(person, closes))

    def _comes(self, person: _Person, closes: float) -> None:
        person.here, person.closes, person.room = True, closes, self.world.rooms[0]
        if self.log:
            self.log.came(self.now, person.known.key, closes, person.room)
        self.at(closes, lambda: self._closing(person, closes))

    def _closing(self, person: _Person, closes: float) -> None:
        if person.here and person.closes == closes and not person.busy and person.watches is None:
            self._leaves(person)
            self._next_session(person)

    def _leaves(self, person: _Person) -> None:
        person.here = False
        if self.log:
            self.log.press(self.now, "person went", {"ticked": []}, person=person.known.key)

    def _is_free(self, person: _Person) -> None:
        """Hands are free again; past closing time they go home."""
        person.busy = False
        self._closing_now(person)

    def _closing_now(self, person: _Person) -> None:
        if person.here and self.now >= person.closes:
            self._closing(person, person.closes)

    # who does what

    def _hand_out(self) -> None:
        for person in self.people:
            while person.here and not person.busy and self.now < person.closes and self._takes_something(person):
                pass

    def _takes_something(self, person: _Person) -> bool:
        for station in self.stations.values():
            if station.ended and self._may_be_at(person, station):
                self._unload(person, station)
                return True
        return any(self._begins(person, work) for work in self.in_turn)

    def _may_be_at(self, person: _Person, station: _Station) -> bool:
        if person.watches is None:
            return True
        watched = self.world.stations[person.watches.work.station]
        return station.key in (*watched.watch_from, person.watches.work.station)

    def _begins(self, person: _Person, work: Work) -> bool:
        station = self.stations[work.station]
        waiting = self.ready[work.key]
        if not waiting or station.load is not None or not self._may_be_at(person, station):
            return False
        watched = work.attendance == "watched"
        if watched and person.watches is not None:
            return False
        trays = waiting[0]
        own = {tray.rests_on for tray in trays}
        needed = [*work.services, *([work.holds] * len(trays) if work.holds else [])]
        for service in set(needed):
            own_places = sum(tray.rests_on == service for tray in trays) if service in own else 0
            if self.taken[service] - own_places + needed.count(service) > self.world.services[service]:
                return False
        if self.now + self._walk(person, station) + self._usual(work, trays, station, watched) > person.closes:
            return False
        waiting.pop(0)
        for service in needed:
            self.taken[service] += 1
        self._goes_to(person, station, lambda: self._started(person, station, work, trays))
        return True

    def _usual(self, work: Work, trays: Iterable[_Tray], station: _Station, watched: bool) -> float:
        """What somebody who knows the work thinks that it keeps them for."""
        pieces = sum(tray.pieces for tray in trays)
        kinds = ("loading", "unloading", "machine") if watched else ("loading",)
        found = sum(work.times[kind].mean for kind in kinds if kind in work.times)
        found += work.times["hand"].mean * pieces if "hand" in work.times else 0.0
        return found + (work.times["setup"].mean if "setup" in work.times and station.last != work.key else 0.0)

    def _walk(self, person: _Person, station: _Station) -> float:
        return 0.0 if person.room == station.known.room else self.world.walk

    def _goes_to(self, person: _Person, station: _Station, then: Callable[[], None]) -> None:
        person.busy = True
        if station.load is None:
            station.load = _Load("", self.world.works[0], [], False, 0)  # kept for whoever walks there
        walk = self._walk(person, station)
        person.room = station.known.room
        if walk:
            self.at(self.now + walk, then)
        else:
            then()

    # a load

    def _started(self, person: _Person, station: _Station, work: Work, trays: list[_Tray]) -> None:
        boards = (key for key, fed in self.boards.items() if fed is trays)
        name = next(boards) if work.size == "board" else f"{work.key}/{trays[0].id}"
        load = _Load(name, work, trays, station.last != work.key, self.begun[work.key])
        self.begun[work.key] += 1
        station.load, station.last = load, work.key
        for tray in trays:
            if tray.rests_on:
                self.taken[tray.rests_on] -= 1
                tray.rests_on = ""
        if self.log:
            pieces = {tray.id: tray.pieces for tray in trays}
            self.log.press(self.now, "load started", {"pieces": pieces}, load=name, person=person.known.key)
        if work.has_machine:
            length = self._hands(person, load, ("setup", "loading"))
            self.at(self.now + length, lambda: self._runs(person, station, load))
        else:
            length = self._hands(person, load, ("setup", "hand"))
            self._extras(person, load, length)
            self.at(self.now + length, lambda: self._done(person, station, load))

    def _hands(self, person: _Person, load: _Load, kinds: Iterable[str]) -> float:
        """How long hands are at a load for these elements of it."""
        found = 0.0
        for kind in kinds:
            if kind in load.work.times and (kind != "setup" or load.fresh):
                times = sum(tray.pieces for tray in load.trays) if kind == "hand" else 1
                found += self._length(load, kind) * times * person.known.pace
        self.hands += found
        return found

    def _length(self, load: _Load, kind: str) -> float:
        element = f"{load.work.key}|{kind}"
        return self.luck.time(load.work.times[kind], element, load.id, int(self.now // DAY), load.number)

    def _extras(self, person: _Person, load: _Load, length: float) -> None:
        """Presses that take no time: every third load is put aside and taken up again on the spot, at others notes are written."""
        log = self.log
        presses = log.extras if log else 0
        kinds = ("load put aside", "load started") if load.number % 3 == 0 else ("note written",)
        times = presses // len(kinds)
        for at in range(1, times + 1):
            self.at(self.now + length * at / (times + 1), lambda: self._presses(person, load, kinds))

    def _presses(self, person: _Person, load: _Load, kinds: Iterable[str]) -> None:
        for kind in kinds:
            if self.log and kind == "note written":
                self.log.press(self.now, kind, {"text": "grain runs out here"}, person=person.known.key)
            elif self.log:
                self.log.press(self.now, kind, {}, load=load.id, person=person.known.key)

    def _runs(self, person: _Person, station: _Station, load: _Load) -> None:
        length = self._length(load, "machine")
        if self.log:
            body = {"minutes": round(load.work.guess("machine"), 1)}
            self.log.press(self.now, "machine started", body, load=load.id, person=person.known.key)
        if load.work.attendance == "watched":
            load.watcher, person.watches = person, load
            self._looks(person, load, length)
        self.at(self.now + length, lambda: self._ended(station, load))
        self._is_free(person)

    def _looks(self, person: _Person, load: _Load, length: float) -> None:
        every = self.log.look_every if self.log else None
        for at in range(1, int(length / every) + 1) if every else ():
            self.at(self.now + at * every, lambda: self._look(person, load))

    def _look(self, person: _Person, load: _Load) -> None:
        assert self.log is not None
        self.log.press(self.now, "watch checked", {}, load=load.id, person=person.known.key)

    def _ended(self, station: _Station, load: _Load) -> None:
        station.ended = True
        for service in load.work.services:
            self.taken[service] -= 1
        watcher = load.watcher
        if self.log:
            if watcher is not None:
                self.log.press(self.now, "machine ended", {}, load=load.id, person=watcher.known.key)
            else:
                self.log.press(self.now, "machine ended", {}, load=load.id, basis="sensor")
        if watcher is not None:
            watcher.watches = None
            if not watcher.busy:
                # Whoever watched takes it off, past closing time as well.
                self._unload(watcher, station)

    def _unload(self, person: _Person, station: _Station) -> None:
        load = station.load
        assert load is not None
        station.ended = False
        self._goes_to(person, station, lambda: self._unloading(person, station, load))

    def _unloading(self, person: _Person, station: _Station, load: _Load) -> None:
        if self.log:
            self.log.press(self.now, "unloading started", {}, load=load.id, person=person.known.key)
        length = self._hands(person, load, ("unloading",))
        self.at(self.now + length, lambda: self._done(person, station, load))

    def _done(self, person: _Person, station: _Station, load: _Load) -> None:
        work, spoilt = load.work, {}
        for tray in load.trays:
            lost = self.luck.spoilt(f"{work.key}|{tray.id}", tray.pieces, work.scrap)
            tray.pieces -= lost
            if lost:
                spoilt[tray.id] = {"good": tray.pieces, "scrap": [{"pieces": lost, "why": "chipped"}]}
        if self.log:
            body = {"counts": spoilt | {tray.id: {"good": tray.pieces} for tray in load.trays if tray.id not in spoilt}}
            self.log.press(self.now, "load done", body if spoilt else {}, load=load.id, person=person.known.key)
        if not work.has_machine:
            for service in work.services:
                self.taken[service] -= 1
        station.load = None
        for tray in load.trays:
            tray.rests_on = work.holds
            self._goes_on(work, tray)
        self._is_free(person)

    def _goes_on(self, work: Work, tray: _Tray) -> None:
        following = self.after[work.key]
        if following is None:
            self.left -= 1
            if not self.left:
                self.finished = self.now
        elif work.wait:
            self.at(self.now + work.wait, lambda: self._is_ready(following, tray))
        else:
            self._is_ready(following, tray)

    def _is_ready(self, work: Work, tray: _Tray) -> None:
        self.ready[work.key].append([tray])
        self.ready[work.key].sort(key=lambda trays: int(trays[0].id))


def sessions(somebody: Somebody, after: float) -> Iterator[tuple[float, float]]:
    """When somebody is there: (opens, closes) that close after a moment, in order."""
    week = int(after // WEEK) - 1
    while True:
        spans = [
            (week * WEEK + day * DAY + hours.opens, week * WEEK + day * DAY + hours.closes)
            for hours in somebody.hours
            for day in hours.days
        ]
        spans += [span for span in somebody.added if week * WEEK <= span[0] < (week + 1) * WEEK]
        for opens, closes in _joined(spans):
            if closes > after:
                yield opens, closes
        week += 1


def _joined(spans: Iterable[tuple[float, float]]) -> list[tuple[float, float]]:
    found: list[tuple[float, float]] = []
    for opens, closes in sorted(spans):
        if found and opens <= found[-1][1]:
            found[-1] = (found[-1][0], max(found[-1][1], closes))
        else:
            found.append((opens, closes))
    return found


def worked(world: World, luck: Luck, start: float = 0.0, log: Log | None = None) -> Course:
    """One run from its opening, as the lead first comes after ``start``, to its last piece; every press goes into ``log``."""
    start = next(sessions(world.people[0], start))[0]
    shop = _Shop(world, luck, start, log)
    if log:
        log.opened(start, world, shop.boards if world.works[0].size == "board" else {})
    course = shop.go()
    if log:
        log.press(course.finished, "run finished", {}, person=world.people[0].key)
    return course
