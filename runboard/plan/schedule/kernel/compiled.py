"""The same source, compiled: by numba, when it is first asked for, and kept on disk for the next start.

Where numba is not to be had, ``compiled`` answers with the plain functions, which give the same plans more slowly.
"""

import hashlib
from collections.abc import Callable
from pathlib import Path
from types import FunctionType, ModuleType
from typing import Any

from runboard.plan.schedule.kernel import attending, dispatch, grouping, layout, limits, moments, placing, replicate
from runboard.plan.schedule.kernel.row import Row, Rows

# In the order in which they build on each other.
_MODULES = (attending, limits, placing, moments, grouping, dispatch, replicate)


def compiled() -> dict[str, Callable[..., Any]] | None:
    """Every function of the rule by its name, compiled; ``None`` without a compiler."""
    try:
        import numba
    except ImportError:
        return None
    types = {
        Row: numba.int64[::1],
        Rows: numba.int64[:, ::1],
        int: numba.int64,
        bool: numba.boolean,
        tuple[int, int, int]: numba.types.UniTuple(numba.int64, 3),  # type: ignore[no-untyped-call]
        None: numba.void,
    }
    folder, settings = _cache_folder(), vars(numba.config)
    before = settings["CACHE_DIR"]
    settings["CACHE_DIR"] = str(folder or before)

    def compile_(function: FunctionType, kept: bool) -> Any:
        # One signature for each function, from its annotations: else every mixture of number types is compiled anew.
        hints = dict(function.__annotations__)
        answers = types[hints.pop("return")]
        # No function asks for memory, so none needs it counted: a quarter faster.
        options: dict[str, Any] = {"cache": kept, "_nrt": False}
        return numba.njit(answers(*(types[hint] for hint in hints.values())), **options)(function)

    try:
        return _all(lambda function: compile_(function, folder is not None))
    except RuntimeError:  # no folder that can be written to: it is compiled at each start
        return _all(lambda function: compile_(function, False))
    finally:
        settings["CACHE_DIR"] = before


def is_kept() -> bool:
    """Whether this rule was compiled before and is kept on disk, so that it is there in half a second."""
    folder = _cache_folder()
    return folder is not None and folder.is_dir()


def _all(compile_: Callable[[FunctionType], Any]) -> dict[str, Any]:
    """Every function over one set of globals, each after those that it calls, so that compiled ones call compiled ones."""
    space: dict[str, Any] = {"__name__": __name__}
    for module in _MODULES:
        space.update({name: value for name, value in vars(module).items() if not name.startswith("__")})
    left = [function for module in _MODULES for function in _functions(module)]
    done: dict[str, Any] = {}
    while left:
        names = {function.__name__ for function in left}
        ready = next(one for one in left if not names & set(one.__code__.co_names) - {one.__name__})
        copy = FunctionType(ready.__code__, space, ready.__name__)
        copy.__annotations__ = ready.__annotations__
        done[ready.__name__] = space[ready.__name__] = compile_(copy)
        left.remove(ready)
    return done


def _functions(module: ModuleType) -> list[FunctionType]:
    found = [value for value in vars(module).values() if isinstance(value, FunctionType)]
    return [function for function in found if function.__module__ == module.__name__]


def _cache_folder() -> Path | None:
    """Where the compiled rule is kept: under a digest of all its source, since a change in one file changes the others'
    machine code and the compiler looks at one file at a time."""
    digest = hashlib.sha256()
    for module in (layout, *_MODULES):
        digest.update(Path(str(module.__file__)).read_bytes())
    try:
        home = Path.home()
    except RuntimeError:  # nobody's home is known
        return None
    return home / ".cache" / "runboard" / f"kernel-{digest.hexdigest()[:16]}"
