"""A made-up shop: its route with the true time of everything, its people's hours, and what it shares. Minutes throughout."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime, timedelta
from typing import Any

MONDAY = datetime(2026, 6, 1, tzinfo=UTC)
DAY = 24 * 60
WEEK = 7 * DAY
DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
HANDS = ("setup", "loading", "unloading", "hand")


@dataclass(frozen=True)
class TrueTime:
    """How long a time element takes on average, of a load, for hand work of a piece. It varies from load to load and from
    session to session (standard deviations of the logarithm); with each doubling of loads it takes ``learning`` of itself."""

    mean: float
    load: float = 0.0
    session: float = 0.0
    learning: float = 1.0


@dataclass(frozen=True)
class Work:
    """One operation of the route. ``times`` are true, ``guesses`` what its route says; after it a tray waits, and holds one
    place of ``holds`` until it goes on."""

    key: str
    station: str
    times: Mapping[str, TrueTime]
    guesses: Mapping[str, float] = field(default_factory=dict)
    size: str = "tray"
    attendance: str = "hands-on"
    services: tuple[str, ...] = ()
    wait: float = 0.0
    holds: str = ""
    scrap: float = 0.0

    @property
    def has_machine(self) -> bool:
        return "machine" in self.times

    def guess(self, kind: str) -> float:
        return self.guesses.get(kind, self.times[kind].mean if kind in self.times else 0.0)


@dataclass(frozen=True)
class Hours:
    """From when to when on which weekdays (0 = Monday), in minutes of the day."""

    days: tuple[int, ...]
    opens: float
    closes: float


@dataclass(frozen=True)
class Somebody:
    """Somebody who can do everything. Their hands take ``pace`` of what hands take; ``added`` are (opens, closes) beyond their
    hours, in minutes from the world's Monday."""

    key: str
    hours: tuple[Hours, ...]
    pace: float = 1.0
    added: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True)
class Bench:
    """A station: its kind, its room, and the stations where one may work while watching it."""

    kind: str
    room: str
    watch_from: tuple[str, ...] = ()


@dataclass(frozen=True)
class World:
    """Everything that decides how a run goes, but for luck. ``designed`` is what it was made to be held by."""

    name: str
    works: tuple[Work, ...]
    stations: Mapping[str, Bench]
    people: tuple[Somebody, ...]
    services: Mapping[str, int] = field(default_factory=dict)
    walk: float = 1.0
    trays: int = 10
    a_tray: int = 5
    a_board: int = 3
    designed: tuple[str, str] = ("", "")

    @property
    def rooms(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys(bench.room for bench in self.stations.values()))

    @property
    def pieces(self) -> int:
        return self.trays * self.a_tray

    def work(self, key: str) -> Work:
        return next(work for work in self.works if work.key == key)

    def with_work(self, key: str, **changed: Any) -> "World":
        return replace(self, works=tuple(replace(work, **changed) if work.key == key else work for work in self.works))


def moment(minutes: float) -> datetime:
    """A moment so many minutes after the worlds' first Monday, in whole milliseconds."""
    return MONDAY + timedelta(milliseconds=round(minutes * 60_000))


def product_of(world: World) -> dict[str, Any]:
    """Its product, as a run's opening has it."""
    return {
        "key": "rail",
        "name": "Entry key rails",
        "pieces_a_tray": world.a_tray,
        "wood": "ash",
        "operations": [_operation(world, work) for work in world.works],
    }


def book_of(world: World) -> dict[str, Any]:
    """Its book, as a shop writes it down: hours, rooms, and the guesses in place of the true times."""
    rooms = world.rooms
    return {
        "runboard_book": 1,
        "name": world.name,
        "time_zone": "UTC",
        "units": "mm",
        "emergency": "112",
        "rooms": [{"key": room, "name": room.capitalize()} for room in rooms],
        "walks": [
            {"rooms": sorted((one, other)), "minutes": world.walk}
            for at, one in enumerate(rooms)
            for other in rooms[:at]
        ],
        "services": [
            {"key": key, "name": key.capitalize(), "capacity": capacity} for key, capacity in world.services.items()
        ],
        "stations": [
            {"key": key, "name": key.capitalize(), "kind": bench.kind, "room": bench.room}
            | ({"watch_from": list(bench.watch_from)} if bench.kind == "cnc" else {})
            for key, bench in world.stations.items()
        ],
        "people": [
            {
                "key": somebody.key,
                "name": somebody.key.capitalize(),
                "access": "crew" if at else "lead",
                "hours": [_hours(hours) for hours in somebody.hours],
            }
            for at, somebody in enumerate(world.people)
        ],
        "finishes": [{"key": "lacquer", "name": "Water lacquer", "self_heats": False, "solvent": False}],
        "products": [product_of(world)],
    }


def _operation(world: World, work: Work) -> dict[str, Any]:
    minutes = {f"{kind}_minutes": round(work.guess(kind), 4) for kind in (*HANDS, "machine") if work.guess(kind)}
    pieces = world.a_tray * world.a_board if work.size == "board" else None
    found: dict[str, Any] = {
        "key": work.key,
        "name": work.key.capitalize(),
        "station": work.station,
        "attendance": work.attendance,
        "services": list(work.services),
        "passes": [{"key": "all", "name": "all", "size": work.size, "pieces": pieces, **minutes}],
    }
    if work.wait:
        holds = {work.holds: 1} if work.holds else {}
        found |= {"finish": "lacquer", "wait": {"why": "dry", "least_minutes": work.wait, "latest_minutes": None, "holds": holds}}  # fmt: skip
    return found


def _hours(hours: Hours) -> dict[str, Any]:
    opens, closes = (f"{int(at) // 60:02}:{int(at) % 60:02}" for at in (hours.opens, hours.closes))
    return {"days": [DAYS[day] for day in hours.days], "from": opens, "to": closes}
