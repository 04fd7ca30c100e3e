"""Who was at which station from when to when, as far as presses tell: hands at it, or eyes on its running machine."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime

from runboard.run.fold.state import Load, RunState, ShopState
from runboard.run.log.event import Event
from runboard.shop.book import Book
from runboard.shop.hours import Span, without
from runboard.shop.product import Operation

# These presses make whoever presses them the watcher of the load (effect 'watch' in table.json).
_WATCHING = ("machine started", "watch taken")
_GONE = ("person went", "person called away")
# Names of services that carry dust away, as a shop writes them in the four languages of its cards.
_EXTRACTION = ("extrac", "dust", "shop vac", "suction", "collector", "absaug", "staub", "aspira", "polvo", "poussi")


@dataclass(frozen=True)
class Stay:
    """Somebody's stretch at a station. ``extracted`` is whether station or operation draws on dust extraction;
    ``going_on`` that it has no end yet and is counted till now."""

    person: str
    station: str
    began_at: datetime
    ended_at: datetime
    extracted: bool = False
    going_on: bool = False


def stays(book: Book, state: ShopState, events: Iterable[Event], from_: datetime, now: datetime) -> list[Stay]:
    """Every stay within [from_, now). ``events`` are those that hold, in the fold's order: they say who watched, and
    when somebody was called away or in another room."""
    told = list(events)
    found: list[Stay] = []
    for run in state.runs.values():
        for load in (*run.past.values(), *run.loads.values()):
            found += _hands(book, run, load, now)
    hands: dict[str, list[Stay]] = {}
    for stay in found:
        hands.setdefault(stay.person, []).append(stay)
    elsewhere = _Elsewhere(book, state, told, hands, now)
    watches = _watches(told)
    for run in state.runs.values():
        for load in (*run.past.values(), *run.loads.values()):
            found += _eyes(book, run, load, watches.get((run.id, load.id), ()), elsewhere, now)
    clipped = (_clip(stay, from_, now) for stay in found)
    return sorted(
        (stay for stay in clipped if stay.began_at < stay.ended_at), key=lambda stay: (stay.began_at, stay.station)
    )


def is_extraction(book: Book, service: str) -> bool:
    """Whether a service is dust extraction, by its key or name: clamps and a rack are services too."""
    names = [service, *(known.name for known in book.services if known.key == service)]
    return any(word in name.lower() for name in names for word in _EXTRACTION)


def _hands(book: Book, run: RunState, load: Load, now: datetime) -> Iterator[Stay]:
    extracted = _is_extracted(book, load.station, _operation(run, load))
    for span in load.spans:
        if span.kind != "machine" and span.person:
            ended = span.ended_at or now
            yield Stay(span.person, load.station, span.began_at, ended, extracted, span.ended_at is None)


def _operation(run: RunState, load: Load) -> Operation | None:
    step = run.step_of(load)
    return step.operation if step else None


def _is_extracted(book: Book, station: str, operation: Operation | None) -> bool:
    known = book.station(station)
    services = (*(known.services if known else ()), *(operation.services if operation else ()))
    return any(is_extraction(book, service) for service in services)


def _watches(events: Iterable[Event]) -> dict[tuple[str, str], list[tuple[datetime, str]]]:
    """Who took up watching which load when."""
    found: dict[tuple[str, str], list[tuple[datetime, str]]] = {}
    for event in events:
        if event.kind in _WATCHING and event.person:
            found.setdefault((event.run, event.load), []).append((event.moment, event.person))
    return found


def _eyes(
    book: Book,
    run: RunState,
    load: Load,
    taken: Iterable[tuple[datetime, str]],
    elsewhere: "_Elsewhere",
    now: datetime,
) -> Iterator[Stay]:
    """The stretches of a watched machine's time that each watcher was in its room, not called away."""
    operation = _operation(run, load)
    station = book.station(load.station)
    if operation is None or operation.attendance != "watched":
        return
    extracted = _is_extracted(book, load.station, operation)
    room = station.room if station else ""
    for span in (span for span in load.spans if span.kind == "machine"):
        ended = span.ended_at or now
        for person, began, until in _turns(span.began_at, ended, taken):
            for start, end in without([(began, until)], elsewhere.than(person, room)):
                going_on = span.ended_at is None and end == ended
                yield Stay(person, load.station, start, end, extracted, going_on)


def _turns(
    began: datetime, ended: datetime, taken: Iterable[tuple[datetime, str]]
) -> Iterator[tuple[str, datetime, datetime]]:
    """Who watched in turn between two moments: each until the next takes it."""
    person, since = "", began
    for at, next_person in taken:
        if at >= ended:
            break
        if at > since:
            if person:
                yield person, since, at
            since = at
        person = next_person
    if person and since < ended:
        yield person, since, ended


class _Elsewhere:
    """When somebody was away or in another room, as they said or as their hands tell."""

    def __init__(
        self, book: Book, state: ShopState, events: Iterable[Event], hands: Mapping[str, list[Stay]], now: datetime
    ) -> None:
        self._rooms = {station.key: station.room for station in book.stations}
        self._loads = {
            (run.id, load.id): load.station
            for run in state.runs.values()
            for load in (*run.past.values(), *run.loads.values())
        }
        self._hands = hands
        self._now = now
        self._places: dict[str, list[tuple[datetime, str | None]]] = {}
        for event in events:
            if event.person:
                self._note(event)

    def _note(self, event: Event) -> None:
        """Where a press says that somebody is: a room's key, nothing for 'not said', ``None`` for away."""
        places = self._places.setdefault(event.person, [])
        if event.kind in _GONE:
            places.append((event.moment, None))
        elif event.kind == "room changed":
            places.append((event.moment, str(event.get("room"))))
        elif event.kind in ("person came", "person came back"):
            before = next((place for _, place in reversed(places) if place is not None), "")
            places.append((event.moment, str(event.get("room") or before)))
        elif event.load:
            places.append((event.moment, self._rooms.get(self._loads.get((event.run, event.load), ""), "")))

    def than(self, person: str, room: str) -> list[Span]:
        """The stretches in which the person was not in ``room``."""
        places = self._places.get(person, [])
        ends = [at for at, _ in places[1:]] + [self._now]
        said = [
            (at, end)
            for (at, place), end in zip(places, ends, strict=False)
            if place is None or place not in ("", room)
        ]
        worked = [
            (stay.began_at, stay.ended_at)
            for stay in self._hands.get(person, ())
            if self._rooms.get(stay.station, room) != room
        ]
        return said + worked


def _clip(stay: Stay, from_: datetime, now: datetime) -> Stay:
    return Stay(
        stay.person, stay.station, max(stay.began_at, from_), min(stay.ended_at, now), stay.extracted, stay.going_on
    )
