"""The same source, compiled by numba when it is first asked for, and kept on disk for the next start.

Where numba is not to be had, ``compiled`` answers None, and all goes on with the plain functions, which give the same
plans more slowly.
"""

import hashlib
import os
import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from types import FunctionType, ModuleType
from typing import Any

from runboard.plan.schedule.rule.kernel import (
    attending,
    dispatch,
    entry,
    front,
    grouping,
    limits,
    moments,
    placing,
    replicate,
)
from runboard.plan.schedule.rule.kernel.row import Row

_MODULES = (attending, limits, front, placing, moments, grouping, dispatch, replicate)
# No function asks for memory, divides by what may be nothing or looks behind a row's end; and none needs to be called
# from outside but the entry.
_OPTIONS = {"_nrt": False, "error_model": "numpy", "boundscheck": False}
_INSIDE = {**_OPTIONS, "no_cpython_wrapper": True, "no_cfunc_wrapper": True}
_WHOLE = "sha256"


def compiled() -> Callable[..., None] | None:
    """``replicate``, compiled, for rows that are arrays of 32-bit whole numbers; ``None`` without a compiler.

    Other threads go on while it works, and it may be called from several, each with a state of its own.
    """
    try:
        import numba
    except ImportError:
        return None
    folder = _cache_folder()
    if folder is not None and _is_whole(folder):
        # What is kept needs nothing below it. Where it is not for this processor the plain function cannot be called by it.
        with suppress(numba.TypingError, OSError, RuntimeError), _caching_in(numba, folder):
            return _entry(numba, replicate.replicate, is_kept=True)
    made = _all(numba)
    if folder is not None:
        with suppress(OSError, RuntimeError):  # no folder that can be written to: it is compiled at each start
            return _kept(numba, made, folder)
    return _entry(numba, made, is_kept=False)


def _entry(numba: Any, rule: Callable[..., None], is_kept: bool) -> Callable[..., None]:
    types = {Any: numba.int32[::1], int: numba.int64}
    hints = dict(entry.entry.__annotations__)
    hints.pop("return")
    signature = numba.void(*(types[hint] for hint in hints.values()))
    over = FunctionType(entry.entry.__code__, {"replicate": rule, "__name__": __name__}, "entry")
    made: Callable[..., None] = numba.njit(signature, nogil=True, cache=is_kept, **_OPTIONS)(over)
    return made


def _all(numba: Any) -> Any:
    """``replicate`` and every function below it, each after those that it calls, so that compiled ones call compiled ones.

    One signature for each function, from its annotations: else every mixture of number types is compiled anew.
    """
    numbers = numba.types.UniTuple
    types = {
        Row: numba.types.CPointer(numba.int32),
        int: numba.int64,
        bool: numba.boolean,
        tuple[int, int]: numbers(numba.int64, 2),
        tuple[int, int, int]: numbers(numba.int64, 3),
        None: numba.void,
    }
    space: dict[str, Any] = {"__name__": __name__}
    for module in _MODULES:
        space.update({name: value for name, value in vars(module).items() if not name.startswith("__")})
    left = [function for module in _MODULES for function in _functions(module)]
    while left:
        names = {function.__name__ for function in left}
        ready = next(one for one in left if not names & set(one.__code__.co_names) - {one.__name__})
        hints = dict(ready.__annotations__)
        answers = types[hints.pop("return")]
        signature = answers(*(types[hint] for hint in hints.values()))
        copy = FunctionType(ready.__code__, space, ready.__name__)
        space[ready.__name__] = numba.njit(signature, **_INSIDE)(copy)
        left.remove(ready)
    return space["replicate"]


def _functions(module: ModuleType) -> Iterator[FunctionType]:
    found = [value for value in vars(module).values() if isinstance(value, FunctionType)]
    return (function for function in found if function.__module__ == module.__name__)


# what is kept


def _kept(numba: Any, made: Any, folder: Path) -> Callable[..., None]:
    """The entry, kept in a folder that is there only once it is whole. Raises OSError or RuntimeError where it cannot be."""
    fresh = folder.with_suffix(f".{os.getpid()}")
    try:
        with _caching_in(numba, fresh):
            rule = _entry(numba, made, is_kept=True)
        (fresh / _WHOLE).write_text(_digest(_files(fresh)))
        shutil.rmtree(folder, ignore_errors=True)
        with suppress(OSError):  # another process was faster
            fresh.replace(folder)
        return rule
    finally:
        shutil.rmtree(fresh, ignore_errors=True)


def _is_whole(folder: Path) -> bool:
    """Whether all that was kept is as it was written: damaged machine code would bring the server down."""
    try:
        return (folder / _WHOLE).read_text() == _digest(_files(folder))
    except (OSError, ValueError):
        return False


def _files(folder: Path) -> list[Path]:
    return [one for one in folder.rglob("*") if one.is_file() and one.name != _WHOLE]


def _digest(files: list[Path]) -> str:
    digest = hashlib.sha256()
    for file in sorted(files):
        digest.update(file.read_bytes())
    return digest.hexdigest()


@contextmanager
def _caching_in(numba: Any, folder: Path) -> Iterator[None]:
    settings = vars(numba.config)
    before = settings["CACHE_DIR"]
    settings["CACHE_DIR"] = str(folder)
    try:
        yield
    finally:
        settings["CACHE_DIR"] = before


def _cache_folder() -> Path | None:
    """Where the compiled rule is kept: under a digest of all its source, since a change in one file changes the others'
    machine code and numba looks at one file at a time. None without a home."""
    try:
        home = Path.home()
    except RuntimeError:  # nobody's home is known
        return None
    source = _digest(list(Path(__file__).parent.glob("*.py")))
    return home / ".cache" / "runboard" / f"rule-{source[:16]}"
