"""Pictures and programs in the data folder: files named by what is in them, so that none ever changes."""

import os
import shutil
from pathlib import Path

FILES_NAME = "files"


def copy_files(source: Path, target: Path) -> int:
    """Bring the files of one folder to another, those that are not there yet; answers how many.

    None is removed: an older copy of the shop may still name it.
    """
    place = source / FILES_NAME
    if not place.is_dir():
        return 0
    copied = 0
    for path in sorted(place.rglob("*")):
        there = target / FILES_NAME / path.relative_to(place)
        if (
            path.is_file()
            and path.suffix != ".part"
            and not (there.is_file() and there.stat().st_size == path.stat().st_size)
        ):
            _copy(path, there)
            copied += 1
    return copied


def _copy(path: Path, there: Path) -> None:
    there.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    part = there.with_name(f"{there.name}.part")
    shutil.copyfile(path, part)
    part.chmod(0o600)
    keep_on_disk(part)
    part.replace(there)


def keep_on_disk(path: Path) -> None:
    """Wait until a file, or the names in a folder, are on the disk itself: a power cut then takes nothing back."""
    if path.is_dir() and os.name != "posix":
        return  # elsewhere a folder cannot be opened
    place = os.open(path, os.O_RDONLY if os.name == "posix" else os.O_RDWR)
    try:
        os.fsync(place)
    finally:
        os.close(place)
