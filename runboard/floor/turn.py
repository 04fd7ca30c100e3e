"""Whose turn it is: the lock of the shop's one state, and how long work lets others in between its parts."""

import threading
import time
from types import TracebackType

from runboard.run.refusal import NotStored

# Whoever waits has had the lock long before; it only ends a wait for a thread that the system never lets run.
_MOST_POLLS = 100
_POLL_SECONDS = 0.001


class Turn:
    """A reentrant lock that knows who waits for it.

    A thread that gives a plain lock back and asks again at once has it again before the others have woken. A lock that
    goes strictly by order would be fair to everybody, and slow for everybody: each change of hands costs a change of
    threads. So only who comes in parts gives way. Nobody waits for it for longer than ``within`` seconds: then it raises
    ``NotStored`` 'busy', so that whoever asks is told, and no thread is held.
    """

    def __init__(self, within: float = 3.0) -> None:
        self._lock = threading.RLock()
        self._within = within
        self._waiting: set[object] = set()

    def __enter__(self) -> None:
        if self._lock.acquire(blocking=False):
            return
        me = object()
        self._waiting.add(me)
        try:
            if not self._lock.acquire(timeout=self._within):
                raise NotStored("busy")
        finally:
            self._waiting.discard(me)

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._lock.release()

    @property
    def waiting(self) -> int:
        """How many threads wait for it."""
        return len(self._waiting)

    def give_way(self) -> None:
        """Return once everybody who waits now has had the lock; the caller must not hold it."""
        before = set(self._waiting)
        for _ in range(_MOST_POLLS):
            if not before & self._waiting:
                return
            time.sleep(_POLL_SECONDS)
