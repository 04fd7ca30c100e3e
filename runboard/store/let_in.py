"""Whom a copy of the shop lets in: its devices, what speaks of machines, printed cards; and how nobody of them is."""

import json
import secrets
import sqlite3
from collections.abc import Collection
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from runboard.run.log.event import parse_moment, write_moment
from runboard.store.proof import BadCopy

# As the floor calls them, which the store does not know; a test holds both together.
_CARDS, _CHANNELS, _BROKER = "travellers", "outside", "mqtt"


@dataclass(frozen=True)
class DeviceIn:
    """A device that a copy lets in, as a lead's, crew's or a guest's ``access``. ``revoked_here`` says whether the shop that
    the copy replaces has revoked it."""

    name: str
    access: str
    revoked_here: bool = False


@dataclass(frozen=True)
class LetIn:
    """Whom a copy lets in as soon as it is served, and where it sends.

    ``sensors`` are there by their names; ``cards`` says whether cards that were printed open their trays. ``channels`` outside and the MQTT ``broker`` are where alerts go and machines are heard.
    """

    devices: tuple[DeviceIn, ...] = ()
    sensors: tuple[str, ...] = ()
    cards: bool = False
    channels: tuple[str, ...] = ()
    broker: str = ""

    @property
    def is_anybody(self) -> bool:
        """Whether there is anybody to be asked about."""
        return bool(self.devices or self.sensors or self.cards)


def read_let_in(connection: sqlite3.Connection, now: datetime, revoked: Collection[str] = ()) -> LetIn:
    """Whom the shop in this database lets in at ``now``; of devices with the ids in ``revoked`` it is noted. Raises ``BadCopy`` 'does not fold' where its records are none."""
    try:
        tables = _tables(connection)
        set_ = _settings(connection) if "setting" in tables else {}
        broker = set_.get(_BROKER, {})
        return LetIn(
            tuple(_devices(connection, now, revoked)) if "session" in tables else (),
            tuple(_sensors(connection)) if "sensor" in tables else (),
            "secret" in set_.get(_CARDS, {}),
            tuple(str(channel["name"]) for channel in set_.get(_CHANNELS, {}).get("channels", [])),
            str(broker.get("host", "")) if broker.get("on") else "",
        )
    except (ValueError, KeyError, TypeError, AttributeError) as error:
        raise BadCopy("does not fold", file=_file(connection), why=f"{type(error).__name__}: {error}") from error


def revoked_in(connection: sqlite3.Connection) -> frozenset[str]:
    """The ids of the devices that a shop has revoked."""
    if "device" not in _tables(connection):
        return frozenset()
    return frozenset(id_ for (id_,) in connection.execute("SELECT id FROM device WHERE revoked_at IS NOT NULL"))


def drop_codes(connection: sqlite3.Connection) -> None:
    """Codes that pair a device go in any case: an honest one is over by now."""
    if "pairing" in _tables(connection):
        connection.execute("DELETE FROM pairing")


def let_nobody_in(connection: sqlite3.Connection, now: datetime) -> None:
    """Every device and sensor is revoked, no phone is sent anything, and the cards have another key: what was printed
    before opens nothing. A device that pairs again is known as the one that it was."""
    tables, at = _tables(connection), write_moment(now)
    if "session" in tables:
        connection.execute("UPDATE device SET revoked_at = ? WHERE revoked_at IS NULL", (at,))
    if "sensor" in tables:
        connection.execute("UPDATE sensor SET revoked_at = ? WHERE revoked_at IS NULL", (at,))
    if "push" in tables:
        connection.execute("DELETE FROM push")
    if "setting" in tables:
        connection.execute(
            "UPDATE setting SET record = json_replace(record, '$.secret', ?) WHERE key = ?",
            (secrets.token_hex(32), _CARDS),
        )


def _devices(connection: sqlite3.Connection, now: datetime, revoked: Collection[str]) -> list[DeviceIn]:
    rows = connection.execute(
        "SELECT device.id, name, access, ends_at FROM device JOIN session ON session.device = device.id "
        "WHERE revoked_at IS NULL ORDER BY access = 'lead' DESC, name"
    )
    # Read in full, not compared as text: what is no moment would let a device in until the server stumbles over it.
    return [
        DeviceIn(name, access, id_ in revoked) for id_, name, access, ends_at in rows if parse_moment(ends_at) > now
    ]


def _sensors(connection: sqlite3.Connection) -> list[str]:
    return [name for (name,) in connection.execute("SELECT name FROM sensor WHERE revoked_at IS NULL ORDER BY name")]


def _settings(connection: sqlite3.Connection) -> dict[str, dict[str, Any]]:
    return {key: dict(json.loads(record)) for key, record in connection.execute("SELECT key, record FROM setting")}


def _tables(connection: sqlite3.Connection) -> set[str]:
    return {name for (name,) in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")}


def _file(connection: sqlite3.Connection) -> str:
    (_, _, file) = connection.execute("PRAGMA database_list").fetchone()
    return str(file)
