"""A child's birth, and its end together with all that it started."""

import multiprocessing
import os
import signal
import threading
from collections.abc import Callable
from multiprocessing.connection import Connection
from multiprocessing.context import SpawnProcess
from typing import Any

_SPAWN = multiprocessing.get_context("spawn")  # a forked child of a server with threads may never come up
_births = threading.Lock()  # over what may reap: multiprocessing does whenever it starts another


def begin(life: Callable[..., None], *arguments: Any, duplex: bool = False) -> tuple[SpawnProcess, Connection]:
    """A child that lives ``life(line, *arguments)``, and our end of its line: to hear it, and where ``duplex`` to tell it
    too. Raises what stands in the way: arguments that cannot be pickled, a computer that is full."""
    ours, theirs = _SPAWN.Pipe(duplex)
    made = _SPAWN.Process(target=life, args=(theirs, *arguments), daemon=True)
    try:
        with _births:
            made.start()
    except BaseException:
        ours.close()
        raise
    finally:
        theirs.close()
    return made, ours


def bury(process: SpawnProcess) -> int | None:
    """Kill what is left of a child and its group; answers the code it ended with. Only whoever began it may."""
    with _births:
        end(process, hard=True)
        process.join()
        code = process.exitcode
        process.close()
        return code


def end(process: SpawnProcess, *, hard: bool = False) -> None:
    """Tell a child that is not reaped yet, and its group, to end; ``hard``: kill them. One that is gone is left alone."""
    if hasattr(os, "killpg") and process.pid:
        try:
            os.killpg(process.pid, signal.SIGKILL if hard else signal.SIGTERM)
        except ProcessLookupError:  # it has no group of its own yet
            pass
        except PermissionError:  # some systems say so of a group of which only the dead are left
            return
    if process.is_alive():
        process.kill() if hard else process.terminate()
