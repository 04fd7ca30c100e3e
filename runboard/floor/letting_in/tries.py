"""How often somebody may try a secret: so many wrong ones in a while from one address, fewer while many addresses guess.

Nobody waits for what another address did: whoever brings the right code from an address that did nothing wrong gets in.
So a guesser is held by the addresses they have. A code is one of 32^8 = 1.1e12, and is valid for one such while. Who holds
all 253 addresses of a home network has at most 200 + 10 + 3 * 233 = 909 tries in it: one chance in 1,200,000,000 for a code, one in
60,000,000 if twenty wait. Who has addresses without end is held by what the server can answer: at 1,000 tries a second,
600,000 in the while, one chance in 1,800,000.
"""

import threading
from collections import OrderedDict, deque
from datetime import datetime, timedelta
from ipaddress import IPv6Address, ip_address

IN_A_WHILE = timedelta(minutes=10)
MOST_FROM_ONE = 10
# From so many wrong tries in all on, each address has fewer: a person mistypes once or twice.
MOST_FROM_ALL = 200
FEWER_FROM_ONE = 3
# Of so many addresses it is known that they tried; of those that did so longest ago it is forgotten first.
MOST_PLACES = 4096


class Tries:
    """The wrong tries of late, in memory: who restarts the server reads its console, where the codes are."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._wrong: OrderedDict[str, list[datetime]] = OrderedDict()
        self._of_all: deque[datetime] = deque(maxlen=MOST_FROM_ALL)

    def __len__(self) -> int:
        """Of how many addresses it is known that they tried."""
        return len(self._wrong)

    def wait(self, address: str, now: datetime) -> timedelta:
        """How long this address has to wait before it may try again; nothing if it may now."""
        with self._lock:
            own = [moment for moment in self._wrong.get(_place(address), ()) if _is_late(moment, now)]
            most = FEWER_FROM_ONE if self._many_guess(now) else MOST_FROM_ONE
            return own[-most] + IN_A_WHILE - now if len(own) >= most else timedelta(0)

    def minutes_to_wait(self, address: str, now: datetime) -> int:
        """The same in whole minutes, rounded up, as people are told it; 0 if it may try now."""
        return -(-self.wait(address, now) // timedelta(minutes=1))

    def note_wrong(self, address: str, now: datetime) -> None:
        """One more wrong try."""
        with self._lock:
            place = _place(address)
            self._wrong[place] = [*self._wrong.get(place, ()), now][-MOST_FROM_ONE:]
            self._wrong.move_to_end(place)
            self._of_all.append(now)
            self._forget(now)

    def _many_guess(self, now: datetime) -> bool:
        return len(self._of_all) == MOST_FROM_ALL and _is_late(self._of_all[0], now)

    def _forget(self, now: datetime) -> None:
        """Let go of the address whose last wrong try lies back longest, while it is over or there are too many."""
        while self._wrong:
            place, moments = next(iter(self._wrong.items()))
            if len(self._wrong) <= MOST_PLACES and _is_late(moments[-1], now):
                return
            del self._wrong[place]


def _is_late(moment: datetime, now: datetime) -> bool:
    """Whether it lies in the while before now; one that is still to come was noted by a clock that has been set back."""
    return timedelta(0) <= now - moment < IN_A_WHILE


def _place(address: str) -> str:
    """Who has one IPv6 address has all of its network's."""
    try:
        found = ip_address(address)
    except ValueError:
        return address
    return str(int(found) >> 64) if isinstance(found, IPv6Address) else address
