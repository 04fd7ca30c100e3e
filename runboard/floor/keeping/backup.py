"""Copies of the shop: one each night, one when somebody asks, and what is said of the last."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime, time, timedelta
from typing import Any, Protocol
from zoneinfo import ZoneInfo

from runboard.floor.workshop import Workshop

COPY_AT = time(3, 0)
OLD_AFTER = timedelta(hours=48)
TRY_AGAIN_AFTER = timedelta(hours=1)


class KeptCopy(Protocol):
    @property
    def at(self) -> datetime: ...
    @property
    def events(self) -> int: ...


class FailedCopy(Protocol):
    @property
    def at(self) -> datetime: ...
    @property
    def code(self) -> str: ...
    @property
    def facts(self) -> Mapping[str, Any]: ...


class Copies(Protocol):
    """The copies as the store keeps them. ``make`` raises what the store says of a copy that failed, and keeps it as
    the ``failure`` until one succeeds."""

    def last_at(self, now: datetime) -> datetime | None: ...
    def last(self, now: datetime) -> KeptCopy | None: ...
    def failure(self) -> FailedCopy | None: ...
    def make(self, now: datetime) -> KeptCopy: ...


@dataclass(frozen=True)
class CopyLook:
    """What the Shop page says of the copies: ``state`` is 'none', 'good', 'old', 'unreadable' or 'failed'.

    ``at`` and ``events`` are those of the last copy; ``failed_at``, ``code`` and ``facts`` say why the last attempt
    made none.
    """

    state: str
    at: datetime | None = None
    events: int = 0
    failed_at: datetime | None = None
    code: str = ""
    facts: Mapping[str, Any] = field(default_factory=dict)

    @property
    def is_red(self) -> bool:
        """Whether somebody must do something now."""
        return self.state in ("old", "unreadable", "failed")


def make_copy(workshop: Workshop, copies: Copies) -> KeptCopy:
    """A copy of the shop as it is now."""
    return copies.make(local_now(workshop))


def make_nightly_copy(workshop: Workshop, copies: Copies) -> bool:
    """Make a copy if one is due: three in the morning has passed since the last, be it that nobody was there at night.

    Answers whether it was. A shop in which nothing is written down yet needs none; after a failure it waits an hour.
    """
    now = local_now(workshop)
    failure = copies.failure()
    if failure is not None and timedelta(0) <= now - failure.at < TRY_AGAIN_AFTER:
        return False
    last = copies.last_at(now)
    if last is None and not workshop.log.version():
        return False
    if last is not None and last >= last_night(now):
        return False
    copies.make(now)
    return True


def look_at_copies(workshop: Workshop, copies: Copies) -> CopyLook:
    """The last copy, and whether it is old or the last attempt failed."""
    now = local_now(workshop)
    last, failure = copies.last(now), copies.failure()
    at, events = (last.at, last.events) if last else (None, 0)
    if failure is not None:
        return CopyLook("failed", at, events, failure.at, failure.code, failure.facts)
    if at is None:
        return CopyLook("none")
    if events < 0:
        return CopyLook("unreadable", at)
    return CopyLook("old" if now - at > OLD_AFTER else "good", at, events)


def last_night(now: datetime) -> datetime:
    """The last three in the morning before ``now``, which is in the shop's zone."""
    this = datetime.combine(now.date(), COPY_AT, now.tzinfo)
    return this if this <= now else datetime.combine(now.date() - timedelta(days=1), COPY_AT, now.tzinfo)


def local_now(workshop: Workshop) -> datetime:
    """Now, where the shop is."""
    return workshop.clock.now().astimezone(ZoneInfo(workshop.books.latest().time_zone or "UTC"))
