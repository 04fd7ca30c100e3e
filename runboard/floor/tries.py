"""How often somebody may try a secret: so many wrong ones in a while from one address, and so many from all."""

import threading
from collections import deque
from datetime import datetime, timedelta
from ipaddress import IPv6Address, ip_address

IN_A_WHILE = timedelta(minutes=10)
MOST_FROM_ONE = 10
MOST_FROM_ALL = 200


class Tries:
    """The wrong tries of late, in memory: who restarts the server reads its console, where the codes are."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._wrong: dict[str, deque[datetime]] = {}

    def wait(self, address: str, now: datetime) -> timedelta:
        """How long this address has to wait before it may try again; nothing if it may now."""
        with self._lock:
            self._forget(now)
            own = self._wrong.get(_place(address), deque())
            every = [moment for moments in self._wrong.values() for moment in moments]
            waits = [timedelta(0)]
            if len(own) >= MOST_FROM_ONE:
                waits.append(own[0] + IN_A_WHILE - now)
            if len(every) >= MOST_FROM_ALL:
                waits.append(min(every) + IN_A_WHILE - now)
            return max(waits)

    def note_wrong(self, address: str, now: datetime) -> None:
        """One more wrong try."""
        with self._lock:
            self._wrong.setdefault(_place(address), deque(maxlen=MOST_FROM_ONE)).append(now)

    def _forget(self, now: datetime) -> None:
        for place, moments in list(self._wrong.items()):
            while moments and moments[0] + IN_A_WHILE <= now:
                moments.popleft()
            if not moments:
                del self._wrong[place]


def _place(address: str) -> str:
    """Who has one IPv6 address has all of its network's."""
    try:
        found = ip_address(address)
    except ValueError:
        return address
    return str(int(found) >> 64) if isinstance(found, IPv6Address) else address
