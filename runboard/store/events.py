"""The log of events on disk: read in order of arrival, appended to, never changed."""

import json
import sqlite3
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from datetime import datetime
from typing import Any

from runboard.run.calls.dues import Due
from runboard.run.log.event import Event, body_text, parse_moment, read_body, write_moment
from runboard.run.refusal import AnsweredBefore
from runboard.store.connect import WAIT_SECONDS, Connections
from runboard.store.dues import drop_dues, held_dues, put_dues

# Fields of an event that are kept as they are, each in a column of its name.
_FIELDS = (
    "id", "v", "kind", "run", "load", "tray", "operation", "revision", "station", "person", "device", "entered_by",
    "offset_ms", "seen", "basis",
)  # fmt: skip
_SELECT = f"SELECT {', '.join(_FIELDS)}, at, body, seq FROM event WHERE seq > ? ORDER BY seq"
_INSERT = f"INSERT INTO event ({', '.join(_FIELDS)}, at, body, moment, received_at) VALUES ({', '.join('?' * 19)})"

# Refused presses that are kept: a phone that sends one again does so within the hour, and every copy has them too.
MOST_REFUSED_OF_ONE, MOST_REFUSED = 500, 5000
_MAKE_ROOM = """
    DELETE FROM refused WHERE id IN (
        SELECT id FROM refused WHERE true {} ORDER BY received_at DESC, id DESC LIMIT -1 OFFSET ?
    )
"""


class LogFile:
    """The shop's one log."""

    def __init__(self, connections: Connections) -> None:
        self._connections = connections

    @contextmanager
    def write(self, wait: float = WAIT_SECONDS) -> Iterator["LogWriting"]:
        """One transaction, immediate from its first line; committed at the end of the block, or not at all. ``wait`` is for
        how many seconds others may keep it waiting."""
        with self._connections.write(wait) as connection:
            yield LogWriting(connection)

    def events(self, after: int = 0) -> list[Event]:
        """The events that arrived after ``after``, in order of arrival."""
        return _read(self._connections.here().conn, after)

    def last_seq(self) -> int:
        """The number of the last event that arrived, 0 in an empty log."""
        return _last_seq(self._connections.here().conn)

    def version(self) -> int:
        """A number that rises whenever any process appends an event or saves the book; the same in every thread.

        Both tables only ever grow, so the sum of their last numbers is enough. (``PRAGMA data_version`` differs from
        connection to connection, and says nothing of a connection's own writes.)
        """
        row = self._connections.read(
            "SELECT ifnull((SELECT max(seq) FROM event), 0) + ifnull((SELECT max(revision) FROM book), 0)"
        )
        return int(row.fetchone()[0])

    def give_way(self) -> None:
        """Return once everybody of this process who waits to write has written; not inside a transaction."""
        self._connections.turn.give_way()


class LogWriting:
    """The log within one transaction."""

    def __init__(self, connection: sqlite3.Connection) -> None:
        self._connection = connection

    def last_seq(self) -> int:
        return _last_seq(self._connection)

    def events(self, after: int) -> list[Event]:
        return _read(self._connection, after)

    def known(self, ids: Sequence[str]) -> dict[str, AnsweredBefore]:
        """What was answered before to those of ``ids`` that came before."""
        wanted = (json.dumps(list(ids)),)
        refused = self._connection.execute(
            "SELECT id, code, facts FROM refused WHERE id IN (SELECT value FROM json_each(?))", wanted
        )
        found = {key: AnsweredBefore("refused", code, json.loads(facts)) for key, code, facts in refused}
        accepted = self._connection.execute("SELECT id FROM event WHERE id IN (SELECT value FROM json_each(?))", wanted)
        found.update((key, AnsweredBefore("accepted")) for (key,) in accepted)
        return found

    def append(self, event: Event, received_at: datetime) -> int:
        """Add an event at the end; answers its number. An id that is there already raises ``sqlite3.IntegrityError``."""
        done = self._connection.execute(_INSERT, _row(event, received_at))
        if done.lastrowid is None:
            raise RuntimeError("an insert that was done has a number")
        return done.lastrowid

    def refuse(
        self, record: Mapping[str, Any], code: str, facts: Mapping[str, Any], received_at: datetime, device: str = ""
    ) -> None:
        """Keep a refused press as it came. The first answer to an id stands, as long as it is kept: the oldest of a
        device make room, and the oldest of all."""
        self._connection.execute(
            "INSERT INTO refused (id, record, code, facts, received_at, device) VALUES (?, ?, ?, ?, ?, ?) "
            "ON CONFLICT DO NOTHING",
            (record["id"], _text(record), code, _text(facts), write_moment(received_at), device),
        )
        self._connection.execute(_MAKE_ROOM.format("AND device = ?"), (device, MOST_REFUSED_OF_ONE))
        self._connection.execute(_MAKE_ROOM.format(""), (MOST_REFUSED,))

    def set_dues(self, put: Iterable[Due], drop: Iterable[str]) -> None:
        """Add or move the moments of ``put``, and forget those whose ids are in ``drop``."""
        drop_dues(self._connection, drop)
        put_dues(self._connection, put)

    def dues_held(self) -> dict[str, datetime]:
        """Every moment that the store holds, told or not, by its id."""
        return held_dues(self._connection)


def _last_seq(connection: sqlite3.Connection) -> int:
    return int(connection.execute("SELECT ifnull(max(seq), 0) FROM event").fetchone()[0])


def _text(record: Mapping[str, Any]) -> str:
    """JSON text; what JSON has no word for (a moment) is written as its own text."""
    return json.dumps(dict(record), separators=(",", ":"), ensure_ascii=False, default=_plain)


def _plain(value: object) -> str:
    return write_moment(value) if isinstance(value, datetime) else str(value)


def _row(event: Event, received_at: datetime) -> tuple[Any, ...]:
    moments = write_moment(event.moment), write_moment(received_at)
    return *(getattr(event, name) for name in _FIELDS), write_moment(event.at), body_text(event), *moments


def _read(connection: sqlite3.Connection, after: int) -> list[Event]:
    return [
        Event(at=parse_moment(at), body=read_body(body), seq=seq, **dict(zip(_FIELDS, fields, strict=True)))
        for *fields, at, body, seq in connection.execute(_SELECT, (after,))
    ]
