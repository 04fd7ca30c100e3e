"""The shop's book: what the shop has and what it makes, as frozen data.

Lengths are millimetres, spans are ``timedelta``, times of day are the shop's local time. Keys are permanent short
words (``cnc``, ``sand``); names are what people read. Mappings are never changed in place.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime, time, timedelta
from functools import cached_property
from types import MappingProxyType
from typing import Literal

from runboard.shop.finish import Finish
from runboard.shop.instruction import Instruction, Translation

Attendance = Literal["hands-on", "watched", "none"]
LoadSize = Literal["piece", "jig", "board", "tray", "run"]
WaitWhy = Literal["dry", "cure", "clamp", "cool", "settle"]
Access = Literal["lead", "crew"]
LateCounts = Literal["minutes", "lines"]

ZERO = timedelta(0)
NOTHING: Mapping[str, int] = MappingProxyType({})
# Materials whose fumes a laser must not make; the shop's own list replaces them. Common practice, no source.
FORBIDDEN = ("PVC", "vinyl", "artificial leather", "ABS", "polycarbonate", "epoxy", "treated wood")


@dataclass(frozen=True)
class StationKind:
    """What a kind of station demands of people: the least attendance while it runs, how often somebody who watches it is
    asked whether they do, and what it does to wood."""

    least: Attendance
    cuts: bool = False
    heats: bool = False
    dusty: bool = False
    watch_every: timedelta | None = None


# A cutter is anything that a person must not look away from while their hands are at it.
STATION_KINDS: Mapping[str, StationKind] = MappingProxyType(
    {
        "bench": StationKind("none"),
        "cnc": StationKind("watched", cuts=True, dusty=True, watch_every=timedelta(minutes=10)),
        "hand cutter": StationKind("hands-on", cuts=True, dusty=True),
        "sander": StationKind("hands-on", dusty=True),
        "laser": StationKind("watched", heats=True, watch_every=timedelta(minutes=2)),
        "heater": StationKind("watched", heats=True, watch_every=timedelta(minutes=2)),
        "finishing": StationKind("none"),
        "clamping": StationKind("none"),
        "other machine": StationKind("none"),
    }
)


@dataclass(frozen=True)
class Room:
    key: str
    name: str


@dataclass(frozen=True)
class Service:
    """What several stations or waits share: an extractor, clamps, rack places. ``capacity`` is how many at once."""

    key: str
    name: str
    capacity: int


@dataclass(frozen=True)
class Window:
    """A stretch of local time on one weekday (0 = Monday). ``opens`` is before ``closes``, which is 00:00 where the
    window lasts to the end of the day (24:00)."""

    weekday: int
    opens: time
    closes: time


@dataclass(frozen=True)
class Station:
    """A machine or bench where one load at a time is done.

    ``watch_from`` lists the stations where one may work while watching this one; ``None`` takes the default: those in
    the same room that are no cutter (see ``may_work_while_watching``). ``watch_every`` replaces what is usual for its
    kind. ``noise_db`` is its sound level at the worker's ear in dB(A), as measured or from its manual. ``eyewear``
    says which eyewear its beam asks for.
    """

    key: str
    name: str
    kind: str
    room: str
    services: tuple[str, ...] = ()
    watch_from: tuple[str, ...] | None = None
    quiet: tuple[Window, ...] = ()
    watch_every: timedelta | None = None
    noise_db: float | None = None
    eyewear: str = ""

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

    key: str
    name: str
    access: Access = "lead"
    skills: tuple[str, ...] = ()
    hours: tuple[Window, ...] = ()
    start_up: timedelta = ZERO
    tidy_up: timedelta = ZERO
    removed: bool = False


@dataclass(frozen=True)
class ShopJob:
    """A small job of the shop's own that fills a gap: cut cartons, empty the bin."""

    key: str
    name: str
    minutes: timedelta
    room: str | None = None


@dataclass(frozen=True)
class Wait:
    """Time after an operation that passes by itself. ``latest`` is counted from the first piece."""

    why: WaitWhy
    least: timedelta
    latest: timedelta | None = None
    holds: Mapping[str, int] = field(default_factory=lambda: NOTHING)


@dataclass(frozen=True)
class Check:
    """A first-piece check. With ``nominal`` it is a measure in millimetres, without it 'matches the sample piece'."""

    key: str
    text: str
    per: Literal["run", "setup", "load"] = "setup"
    nominal: float | None = None
    plus: float | None = None
    minus: float | None = None


@dataclass(frozen=True)
class Use:
    """What an operation uses up, each piece: screws, oil, discs."""

    supply: str
    each: float
    unit: str = ""


