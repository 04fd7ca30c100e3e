"""The one place where a connection to the shop's database is opened, and the one way to write through it."""

import sqlite3
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from runboard.run.refusal import NotStored
from runboard.store.database import Database
from runboard.turn import Turn

FILE_NAME = "shop.db"
WAIT_SECONDS = 3.0

# FULL, not NORMAL: a shop loses power when a breaker trips, and a press that was answered must be there afterwards.
_PRAGMAS = """
    PRAGMA journal_mode = WAL;
    PRAGMA synchronous = FULL;
    PRAGMA foreign_keys = ON;
"""


def connect(path: Path) -> Database:
    """A connection that begins no transaction by itself; ``Connections.write`` says when one begins.

    Recursive triggers are on, so that REPLACE cannot slip a changed row past the triggers that forbid it.
    """
    # Each connection is used by one thread (``Connections`` sees to it); the check is off so that the thread that ends
    # the server may close those of threads that are already gone.
    connection = sqlite3.connect(path, timeout=WAIT_SECONDS, isolation_level=None, check_same_thread=False)
    connection.executescript(_PRAGMAS)
    return Database(connection, recursive_triggers=True, execute_plugins=False)


def connect_reading(path: Path) -> Database:
    """A connection that cannot write, to a file that is there. It leaves nothing beside the file."""
    # A file without a log beside it is read as one that nobody changes; otherwise SQLite would put one there.
    how = "mode=ro" if _beside(path, "-wal").exists() else "mode=ro&immutable=1"
    connection = sqlite3.connect(
        f"{path.absolute().as_uri()}?{how}",
        uri=True,
        timeout=WAIT_SECONDS,
        isolation_level=None,
        check_same_thread=False,
    )
    return Database(connection, execute_plugins=False)


def _beside(path: Path, ending: str) -> Path:
    return path.with_name(path.name + ending)


_WHY = {
    "SQLITE_FULL": "full",
    "SQLITE_READONLY": "read only",
    "SQLITE_IOERR": "failing",
    "SQLITE_CANTOPEN": "failing",
    "SQLITE_BUSY": "busy",
}


@contextmanager
def _saying_what_failed() -> Iterator[None]:
    try:
        yield
    except sqlite3.OperationalError as error:
        named = getattr(error, "sqlite_errorname", "")  # SQLITE_IOERR_WRITE, SQLITE_READONLY_DIRECTORY, …
        why = next((why for name, why in _WHY.items() if named.startswith(name)), "")
        if not why:
            raise
        raise NotStored(why) from error


def _begin(connection: sqlite3.Connection, wait: float) -> None:
    """Begin a transaction, once no other process is in one, within so many seconds."""
    if wait != WAIT_SECONDS:
        connection.execute(f"PRAGMA busy_timeout = {round(wait * 1000)}")
    try:
        connection.execute("BEGIN IMMEDIATE")
    finally:
        if wait != WAIT_SECONDS:
            connection.execute(f"PRAGMA busy_timeout = {round(WAIT_SECONDS * 1000)}")


class Connections:
    """One connection for each thread that asks, all to the same file; with ``reading`` none of them writes.

    ``turn`` is whose it is to write. SQLite itself looks now and then whether it may, so that who writes on and on keeps
    it: other threads wait for the turn instead, and only other processes for SQLite.
    """

    def __init__(self, path: Path, *, reading: bool = False) -> None:
        self.path = path
        self.turn = Turn()
        self._connect = connect_reading if reading else connect
        self._own = threading.local()
        self._lock = threading.Lock()
        self._open: list[Database] = []

    def here(self) -> Database:
        """This thread's connection, opened when it first asks."""
        held: Database | None = getattr(self._own, "database", None)
        if held is not None:
            return held
        opened = self._connect(self.path)
        self._own.database = opened
        with self._lock:
            self._open.append(opened)
        return opened

    def read(self, sql: str, *values: Any) -> sqlite3.Cursor:
        """What a query finds, by this thread's connection."""
        return self.here().conn.execute(sql, values)

    def change(self, sql: str, *values: Any, wait: float = WAIT_SECONDS) -> bool:
        """One statement as a transaction of its own; whether it changed anything. Raises ``NotStored``."""
        with self.write(wait) as connection:
            return connection.execute(sql, values).rowcount > 0

    @contextmanager
    def write(self, wait: float = WAIT_SECONDS) -> Iterator[sqlite3.Connection]:
        """One immediate transaction: committed at the end of the block, rolled back if the block raises. It waits so many
        seconds for others to end theirs.

        Raises ``NotStored`` where the disk does not take it.

        Immediate, because a deferred one that reads first and writes later fails with 'database is locked' as soon as
        another has written between.
        """
        connection = self.here().conn
        if not self.turn.acquire(wait):
            raise NotStored("busy")
        try:
            with _saying_what_failed():
                _begin(connection, wait)
                try:
                    yield connection
                    connection.execute("COMMIT")
                except BaseException:
                    # SQLite itself ends the transaction on some errors (a full disk); then nothing is left to roll back.
                    if connection.in_transaction:
                        connection.execute("ROLLBACK")
                    raise
        finally:
            self.turn.release()

    @contextmanager
    def not_waiting_for_the_disk(self) -> Iterator[None]:
        """A block in which this thread's transactions are not on the disk yet when they end; at its end they are. For a
        folder that is made anew, by the one process that has it open."""
        connection = self.here().conn
        (usual,) = connection.execute("PRAGMA synchronous").fetchone()
        connection.execute("PRAGMA synchronous = OFF")
        try:
            yield
        finally:
            connection.execute(f"PRAGMA synchronous = {usual}")
            connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")

    def close(self) -> None:
        """Close every connection; only once no thread uses the store any more."""
        with self._lock:
            opened, self._open = self._open, []
        for database in opened:
            database.close()
        self._own = threading.local()
