"""Files that somebody looks at before they are taken: the newest few in the data folder, each named by its content."""

import hashlib
import re
from pathlib import Path
from typing import BinaryIO

from runboard.store.files import unfinished, writing_to

MOST = 3
_CHUNK = 1 << 20
_NAME = re.compile(r"[0-9a-f]{64}\Z")


class Incoming:
    """The files that came in and were not taken yet. At most three: the oldest goes as another comes. No backup has them."""

    def __init__(self, data: Path) -> None:
        self._folder = data / "incoming"

    def keep(self, stream: BinaryIO) -> str:
        """Keep what can be read from a stream; answers its name. Raises ``NotStored`` where the disk does not take it."""
        digest = hashlib.sha256()
        with writing_to(self._folder):
            with unfinished(self._folder) as (file, part):
                while chunk := stream.read(_CHUNK):
                    digest.update(chunk)
                    file.write(chunk)
                file.close()
                part.replace(self._folder / digest.hexdigest())
            self._forget()
        return digest.hexdigest()

    def open(self, name: str) -> BinaryIO | None:
        """A file to read; None where there is none of that name, or not any more."""
        try:
            return (self._folder / name).open("rb") if _NAME.match(name) else None
        except FileNotFoundError:
            return None

    def drop(self, name: str) -> None:
        """Forget a file: it was taken, or is none."""
        if _NAME.match(name):
            (self._folder / name).unlink(missing_ok=True)

    def _forget(self) -> None:
        """Those that are one too many, and what an end in the middle of writing left."""
        held = sorted(self._folder.iterdir(), key=lambda path: path.stat().st_mtime_ns, reverse=True)
        for path in held[MOST:]:
            path.unlink(missing_ok=True)
