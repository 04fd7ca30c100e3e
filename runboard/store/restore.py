"""A copy put in the shop's place: proved first, nothing replaced that is not kept, the old or the new at every moment.

The database is one file only while it has no log beside it. So the old one first takes its log in; then one rename puts
the new one in its place.
"""

import os
import shutil
import sqlite3
import sys
from contextlib import closing
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from runboard.store.closed import make_folder
from runboard.store.connect import FILE_NAME, connect, connect_reading
from runboard.store.copying import copy_database, part_file, remove_parts, saying_what_failed
from runboard.store.files import FilesFound, keep_on_disk, look_at_files, put_files, room_for_files, take_away
from runboard.store.holding import InUse, hold
from runboard.store.let_in import LetIn, drop_codes, let_nobody_in, read_let_in, revoked_in
from runboard.store.listed import digest_of, list_of, read_list
from runboard.store.proof import BadCopy, Proof, prove

_BESIDE = ("-wal", "-shm")
# What SQLite says of a file that it cannot use as a database, whatever is done with it.
_RUINED = ("SQLITE_NOTADB", "SQLITE_CORRUPT")


@dataclass(frozen=True)
class Look:
    """What was found in a copy that nothing was done with yet. ``is_listed`` says whether it was compared with a list of
    digests; a copy from before there were any has none. ``revoked`` are the devices that the shop in place has revoked."""

    proof: Proof
    files: FilesFound
    let_in: LetIn
    is_listed: bool
    revoked: frozenset[str] = frozenset()


@dataclass(frozen=True)
class Restored:
    """What is in place now, and the folder where what was there before is kept (None if there was nothing)."""

    proof: Proof
    kept: Path | None


def look_at(data: Path, file: Path, now: datetime) -> Look:
    """Prove a copy, compare it and its files with its list, and see whom it would let in at ``now``, if it were put in
    place of what is in ``data``. Nothing is changed. Raises ``BadCopy``."""
    proof = prove(file)
    place = data / FILE_NAME
    if place.exists() and place.samefile(file):
        raise BadCopy("same file", file=str(file))
    with saying_what_failed(file.parent):
        listed = read_list(file)
        if listed and (digest_of(file.resolve()) != listed[0] or _beside(file)[0].exists()):
            raise BadCopy("not as listed", file=str(file), list=str(list_of(file)))
        if room_for_files(file.parent, data) > _room(data):
            raise BadCopy("no room", folder=str(data))
        with closing(connect_reading(file)) as copy:
            revoked = _revoked_in(place)
            let_in = read_let_in(copy.conn, now, revoked)
        files = look_at_files(file.parent, listed[1] if listed else None)
        return Look(proof, files, let_in, listed is not None, revoked)


def restore(data: Path, file: Path, now: datetime, *, let_in: bool = False, looked: Look | None = None) -> Restored:
    """Put the copy in ``file`` in place of the database in ``data``; the folder is made if it is not there.

    Those whom the copy lets in are let in where a person said so: by ``let_in``; else every device is revoked. ``looked``
    is what they were shown. ``now`` names the folder of what is replaced. Raises ``BadCopy``, 'changing' where the copy
    is not what was looked at; then everything is as it was.
    """
    looked = looked or look_at(data, file, now)
    made = not data.exists()
    try:
        with saying_what_failed(data):
            make_folder(data)
            with hold(data, alone=True), part_file(data) as part:
                remove_parts(data, but=part)
                with closing(connect_reading(file)) as copy:  # which stays as it is
                    copy_database(copy, part)
                if prove(part) != looked.proof or _let_in_by(part, now, looked.revoked) != looked.let_in:
                    raise BadCopy("changing", file=str(file))
                _settle(part, now, let_in)
                kept = _put_in_place(data, file, part, looked.files, now)
    except InUse as error:
        raise BadCopy("in use", folder=str(data)) from error
    except BadCopy:
        if made:
            shutil.rmtree(data, ignore_errors=True)
        raise
    return Restored(looked.proof, kept)


def _let_in_by(part: Path, now: datetime, revoked: frozenset[str]) -> LetIn:
    with closing(sqlite3.connect(part)) as database:
        return read_let_in(database, now, revoked)


def _revoked_in(place: Path) -> frozenset[str]:
    """The devices that the shop in place has revoked; none where there is no shop, or it cannot be read."""
    try:
        if not place.is_file():
            return frozenset()
        with closing(connect_reading(place)) as shop:
            return revoked_in(shop.conn)
    except sqlite3.Error:
        return frozenset()


def _settle(part: Path, now: datetime, let_in: bool) -> None:
    """Let in nobody whom no person was shown; what is taken out leaves nothing behind in the file."""
    with closing(sqlite3.connect(part, isolation_level=None)) as database:
        database.execute("PRAGMA secure_delete = ON")
        database.execute("BEGIN IMMEDIATE")
        drop_codes(database)
        if not let_in:
            let_nobody_in(database, now)
        database.execute("COMMIT")
    keep_on_disk(part)


def _put_in_place(data: Path, file: Path, part: Path, found: FilesFound, now: datetime) -> Path | None:
    """The files first, since the new shop names them; they go again if the old shop stays."""
    files = put_files(file.parent, found, data)
    try:
        return _replace(data, part, now)
    except BaseException:
        if part.exists():
            take_away(files)
        raise


def _room(data: Path) -> int:
    return shutil.disk_usage(next(path for path in (data, *data.absolute().parents) if path.exists())).free


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
