"""How fast a device may send presses: so many at once, so many a second for as long as it likes, in memory."""

import math
import threading
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import datetime, timedelta

from runboard.floor.pressing.access import CREW, GUEST, LEAD
from runboard.run.refusal import Refused

# Each takes one of the few threads that answer everybody. Two, for a phone that gave one up sends it again.
MOST_AT_ONCE = 2
_MOST_KNOWN = 1000


@dataclass(frozen=True)
class Limit:
    """``burst`` presses at once, ``a_second`` for as long as one likes."""

    burst: int
    a_second: float


# A phone that was away for a whole day sends what it kept. Nobody presses faster than twice a second with one hand.
LIMITS: Mapping[str, Limit] = {LEAD: Limit(2000, 20), CREW: Limit(2000, 20), GUEST: Limit(60, 2)}


class Rates:
    """What each device may still send. A batch is let in whole, and what it was too long by is waited for afterwards: so
    one of any length gets in some time."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._left: dict[str, tuple[float, datetime]] = {}
        self._sending: dict[str, int] = {}

    @contextmanager
    def sending(self, device: str, access: str, presses: int, now: datetime) -> Iterator[None]:
        """A block in which the device sends so many presses. Refused 'too fast' with the seconds to wait; then nothing
        is taken, and the device keeps them."""
        with self._lock:
            wait = self._wait(device, LIMITS.get(access, LIMITS[GUEST]), presses, now)
            if wait:
                raise Refused("too fast", seconds=wait)
            self._sending[device] = self._sending.get(device, 0) + 1
        try:
            yield
        finally:
            with self._lock:
                self._sending[device] -= 1
                if not self._sending[device]:
                    del self._sending[device]

    def _wait(self, device: str, limit: Limit, presses: int, now: datetime) -> int:
        """How many seconds too early it is for so many presses; where it is not, they are taken from what is left."""
        if self._sending.get(device, 0) >= MOST_AT_ONCE:
            return 1
        left, at = self._left.get(device, (limit.burst, now))
        left = min(limit.burst, left + limit.a_second * max(timedelta(0), now - at).total_seconds())
        wanted = min(presses, limit.burst)
        if left < wanted:
            self._left[device] = (left, now)
            return math.ceil((wanted - left) / limit.a_second)
        self._left[device] = (left - presses, now)
        self._forget(now)
        return 0

    def _forget(self, now: datetime) -> None:
        """Whoever has not sent for so long that all is theirs again need not be known."""
        if len(self._left) > _MOST_KNOWN:
            self._left = {
                key: (left, at)
                for key, (left, at) in self._left.items()
                if now - at < timedelta(seconds=2 * LIMITS[LEAD].burst / LIMITS[LEAD].a_second) or left < 0
            }
