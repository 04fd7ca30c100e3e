"""Files that only their owner may read, and that are there whole or not at all."""

import os
import secrets
from pathlib import Path

FILE_MODE = 0o600
FOLDER_MODE = 0o700
_UNFINISHED = ".new"


def make_folder(folder: Path) -> None:
    """A folder that only its owner may enter; one that is there already is made so. What a crash left unfinished in it
    is removed: it may hold half a key."""
    folder.mkdir(mode=FOLDER_MODE, parents=True, exist_ok=True)
    if os.name == "posix" and folder.stat().st_mode & 0o777 != FOLDER_MODE:
        folder.chmod(FOLDER_MODE)
    for unfinished in folder.glob(f".*{_UNFINISHED}"):
        unfinished.unlink(missing_ok=True)


def write(path: Path, content: bytes) -> None:
    """Put the content in place of whatever was there, in one step that a crash cannot halve."""
    unfinished = _write_beside(path, content)
    try:
        unfinished.replace(path)
    except BaseException:
        unfinished.unlink(missing_ok=True)
        raise
    _settle(path.parent)


def write_first(path: Path, content: bytes) -> bool:
    """Put the content there only if nothing is there yet; answers whether it did. Two servers that start at once agree
    on the one that came first."""
    unfinished = _write_beside(path, content)
    try:
        os.link(unfinished, path)
    except FileExistsError:
        return False
    except OSError:  # a memory card's file system knows no second name for a file
        if path.exists():
            return False
        unfinished.replace(path)
    finally:
        unfinished.unlink(missing_ok=True)
    _settle(path.parent)
    return True


def close_to_others(path: Path) -> bool:
    """Take from others the right to read; answers whether they had it. Windows keeps such rights elsewhere."""
    if os.name != "posix" or path.stat().st_mode & 0o777 == FILE_MODE:
        return False
    path.chmod(FILE_MODE)
    return True


def _write_beside(path: Path, content: bytes) -> Path:
    unfinished = path.with_name(f".{path.name}.{secrets.token_hex(4)}{_UNFINISHED}")
    # The mode is given with the making: between a making and a chmod somebody could read the key.
    opened = os.open(unfinished, os.O_WRONLY | os.O_CREAT | os.O_EXCL, FILE_MODE)
    try:
        with os.fdopen(opened, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
    except BaseException:
        unfinished.unlink(missing_ok=True)
        raise
    return unfinished


def _settle(folder: Path) -> None:
    """The new name is on the disk too, before anybody relies on it."""
    if os.name == "posix":
        opened = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(opened)
        finally:
            os.close(opened)
