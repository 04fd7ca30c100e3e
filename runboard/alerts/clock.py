"""The clock that rings: tells open pages when a moment falls due, at once for what fell due while nobody was there."""

import threading
from collections.abc import Callable, Mapping
from contextlib import suppress
from datetime import UTC, datetime, timedelta
from typing import Any, Protocol

from apscheduler.jobstores.base import JobLookupError
from apscheduler.schedulers.background import BackgroundScheduler

from runboard.floor.workshop import Clock
from runboard.run.calls.dues import Due
from runboard.run.log.event import write_moment
from runboard.run.refusal import NotStored

# Told so long after it fell due, an alert says that it is late.
LATE_AFTER = timedelta(seconds=60)
# The sweep finds what another process wrote, and what a machine that slept has missed.
SWEEP = timedelta(seconds=20)
AGAIN, SOON = timedelta(seconds=1), timedelta(milliseconds=200)
_FIELDS = ("run", "load", "tray", "step", "station", "person")


class Dues(Protocol):
    """The due moments as the store keeps them."""

    def unclaimed(self, now: datetime) -> list[Due]: ...
    def claim(self, due_id: str, now: datetime) -> bool: ...
    def next_at(self) -> datetime | None: ...


class AlertClock:
    """One loop over due moments: claims what is past, tells it, and sleeps until the next. ``hint`` lets pages look at once
    what has fallen due, where a press that is being stored keeps the claim waiting."""

    def __init__(
        self,
        dues: Dues,
        clock: Clock,
        tell: Callable[[Mapping[str, Any]], None],
        hint: Callable[[], None] = lambda: None,
    ) -> None:
        self._dues = dues
        self._clock = clock
        self._tell = tell
        self._hint = hint
        self._ringing = threading.Lock()
        self._lock = threading.Lock()
        self._scheduler: BackgroundScheduler | None = None
        self._set_for: datetime | None = None
        self._turning = 0
        self._told_unstored: set[tuple[str, datetime]] = set()
        self._waits = self._held = False
        self._passing = threading.Lock()

    def ring(self) -> int:
        """Tell everything that has fallen due and nobody has told yet; answers how many there were."""
        told = 0
        with self._ringing:
            self._held = False
            now = self._clock.now()
            past = self._dues.unclaimed(now)
            # What was answered meanwhile is to be stored as told no more: it would hold up all others for good.
            self._told_unstored &= {(due.id, due.due_at) for due in past}
            for due in past:
                if self._claim(due, now):
                    self._tell(due_record(due, now))
                    told += 1
                if self._waits:  # the others would wait too, and whoever rings has more to do
                    break
        return told

    def _claim(self, due: Due, now: datetime) -> bool:
        """Whether it is ours to tell. A disk that takes nothing is no reason to be silent: then that it was told is
        known only here, until it can be stored."""
        key = (due.id, due.due_at)
        is_told = key in self._told_unstored
        try:
            claimed = self._dues.claim(due.id, now)
        except NotStored as failed:
            self._waits = True
            if failed.why == "busy" and not is_told:
                self._hint()
                return False
            self._told_unstored.add(key)
            return not is_told
        self._told_unstored.discard(key)
        return claimed and not is_told

    def wake(self) -> bool:
        """Look which moment is next, set the alarm for it, and tell it if it has passed; answers whether it had to be moved."""
        with self._lock:
            # While it tells (it may wait for the disk), an alarm would find it busy and be dropped: it looks again after.
            if self._scheduler is None or self._turning:
                return False
            next_at = self._dues.next_at()
            if next_at == self._set_for:
                return False
            self._set_for = next_at
        if not self.passed():
            with self._lock:
                if self._scheduler is not None:
                    self._set_alarm(self._scheduler, next_at)
        return True

    def passed(self) -> bool:
        """Tell what has fallen due, if anything has, from whichever thread asks: on a slow computer whoever finishes first
        tells it, and nobody waits for the clock's own thread. Costs next to nothing where nothing has."""
        if self._turning or not self._is_past(self._set_for) or not self._passing.acquire(blocking=False):
            return False
        try:
            self._turn()
        finally:
            self._passing.release()
        return True

    def _is_past(self, next_at: datetime | None) -> bool:
        """Whether a moment is to be told now; what could not be claimed waits for its alarm."""
        return (
            next_at is not None
            and next_at <= self._clock.now()
            and not (self._told_unstored or self._waits or self._held)
        )

    def start(self) -> None:
        """Ring for what fell due meanwhile, then keep ringing from a thread of its own."""
        scheduler = BackgroundScheduler(
            timezone=UTC, job_defaults={"misfire_grace_time": None, "coalesce": True, "max_instances": 1}
        )
        scheduler.add_job(self._turn, "interval", seconds=SWEEP.total_seconds(), id="sweep")
        scheduler.start()
        with self._lock:
            self._scheduler = scheduler
        self._turn()

    def stop(self) -> None:
        """End the thread; what is being told is told to its end."""
        with self._lock:
            scheduler, self._scheduler, self._set_for = self._scheduler, None, None
        if scheduler is not None:
            # Not while its thread takes up the alarm: it would find itself stopped, and end with an error.
            with suppress(JobLookupError):
                scheduler.remove_job("next")
            scheduler.shutdown(wait=True)

    def _turn(self) -> None:
        with self._lock:
            self._turning += 1
        try:
            self.ring()
        finally:  # whatever failed, the next press sets the alarm anew
            with self._lock:
                self._turning -= 1
                self._set_for = None
        self.wake()

    def _set_alarm(self, scheduler: BackgroundScheduler, next_at: datetime | None) -> None:
        if next_at is None:
            with suppress(JobLookupError):  # it may be firing just now
                scheduler.remove_job("next")
            return
        # By how long it still is, not by what the wall says: the shop's clock may be another one (a demo's).
        # One that could not be stored as told stays the next: it is tried again, but not at once and for ever.
        soonest = AGAIN if self._told_unstored else SOON if self._waits else timedelta(0)
        self._held, self._waits = bool(soonest), False
        away = max(next_at - self._clock.now(), soonest)
        scheduler.add_job(self._turn, "date", run_date=datetime.now(UTC) + away, id="next", replace_existing=True)


def due_record(due: Due, now: datetime) -> dict[str, Any]:
    """What pages are told: the alert with the moment when it fell due (not when it was noticed), ``late`` if it is."""
    record: dict[str, Any] = {"id": due.id, "kind": due.kind, "due_at": write_moment(due.due_at)}
    record.update((name, getattr(due, name)) for name in _FIELDS if getattr(due, name))
    if now - due.due_at >= LATE_AFTER:
        record["late"] = True
    return record
