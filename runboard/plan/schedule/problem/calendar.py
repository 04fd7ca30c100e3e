"""When people work and stations may run, in ticks: usual hours, what somebody said today, quiet hours, out of use."""

from collections.abc import Sequence
from datetime import datetime, timedelta

from runboard.plan.schedule.problem.nouns import FAR, TICK, Span
from runboard.run.event import parse_moment
from runboard.run.state import PersonState, StationState
from runboard.shop.book import Book, Person, Station
from runboard.shop.hours import open_windows, running_windows

# How far ahead hours are laid out.
HORIZON = timedelta(days=120)


def ticks_in(start: datetime, spans: Sequence[tuple[datetime, datetime]]) -> tuple[Span, ...]:
    """Spans in whole ticks, none longer than it is."""
    found = ((-((start - opens) // TICK), (closes - start) // TICK) for opens, closes in spans)
    return tuple((opens, closes) for opens, closes in found if opens < closes)


def windows_of(book: Book, person: Person, seen: PersonState | None, now: datetime) -> tuple[Span, ...]:
    """When somebody works: until when they said today, then their usual hours, start-up and tidy-up taken off."""
    said: list[tuple[datetime, datetime]] = []
    until = seen.until if seen is not None and seen.came_at is not None else None
    usual = open_windows(person.hours, book.time_zone, max(now, until or now), now + HORIZON)
    if until is not None and until > now:
        said = [(now, until - person.tidy_up)]
        # The rest of usual hours that somebody cuts short today does not count.
        usual = [one for one in usual if one[0] > until]
    return ticks_in(now, said + [(opens + person.start_up, closes - person.tidy_up) for opens, closes in usual])


def runs_of(book: Book, station: Station, seen: StationState | None, now: datetime) -> tuple[Span, ...]:
    """When a station may be used: () where it is out of use and nobody knows until when, or that is over and nobody said
    that it is back."""
    out = seen.out if seen is not None else None
    if not station.quiet and out is None:
        return ((0, FAR),)
    spans = running_windows(station.quiet, book.time_zone, now, now + HORIZON)
    if out is not None:
        back = parse_moment(out["until"]) if out.get("until") else now
        if back <= now:
            return ()
        spans = [(max(opens, back), closes) for opens, closes in spans if closes > back]
    return ticks_in(now, spans)
