"""What climbing does on the server: an alert that nobody answered goes outside, and then the shop's computer sounds.

Louder phones are the page's own: it reads the stage from the state. An answer takes the alert out of the due moments,
from whichever phone and however late it comes; then nothing here finds it any more.
"""

from collections.abc import Callable
from datetime import datetime, timedelta
from typing import Protocol

from runboard.floor.workshop import Clock
from runboard.run.calls.climb import Steps, sendings, sound_every
from runboard.run.calls.dues import Due
from runboard.run.refusal import NotStored


class PastDues(Protocol):
    """The due moments as the store keeps them."""

    def past(self, now: datetime) -> list[tuple[Due, int]]: ...
    def claim_sending(self, due_id: str, sent: int, wanted: int) -> bool: ...


class Climber:
    """Sends outside what nobody answered, and sounds. ``steps`` are asked at each turn: they may be set anew."""

    def __init__(
        self,
        dues: PastDues,
        clock: Clock,
        steps: Callable[[], Steps],
        send: Callable[[Due], None],
        sound: Callable[[], object],
    ) -> None:
        self._dues = dues
        self._clock = clock
        self._steps = steps
        self._send = send
        self._sound = sound
        self._sounded_at: datetime | None = None
        self._sent_unstored: dict[str, int] = {}

    def turn(self) -> int:
        """Do what is wanted by now; answers how many alerts were sent or sounded for."""
        now, steps = self._clock.now(), self._steps()
        past = self._dues.past(now)
        sent = sum(self._send_if_wanted(due, before, sendings(due, steps, now)) for due, before in past)
        waits = [wait for due, _ in past if (wait := sound_every(due, steps, now)) is not None]
        return sent + self._sound_if_wanted(min(waits, default=None), now)

    def _send_if_wanted(self, due: Due, before: int, wanted: int) -> bool:
        if wanted <= max(before, self._sent_unstored.get(due.id, 0)):
            return False
        try:
            mine = self._dues.claim_sending(due.id, before, wanted)
        except NotStored:
            # A disk that takes nothing is no reason to be silent; that it was sent is then only known here.
            self._sent_unstored[due.id] = wanted
            mine = True
        if mine:
            self._send(due)
        return mine

    def _sound_if_wanted(self, wait: timedelta | None, now: datetime) -> bool:
        if wait is None:
            self._sounded_at = None
            return False
        if self._sounded_at is not None and timedelta(0) <= now - self._sounded_at < wait:
            return False
        self._sounded_at = now
        self._sound()
        return True
