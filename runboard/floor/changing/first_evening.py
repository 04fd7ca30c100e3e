"""The first evening: everything that a first run needs of the shop, said on one page, and what is still to be done until a
run is open."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from runboard.floor.changing.shop_book import change_book
from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.hours import DAYS
from runboard.shop.keys import key_for

# The stations of a home shop by their keys, with their kinds; the laser stands in another room in most.
USUAL: Mapping[str, str] = {
    "cnc": "cnc",
    "table": "hand cutter",
    "sander": "sander",
    "laser": "laser",
    "finishing": "finishing",
    "bench": "bench",
}
FAR = frozenset({"laser"})
# When people are usually there: days, from, to.
HOURS: Mapping[str, tuple[tuple[str, ...], str, str]] = {
    "evenings": (DAYS[:5], "18:00", "22:00"),
    "weekends": (DAYS[5:], "09:00", "17:00"),
    "days": (DAYS[:5], "08:00", "17:00"),
}


@dataclass(frozen=True)
class FirstShop:
    """What is said of a shop on the first evening. ``stations`` has the names of those there are, by their keys in ``USUAL``;
    ``far`` are those in the second room. ``hours`` are keys of ``HOURS``."""

    lead: str
    rooms: tuple[str, ...]
    stations: Mapping[str, str]
    friend: str = ""
    far: frozenset[str] = FAR
    walk_minutes: int = 1
    hours: tuple[str, ...] = ("evenings", "weekends")


@dataclass(frozen=True)
class FirstSteps:
    """How far a shop is towards its first run."""

    has_stations: bool
    has_people: bool
    products: tuple[str, ...]


def describe_shop(workshop: Workshop, said: FirstShop, seen: int) -> Book:
    """Put the first rooms, stations and people into the book.

    Refused 'first nameless', 'first stationless' and 'first hourless' where one of them is missing, 'shop described' where the
    shop has stations by now: what is there is never overwritten.
    """
    if not said.lead.strip():
        raise Refused("first nameless")
    if not said.stations:
        raise Refused("first stationless")
    if not said.hours:
        raise Refused("first hourless")

    def change(record: dict[str, Any]) -> None:
        if record["stations"]:
            raise Refused("shop described")
        record.update(_things(record, said))

    return change_book(workshop, seen, change, lambda record: record["stations"])


def _things(record: Mapping[str, Any], said: FirstShop) -> dict[str, Any]:
    names = [name.strip() for name in said.rooms if name.strip()]
    rooms = list(record["rooms"])
    for name in names:
        if all(room["name"] != name for room in rooms):
            rooms.append({"key": key_for(name, {room["key"] for room in rooms}), "name": name})
    near, far = rooms[0]["key"], rooms[-1]["key"]
    stations = [
        {"key": key, "name": name, "kind": USUAL[key], "room": far if key in said.far else near}
        for key, name in said.stations.items()
    ]
    walks = [{"rooms": [near, far], "minutes": said.walk_minutes}] if near != far else []
    return {"rooms": rooms, "walks": [*record["walks"], *walks], "stations": stations, "people": _people(record, said)}


def _people(record: Mapping[str, Any], said: FirstShop) -> list[Any]:
    people = list(record["people"])
    hours = [{"days": list(days), "from": from_, "to": to} for days, from_, to in map(HOURS.__getitem__, said.hours)]
    for name, access in ((said.lead.strip(), "lead"), (said.friend.strip(), "crew")):
        if name and all(person["name"] != name for person in people):
            key = key_for(name, {person["key"] for person in people})
            people.append({"key": key, "name": name, "access": access, "hours": hours if access == "lead" else []})
    return people


def first_steps(workshop: Workshop) -> FirstSteps | None:
    """What is still to be done until a run is open; None once one ever was."""
    with workshop.lock:
        catch_up(workshop)
        if workshop.ledger.state.runs:
            return None
        book = workshop.book
        working = any(not person.removed for person in book.people)
        return FirstSteps(bool(book.stations), working, tuple(product.key for product in book.products))
