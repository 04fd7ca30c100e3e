"""The shop's book: what the shop has and what it makes (``product``), as frozen data, each field declared once (see
``record``).

Lengths are millimetres, spans are ``timedelta``, times of day are the shop's local time. Keys are permanent short
words (``cnc``, ``sand``); names are what people read. Mappings are never changed in place.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from functools import cached_property
from types import MappingProxyType
from typing import Annotated, Literal

from runboard.shop.fasteners import Insert, Screw
from runboard.shop.finish import Finish
from runboard.shop.hours import Windows
from runboard.shop.machines import Cutter, GoodFeed, Jig, Motion
from runboard.shop.money import Money
from runboard.shop.product import ZERO, Attendance, Product
from runboard.shop.record import NAME_LENGTH, Interval, Key, Name, Of
from runboard.shop.stocked import Stock, Supply

# Materials whose fumes a laser must not make; the shop's own list replaces them. Common practice, no source.
FORBIDDEN = ("PVC", "vinyl", "artificial leather", "ABS", "polycarbonate", "epoxy", "treated wood")


@dataclass(frozen=True)
class StationKind:
    """What a kind of station demands of people: the least attendance while it runs, how often somebody who watches it is
    asked whether they do, whether it is a machine that a load is put on, runs on and is taken off, and what it does to wood."""

    least: Attendance
    machine: bool = False
    cuts: bool = False
    heats: bool = False
    dusty: bool = False
    watch_every: timedelta | None = None


# A cutter is anything that a person must not look away from while their hands are at it.
STATION_KINDS: Mapping[str, StationKind] = MappingProxyType(
    {
        "bench": StationKind("none"),
        "cnc": StationKind("watched", machine=True, cuts=True, dusty=True, watch_every=timedelta(minutes=10)),
        "hand cutter": StationKind("hands-on", cuts=True, dusty=True),
        "sander": StationKind("hands-on", dusty=True),
        "laser": StationKind("watched", machine=True, heats=True, watch_every=timedelta(minutes=2)),
        "heater": StationKind("watched", machine=True, heats=True, watch_every=timedelta(minutes=2)),
        "finishing": StationKind("none"),
        "clamping": StationKind("none"),
        "other machine": StationKind("none", machine=True),
    }
)


@dataclass(frozen=True)
class Room:
    """Where stations stand and people work."""

    key: Key
    name: Name


@dataclass(frozen=True)
class Walk:
    """How long one walks between two rooms, as it is written down."""

    rooms: Annotated[tuple[str, ...], Of(least=2, most=2, refers="room")]
    minutes: timedelta

    @property
    def pair(self) -> tuple[str, str]:
        return min(self.rooms), max(self.rooms)


@dataclass(frozen=True)
class Service:
    """What several stations or waits share: an extractor, clamps, rack places."""

    key: Key
    name: Name
    capacity: Annotated[int, Of("How many at once: 1 extractor, 12 clamps.", least=1)]


def _walks(walks: Mapping[tuple[str, str], timedelta]) -> list[Walk]:
    return [Walk(pair, minutes) for pair, minutes in walks.items()]


def _minutes_between(walks: Iterable[Walk]) -> Mapping[tuple[str, str], timedelta]:
    return MappingProxyType({walk.pair: walk.minutes for walk in walks if walk.rooms})


Walks = Annotated[Mapping[tuple[str, str], timedelta], Of(listed=Walk, pack=_walks, unpack=_minutes_between)]


@dataclass(frozen=True)
class Station:
    """A machine or bench where one load at a time is done. ``watch_from`` lists the stations where one may work while watching
    it (see ``may_work_while_watching``); ``watch_every`` is how often somebody who does is asked whether they do."""

    key: Key
    name: Name
    kind: Annotated[str, Of("Sets the least attendance of its operations.", choices=tuple(STATION_KINDS))]
    room: Annotated[str, Of(refers="room")]
    services: Annotated[tuple[str, ...], Of(refers="service")] = ()
    watch_from: Annotated[tuple[str, ...] | None, Of("Null: its room's that do not cut.", refers="station")] = None
    quiet: Annotated[Windows, Of("When it may not run.")] = ()
    watch_every: Annotated[Interval | None, Of("Null: what is usual for its kind.")] = None
    noise_db: Annotated[float | None, Of("At the worker's ear, dB(A): measured, or as its manual says.", most=150)] = (
        None
    )
    eyewear: Annotated[str, Of("Wavelength and optical density that its beam asks for.", most=NAME_LENGTH)] = ""
    motion: Annotated[Motion, Of("How it moves.")] = field(default_factory=Motion)
    hour_rate: Annotated[float | None, Of("What an hour of it costs, in the shop's money.")] = None

    @property
    def machine(self) -> bool:
        """Whether work at it has machine time, as a rule."""
        return STATION_KINDS[self.kind].machine

    @property
    def cuts(self) -> bool:
        return STATION_KINDS[self.kind].cuts

    @property
    def heats(self) -> bool:
        return STATION_KINDS[self.kind].heats

    @property
    def dusty(self) -> bool:
        """Whether work at it makes dust that hangs in the air."""
        return STATION_KINDS[self.kind].dusty


@dataclass(frozen=True)
class Person:
    """Somebody who works in the shop. ``start_up`` and ``tidy_up`` come off each session."""

    key: Key
    name: Name
    access: Literal["lead", "crew"] = "lead"
    skills: tuple[str, ...] = ()
    hours: Annotated[Windows, Of("When they are usually there.")] = ()
    start_up: timedelta = ZERO
    tidy_up: timedelta = ZERO
    removed: bool = False


@dataclass(frozen=True)
class Job:
    """A small job of the shop's own that fills a gap: cut cartons, empty the bin."""

    key: Key
    name: Name
    minutes: timedelta
    room: Annotated[str | None, Of(refers="room")] = None


