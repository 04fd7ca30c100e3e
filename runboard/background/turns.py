"""A thread of its own for work that comes in turns: when it is woken, and every so often."""

import logging
import threading
import time
from collections.abc import Callable

_log = logging.getLogger("runboard")


class Turns:
    """Calls each of ``works`` again and again: at once after ``wake`` or where one answers True, that there is more to do, and
    ``every`` so many seconds. What fails is logged, and its next turn comes. After a turn the thread rests ``rest`` times as
    long as it took, so that a burst of events leaves most of the time to whoever answers them. The first turn comes
    ``first`` seconds after the start."""

    def __init__(
        self, name: str, *works: Callable[[], object], every: float = 0.5, rest: float = 3.0, first: float = 0.0
    ) -> None:
        self._name, self._works = name, works
        self._every, self._rest, self._first = every, rest, first
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

    def turn(self) -> bool:
        """Do what there is to do; answers whether there is more."""
        answers = [self._done(work) for work in self._works]  # every one, whatever the first answers
        return any(answer is True for answer in answers)

    def _done(self, work: Callable[[], object]) -> object:
        try:
            return work()
        except Exception:  # noqa: BLE001 - whatever it is, the next turn comes
            _log.exception("%s failed", self._name)
            return False

    def _run(self) -> None:
        self._woken.wait(self._first)
        while not self._ended.is_set():
            self._woken.clear()
            began = time.monotonic()
            if self.turn():
                self._woken.set()
            self._ended.wait(self._rest * (time.monotonic() - began))
            self._woken.wait(self._every)
