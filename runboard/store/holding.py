"""Who holds the data folder: servers and commands share it, and what replaces the database wants it alone.

The lock is the operating system's own, on a file in the folder. It goes with the process, so a server that was killed
holds nothing.
"""

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

LOCK_NAME = "in-use.lock"
_SHARES = 16  # Windows knows no shared lock here: each who shares takes one byte of so many, who wants it alone all


class InUse(Exception):
    """Another process holds the folder in a way that does not go together with this one."""


@contextmanager
def hold(folder: Path, *, alone: bool = False) -> Iterator[None]:
    """Hold the folder until the end of the block, together with others or ``alone``. Raises ``InUse``.

    Who only shares a folder that cannot be written goes on without: nobody can replace anything there.
    """
    # Never removed: whoever waits for a file that is removed waits for another file than the next who makes it.
    try:
        place = os.open(folder / LOCK_NAME, os.O_RDWR | os.O_CREAT, 0o600)
    except OSError:
        if alone:
            raise
        yield
        return
    try:
        if not _lock(place, alone):
            raise InUse(str(folder))
        yield
    finally:
        os.close(place)  # with it the lock is given back


if sys.platform == "win32":  # pragma: no cover
    import msvcrt

    def _lock(place: int, alone: bool) -> bool:
        wanted = [(0, _SHARES)] if alone else [(at, 1) for at in range(_SHARES)]
        for at, many in wanted:
            os.lseek(place, at, os.SEEK_SET)
            try:
                msvcrt.locking(place, msvcrt.LK_NBLCK, many)
            except OSError:
                continue
            return True
        return False

else:
    import fcntl

    def _lock(place: int, alone: bool) -> bool:
        try:
            fcntl.flock(place, (fcntl.LOCK_EX if alone else fcntl.LOCK_SH) | fcntl.LOCK_NB)
        except BlockingIOError:
            return False
        return True
