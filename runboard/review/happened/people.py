"""Each person's day, tiled by work, watching, walking, waiting and being away."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from runboard.review.happened.in_the_way import READY, InTheWay
from runboard.review.happened.nouns import DayPart
from runboard.review.happened.sessions import Session
from runboard.review.happened.tiles import Marked, Spans, Tile, tiled
from runboard.review.happened.trays import Waited
from runboard.review.happened.why import (
    DRYING,
    MACHINE,
    NO_LOAD,
    NOT_SAID,
    OTHER_ROOM,
    RESTING,
    START_UP,
    STOPPED,
    TIDY_UP,
    parts_of,
)
from runboard.review.happened.worked import Stretch, Work, Worked
from runboard.review.stays import Stay
from runboard.run.change import replace
from runboard.run.rules.rules import has_skill
from runboard.shop.hours import Span


@dataclass(frozen=True)
class Placed:
    """What somebody was at, and in which room: '' where that is not known."""

    part: DayPart
    room: str
    load: Worked | None = None


class Around:
    """What else of the shop says why somebody waited: when trays were ready and where, machines ran, trays dried."""

    def __init__(self, work: Work, waits: Sequence[Waited]) -> None:
        self._book = work.past.book
        self._ready: dict[tuple[str, str], list[Waited]] = {}
        for wait in waits:
            if wait.why == READY and wait.load.step is not None:
                key = (wait.load.room, wait.load.step.operation.skill or "")
                self._ready.setdefault(key, []).append(wait)
        self._by_person: dict[tuple[str, str], tuple[Spans, Spans]] = {}
        self.machines = Spans((one.began_at, one.ended_at) for one in work.stretches if one.kind == "machine")
        self.drying = _spans(wait for wait in waits if wait.why in (DRYING, RESTING))

    def ready(self, person: str, room: str) -> tuple[Spans, Spans]:
        """When trays were ready for work that a person can do: in this room, in any other. Nobody knows which is which where
        the room is not known."""
        if (person, room) not in self._by_person:
            able = {key: some for key, some in self._ready.items() if self._is_able(person, some[0])}
            self._by_person[person, room] = (
                _spans(wait for (where, _), some in able.items() for wait in some if room in ("", where)),
                _spans(wait for (where, _), some in able.items() for wait in some if room not in ("", where)),
            )
        return self._by_person[person, room]

    def _is_able(self, person: str, wait: Waited) -> bool:
        known, step = self._book.person(person), wait.load.step
        return known is None or step is None or has_skill(known, step.operation)


def _spans(waits: Iterable[Waited]) -> Spans:
    return Spans((wait.began_at, wait.ended_at) for wait in waits)


class People:
    """The days of everybody who was there."""

    def __init__(self, work: Work, way: InTheWay, watches: Iterable[Stay], around: Around) -> None:
        self._work, self._way, self._around = work, way, around
        self._book = work.past.book
        self._hands: dict[str, list[Tile[Placed]]] = {}
        for stretch in work.stretches:
            if stretch.person and stretch.kind != "machine":
                self._note(self._hands, stretch.person, self._at_work(stretch))
        self._eyes: dict[str, list[Tile[Placed]]] = {}
        for stay in watches:
            self._note(self._eyes, stay.person, self._watching(stay))
        self._by_person = {
            person: (Marked(self._hands.get(person, ())), Marked(self._eyes.get(person, ())))
            for person in self._hands.keys() | self._eyes.keys()
        }

    @staticmethod
    def _note(into: dict[str, list[Tile[Placed]]], person: str, placed: Placed) -> None:
        into.setdefault(person, []).append((placed.part.began_at, placed.part.ended_at, placed))

    def _at_work(self, stretch: Stretch) -> Placed:
        load = stretch.load
        part = DayPart("person", stretch.person, stretch.began_at, stretch.ended_at, "work", stretch.kind,
                       run=self._other(load.run.id), step=load.load.step, load=load.load.id)  # fmt: skip
        return Placed(part, load.room, load)

    def _watching(self, stay: Stay) -> Placed:
        load = self._work.by_id.get((stay.run, stay.load))
        part = DayPart("person", stay.person, stay.began_at, stay.ended_at, "watching", run=self._other(stay.run),
                       step=load.load.step if load else "", load=stay.load)  # fmt: skip
        station = self._book.station(stay.station)
        return Placed(part, station.room if station else "", load)

    def _other(self, run: str) -> str:
        return "" if run == self._work.past.run.id else run

    # a session

    def day(self, session: Session) -> list[Placed]:
        """A session in parts without gap or overlap, in order."""
        hands, eyes = self._by_person.get(session.person, (Marked[Placed](()), Marked[Placed](())))
        opens, closes = session.began_at, session.ended_at
        layers = [
            [*hands.between(opens, closes), *self._jobs(session)],
            [self._plain(session, span, "away") for span in session.away],
            eyes.between(opens, closes),
        ]
        none = Placed(DayPart("person", session.person, opens, closes, "waiting"), "")
        parts = [
            replace(what, part=replace(what.part, began_at=began, ended_at=ended))
            for began, ended, what in tiled(opens, closes, layers, none)
        ]
        return list(_Walked(self, session, parts).all())

    def _jobs(self, session: Session) -> Iterator[Tile[Placed]]:
        rooms = {job.key: job.room or "" for job in self._book.jobs}
        for began, ended, job in session.jobs:
            part = DayPart("person", session.person, began, ended, "work", "job", step=job)
            yield began, ended, Placed(part, rooms.get(job, ""))

    @staticmethod
    def _plain(session: Session, span: Span, doing: str) -> Tile[Placed]:
        part = DayPart("person", session.person, *span, doing)  # type: ignore[arg-type]
        return *span, Placed(part, "")

    def walk(self, one: str, other: str) -> timedelta:
        return self._book.walk(one, other) if one and other else timedelta(0)

    # waiting

    def waited(self, session: Session, span: Span, room: str, next_: Placed | None) -> list[Tile[str]]:
        """Why somebody waited through a stretch before what they were at next in that session."""
        began, ended = span
        person = self._book.person(session.person)
        layers: list[list[Tile[str]]] = [[], []]
        if person is not None and session.came:
            layers[0].append((session.began_at, session.began_at + person.start_up, START_UP))
        if person is not None and session.went and next_ is None:
            layers[0].append((session.ended_at - person.tidy_up, session.ended_at, TIDY_UP))
        return tiled(began, ended, [*layers, *self._why(session.person, span, room, next_)], NO_LOAD)

    def _why(self, person: str, span: Span, room: str, next_: Placed | None) -> Iterator[list[Tile[str]]]:
        """What kept off the next thing they were at; what else they could have begun; that there was nothing to begin."""
        began, ended = span
        here, elsewhere = self._around.ready(person, room)
        load = next_.load if next_ is not None else None
        is_begun = load is not None and next_ is not None and load.began_at < next_.part.began_at
        way = [] if load is None or is_begun else self._way.before(load, began)
        if load is not None and is_begun:  # goes on with it, or takes it off
            yield self._way.stopped(load).as_tiles(began, ended, STOPPED)
            yield self._way.machine_of(load).as_tiles(began, ended, MACHINE)
        yield [tile for tile in way if tile[2] not in (READY, NO_LOAD)]
        if next_ is not None:
            ready = OTHER_ROOM if next_.room and room and next_.room != room else NOT_SAID
            yield [(start, end, ready) for start, end, why in way or [(began, ended, READY)] if why == READY]
        yield here.as_tiles(began, ended, NOT_SAID)
        yield elsewhere.as_tiles(began, ended, OTHER_ROOM)
        if next_ is None:
            yield self._around.machines.as_tiles(began, ended, MACHINE)
            yield self._around.drying.as_tiles(began, ended, DRYING)


class _Walked:
    """The parts of a session in order, with walks where the room changes, and the reason for what is left."""

    def __init__(self, people: People, session: Session, parts: Sequence[Placed]) -> None:
        self._people, self._session, self._parts = people, session, parts
        self._room = ""
        self._said = sorted(session.rooms)

    def all(self) -> Iterator[Placed]:
        nexts = self._nexts()
        for at, placed in enumerate(self._parts):
            if placed.part.doing == "waiting":
                following = self._parts[at + 1] if at + 1 < len(self._parts) else None
                yield from self._free(placed, following, nexts[at])
            else:
                self._room = placed.room or self._room
                yield placed

    def _nexts(self) -> list[Placed | None]:
        """For each part what hands or eyes are at next."""
        found: list[Placed | None] = []
        next_: Placed | None = None
        for placed in reversed(self._parts):
            found.append(next_)
            if placed.part.doing in ("work", "watching"):
                next_ = placed
        return found[::-1]

    def _free(self, free: Placed, following: Placed | None, next_: Placed | None) -> Iterator[Placed]:
        since, until = free.part.began_at, free.part.ended_at
        targets = [said for said in self._said if since <= said[0] < until]
        if following is not None and following.room:
            targets.append((until, following.room))
        for moment, room in targets:
            walk = min(self._people.walk(self._room, room), moment - since)
            yield from self._wait(free, since, moment - walk, next_)
            if walk:
                yield Placed(replace(free.part, began_at=moment - walk, ended_at=moment, doing="walking"), "")
            self._room, since = room, moment
        yield from self._wait(free, since, until, next_)

    def _wait(self, free: Placed, since: datetime, until: datetime, next_: Placed | None) -> Iterator[Placed]:
        if since >= until:
            return
        for began, ended, why in self._people.waited(self._session, (since, until), self._room, next_):
            code, of = parts_of(why)
            yield Placed(replace(free.part, began_at=began, ended_at=ended, why=code, of=of), self._room)
