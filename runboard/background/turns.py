"""A thread of its own for work that comes in turns: when it is woken, and every so often."""

import logging
import threading
import time
from collections.abc import Callable

_log = logging.getLogger("runboard")


class Turns:
    """Calls ``work`` again and again: at once after ``wake`` or where it answers True, that there is more to do, and every so
    many seconds. What fails is logged, and the next turn comes. After a turn the thread rests ``rest`` times as long as it took, so that a burst of events leaves most of
    the time to whoever answers them."""

    def __init__(self, name: str, work: Callable[[], object], every: float = 0.5, rest: float = 3.0) -> None:
        self._name, self._work = name, work
        self._every, self._rest = every, rest
        self._woken, self._ended = threading.Event(), threading.Event()
        self._thread: threading.Thread | None = None

    def wake(self) -> None:
        """Something happened: any thread may say so; it never waits."""
        self._woken.set()

    def start(self) -> None:
        """Begin."""
        self._ended.clear()
        self._thread = threading.Thread(target=self._run, name=self._name, daemon=True)
        self._thread.start()

    def stop(self) -> None:
        """End the thread; what is being done is done to its end."""
        thread, self._thread = self._thread, None
        self._ended.set()
        self._woken.set()
        if thread is not None:
            thread.join()

    def _run(self) -> None:
        while not self._ended.is_set():
            self._woken.clear()
            began = time.monotonic()
            try:
                if self._work() is True:
                    self._woken.set()
            except Exception:  # noqa: BLE001 - whatever it is, the next turn comes
                _log.exception("%s failed", self._name)
            self._ended.wait(self._rest * (time.monotonic() - began))
            self._woken.wait(self._every)