@dataclass(frozen=True)
class Book:
    """Everything a shop has written down about itself: what it has and what it makes.

    ``walks`` holds minutes between two rooms under the pair in sorted order. ``revision`` rises by one each save. Noise is
    judged as NIOSH recommends. ``late_counts`` says what is to be least when not all order lines can be in time: their lateness
    in sum (minutes), or how many of them are late (lines).
    ``earlier`` are older books with until when each held, the oldest first, where care was judged otherwise by them.
    """

    name: Name = "My shop"
    time_zone: Annotated[Name, Of("A name of the IANA time zone database, such as Europe/Berlin.")] = "UTC"
    units: Literal["mm", "in"] = "mm"
    emergency: Annotated[str, Of("The number to call.", most=NAME_LENGTH)] = "112"
    late_counts: Literal["minutes", "lines"] = "minutes"
    revision: int = 0
    rooms: tuple[Room, ...] = ()
    walks: Walks = field(default_factory=lambda: MappingProxyType({}))
    services: tuple[Service, ...] = ()
    stations: tuple[Station, ...] = ()
    people: tuple[Person, ...] = ()
    jobs: tuple[Job, ...] = ()
    finishes: tuple[Finish, ...] = ()
    forbidden: Annotated[tuple[str, ...], Of("Materials that no laser of this shop may touch.")] = FORBIDDEN
    noise_limit_db: Annotated[float, Of("The level that a day of eight hours may have, dB(A).", 60, 120)] = 85.0
    noise_exchange_db: Annotated[float, Of("By how many dB it rises as the hours halve.", 2, 6)] = 3.0
    hour_rate: Annotated[
        float | None, Of("What an hour of somebody's work is worth, in the shop's money.", least=0.01)
    ] = None
    rating: Annotated[
        float | None, Of("The pace at which is worked, where 1 is a usual one.", 0.25, 2, kind="share")
    ] = None
    allowance: Annotated[float | None, Of("What standard time has beyond the work.", 0, 0.9, kind="share")] = None
    allowance_of: Annotated[Literal["work", "day"], Of("What the allowance is a share of.")] = "work"
    money: Annotated[Money, Of("Its money, and what a price has.")] = field(default_factory=Money)
    stocks: tuple[Stock, ...] = ()
    supplies: tuple[Supply, ...] = ()
    screws: tuple[Screw, ...] = ()
    inserts: tuple[Insert, ...] = ()
    cutters: tuple[Cutter, ...] = ()
    feeds: tuple[GoodFeed, ...] = ()
    jigs: tuple[Jig, ...] = ()
    products: tuple[Product, ...] = ()
    earlier: tuple[tuple[datetime, "Book"], ...] = field(default=(), compare=False, repr=False)

    @cached_property
    def _station_by_key(self) -> Mapping[str, Station]:
        # The fold asks for stations some fifty times an event; of two with one key the first counts.
        return {station.key: station for station in reversed(self.stations)}

    def station(self, key: str) -> Station | None:
        return self._station_by_key.get(key)

    def person(self, key: str) -> Person | None:
        return next((person for person in self.people if person.key == key), None)

    def product(self, key: str) -> Product | None:
        return next((product for product in self.products if product.key == key), None)

    def finish(self, key: str | None) -> Finish | None:
        return next((finish for finish in self.finishes if finish.key == key), None)

    def room(self, key: str) -> Room | None:
        return next((room for room in self.rooms if room.key == key), None)

    def as_of(self, moment: datetime) -> "Book":
        """The book as it held at a moment, as far as it matters to what must not be forgotten."""
        return next((book for until, book in self.earlier if moment < until), self)

    def following(self, before: "Book", saved_at: datetime) -> "Book":
        """This book with ``before`` remembered, if kinds of stations or finishes were others in it."""
        same = _judges_care(before) == _judges_care(self) or not before.stations
        kept = before.earlier if same else (*before.earlier, (saved_at, replace(before, earlier=())))
        return replace(self, earlier=kept)

    def walk(self, one: str, other: str) -> timedelta:
        """Time to walk between two rooms; nothing within one room or where nobody wrote it down."""
        if one == other:
            return ZERO
        return self.walks.get((min(one, other), max(one, other)), ZERO)


def _judges_care(book: Book) -> tuple[object, ...]:
    return tuple((station.key, station.kind) for station in book.stations), book.finishes


def may_work_while_watching(book: Book, watched: str, station: str) -> bool:
    """Whether hands may be at ``station`` while ``watched`` runs under the same person's eyes.

    The shop's list decides; without one, the stations of the same room that are no cutter, and no sander for a laser or
    another machine that heats. Never a cutter for one of those, whatever the list says.
    """
    machine, bench = book.station(watched), book.station(station)
    if machine is None or bench is None:
        return False
    if watched == station:
        return True
    if machine.heats and bench.cuts:
        return False
    if machine.watch_from is None:
        return machine.room == bench.room and not bench.cuts and not (machine.heats and bench.kind == "sander")
    return station in machine.watch_from
