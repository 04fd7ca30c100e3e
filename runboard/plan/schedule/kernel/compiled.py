"""The same source, compiled: by numba, when it is first asked for, and kept on disk for the next start.

Where numba is not to be had, ``compiled`` answers with the plain functions, which give the same plans more slowly.
"""

import hashlib
from collections.abc import Callable
from pathlib import Path
from types import FunctionType, ModuleType
from typing import Any

from runboard.plan.schedule.kernel import attending, dispatch, grouping, layout, limits, moments, placing, replicate

# In the order in which they build on each other.
_MODULES = (attending, limits, placing, moments, grouping, dispatch, replicate)


def compiled() -> dict[str, Callable[..., Any]] | None:
    """Every function of the rule by its name, compiled as it is first called; ``None`` without a compiler."""
    try:
        import numba
    except ImportError:
        return None
    folder, settings = _cache_folder(), vars(numba.config)
    before = settings["CACHE_DIR"]
    settings["CACHE_DIR"] = str(folder or before)
    try:
        return _all(lambda function: numba.njit(cache=folder is not None)(function))
    except RuntimeError:  # no folder that can be written to: it is compiled at each start
        return _all(numba.njit)
    finally:
        settings["CACHE_DIR"] = before


def _all(compile_: Callable[[FunctionType], Any]) -> dict[str, Any]:
    """Every function over one set of globals, so that compiled ones call compiled ones."""
    space: dict[str, Any] = {"__name__": __name__}
    for module in _MODULES:
        space.update({name: value for name, value in vars(module).items() if not name.startswith("__")})
    own = [function for module in _MODULES for function in _functions(module)]
    for function in own:
        space[function.__name__] = compile_(FunctionType(function.__code__, space, function.__name__))
    return {function.__name__: space[function.__name__] for function in own}


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
