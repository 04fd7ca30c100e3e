"""Whose turn it is: a lock that knows who waits, for the shop's one state and for its one database."""

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
    threads. So only who comes in parts gives way. A block waits for it for no longer than ``within`` seconds: then it
    raises ``NotStored`` 'busy', so that whoever asks is told, and no thread is held.
    """

    def __init__(self, within: float = 3.0) -> None:
        self._lock = threading.RLock()
        self._within = within
        self._waiting: set[object] = set()

    def acquire(self, wait: float = -1) -> bool:
        """Take it, within so many seconds or however long it takes; whether it was got."""
        if self._lock.acquire(blocking=False):
            return True
        me = object()
        self._waiting.add(me)
        try:
            return self._lock.acquire(timeout=wait)
        finally:
            self._waiting.discard(me)

    def release(self) -> None:
        """Give it back, as often as it was taken."""
        self._lock.release()

    def __enter__(self) -> None:
        if not self.acquire(self._within):
            raise NotStored("busy")

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.release()

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
