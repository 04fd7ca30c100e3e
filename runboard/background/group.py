"""Ending a child together with all that it started."""

import os
import signal
from multiprocessing.context import SpawnProcess


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
