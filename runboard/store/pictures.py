"""Pictures in the data folder, each under the digest of its content: kept once, never changed, never removed."""

import hashlib
from pathlib import Path

from runboard.shop.keys import is_picture_name
from runboard.store.files import FILES_NAME, keep_on_disk, unfinished, writing_to


class PictureFolder:
    """The pictures of one data folder, in its ``files``."""

    def __init__(self, data: Path) -> None:
        self._folder = data / FILES_NAME

    def keep(self, content: bytes, ending: str) -> str:
        """Keep a picture; answers its name. Raises ``NotStored`` where the disk does not take it."""
        name = f"{hashlib.sha256(content).hexdigest()}.{ending}"
        path = self._folder / name
        with writing_to(self._folder):
            if not (path.is_file() and path.stat().st_size == len(content)):
                self._write(path, content)
        return name

    def read(self, name: str) -> bytes | None:
        """A picture's content; ``None`` where there is none of that name, and for what is no picture's name."""
        if not is_picture_name(name):
            return None
        try:
            return (self._folder / name).read_bytes()
        except FileNotFoundError:
            return None

    def file(self, name: str) -> str | None:
        """Where a picture's file is; ``None`` where there is none of that name, and for what is no picture's name."""
        path = self._folder / name
        return str(path) if is_picture_name(name) and path.is_file() else None

    def _write(self, path: Path, content: bytes) -> None:
        """Under its name at once, and on the disk itself before anything names it."""
        with unfinished(self._folder) as (file, part):
            file.write(content)
            file.close()  # or Windows gives it no other name
            keep_on_disk(part)
            part.replace(path)
            keep_on_disk(self._folder)
