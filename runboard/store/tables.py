"""Tables written as one SQLite file that anything can read."""

import sqlite3
from collections.abc import Iterable, Mapping
from contextlib import closing
from pathlib import Path
from typing import Final

from runboard.review.tables import Kind, Table

_TYPES: Final[Mapping[Kind, str]] = {
    "text": "TEXT", "moment": "TEXT", "whole": "INTEGER", "minutes": "REAL", "number": "REAL",
}  # fmt: skip


def write_tables(path: Path, tables: Iterable[Table]) -> None:
    """A database at ``path``, where an empty file may be, with a strict table for each."""
    with closing(sqlite3.connect(path)) as connection, connection:
        for table in tables:
            _write(connection, table)


def _write(connection: sqlite3.Connection, table: Table) -> None:
    columns = ", ".join(f'"{name}" {_TYPES[kind]}' for name, kind in table.columns.items())
    connection.execute(f'CREATE TABLE "{table.name}" ({columns}) STRICT')
    places = ", ".join("?" * len(table.columns))
    connection.executemany(f'INSERT INTO "{table.name}" VALUES ({places})', table.rows)
