"""Hours in the shop's time zone: when somebody is there, when a station must be quiet, which local day it is.

Windows are told by the clock on the wall; spans come out in aware UTC, so their lengths are real time, also over a
clock change. A clock time that comes twice opens at its first and closes at its second coming; one that is skipped is
the moment of the change.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from functools import lru_cache
from typing import Annotated, Literal, get_args
from zoneinfo import ZoneInfo

from runboard.shop.record import Of

Day = Literal["mon", "tue", "wed", "thu", "fri", "sat", "sun"]
DAYS: tuple[Day, ...] = get_args(Day)
Span = tuple[datetime, datetime]

_DAY = timedelta(days=1)
_MIDNIGHT = time(0)
# A week holds every window once; a day more for a clock change.
_LOOK_AHEAD = timedelta(days=8)


@dataclass(frozen=True)
class Window:
    """A stretch of local time on one weekday (0 = Monday). ``opens`` is before ``closes``, which is 00:00 where the
    window lasts to the end of the day (24:00)."""

    weekday: int
    opens: time
    closes: time


@dataclass(frozen=True)
class Hours:
    """Local time in the shop's zone, on each of the days, as it is written down. Hours over midnight are written as two."""

    days: Annotated[tuple[Day, ...], Of(least=1)]
    opens: Annotated[time, Of(named="from")]
    closes: Annotated[time, Of(kind="closing", named="to")]


def _windows(hours: Iterable[Hours]) -> tuple[Window, ...]:
    return tuple(Window(DAYS.index(day), span.opens, span.closes) for span in hours for day in span.days)


def _hours(windows: Iterable[Window]) -> list[Hours]:
    """The windows with neighbours of the same hours put together, in an order that reads back the same."""
    found: list[Hours] = []
    for window in windows:
        day, span = DAYS[window.weekday], (window.opens, window.closes)
        last = found[-1] if found else None
        if last and (last.opens, last.closes) == span and day not in last.days:
            found[-1] = Hours((*last.days, day), *span)
        else:
            found.append(Hours((day,), *span))
    return found


Windows = Annotated[tuple[Window, ...], Of(listed=Hours, pack=_hours, unpack=_windows)]


def open_windows(windows: Sequence[Window], zone: str, from_: datetime, to: datetime) -> list[Span]:
    """The (start, end) in aware UTC when one of the windows is open, within [from_, to), in order and put together
    where they touch."""
    return _clipped(_on_days(tuple(windows), zone, local_day(from_, zone) - _DAY, local_day(to, zone)), from_, to)


@lru_cache(maxsize=256)
def _on_days(windows: tuple[Window, ...], zone: str, day: date, last: date) -> tuple[Span, ...]:
    """The spans of some days. Kept: the months that a plan looks ahead are the same all day."""
    found = []
    while day <= last:
        for window in windows:
            if window.weekday == day.weekday():
                found.append(_span(window, day, zone))
        day += _DAY
    return tuple(merged(found))


def _span(window: Window, day: date, zone: str) -> Span:
    closes_next_day = window.closes == _MIDNIGHT
    end_day = day + _DAY if closes_next_day else day
    closes = _moment(end_day, window.closes, zone, last=not closes_next_day)
    return _moment(day, window.opens, zone), closes


def _moment(day: date, clock: time, zone: str, last: bool = False) -> datetime:
    """When the clock on the wall shows ``clock`` on ``day``: its first coming, or its last."""
    local = datetime.combine(day, clock, ZoneInfo(zone)).replace(fold=int(last))
    moment = local.astimezone(UTC)
    if moment.astimezone(local.tzinfo).replace(tzinfo=None) == local.replace(tzinfo=None):
        return moment
    return _change_near(local)


def _change_near(skipped: datetime) -> datetime:
    """The moment of the clock change that skips the local time ``skipped``: found by halving between the readings by
    the offset after the change (too early) and before it (too late)."""
    zone = skipped.tzinfo
    early, late = skipped.replace(fold=1).astimezone(UTC), skipped.replace(fold=0).astimezone(UTC)
    before = early.astimezone(zone).utcoffset()
    while late - early > timedelta(seconds=1):
        middle = early + (late - early) // 2
        if middle.astimezone(zone).utcoffset() == before:
            early = middle
        else:
            late = middle
    return late.replace(microsecond=0)


def merged(spans: Iterable[Span]) -> list[Span]:
    """Spans in order, put together where they touch; empty ones left out."""
    found: list[Span] = []
    for start, end in sorted(span for span in spans if span[0] < span[1]):
        if found and start <= found[-1][1]:
            found[-1] = (found[-1][0], max(end, found[-1][1]))
        else:
            found.append((start, end))
    return found


def _clipped(spans: Iterable[Span], from_: datetime, to: datetime) -> list[Span]:
    from_, to = from_.astimezone(UTC), to.astimezone(UTC)
    return [(max(start, from_), min(end, to)) for start, end in spans if start < to and end > from_]


def without(spans: Iterable[Span], others: Iterable[Span]) -> list[Span]:
    """What is left of ``spans`` when ``others`` are taken out."""
    left = merged(spans)
    for away_start, away_end in others:
        kept = []
        for start, end in left:
            kept += [(start, min(end, away_start)), (max(start, away_end), end)]
        left = merged(kept)
    return left


def running_windows(quiet: Sequence[Window], zone: str, from_: datetime, to: datetime) -> list[Span]:
    """When a station may run within [from_, to): everything but its quiet hours."""
    return without([(from_.astimezone(UTC), to.astimezone(UTC))], open_windows(quiet, zone, from_, to))


def is_open(windows: Sequence[Window], zone: str, moment: datetime) -> bool:
    """Whether one of the windows is open at ``moment``."""
    return bool(open_windows(windows, zone, moment, moment + timedelta(microseconds=1)))


def next_close(windows: Sequence[Window], zone: str, moment: datetime) -> datetime | None:
    """When the window that is open at ``moment`` closes; ``None`` where none is open."""
    found = open_windows(windows, zone, moment, moment + _LOOK_AHEAD)
    return found[0][1] if found and found[0][0] <= moment else None


def local_day(moment: datetime, zone: str) -> date:
    """The date on the shop's calendar at ``moment``."""
    return moment.astimezone(ZoneInfo(zone)).date()


def day_bounds(day: date, zone: str) -> Span:
    """The (start, end) in aware UTC of a day of the shop: 23, 24 or 25 hours."""
    return _moment(day, _MIDNIGHT, zone), _moment(day + _DAY, _MIDNIGHT, zone)
