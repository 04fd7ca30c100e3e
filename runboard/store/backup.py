"""Copies of the shop: made while it goes on, dated, proved before they count, the last thirty kept."""

import json
import re
import sqlite3
import threading
from collections.abc import Mapping
from contextlib import closing
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta, tzinfo
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from runboard.run.log.event import parse_moment, write_moment
from runboard.store.books import BookFile
from runboard.store.closed import write_file
from runboard.store.connect import FILE_NAME, Connections, connect_reading
from runboard.store.copying import copy_shop, remove_parts, saying_what_failed
from runboard.store.listed import ENDING, list_of
from runboard.store.proof import BadCopy

FOLDER_NAME = "backups"
FAILURE_NAME = "last-failure.json"
KEPT = 30
_NAME = re.compile(r"shop-(\d{4}-\d\d-\d\d-\d{4})(?:-(\d+))?\.db")
_FORM = "%Y-%m-%d-%H%M"


@dataclass(frozen=True)
class Copy:
    """A copy on disk. ``at`` is what its name says, to the minute."""

    path: Path
    at: datetime
    events: int


@dataclass(frozen=True)
class CopyFailure:
    """A copy that was not made: when, and why as a code with its facts."""

    at: datetime
    code: str
    facts: Mapping[str, Any]


class BackupFolder:
    """The copies of one data folder, in its own ``backups``. How the last attempt failed is kept there too."""

    def __init__(self, data: Path) -> None:
        self._data = data
        self._folder = data / FOLDER_NAME
        self._one_at_a_time = threading.Lock()
        self._failure: CopyFailure | None = None  # where even the failure cannot be written

    def last_at(self, now: datetime) -> datetime | None:
        """When the last copy was made, by its name. ``now`` is in the shop's zone, as the names are."""
        found = self._until(now)
        return found[-1][0] if found else None

    def last(self, now: datetime) -> Copy | None:
        """The last copy; its events are counted in it, and -1 where it cannot be read any more."""
        found = self._until(now)
        if not found:
            return None
        at, _, path = found[-1]
        return Copy(path, at, _events_in(path))

    def _until(self, now: datetime) -> list[tuple[datetime, int, Path]]:
        # One that a wrong clock dated ahead says nothing of how old the last is.
        return [copy for copy in _copies(self._folder, now.tzinfo) if copy[0] <= now]

    def failure(self) -> CopyFailure | None:
        """Why the last attempt failed; None where it did not."""
        if self._failure is not None:
            return self._failure
        try:
            kept = json.loads((self._folder / FAILURE_NAME).read_text("utf-8"))
            return CopyFailure(parse_moment(kept["at"]), kept["code"], kept["facts"])
        except (OSError, ValueError, KeyError, TypeError):
            return None

    def make(self, now: datetime) -> Copy:
        """Make a copy now, and let go of all but the last thirty. ``now`` is in the shop's zone, which names the file.

        Raises ``BadCopy``; then the failure is kept until a copy succeeds.
        """
        with self._one_at_a_time:
            try:
                with saying_what_failed(self._folder):
                    self._folder.mkdir(mode=0o700, exist_ok=True)
                    copy = copy_to(self._data, self._folder, now)
                    _let_go(self._folder, copy.path, now)
                    (self._folder / FAILURE_NAME).unlink(missing_ok=True)
            except BadCopy as bad:
                self._keep(CopyFailure(now, bad.code, bad.facts))
                raise
            self._failure = None
            return copy

    def _keep(self, failure: CopyFailure) -> None:
        self._failure = failure
        record = {"at": write_moment(failure.at), "code": failure.code, "facts": dict(failure.facts)}
        try:
            self._folder.mkdir(mode=0o700, exist_ok=True)
            write_file(self._folder / FAILURE_NAME, json.dumps(record))
        except OSError:
            pass  # it is in memory, and shown from there


def copy_to(data: Path, folder: Path, now: datetime) -> Copy:
    """A dated copy of the shop in ``data``, in a folder that is there; all that are in it stay. Raises ``BadCopy``."""
    if not folder.is_dir():
        raise BadCopy("no folder", folder=str(folder))
    path, proof = copy_shop(data, folder, lambda: _free_name(folder, now))
    return Copy(path, now, proof.events)


def zone_in(data: Path) -> tzinfo:
    """The time zone of the shop in a data folder, which names its copies. Raises ``BadCopy`` where it cannot be read."""
    connections = Connections(data / FILE_NAME, reading=True)
    try:
        with saying_what_failed(data):
            return ZoneInfo(BookFile(connections).latest().time_zone or "UTC")
    finally:
        connections.close()


def _free_name(folder: Path, now: datetime) -> Path:
    """A name that no file has: the second of a minute, or of an hour that comes twice in autumn, is numbered."""
    stem = f"shop-{now.strftime(_FORM)}"
    path, number = folder / f"{stem}.db", 2
    while path.exists():
        path, number = folder / f"{stem}-{number}.db", number + 1
    return path


def _copies(folder: Path, zone: tzinfo | None = UTC) -> list[tuple[datetime, int, Path]]:
    """(moment by its name, number, path) of each copy in a folder, oldest first."""
    return sorted(dated for path in folder.glob("shop-*.db") if (dated := _dated(path, zone)))


def _dated(path: Path, zone: tzinfo | None) -> tuple[datetime, int, Path] | None:
    match = _NAME.fullmatch(path.name)
    try:
        return match and (datetime.strptime(match[1], _FORM).replace(tzinfo=zone), int(match[2] or 1), path)
    except ValueError:
        return None  # a name that only looks like a date


def _events_in(path: Path) -> int:
    try:
        with closing(connect_reading(path)) as database:
            return int(database.conn.execute("SELECT count(*) FROM event").fetchone()[0])
    except sqlite3.Error:
        return -1


def _let_go(folder: Path, made: Path, now: datetime) -> None:
    """Remove all but the last copies, never the one just made (a clock that went back makes it look old)."""
    for _, _, path in _copies(folder)[:-KEPT]:
        if path != made:
            path.unlink(missing_ok=True)
            list_of(path).unlink(missing_ok=True)
    yesterday = (now - timedelta(days=1)).timestamp()
    for path in folder.glob(f"shop-*{ENDING}"):  # of copies that are gone, or that a kill left without one
        if not path.with_suffix(".db").exists() and path.stat().st_mtime < yesterday:
            path.unlink(missing_ok=True)
    remove_parts(folder, before=yesterday)
