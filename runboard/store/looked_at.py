"""Files that somebody dropped to have them looked at, each under its digest: kept for days, not for good, and in no copy of the shop.

What was taken of one stands in the book; the file itself is with whoever made it.
"""

import hashlib
import re
import time
from collections.abc import Callable, Collection
from pathlib import Path

from runboard.store.files import keep_on_disk, unfinished, writing_to

FOLDER_NAME = "looked-at"
DAYS = 14
MOST_BYTES = 600_000_000  # of all together; beyond it the one goes that was asked for longest ago
_DIGEST = re.compile(r"[0-9a-f]{64}\Z")


class LookedAt:
    """Those of one data folder."""

    def __init__(self, data: Path, clock: Callable[[], float] = time.time) -> None:
        self._folder = data / FOLDER_NAME
        self._clock = clock

    def keep(self, content: bytes, named: Collection[str]) -> str:
        """Keep a file; answers its digest. Old ones go, but none that is ``named``. Raises ``NotStored`` where the disk does not
        take it."""
        digest = hashlib.sha256(content).hexdigest()
        path = self._folder / digest
        with writing_to(self._folder):
            self._let_go({*named, digest}, len(content))
            if not (path.is_file() and path.stat().st_size == len(content)):
                with unfinished(self._folder) as (file, part):
                    file.write(content)
                    file.close()  # or Windows gives it no other name
                    keep_on_disk(part)
                    part.replace(path)
        return digest

    def path(self, digest: str) -> Path | None:
        """Where it lies; None where it is not there, and for what is no digest."""
        path = self._folder / digest
        if not _DIGEST.match(digest) or not path.is_file():
            return None
        try:
            path.touch()  # it is asked for: it stays some days more
        except OSError:
            pass
        return path

    def _let_go(self, staying: Collection[str], more: int) -> None:
        """Those that nobody asked for lately, and the oldest where all are too much."""
        found = sorted((path.stat().st_mtime, path.stat().st_size, path) for path in self._folder.iterdir())
        whole = sum(size for _, size, _ in found) + more
        for at, size, path in found:
            is_old = at < self._clock() - DAYS * 86_400
            if path.name not in staying and (is_old or whole > MOST_BYTES):
                path.unlink(missing_ok=True)
                whole -= size
