"""Who was at which station from when to when, as far as presses tell: hands at it, or eyes on its running machine."""

from bisect import bisect_left
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import datetime

from runboard.run.fold.state import Load, RunState, ShopState
from runboard.run.log.event import Event
from runboard.shop.book import Book
from runboard.shop.hours import Span, merged, without
from runboard.shop.product import Operation

# These presses make whoever presses them the watcher of the load (effect 'watch' in table.json).
_WATCHING = ("machine started", "watch taken")
_GONE = ("person went", "person called away")
# Names of services that carry dust away, as a shop writes them in the four languages of its cards.
_EXTRACTION = ("extrac", "dust", "shop vac", "suction", "collector", "absaug", "staub", "aspira", "polvo", "poussi")


@dataclass(frozen=True)
class Stay:
    """Somebody's stretch at a station, with ``load`` of ``run``. ``extracted`` is whether station or operation draws on dust
    extraction; ``going_on`` that it has no end yet and is counted till now."""

    person: str
    station: str
    began_at: datetime
    ended_at: datetime
    extracted: bool = False
    going_on: bool = False
    run: str = ""
    load: str = ""


def stays(book: Book, state: ShopState, events: Iterable[Event], from_: datetime, now: datetime) -> list[Stay]:
    """Every stay within [from_, now). ``events`` are those that hold, in the fold's order: they say who watched, and
    when somebody was called away or in another room."""
    hands = _all_hands(book, state, now)
    return _within([*hands, *_all_eyes(book, state, list(events), hands, now)], from_, now)


def watches(book: Book, state: ShopState, events: Iterable[Event], from_: datetime, now: datetime) -> list[Stay]:
    """Of the stays those with eyes on a running machine, hands or not: whoever took up watching it and was in its room."""
    return _within(_all_eyes(book, state, list(events), _all_hands(book, state, now), now), from_, now)


def _within(found: Iterable[Stay], from_: datetime, now: datetime) -> list[Stay]:
    clipped = (_clip(stay, from_, now) for stay in found)
    return sorted(
        (stay for stay in clipped if stay.began_at < stay.ended_at), key=lambda stay: (stay.began_at, stay.station)
    )


def _all_hands(book: Book, state: ShopState, now: datetime) -> list[Stay]:
    return [stay for run, load in _loads(state) for stay in _hands(book, run, load, now)]


def _all_eyes(book: Book, state: ShopState, told: list[Event], hands: Iterable[Stay], now: datetime) -> list[Stay]:
    by_person: dict[str, list[Stay]] = {}
    for stay in hands:
        by_person.setdefault(stay.person, []).append(stay)
    elsewhere = _Elsewhere(book, state, told, by_person, now)
    taken = _watches(told)
    return [
        stay
        for run, load in _loads(state)
        for stay in _eyes(book, run, load, taken.get((run.id, load.id), ()), elsewhere, now)
    ]


def _loads(state: ShopState) -> Iterator[tuple[RunState, Load]]:
    return ((run, load) for run in state.runs.values() for load in (*run.past.values(), *run.loads.values()))


def is_extraction(book: Book, service: str) -> bool:
    """Whether a service is dust extraction, by its key or name: clamps and a rack are services too."""
    names = [service, *(known.name for known in book.services if known.key == service)]
    return any(word in name.lower() for name in names for word in _EXTRACTION)


def _hands(book: Book, run: RunState, load: Load, now: datetime) -> Iterator[Stay]:
    extracted = _is_extracted(book, load.station, _operation(run, load))
    for span in load.spans:
        if span.kind != "machine" and span.person:
            ended = span.ended_at or now
            going_on = span.ended_at is None
            yield Stay(span.person, load.station, span.began_at, ended, extracted, going_on, run.id, load.id)


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
            for start, end in without([(began, until)], elsewhere.than(person, room, began, until)):
                going_on = span.ended_at is None and end == ended
                yield Stay(person, load.station, start, end, extracted, going_on, run.id, load.id)


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
        self._loads = {(run.id, load.id): load.station for run, load in _loads(state)}
        self._hands = hands
        self._now = now
        self._places: dict[str, list[tuple[datetime, str | None]]] = {}
        self._found: dict[tuple[str, str], tuple[list[datetime], list[Span]]] = {}
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

    def than(self, person: str, room: str, began: datetime, until: datetime) -> list[Span]:
        """The stretches between two moments in which the person was not in ``room``."""
        if (person, room) not in self._found:
            spans = merged(self._all(person, room))
            self._found[person, room] = [end for _, end in spans], spans
        ends, spans = self._found[person, room]
        return spans[bisect_left(ends, began) : bisect_left(ends, until) + 1]

    def _all(self, person: str, room: str) -> list[Span]:
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
    return replace(stay, began_at=max(stay.began_at, from_), ended_at=min(stay.ended_at, now))
