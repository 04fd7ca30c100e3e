"""A copy of the database: as of one moment while others write, proved, and then under its name at once."""

import errno
import math
import os
import shutil
import sqlite3
import tempfile
from collections.abc import Callable, Iterator, Mapping
from contextlib import closing, contextmanager
from pathlib import Path

from runboard.store.connect import FILE_NAME, connect, connect_reading
from runboard.store.database import Database
from runboard.store.files import copy_files, keep_on_disk
from runboard.store.listed import digest_of, write_list
from runboard.store.proof import BadCopy, Proof, prove

# A copy never takes the last of the disk: the presses of the day need it more.
_LEFT_FREE = 32_000_000
_PART = ".shop-"


def copy_shop(data: Path, folder: Path, name: Callable[[], Path]) -> tuple[Path, Proof]:
    """A proved copy of the shop in ``data`` as one new file in ``folder``, its pictures, its programs and the
    list of their digests beside it.

    ``name`` is asked last, for a path in the folder that is free. Raises ``BadCopy``, and then leaves no file.
    """
    source = data / FILE_NAME
    if not source.is_file():
        raise BadCopy("nothing to copy", folder=str(data))
    with saying_what_failed(folder):
        _check_room(source, folder)
        with part_file(folder) as part:
            with closing(_open(source)) as database:
                copy_database(database, part)
            proof = prove(part)
            digests = copy_files(data, folder)  # after the database: what it names was there before
            keep_on_disk(part)
            path = _give_name(part, name(), digests)
            keep_on_disk(folder)
    return path, proof


def _give_name(part: Path, path: Path, digests: Mapping[str, str]) -> Path:
    """The list first: a copy is never without it, and a list without a copy is in nobody's way."""
    made = write_list(path, digest_of(part), digests)
    try:
        keep_on_disk(made)
        return part.replace(path)
    except OSError:
        made.unlink(missing_ok=True)
        raise


def copy_database(source: Database, target: Path) -> None:
    """SQLite's own copy as of one moment, whoever writes meanwhile, into one file without a log beside it."""
    with closing(sqlite3.connect(target)) as writing:
        source.conn.backup(writing)
        writing.execute("PRAGMA journal_mode = DELETE")


def _open(source: Path) -> Database:
    try:
        return connect(source)
    except sqlite3.OperationalError:  # a folder that cannot be written: then nobody writes meanwhile
        return connect_reading(source)


@contextmanager
def part_file(folder: Path) -> Iterator[Path]:
    """A new file in ``folder`` that only this user can read; gone at the end of the block unless it got another name."""
    place, name = tempfile.mkstemp(prefix=_PART, suffix=".part", dir=folder)  # mode 600
    os.close(place)
    part = Path(name)
    try:
        yield part
    finally:
        for ending in ("", "-journal", "-wal", "-shm"):
            part.with_name(part.name + ending).unlink(missing_ok=True)


@contextmanager
def saying_what_failed(folder: Path) -> Iterator[None]:
    """What the disk or SQLite says of writing into ``folder``, as ``BadCopy``."""
    try:
        yield
    except sqlite3.Error as error:
        full = getattr(error, "sqlite_errorname", "") == "SQLITE_FULL"
        raise BadCopy("no room" if full else "not copied", folder=str(folder), why=str(error)) from error
    except OSError as error:
        raise cannot_write(error, folder) from error


def cannot_write(error: OSError, folder: Path) -> BadCopy:
    """An error of the disk as what a person can act on."""
    full = error.errno == errno.ENOSPC
    return BadCopy("no room" if full else "cannot write", folder=str(folder), why=error.strerror or str(error))


def _check_room(source: Path, folder: Path) -> None:
    """Raises ``BadCopy`` 'no room' where the copy would leave too little for the day's presses."""
    size = sum(path.stat().st_size for path in source.parent.glob(f"{FILE_NAME}*") if path.is_file())
    if shutil.disk_usage(folder).free < size + _LEFT_FREE:
        raise BadCopy("no room", folder=str(folder))


def remove_parts(folder: Path, *, but: Path | None = None, before: float = math.inf) -> None:
    """Remove what killed copies left in a folder, of which nothing has changed since the moment ``before``."""
    for path in folder.glob(f"{_PART}*.part*"):
        if path != but and path.stat().st_mtime < before:
            path.unlink(missing_ok=True)
