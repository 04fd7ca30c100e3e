"""A copy put in the shop's place: proved first, nothing replaced that is not kept, the old or the new at every moment.

The database is one file only while it has no log beside it. So the old one first takes its log in; then one rename puts
the new one in its place.
"""

import os
import shutil
import sqlite3
import sys
from contextlib import closing, suppress
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from runboard.store.closed import make_folder
from runboard.store.connect import FILE_NAME, connect, connect_reading
from runboard.store.copying import copy_database, part_file, remove_parts, saying_what_failed
from runboard.store.files import copy_files, keep_on_disk
from runboard.store.holding import InUse, hold
from runboard.store.proof import BadCopy, Proof, prove

_BESIDE = ("-wal", "-shm")
# What SQLite says of a file that it cannot use as a database, whatever is done with it.
_RUINED = ("SQLITE_NOTADB", "SQLITE_CORRUPT")


@dataclass(frozen=True)
class Restored:
    """What is in place now, and the folder where what was there before is kept (None if there was nothing)."""

    proof: Proof
    kept: Path | None


def restore(data: Path, file: Path, now: datetime) -> Restored:
    """Put the copy in ``file`` in place of the database in ``data``; the folder is made if it is not there.

    ``now`` names the folder of what is replaced. Raises ``BadCopy``, and then everything is as it was.
    """
    proof = prove(file)
    place = data / FILE_NAME
    if place.exists() and place.samefile(file):
        raise BadCopy("same file", file=str(file))
    made = not data.exists()
    try:
        with saying_what_failed(data):
            make_folder(data)
            with hold(data, alone=True), part_file(data) as part:
                remove_parts(data, but=part)
                with closing(connect_reading(file)) as copy:  # which stays as it is
                    copy_database(copy, part)
                if prove(part) != proof:
                    raise BadCopy("changing", file=str(file))
                keep_on_disk(part)
                copy_files(file.parent, data)
                kept = _replace(data, part, now)
    except InUse as error:
        raise BadCopy("in use", folder=str(data)) from error
    except BadCopy:
        if made:
            _unmake(data)
        raise
    return Restored(proof, kept)


def _replace(data: Path, part: Path, now: datetime) -> Path | None:
    place = data / FILE_NAME
    whole = not place.exists() or _take_log_in(place)
    there = [path for path in (place, *_beside(place)) if path.exists()]
    kept = _kept_folder(data, now) if there else None
    if kept is not None:
        _keep(there, kept)
        if not whole:
            # The old one cannot be read with its log or without; beside the new one the log would be taken for its own.
            for path in _beside(place):
                path.unlink(missing_ok=True)
    part.replace(place)
    for path in _beside(place):
        path.unlink(missing_ok=True)
    keep_on_disk(data)
    return kept


def _take_log_in(place: Path) -> bool:
    """Let the old database take its log in; false if it is no database any more. Raises ``BadCopy`` 'in use'."""
    try:
        with closing(connect(place)) as database:
            busy, _, _ = database.conn.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()
    except sqlite3.DatabaseError as error:
        if getattr(error, "sqlite_errorname", "").startswith(_RUINED):
            return False
        raise
    # The last one to close takes the log away; Apple's SQLite leaves it there, empty.
    log = _beside(place)[0]
    if busy or (log.exists() and (sys.platform != "darwin" or log.stat().st_size)):
        raise BadCopy("in use", folder=str(place.parent))
    return True


def _keep(there: list[Path], kept: Path) -> None:
    """The old files under a second name, while they stay where they are."""
    try:
        for path in there:
            try:
                os.link(path, kept / path.name)
            except OSError:  # a disk that knows no second names
                shutil.copy2(path, kept / path.name)
            keep_on_disk(kept / path.name)
        keep_on_disk(kept)
    except OSError:
        shutil.rmtree(kept, ignore_errors=True)
        raise


def _kept_folder(data: Path, now: datetime) -> Path:
    stem, number = f"replaced-{now.strftime('%Y-%m-%d-%H%M')}", 1
    while True:
        folder = data / (stem if number == 1 else f"{stem}-{number}")
        try:
            folder.mkdir(mode=0o700)
        except FileExistsError:
            number += 1
        else:
            return folder


def _beside(place: Path) -> list[Path]:
    return [place.with_name(place.name + ending) for ending in _BESIDE]


def _unmake(data: Path) -> None:
    """Take away a folder that was made for nothing."""
    with suppress(OSError):
        for path in data.iterdir():
            path.unlink()
        data.rmdir()
