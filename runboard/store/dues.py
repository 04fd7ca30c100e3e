"""The moments that fall due, on disk: which one is next, and whose it is to tell."""

import sqlite3
from collections.abc import Iterable
from datetime import UTC, datetime

from runboard.run.calls.dues import Due
from runboard.store.connect import Connections

_COLUMNS = "id, kind, due_at, run, load, tray, step, station, person"
# A moment that moved is told anew; one that stands where it stood keeps whether it was told.
_PUT = f"""
    INSERT INTO due ({_COLUMNS}) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)
    ON CONFLICT (id) DO UPDATE SET
        kind = excluded.kind, run = excluded.run, load = excluded.load, tray = excluded.tray, step = excluded.step,
        station = excluded.station, person = excluded.person,
        told_at = CASE WHEN due_at = excluded.due_at THEN told_at END,
        sent = CASE WHEN due_at = excluded.due_at THEN sent ELSE 0 END,
        pushed = CASE WHEN due_at = excluded.due_at THEN pushed ELSE 0 END,
        due_at = excluded.due_at
"""


# An alarm is told before it is known as told, rather than waiting for a press that is being stored.
CLAIM_WAIT = 0.05


class DuesFile:
    """What falls due, for the clock that rings."""

    def __init__(self, connections: Connections) -> None:
        self._connections = connections

    def unclaimed(self, now: datetime) -> list[Due]:
        """What has fallen due by ``now`` and nobody was told, earliest first."""
        sql = f"SELECT {_COLUMNS} FROM due WHERE told_at IS NULL AND due_at <= ? ORDER BY due_at, id"
        return [_due(row) for row in self._connections.read(sql, _write(now))]

    def claim(self, due_id: str, now: datetime) -> bool:
        """Take it on oneself to tell this one; false if another did, or if it moved away meanwhile. Raises ``NotStored``
        where somebody else is writing for longer than an alarm may wait."""
        sql = "UPDATE due SET told_at = ?1 WHERE id = ?2 AND told_at IS NULL AND due_at <= ?1"
        return self._connections.change(sql, _write(now), due_id, wait=CLAIM_WAIT)

    def past(self, now: datetime) -> list[tuple[Due, int]]:
        """What has fallen due by ``now`` and nobody has answered, earliest first, and how often it was sent outside."""
        return self._told_by("sent", now)

    def claim_sending(self, due_id: str, sent: int, wanted: int) -> bool:
        """Take it on oneself to send it outside, so that it counts as sent ``wanted`` times instead of ``sent``; false
        if another did."""
        return self._claim("sent", due_id, sent, wanted)

    def pushed(self, now: datetime) -> list[tuple[Due, int]]:
        """The same, and how often locked phones were sent it."""
        return self._told_by("pushed", now)

    def claim_pushing(self, due_id: str, pushed: int, wanted: int) -> bool:
        """Take it on oneself to send it to locked phones, as ``claim_sending`` does for what goes outside."""
        return self._claim("pushed", due_id, pushed, wanted)

    def is_unanswered(self, due: Due) -> bool:
        """Whether it is still to be answered, and has not moved."""
        row = self._connections.read("SELECT due_at FROM due WHERE id = ?", due.id).fetchone()
        return row is not None and _read(row[0]) == due.due_at

    def next_at(self) -> datetime | None:
        """The earliest moment of which nobody was told, past or to come."""
        row = self._connections.read("SELECT min(due_at) FROM due WHERE told_at IS NULL").fetchone()
        return None if row[0] is None else _read(row[0])

    def _told_by(self, way: str, now: datetime) -> list[tuple[Due, int]]:
        sql = f"SELECT {_COLUMNS}, {way} FROM due WHERE due_at <= ? ORDER BY due_at, id"
        return [(_due(row[:-1]), row[-1]) for row in self._connections.read(sql, _write(now))]

    def _claim(self, way: str, due_id: str, before: int, wanted: int) -> bool:
        sql = f"UPDATE due SET {way} = ? WHERE id = ? AND {way} = ?"
        return self._connections.change(sql, wanted, due_id, before)


def put_dues(connection: sqlite3.Connection, dues: Iterable[Due]) -> None:
    """Add or move moments, within the caller's transaction."""
    connection.executemany(
        _PUT,
        [
            (due.id, due.kind, _write(due.due_at), due.run, due.load, due.tray, due.step, due.station, due.person)
            for due in dues
        ],
    )


def drop_dues(connection: sqlite3.Connection, ids: Iterable[str]) -> None:
    """Forget moments, within the caller's transaction."""
    connection.executemany("DELETE FROM due WHERE id = ?", [(key,) for key in ids])


def held_dues(connection: sqlite3.Connection) -> dict[str, datetime]:
    """Every moment held, by its id."""
    return {key: _read(due_at) for key, due_at in connection.execute("SELECT id, due_at FROM due")}


def _due(row: tuple[str, ...]) -> Due:
    key, kind, due_at, *about = row  # in the order of its fields
    return Due(key, kind, _read(due_at), *about)


# To the microsecond, unlike the log's: a moment reckoned from minutes with a fraction must come back as it was put, or
# it would seem to have moved.
def _write(moment: datetime) -> str:
    return moment.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%S.%fZ")


def _read(text: str) -> datetime:
    return datetime.fromisoformat(text).astimezone(UTC)
