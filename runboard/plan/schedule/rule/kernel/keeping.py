"""Machine code that numba made, kept on disk for the next start: of the dispatch rule, and of whatever else is compiled."""

import hashlib
import os
import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import TypeVar

import numba

_WHOLE = "sha256"
Made = TypeVar("Made")


def kept(kind: str, source: Path, make: Callable[[bool], Made]) -> Made:
    """What ``make`` compiles, read from disk where it is there, and written there else. ``make`` is told whether numba may
    keep it; ``source`` is the folder (or the one module) that it is compiled from, ``kind`` a word of the folder's name."""
    folder = _cache_folder(kind, source)
    if folder is not None:
        with suppress(OSError, RuntimeError):  # no folder that can be written to: it is compiled at each start
            return _kept(folder, make)
    return make(False)


def is_kept(kind: str, source: Path) -> bool:
    """Whether it is there already."""
    folder = _cache_folder(kind, source)
    return folder is not None and _is_whole(folder)


def _is_whole(folder: Path) -> bool:
    try:
        return (folder / _WHOLE).read_text() == _digest(folder, "*.nb?")
    except (OSError, ValueError):
        return False


def _kept(folder: Path, make: Callable[[bool], Made]) -> Made:
    """From a folder that is there only once it is whole: damaged machine code would bring the server down. Raises OSError or
    RuntimeError where it cannot be kept."""
    if _is_whole(folder):
        with suppress(OSError, ValueError), _caching_in(folder):
            return make(True)
    fresh = folder.with_suffix(f".{os.getpid()}")
    try:
        with _caching_in(fresh):
            made = make(True)
        (fresh / _WHOLE).write_text(_digest(fresh, "*.nb?"))
        shutil.rmtree(folder, ignore_errors=True)
        with suppress(OSError):  # another process was faster
            fresh.replace(folder)
        return made
    finally:
        shutil.rmtree(fresh, ignore_errors=True)


def _digest(folder: Path, files: str) -> str:
    digest = hashlib.sha256()
    for file in sorted(folder.rglob(files)) if folder.is_dir() else [folder]:
        digest.update(file.read_bytes())
    return digest.hexdigest()


@contextmanager
def _caching_in(folder: Path) -> Iterator[None]:
    settings = vars(numba.config)
    before, settings["CACHE_DIR"] = settings["CACHE_DIR"], str(folder)
    try:
        yield
    finally:
        settings["CACHE_DIR"] = before


def _cache_folder(kind: str, source: Path) -> Path | None:
    """Where it is kept: under a digest of all its source, since numba looks at one file's at a time. None without a home."""
    try:
        home = Path.home()
    except RuntimeError:  # nobody's home is known
        return None
    word = f"checked-{kind}" if numba.config.BOUNDSCHECK else kind  # type: ignore[attr-defined]
    return home / ".cache" / "runboard" / f"{word}-{_digest(source, '*.py')[:16]}"
