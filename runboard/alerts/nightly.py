"""The nightly copy: looked for once a minute, so that a night slept through is made up for; its failure ends nothing."""

import logging
from collections.abc import Callable
from datetime import UTC, datetime, timedelta

from apscheduler.schedulers.background import BackgroundScheduler

EVERY = timedelta(minutes=1)
# The first seconds of a server belong to whoever opens the page.
FIRST_AFTER = timedelta(seconds=15)

_log = logging.getLogger("runboard")


class Nightly:
    """Calls ``work`` each minute from a thread of its own. ``work`` answers whether there was something to do."""

    def __init__(self, work: Callable[[], bool]) -> None:
        self._work = work
        self._scheduler: BackgroundScheduler | None = None

    def look(self) -> bool:
        """Do what is due; answers whether anything was. What fails is logged, and shown where the copies are."""
        try:
            return self._work()
        except Exception:  # noqa: BLE001 - whatever it is, the shop goes on
            _log.exception("the nightly copy failed")
            return False

    def start(self) -> None:
        """Begin to look."""
        scheduler = BackgroundScheduler(
            timezone=UTC, job_defaults={"misfire_grace_time": None, "coalesce": True, "max_instances": 1}
        )
        first = datetime.now(UTC) + FIRST_AFTER
        scheduler.add_job(self.look, "interval", seconds=EVERY.total_seconds(), next_run_time=first)
        scheduler.start()
        self._scheduler = scheduler

    def stop(self) -> None:
        """End the thread; a copy that is being made is made to its end."""
        scheduler, self._scheduler = self._scheduler, None
        if scheduler is not None:
            scheduler.shutdown(wait=True)
