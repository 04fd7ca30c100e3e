"""Whether a database file is a whole shop that this runboard can open."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any

from runboard.run.fold.ledger import Ledger
from runboard.run.log.event import parse_moment
from runboard.shop.book import Book
from runboard.store.books import BookFile
from runboard.store.connect import Connections
from runboard.store.database import Database
from runboard.store.events import LogFile
from runboard.store.migrations import STEPS

_NO_DATABASE = 26  # SQLITE_NOTADB
_NEEDED = {"event", "book"}


class BadCopy(Exception):
    """A copy that could not be made, or cannot be used. ``code`` names the sentence in the catalogue, ``facts`` fill it."""

    def __init__(self, code: str, **facts: Any) -> None:
        super().__init__(code)
        self.code = code
        self.facts = facts


@dataclass(frozen=True)
class Proof:
    """What was found in a whole file: how many events, when the last of them arrived, and whose shop it is."""

    events: int
    until: datetime | None
    shop: str
    time_zone: str


def prove(path: Path) -> Proof:
    """Read the whole file without changing it: SQLite's own check, the tables, the book, and the log folded.

    Raises ``BadCopy`` with 'missing', 'no database', 'damaged', 'newer', 'no shop', 'other tables' or 'does not fold'.
    """
    if not path.is_file():
        raise BadCopy("missing", file=str(path))
    with _reading(path) as connections:
        _check_pages(connections.here().conn, path)
        _check_tables(connections.here(), path)
        return _fold(connections, path)


@contextmanager
def _reading(path: Path) -> Iterator[Connections]:
    connections = Connections(path, reading=True)
    try:
        yield connections
    except sqlite3.DatabaseError as error:
        code = "no database" if getattr(error, "sqlite_errorcode", 0) == _NO_DATABASE else "damaged"
        raise BadCopy(code, file=str(path), why=str(error)) from error
    finally:
        connections.close()


def _check_pages(connection: sqlite3.Connection, path: Path) -> None:
    (found,) = connection.execute("PRAGMA integrity_check(1)").fetchone()
    if found != "ok":
        raise BadCopy("damaged", file=str(path), why=found)


def _check_tables(database: Database, path: Path) -> None:
    """The tables are those that the migrations make up to some point; a later start brings them up to date."""
    known = [step.name for step in STEPS.pending(Database(memory=True))]
    done = [step.name for step in STEPS.applied(database)]
    if unknown := [name for name in done if name not in known]:
        raise BadCopy("newer", file=str(path), unknown=unknown)
    as_made = Database(memory=True)
    STEPS.apply(as_made, stop_before=[name for name in known if name not in done])
    here = _tables(database)
    if not here.keys() >= _NEEDED:
        raise BadCopy("no shop", file=str(path))
    if here != _tables(as_made):
        raise BadCopy("other tables", file=str(path))


def _tables(database: Database) -> dict[str, str]:
    """Every table, index and trigger as text; what SQLite and sqlite-utils keep for themselves is left out."""
    rows = database.conn.execute("SELECT name, sql FROM sqlite_master WHERE sql IS NOT NULL")
    return {name: sql for name, sql in rows if not name.startswith(("sqlite_", "_sqlite_migrations"))}


def _fold(connections: Connections, path: Path) -> Proof:
    try:
        books = BookFile(connections)
        book = books.latest() if books.revision() else Book()
        events = LogFile(connections).events()
        Ledger(book).load(events)
    except sqlite3.DatabaseError:
        raise
    except Exception as error:  # whatever a log that is no log of ours makes the fold do
        raise BadCopy("does not fold", file=str(path), why=f"{type(error).__name__}: {error}") from error
    (last,) = connections.here().conn.execute("SELECT max(received_at) FROM event").fetchone()
    return Proof(len(events), parse_moment(last) if last else None, book.name, book.time_zone)
