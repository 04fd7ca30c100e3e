"""The list beside a copy: the SHA-256 of its database and of each of its files, as ``sha256sum -c`` reads it.

It finds what a disk or a person changed by mistake. Who changes a copy on purpose can write its list anew: against them
stands only that the devices which it lets in are asked about.
"""

import hashlib
import os
import re
import stat
from collections.abc import Mapping
from pathlib import Path

from runboard.store.closed import write_file
from runboard.store.proof import BadCopy

ENDING = ".sha256"
_LINE = re.compile(r"([0-9a-f]{64}) [ *](.+)")
# A file of the shop: below 'files', each part of its name of letters and digits and a few signs, and none begins with a dot.
_PLAIN = re.compile(r"files(?:/[^\W_][\w .+()-]*)+")
_LONGEST = 50_000_000  # bytes; half a million files
_PIECE = 1 << 20


class NotPlain(OSError):
    """What was to be read is no plain file of its own: a link, a device, or one with a second name."""


def list_of(copy: Path) -> Path:
    """Where the list of a copy lies."""
    return copy.with_suffix(ENDING)


def is_plain_name(name: str) -> bool:
    """Whether it can be the name of a file of the shop: below ``files``, and nowhere else."""
    return _PLAIN.fullmatch(name) is not None


def write_list(copy: Path, database: str, files: Mapping[str, str]) -> Path:
    """Write the list of a copy, whose database has that digest, and its files these, by their names."""
    lines = [f"{database}  {copy.name}", *(f"{digest}  {name}" for name, digest in sorted(files.items()))]
    path = list_of(copy)
    write_file(path, "".join(f"{line}\n" for line in lines))
    return path


def read_list(copy: Path) -> tuple[str, dict[str, str]] | None:
    """(digest of the database, digests of the files by their names); None where there is no list.

    Raises ``BadCopy`` 'bad list' where it is none, or names what lies elsewhere.
    """
    path = list_of(copy)
    if path == copy or not path.is_file():
        return None
    lines = _read(path).removesuffix("\n").split("\n")
    found = [match for line in lines if (match := _LINE.fullmatch(line))]
    database = [match[1] for match in found if "/" not in match[2] and "\\" not in match[2]]
    files = {match[2]: match[1] for match in found if is_plain_name(match[2])}
    if len(found) != len(lines) or len(database) != 1 or len(files) != len(found) - 1:
        raise BadCopy("bad list", file=str(path))
    return database[0], files


def digest_of(path: Path, *, alone: bool = False) -> str:
    """The SHA-256 of a plain file. With ``alone`` it may have no second name. Raises ``NotPlain``."""
    digest = hashlib.sha256()
    with os.fdopen(open_plain(path, alone=alone), "rb") as file:
        while piece := file.read(_PIECE):
            digest.update(piece)
    return digest.hexdigest()


def open_plain(path: Path, *, alone: bool = False) -> int:
    """A plain file, opened to read without following a link and without waiting for whoever writes into a pipe."""
    flags = os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0)
    try:
        place = os.open(path, flags)
    except OSError as error:
        if path.is_symlink():
            raise NotPlain(str(path)) from error
        raise
    about = os.fstat(place)
    if not stat.S_ISREG(about.st_mode) or (alone and about.st_nlink > 1):
        os.close(place)
        raise NotPlain(str(path))
    return place


def _read(path: Path) -> str:
    if path.stat().st_size > _LONGEST:
        raise BadCopy("bad list", file=str(path))
    try:
        return path.read_text("utf-8")
    except UnicodeDecodeError as error:
        raise BadCopy("bad list", file=str(path)) from error