@dataclass(frozen=True)
class Pass:
    """One go of an operation over the pieces: a grit, a side.

    ``size`` says what one load is; ``pieces`` how many a jig or a board takes. ``setup`` comes once while the station
    stays on this pass; ``loading``, ``machine`` and ``unloading`` once a load; ``hand`` once a piece.
    """

    key: str
    name: str
    size: LoadSize = "tray"
    pieces: int | None = None
    setup: timedelta = ZERO
    loading: timedelta = ZERO
    machine: timedelta = ZERO
    unloading: timedelta = ZERO
    hand: timedelta = ZERO


@dataclass(frozen=True)
class Operation:
    """One operation of a route. ``attendance`` is what a running load asks of a person.

    ``setup_sheet`` is an ordered set of (label, text): program, version, cutter, zero, workholding, power, speed,
    focus, photo. ``personal`` means that from here each piece carries its own text. ``guess`` marks times nobody
    measured. ``good_rate`` is somebody's guess of the share that comes good, or ``None``. ``finish`` names one of the
    shop's finishes. ``watch_every`` replaces the station's. ``instructions`` tell somebody who never saw the job.
    ``translations`` are by language (``de``, ``es``, ``fr``).
    """

    key: str
    name: str
    station: str
    passes: tuple[Pass, ...]
    attendance: Attendance = "hands-on"
    services: tuple[str, ...] = ()
    wait: Wait | None = None
    checklist: tuple[str, ...] = ()
    setup_sheet: tuple[tuple[str, str], ...] = ()
    checks: tuple[Check, ...] = ()
    cautions: tuple[str, ...] = ()
    skill: str | None = None
    uses: tuple[Use, ...] = ()
    personal: bool = False
    good_rate: float | None = None
    guess: bool = True
    finish: str | None = None
    watch_every: timedelta | None = None
    instructions: tuple[Instruction, ...] = ()
    translations: Mapping[str, Translation] = field(default_factory=lambda: MappingProxyType({}))


@dataclass(frozen=True)
class Product:
    """What is made: its ordered operations, and the usual pieces a tray and wood."""

    key: str
    name: str
    operations: tuple[Operation, ...]
    pieces_a_tray: int = 5
    wood: str = ""
    picture: str | None = None


@dataclass(frozen=True)
class Book:
    """Everything the shop has written down about itself.

    ``walks`` holds minutes between two rooms under the pair in sorted order. ``revision`` rises by one each save.
    ``forbidden`` are materials that no laser here may touch. ``noise_limit_db`` is the level that a day of eight hours
    may have, ``noise_exchange_db`` by how many dB it rises as the hours halve: 85 and 3 as NIOSH recommends.
    ``late_counts`` says what is to be least when not all order lines can be in time: their lateness in sum, or how many of
    them are late. ``earlier`` are older books with until when each held, the oldest first, where care was judged otherwise by them.
    """

    name: str = "My shop"
    time_zone: str = "UTC"
    units: Literal["mm", "in"] = "mm"
    emergency: str = "112"
    late_counts: LateCounts = "minutes"
    rooms: tuple[Room, ...] = ()
    walks: Mapping[tuple[str, str], timedelta] = field(default_factory=lambda: MappingProxyType({}))
    services: tuple[Service, ...] = ()
    stations: tuple[Station, ...] = ()
    people: tuple[Person, ...] = ()
    jobs: tuple[ShopJob, ...] = ()
    products: tuple[Product, ...] = ()
    finishes: tuple[Finish, ...] = ()
    forbidden: tuple[str, ...] = FORBIDDEN
    noise_limit_db: float = 85.0
    noise_exchange_db: float = 3.0
    revision: int = 0
    earlier: tuple[tuple[datetime, "Book"], ...] = field(default=(), compare=False, repr=False)

    @cached_property
    def _station_by_key(self) -> Mapping[str, Station]:
        # The fold asks for stations some fifty times an event; of two with one key the first counts.
        return {one.key: one for one in reversed(self.stations)}

    def station(self, key: str) -> Station | None:
        return self._station_by_key.get(key)

    def person(self, key: str) -> Person | None:
        return next((one for one in self.people if one.key == key), None)

    def product(self, key: str) -> Product | None:
        return next((one for one in self.products if one.key == key), None)

    def finish(self, key: str | None) -> Finish | None:
        return next((one for one in self.finishes if one.key == key), None)

    def room(self, key: str) -> Room | None:
        return next((one for one in self.rooms if one.key == key), None)

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
    return tuple((one.key, one.kind) for one in book.stations), book.finishes


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
