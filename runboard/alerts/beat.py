"""A thread that looks every few seconds whether there is something to do; what fails is logged, and looked at again."""

import logging
import threading
from collections.abc import Callable
from datetime import timedelta

EVERY = timedelta(seconds=2)

_log = logging.getLogger("runboard")


class Beat:
    """Calls each of ``works`` again and again from one thread of its own."""

    def __init__(self, *works: Callable[[], int], every: timedelta = EVERY) -> None:
        self._works = works
        self._every = every.total_seconds()
        self._ended = threading.Event()
        self._thread: threading.Thread | None = None

    def turn(self) -> int:
        """Do what there is to do; answers how much that was."""
        return sum(self._one(work) for work in self._works)

    def _one(self, work: Callable[[], int]) -> int:
        try:
            return work()
        except Exception:  # noqa: BLE001 - whatever it is, the next turn comes
            _log.exception("an alert could not be looked after")
            return 0

    def start(self) -> None:
        """Begin."""
        self._ended.clear()
        self._thread = threading.Thread(target=self._run, name="alerts", daemon=True)
        self._thread.start()

    def stop(self) -> None:
        """End the thread; what is being done is done to its end."""
        thread, self._thread = self._thread, None
        self._ended.set()
        if thread is not None:
            thread.join()

    def _run(self) -> None:
        while not self._ended.wait(self._every):
            self.turn()
