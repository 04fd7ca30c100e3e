"""Pictures and programs in the data folder: files named by what is in them, so that none ever changes.

Copied out they are listed with their digests; put back each is compared, and no link is followed.
"""

import errno
import os
import re
import shutil
import stat
import tempfile
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import BinaryIO

from runboard.run.refusal import NotStored
from runboard.store.closed import FILE_MODE
from runboard.store.listed import NotPlain, digest_of, is_plain_name, open_plain
from runboard.store.proof import BadCopy

FILES_NAME = "files"
_DEEPEST = 12
_WHY = {errno.ENOSPC: "full", errno.EDQUOT: "full", errno.EROFS: "read only"}
_NAMED_BY_DIGEST = re.compile(r"([0-9a-f]{64})\.[a-z]+")


@dataclass(frozen=True)
class FilesFound:
    """The files of a copy. ``good`` are those to take, each with its digest, by their names. ``left`` are those that are
    not taken, each with why: 'link', 'hard link', 'no file' (a pipe, a device), 'bad name', 'differs', 'missing'.
    ``unchecked`` says how many of the good ones nothing could be compared with."""

    good: Mapping[str, str]
    left: tuple[tuple[str, str], ...] = ()
    unchecked: int = 0


def copy_files(source: Path, target: Path) -> dict[str, str]:
    """Bring the files of one folder to another, those that are not there yet; answers the digest of each by its name.

    None is removed: an older copy of the shop may still name it. No link is followed.
    """
    digests = {}
    for name, about in _files(source):
        if not stat.S_ISREG(about.st_mode):
            continue
        there = target / name
        if not _is_as_long(there, about.st_size):
            _copy(source / name, there)
        if is_plain_name(name):
            digests[name] = _named(name) or digest_of(source / name)
    return digests


def look_at_files(folder: Path, listed: Mapping[str, str] | None) -> FilesFound:
    """What of the files beside a copy is to be taken. ``listed`` are the digests of its list, None where it has none: then only
    those are compared that are named by what is in them. What a list does not name belongs to another copy.
    """
    good, left, unchecked = {}, [], 0
    for name, about in _files(folder):
        if why := _why_not(name, about):
            left.append((name, why))
        elif listed is None or name in listed:
            digest = digest_of(folder / name, alone=True)
            wanted = {digest_said for digest_said in ((listed or {}).get(name, ""), _named(name)) if digest_said}
            if wanted <= {digest}:
                good[name] = digest
                unchecked += not wanted
            else:
                left.append((name, "differs"))
    gone = (listed or {}).keys() - good.keys() - {name for name, _ in left}
    return FilesFound(good, (*left, *((name, "missing") for name in sorted(gone))), unchecked)


def room_for_files(folder: Path, target: Path) -> int:
    """How many bytes the files beside a copy need in another folder, beyond those that are there."""
    every = ((target / name, about) for name, about in _files(folder) if stat.S_ISREG(about.st_mode))
    return sum(about.st_size for there, about in every if not _is_as_long(there, about.st_size))


def put_files(folder: Path, found: FilesFound, target: Path) -> list[Path]:
    """Bring the good ones to their place; answers those that were not there. All of them or none: what was put there is
    taken away again where one fails. Raises ``BadCopy`` 'changing' where one is not what it was."""
    made: list[Path] = []
    try:
        for name, digest in found.good.items():
            there = target / name
            if not (there.is_file() and _is(there, digest)):
                is_new = not there.exists()
                _copy(folder / name, there, digest)
                made += [there] if is_new else []
    except BaseException:
        take_away(made)
        raise
    return made


def take_away(made: list[Path]) -> None:
    """Remove what was put there for nothing."""
    for path in made:
        path.unlink(missing_ok=True)


def _files(folder: Path) -> Iterator[tuple[str, os.stat_result]]:
    """(name, what the disk says) of all that lies below ``files`` but folders, in order; nothing behind a link."""
    place = folder / FILES_NAME
    if place.is_symlink():
        yield FILES_NAME, place.lstat()
    elif place.is_dir():
        yield from _below(place, FILES_NAME)


def _below(place: Path, name: str) -> Iterator[tuple[str, os.stat_result]]:
    with os.scandir(place) as entries:
        every = sorted(entries, key=lambda entry: entry.name)
    for entry in every:
        if entry.is_dir(follow_symlinks=False) and name.count("/") < _DEEPEST:
            yield from _below(Path(entry.path), f"{name}/{entry.name}")
        elif not entry.name.endswith(".part"):
            yield f"{name}/{entry.name}", Path(entry.path).lstat()  # what scandir says knows no second names on Windows


def _why_not(name: str, about: os.stat_result) -> str:
    if stat.S_ISLNK(about.st_mode):
        return "link"
    if stat.S_ISDIR(about.st_mode):
        return "bad name"  # too deep
    if not stat.S_ISREG(about.st_mode):
        return "no file"
    if about.st_nlink > 1:
        return "hard link"
    return "" if is_plain_name(name) else "bad name"


def _named(name: str) -> str:
    """The digest that a file is named by; '' where it has another name."""
    match = _NAMED_BY_DIGEST.fullmatch(name.rpartition("/")[2])
    return match[1] if match else ""


def _is_as_long(path: Path, size: int) -> bool:
    return path.is_file() and path.stat().st_size == size


def _is(path: Path, digest: str) -> bool:
    try:
        return digest_of(path) == digest
    except NotPlain:
        return False


def _copy(path: Path, there: Path, digest: str = "") -> None:
    there.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    part = there.with_name(f"{there.name}.part")
    part.unlink(missing_ok=True)
    try:
        with (
            os.fdopen(open_plain(path, alone=bool(digest)), "rb") as source,
            os.fdopen(os.open(part, _NEW, FILE_MODE), "wb") as target,
        ):
            shutil.copyfileobj(source, target)
        keep_on_disk(part)
        if digest and digest_of(part) != digest:
            raise BadCopy("changing", file=str(path))
        part.replace(there)
    except NotPlain as error:
        raise BadCopy("changing", file=str(path)) from error
    finally:
        part.unlink(missing_ok=True)


@contextmanager
def writing_to(folder: Path) -> Iterator[None]:
    """What the disk says of writing into a folder, which is made if it is not there, as ``NotStored``."""
    try:
        folder.mkdir(mode=0o700, exist_ok=True)
        yield
    except OSError as error:
        raise NotStored(_WHY.get(error.errno or 0, "failing")) from error


@contextmanager
def unfinished(folder: Path) -> Iterator[tuple[BinaryIO, Path]]:
    """(file to write, its path): gone at the end of the block unless it got another name. No backup copies a '.part'."""
    place, name = tempfile.mkstemp(suffix=".part", dir=folder)  # mode 600
    part = Path(name)
    try:
        with os.fdopen(place, "wb") as file:
            yield file, part
    finally:
        part.unlink(missing_ok=True)


_NEW = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)


def keep_on_disk(path: Path) -> None:
    """Wait until a file, or the names in a folder, are on the disk itself: a power cut then takes nothing back."""
    if path.is_dir() and os.name != "posix":
        return  # elsewhere a folder cannot be opened
    place = os.open(path, os.O_RDONLY if os.name == "posix" else os.O_RDWR)
    try:
        os.fsync(place)
    finally:
        os.close(place)
