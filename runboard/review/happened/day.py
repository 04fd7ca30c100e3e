"""Everybody's and every station's day, and what waited for what."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from runboard.review.happened.in_the_way import InTheWay
from runboard.review.happened.nouns import DayPart, Waiting
from runboard.review.happened.people import Around, People, Placed
from runboard.review.happened.sessions import Session, sessions_of
from runboard.review.happened.stations import Stations
from runboard.review.happened.tiles import Spans
from runboard.review.happened.trays import Presence, Trays, Waited
from runboard.review.happened.why import because_of, parts_of
from runboard.review.happened.worked import Work
from runboard.review.past import Past
from runboard.review.stays import watches


@dataclass(frozen=True)
class Day:
    """``parts`` tile each person's and each station's days; ``waits`` are the trays', as far as they themselves tell why."""

    work: Work
    parts: tuple[DayPart, ...]
    waits: tuple[Waited, ...]
    waiting: tuple[Waiting, ...]


def day_of(past: Past) -> Day:
    """The days of a run: sessions that have a part in its time, whole, and the stations that it used."""
    work = Work(past)
    way = InTheWay(work)
    trays = Trays(work, way)
    eyes = watches(past.book, past.state, past.events, work.opens, work.closes)
    sessions = sessions_of(work, eyes)
    people = People(work, way, eyes, Around(work, trays.waits))
    placed = [one for session in sessions if _is_of(past, session) for one in people.day(session)]
    there = Spans(span for session in sessions for span in session.there)
    presence = Presence(work, there, _free(placed))
    parts = (*(one.part for one in placed), *Stations(work, way, there, trays.waits).days())
    return Day(work, parts, tuple(trays.waits), tuple(_waiting(past, parts, trays.waits, presence)))


def _is_of(past: Past, session: Session) -> bool:
    return session.began_at < past.until and session.ended_at > past.run.opened_at


def _free(placed: Iterable[Placed]) -> dict[str, Spans]:
    found: dict[str, list[tuple[datetime, datetime]]] = {}
    for one in placed:
        if one.part.doing == "waiting":
            found.setdefault(one.room, []).append((one.part.began_at, one.part.ended_at))
    return {room: Spans(spans) for room, spans in found.items()}


def _waiting(past: Past, parts: Sequence[DayPart], waits: Iterable[Waited], presence: Presence) -> list[Waiting]:
    """Sums by row, key and why of what lies within the run's time: people, then machines, then trays all together; of each
    the longest first. A bench waits for nobody."""
    opens, closes = past.run.opened_at, past.until
    machines = {part.key for part in parts if (part.row, part.kind) == ("station", "machine")}
    sums: dict[tuple[str, str, str], timedelta] = {}

    def add(row: str, key: str, why: str, length: timedelta) -> None:
        if length > timedelta(0):
            sums[row, key, why] = sums.get((row, key, why), timedelta(0)) + length

    for part in parts:
        if part.doing == "waiting" and (part.row == "person" or part.key in machines):
            add(
                part.row,
                part.key,
                because_of(part.why, part.of),
                min(part.ended_at, closes) - max(part.began_at, opens),
            )
    for wait in waits:
        for why, length in presence.why(wait).items():
            add("tray", "", why, length)
    rows = ("person", "station", "tray")
    found = []
    for (row, key, why), length in sums.items():
        code, of = parts_of(why)
        found.append(Waiting(row, key, code, length, of))
    return sorted(found, key=lambda one: (rows.index(one.row), one.key, -one.length, one.why, one.of))
