"""Devices, their sessions and the codes that pair them, on disk. Of secrets only the hashes are here."""

import sqlite3
from datetime import datetime
from typing import Any

from runboard.run.calls.device import Device, PairingCode, Session
from runboard.run.log.event import parse_moment, write_moment
from runboard.store.connect import Connections

_DEVICE = "device.id, device.name, access, paired_at, seen_at, revoked_at, run, tray"


NOTE_WAIT = 0.1  # seconds


class DeviceFile:
    """Who may ask."""

    def __init__(self, connections: Connections) -> None:
        self._connections = connections

    def devices(self) -> list[Device]:
        """Every device that was ever paired, the revoked too, in order of pairing."""
        rows = self._connections.read(f"SELECT {_DEVICE} FROM device ORDER BY paired_at, id")
        return [_device(row) for row in rows]

    def device(self, device_id: str) -> Device | None:
        """The device of that id."""
        row = self._connections.read(f"SELECT {_DEVICE} FROM device WHERE id = ?", device_id).fetchone()
        return None if row is None else _device(row)

    def session(self, hash_: str) -> Session | None:
        """The session of that hash, ended or not; its device says whether it is revoked."""
        row = self._connections.read(
            f"SELECT hash, renewed_at, ends_at, way, {_DEVICE} FROM session JOIN device ON device.id = session.device "
            "WHERE hash = ?",
            hash_,
        ).fetchone()
        if row is None:
            return None
        return Session(row[0], _device(row[4:]), parse_moment(row[1]), parse_moment(row[2]), row[3])

    def codes(self, now: datetime) -> list[PairingCode]:
        """The codes that have not ended by ``now``."""
        rows = self._connections.read(
            "SELECT hash, access, ends_at, device FROM pairing WHERE ends_at > ?", write_moment(now)
        )
        return [PairingCode(hash_, access, parse_moment(ends), device) for hash_, access, ends, device in rows]

    def put_code(self, code: PairingCode, now: datetime, most: int) -> None:
        """Add a code; those that have ended go, what was made for the same device, and the oldest where there would be
        more than ``most``."""
        with self._connections.write() as connection:
            connection.execute(
                "DELETE FROM pairing WHERE ends_at <= ? OR (device != '' AND device = ?)",
                (write_moment(now), code.device),
            )
            connection.execute(
                "INSERT INTO pairing (hash, access, ends_at, device) VALUES (?, ?, ?, ?)",
                (code.hash, code.access, write_moment(code.ends_at), code.device),
            )
            connection.execute(
                "DELETE FROM pairing WHERE rowid NOT IN (SELECT rowid FROM pairing ORDER BY rowid DESC LIMIT ?)",
                (most,),
            )

    def pair(self, code: PairingCode, session: Session, now: datetime) -> bool:
        """Use the code up, and begin the session of its device, whose earlier ones end. False where the code is gone.

        The device is added, or paired again under its id.
        """
        with self._connections.write() as connection:
            used = connection.execute(
                "DELETE FROM pairing WHERE hash = ? AND ends_at > ?", (code.hash, write_moment(now))
            )
            if used.rowcount != 1:
                return False
            _begin(connection, session)
        return True

    def begin(self, session: Session) -> bool:
        """Begin a session that no code was used up for; its device is added, or is this one now. Earlier ones end. False
        where the device is revoked: only a code, or the lead, lets it in again."""
        with self._connections.write() as connection:
            revoked = "SELECT 1 FROM device WHERE id = ? AND revoked_at IS NOT NULL"
            if connection.execute(revoked, (session.device.id,)).fetchone():
                return False
            _begin(connection, session)
        return True

    def extend(self, device_id: str, ends_at: datetime) -> bool:
        """Let a device in again until ``ends_at``, revoked or not; false where it has no session."""
        with self._connections.write() as connection:
            connection.execute("UPDATE device SET revoked_at = NULL WHERE id = ?", (device_id,))
            done = connection.execute(
                "UPDATE session SET ends_at = ? WHERE device = ?", (write_moment(ends_at), device_id)
            )
            return done.rowcount > 0

    def ends(self) -> dict[str, datetime]:
        """Until when each device that has a session is let in."""
        rows = self._connections.read("SELECT device, max(ends_at) FROM session GROUP BY device")
        return {device: parse_moment(ends_at) for device, ends_at in rows}

    def rename(self, device_id: str, name: str) -> bool:
        """Give a device another name; false where there is none of that id."""
        return self._connections.change("UPDATE device SET name = ? WHERE id = ?", name, device_id)

    def revoke(self, device_id: str, now: datetime) -> bool:
        """Let a device in no more; false where there is none of that id, or it was revoked before.

        Its session stays, so that the same device is known by it if it is paired again. It is sent nothing any more.
        """
        with self._connections.write() as connection:
            connection.execute("DELETE FROM push WHERE device = ?", (device_id,))
            done = connection.execute(
                "UPDATE device SET revoked_at = ? WHERE id = ? AND revoked_at IS NULL", (write_moment(now), device_id)
            )
            return done.rowcount == 1

    def note_seen(self, session: Session, now: datetime) -> None:
        """The device asked at ``now``, and its session goes on as ``session`` says. Not worth a wait: it is noted again."""
        with self._connections.write(wait=NOTE_WAIT) as connection:
            connection.execute("UPDATE device SET seen_at = ? WHERE id = ?", (write_moment(now), session.device.id))
            connection.execute(
                "UPDATE session SET renewed_at = ?, ends_at = ?, way = ? WHERE hash = ?",
                (write_moment(session.renewed_at), write_moment(session.ends_at), session.way, session.hash),
            )


def _begin(connection: sqlite3.Connection, session: Session) -> None:
    device = session.device
    connection.execute(
        "INSERT INTO device (id, name, access, paired_at, run, tray) VALUES (?, ?, ?, ?, ?, ?) "
        "ON CONFLICT (id) DO UPDATE SET name = excluded.name, access = excluded.access, "
        "paired_at = excluded.paired_at, run = excluded.run, tray = excluded.tray, revoked_at = NULL",
        (device.id, device.name, device.access, write_moment(device.paired_at), device.run, device.tray),
    )
    connection.execute("DELETE FROM session WHERE device = ?", (device.id,))
    connection.execute(
        "INSERT INTO session (hash, device, renewed_at, ends_at, way) VALUES (?, ?, ?, ?, ?)",
        (session.hash, device.id, write_moment(session.renewed_at), write_moment(session.ends_at), session.way),
    )


def _device(row: tuple[Any, ...]) -> Device:
    device_id, name, access, paired_at, seen_at, revoked_at, *at = row
    seen, revoked = (None if moment is None else parse_moment(moment) for moment in (seen_at, revoked_at))
    return Device(device_id, name, access, parse_moment(paired_at), seen, revoked, *at)
