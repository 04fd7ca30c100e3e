"""Who was there while a run was worked on and when its stations were free for it: as it really was, and as usual after it."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from runboard.plan.schedule.problem.from_book import HORIZON
from runboard.review.happened.said import Said
from runboard.review.past import Past
from runboard.review.stays import stays
from runboard.run.fold.state import RunState
from runboard.run.log.event import parse_moment
from runboard.shop.book import Person
from runboard.shop.hours import Span, local_day, merged, next_close, open_windows, without

# A span that is longer was forgotten: nobody stood there so long.
_LONGEST = timedelta(hours=6)
# Whether a person could have begun anything at a moment that fitted in until another.
CouldBegin = Callable[[str, datetime, datetime], bool]


def ended_at(past: Past) -> datetime:
    """When the last thing of the run was done, as far as anything tells; of an open one now."""
    if past.is_open:
        return past.now
    done = [moment for load in past.run.past.values() for moment in (load.done_at, load.phase_at) if moment is not None]
    return max((moment for moment in done if moment <= past.until), default=past.until)


def took_part(past: Past, at_it: Mapping[str, list[Span]]) -> list[str]:
    """Who came or worked (``work_of_each``); where nobody did, everybody."""
    pressed = (event.person for event in past.events if event.kind == "person came")
    found = dict.fromkeys(key for key in (*pressed, *at_it) if key)
    return list(found) or [person.key for person in past.book.people if not person.removed]


def who_was_there(past: Past, at_it: Mapping[str, list[Span]], could_begin: CouldBegin) -> dict[str, list[Span]]:
    """For each who took part from when to when they were there for the run, in order: from coming to going, or until when they
    said they had time if nothing could have been begun until then (whoever goes because they are held would have stayed had
    there been anything, and the run as it was is the same); start-up and tidy-up, being called away and their hands at other
    runs taken off. Who never said that they came was there in their usual hours, and while they worked. From the run's end on
    everybody is there as usual."""
    opened, until = past.run.opened_at, ended_at(past)
    elsewhere = _at_other_runs(past)
    found = {}
    for key in took_part(past, at_it):
        known = past.book.person(key)
        came = list(_sessions(past, known, key, could_begin))
        if not came and known is not None:
            came = open_windows(known.hours, past.book.time_zone, opened, until)
        there = merged([*without(came, elsewhere.get(key, ())), *at_it.get(key, ())])
        found[key] = merged([*_from(there, opened), *_as_usual(past, key, until)])
    return found


def work_of_each(past: Past) -> dict[str, list[Span]]:
    """When each had hands at the run, or eyes on its machines."""
    alone = replace(past.state, runs={past.run.id: past.run})
    found: dict[str, list[Span]] = {}
    for stay in stays(past.book, alone, past.events, past.run.opened_at, past.until):
        if stay.ended_at - stay.began_at <= _LONGEST:
            found.setdefault(stay.person, []).append((stay.began_at, stay.ended_at))
    return found


def _as_usual(past: Past, key: str, from_: datetime) -> list[Span]:
    known = past.book.person(key)
    hours = known.hours if known is not None else ()
    usual = open_windows(hours, past.book.time_zone, from_, from_ + HORIZON)
    return _without_ends(usual, known)


def _without_ends(spans: Iterable[Span], person: Person | None) -> list[Span]:
    if person is None:
        return list(spans)
    found = [(opens + person.start_up, closes - person.tidy_up) for opens, closes in spans]
    return [(opens, closes) for opens, closes in found if opens < closes]


@dataclass
class _Session:
    """``until`` is when they said that they had time until, or their usual hours end; ``went`` the last sign of them."""

    came: datetime
    until: datetime
    went: datetime


def _sessions(past: Past, person: Person | None, key: str, could_begin: CouldBegin) -> Iterator[Span]:
    some: list[_Session] = []
    gaps: list[Span] = []
    away: datetime | None = None
    is_there = False
    for event in (event for event in past.events if event.person == key):
        if away is not None:
            gaps.append((away, event.moment))
        away = event.moment if event.kind == "person called away" else None
        if event.kind == "person came" and (not is_there or _other_day(past, some[-1].came, event.moment)):
            some.append(_Session(event.moment, _closes(past, person, event.moment), event.moment))
            is_there = True
        if not is_there:
            continue
        if event.kind in ("person came", "time said") and event.get("until"):
            some[-1].until = parse_moment(str(event.get("until")))
        some[-1].went = event.moment
        is_there = event.kind != "person went"
    if away is not None and some:
        gaps.append((away, max(away, some[-1].until)))
    ends = ((each, max(each.until, each.went)) for each in some)
    spans = [(each.came, each.went if could_begin(key, each.went, last) else last) for each, last in ends]
    yield from without(_without_ends(spans, person), gaps)


def _closes(past: Past, person: Person | None, came: datetime) -> datetime:
    usual = next_close(person.hours, past.book.time_zone, came) if person is not None else None
    return usual or came


def _other_day(past: Past, one: datetime, other: datetime) -> bool:
    return local_day(one, past.book.time_zone) != local_day(other, past.book.time_zone)


def _from(spans: Iterable[Span], opened: datetime) -> list[Span]:
    return [(max(start, opened), end) for start, end in spans if end > opened]


def _at_other_runs(past: Past) -> dict[str, list[Span]]:
    found: dict[str, list[Span]] = {}
    for run in _others(past):
        for load in (*run.past.values(), *run.loads.values()):
            for span in load.spans:
                ended = span.ended_at or past.until
                if span.kind != "machine" and span.person and ended - span.began_at <= _LONGEST:
                    found.setdefault(span.person, []).append((span.began_at, ended))
    return found


def _others(past: Past) -> Iterator[RunState]:
    return (run for run in past.state.runs.values() if run.id != past.run.id)


# stations


def stations_free(past: Past) -> Mapping[str, list[Span]]:
    """For each station of the book when the run could have had it: not in use for another run, not out of use, no quiet hours,
    but always when it really was at work for this run. After the run only quiet hours keep it."""
    opened, until = past.run.opened_at, ended_at(past)
    last = until + HORIZON
    outs = Said(past.events, until).outs
    taken, mine = {station: list(spans.all) for station, spans in outs.items()}, _used(past, past.run)
    for run in _others(past):
        for used, spans in _used(past, run).items():
            taken.setdefault(used, []).extend(spans)
    found = {}
    for station in past.book.stations:
        quiet = open_windows(station.quiet, past.book.time_zone, opened, last)
        here = [span for span in taken.get(station.key, ()) if span[0] < until]
        free = without([(opened, last)], [*quiet, *((start, min(end, until)) for start, end in here)])
        found[station.key] = merged([*free, *_from(mine.get(station.key, ()), opened)])
    return found


def _used(past: Past, run: RunState) -> dict[str, list[Span]]:
    found: dict[str, list[Span]] = {}
    for load in (*run.past.values(), *run.loads.values()):
        began = min((span.began_at for span in load.spans), default=None)
        if began is not None:
            ends = [span.ended_at or past.until for span in load.spans]
            found.setdefault(load.station, []).append((began, max(ends)))
    return found
