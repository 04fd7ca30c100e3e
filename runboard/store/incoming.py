"""Files that somebody looks at before they are taken: the newest few in the data folder, each named by its content."""

import errno
import hashlib
import os
import re
import tempfile
from pathlib import Path
from typing import BinaryIO

from runboard.run.refusal import NotStored

MOST = 3
_CHUNK = 1 << 20
_NAME = re.compile(r"[0-9a-f]{64}\Z")
_WHY = {errno.ENOSPC: "full", errno.EDQUOT: "full", errno.EROFS: "read only"}


class Incoming:
    """The files that came in and were not taken yet. At most three: the oldest goes as another comes. No backup has them."""

    def __init__(self, data: Path) -> None:
        self._folder = data / "incoming"

    def keep(self, stream: BinaryIO) -> str:
        """Keep what can be read from a stream; answers its name. Raises ``NotStored`` where the disk does not take it."""
        try:
            name = self._write(stream)
            self._forget()
        except OSError as error:
            raise NotStored(_WHY.get(error.errno or 0, "failing")) from error
        return name

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

    def _write(self, stream: BinaryIO) -> str:
        self._folder.mkdir(mode=0o700, exist_ok=True)
        place, part_name = tempfile.mkstemp(suffix=".part", dir=self._folder)  # mode 600
        part, digest = Path(part_name), hashlib.sha256()
        try:
            with os.fdopen(place, "wb") as file:
                while chunk := stream.read(_CHUNK):
                    digest.update(chunk)
                    file.write(chunk)
            part.replace(self._folder / digest.hexdigest())
        finally:
            part.unlink(missing_ok=True)
        return digest.hexdigest()

    def _forget(self) -> None:
        """Those that are one too many, and what an end in the middle of writing left."""
        held = sorted(self._folder.iterdir(), key=lambda path: path.stat().st_mtime_ns, reverse=True)
        for path in held[MOST:]:
            path.unlink(missing_ok=True)
