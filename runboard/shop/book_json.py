"""The shop's book as one JSON file: reading, with every problem said at once, and writing.

``book.schema.json`` beside this module describes the same file.
"""

from collections.abc import Mapping
from datetime import date, timedelta
from types import MappingProxyType
from typing import Any, get_args
from zoneinfo import ZoneInfo

from runboard.shop.book import (
    FORBIDDEN,
    NOTHING,
    STATION_KINDS,
    ZERO,
    Access,
    Book,
    Person,
    Room,
    Service,
    ShopJob,
    Station,
)
from runboard.shop.book_record import book_to_json
from runboard.shop.fields import NAME_LENGTH, Fields, shown
from runboard.shop.finish import Finish
from runboard.shop.pictures import is_picture_name
from runboard.shop.problem import BookError, Problem
from runboard.shop.route_json import Around, Seen, check_reference, operation_from_json, product_from_json, read_product
from runboard.shop.route_record import operation_to_json, product_to_json
from runboard.shop.windows_json import read_windows

__all__ = [
    "Around",
    "BookError",
    "Problem",
    "around",
    "book_from_json",
    "book_to_json",
    "operation_from_json",
    "operation_to_json",
    "product_from_json",
    "product_to_json",
]

VERSION = 1

_HEAD = ("runboard_book", "name", "time_zone", "units", "emergency", "late_counts", "revision")
_CARE = ("finishes", "forbidden", "noise_limit_db", "noise_exchange_db")
_THINGS = ("rooms", "walks", "services", "stations", "people", "jobs", "products")
_BOOK = frozenset((*_HEAD, *_CARE, *_THINGS, "pictures"))
# A picture in a file, as base64: far more than one that is kept here has.
_PICTURE_LENGTH = 20_000_000
_ROOM = frozenset(("key", "name"))
_WALK = frozenset(("rooms", "minutes"))
_SERVICE = frozenset(("key", "name", "capacity"))
_WATCHED = ("watch_from", "watch_every_minutes")
_STATION = frozenset(("key", "name", "kind", "room", "services", *_WATCHED, "quiet", "noise_db", "eyewear"))
_FINISH_SPANS = ("recoat", "handle", "cure", "airing")
_FINISH_TEXTS = ("ventilation", "sheet_date")
_FINISH = frozenset(
    ("key", "name", *(f"{one}_minutes" for one in _FINISH_SPANS), "self_heats", "solvent", *_FINISH_TEXTS)
)
_PERSON = frozenset(("key", "name", "access", "skills", "hours", "start_up_minutes", "tidy_up_minutes", "removed"))
_JOB = frozenset(("key", "name", "minutes", "room"))


def around(book: Book) -> Around:
    """What a product of this book is checked against."""
    stations, services = _by_key(book.stations), _by_key(book.services)
    return Around(stations, services, book.units, _by_key(book.finishes))


def book_from_json(record: object) -> Book:
    """The book that a JSON record says. Raises ``BookError`` with everything that is wrong in it."""
    problems: list[Problem] = []
    if not isinstance(record, Mapping):
        raise BookError([Problem("", "", "not an object", {"what": "the book", "found": shown(record)})])
    book = _book(Fields(record, problems))
    if problems:
        raise BookError(problems)
    return book


def _book(fields: Fields) -> Book:
    fields.only(_BOOK)
    _check_version(fields)
    _check_pictures(fields)
    fields.units = fields.choice("units", ("mm", "in"), "mm")
    rooms = _rooms(fields)
    services = _services(fields)
    stations = _stations(fields, _by_key(rooms), _by_key(services))
    finishes = _finishes(fields)
    surroundings = Around(_by_key(stations), _by_key(services), fields.units, _by_key(finishes))
    products = Seen()
    return Book(
        name=fields.text("name", "My shop", least=1, most=NAME_LENGTH),
        time_zone=_time_zone(fields),
        units=fields.units,
        emergency=fields.text("emergency", "112", most=NAME_LENGTH),
        late_counts=fields.choice("late_counts", ("minutes", "lines"), "minutes"),
        rooms=rooms,
        walks=_walks(fields, _by_key(rooms)),
        services=services,
        stations=stations,
        people=_people(fields),
        jobs=_jobs(fields, _by_key(rooms)),
        finishes=finishes,
        forbidden=fields.texts("forbidden") if "forbidden" in fields.record else FORBIDDEN,
        noise_limit_db=fields.number("noise_limit_db", 85.0, least=60, most=120),
        noise_exchange_db=fields.number("noise_exchange_db", 3.0, least=2, most=6),
        products=tuple(read_product(one, products, surroundings) for one in fields.each("products", "product")),
        revision=fields.count("revision", 0),
    )


def _by_key(things: tuple[Any, ...]) -> dict[str, Any]:
    return {thing.key: thing for thing in things if thing.key}


def _check_version(fields: Fields) -> None:
    if fields.count("runboard_book") != VERSION and not fields.problems:
        fields.wrong("other version", "runboard_book", found=fields.record["runboard_book"])


def _check_pictures(fields: Fields) -> None:
    """A file may bring the pictures that it names; the book itself does not hold them."""
    held = fields.inside(fields.record.get("pictures", NOTHING), "pictures")
    if held is None:
        return
    for name in held.record:
        if isinstance(name, str) and is_picture_name(name):
            held.text(name, most=_PICTURE_LENGTH)
        else:
            wanted = "pictures, each under the name that the book gives it"
            fields.wrong("wrong type", "pictures", wanted=wanted, found=shown(name))


def _time_zone(fields: Fields) -> str:
    key: str = fields.text("time_zone", "UTC", least=1, most=NAME_LENGTH)
    try:
        ZoneInfo(key or "UTC")
    except (KeyError, ValueError, OSError):  # unknown, a path out of the folder, a folder
        fields.wrong("unknown time zone", "time_zone", key=key)
    return key


def _rooms(fields: Fields) -> tuple[Room, ...]:
    seen, found = Seen(), []
    for one in fields.each("rooms", "room"):
        one.only(_ROOM)
        found.append(Room(seen.key(one, "rooms"), one.name()))
    return tuple(found)


def _walks(fields: Fields, rooms: Mapping[str, Room]) -> Mapping[tuple[str, str], timedelta]:
    found: dict[tuple[str, str], timedelta] = {}
    for walk in fields.each("walks", ""):
        walk.only(_WALK)
        minutes, ends = walk.minutes("minutes"), walk.keys("rooms")
        said = walk.items("rooms", required=True)
        if "rooms" in walk.record and len(said) != 2:
            walk.wrong("wrong type", "rooms", wanted="a list of two rooms", found=f"{len(said)}")
        elif len(ends) == 2:
            for key in ends:
                check_reference(walk, "rooms", key, rooms, "room")
            pair = (min(ends), max(ends))
            if pair in found:
                walk.wrong("walk said twice", "rooms", one=pair[0], other=pair[1])
            found[pair] = minutes
    return MappingProxyType(found)


def _services(fields: Fields) -> tuple[Service, ...]:
    seen, found = Seen(), []
    for one in fields.each("services", "service"):
        one.only(_SERVICE)
        found.append(Service(seen.key(one, "services"), one.name(), one.count("capacity", least=1)))
    return tuple(found)


def _stations(fields: Fields, rooms: Mapping[str, Room], services: Mapping[str, Service]) -> tuple[Station, ...]:
    seen = Seen()
    read = [(one, _station(one, seen)) for one in fields.each("stations", "station")]
    stations = _by_key(tuple(station for _, station in read))
    for one, station in read:
        check_reference(one, "room", station.room, rooms, "room")
        for key in station.services:
            check_reference(one, "services", key, services, "service")
        _check_watch_from(one, station, stations)
    return tuple(station for _, station in read)


def _station(fields: Fields, seen: Seen) -> Station:
    fields.only(_STATION)
    return Station(
        key=seen.key(fields, "stations"),
        name=fields.name(),
        kind=fields.choice("kind", tuple(STATION_KINDS)),
        room=fields.key("room"),
        services=fields.keys("services"),
        watch_from=None if fields.record.get("watch_from") is None else fields.keys("watch_from"),
        quiet=read_windows(fields, "quiet"),
        watch_every=fields.minutes("watch_every_minutes", None, least=0.5),
        noise_db=fields.number("noise_db", None, most=150),
        eyewear=fields.text("eyewear", "", most=NAME_LENGTH),
    )


def _finishes(fields: Fields) -> tuple[Finish, ...]:
    seen, found = Seen(), []
    for one in fields.each("finishes", "finish"):
        one.only(_FINISH)
        spans = {name: one.minutes(f"{name}_minutes", None) for name in _FINISH_SPANS}
        found.append(
            Finish(
                key=seen.key(one, "finishes"),
                name=one.name(),
                **spans,
                self_heats=one.flag("self_heats", True),
                solvent=one.flag("solvent", False),
                ventilation=one.text("ventilation", ""),
                sheet_date=_sheet_date(one),
            )
        )
    return tuple(found)


def _sheet_date(fields: Fields) -> str:
    said = str(fields.text("sheet_date", "", most=NAME_LENGTH))
    if said and not _is_date(said):
        fields.wrong("wrong type", "sheet_date", wanted="a date such as 2026-03-14", found=shown(said))
        return ""
    return said


def _is_date(text: str) -> bool:
    try:
        return date.fromisoformat(text).isoformat() == text
    except ValueError:
        return False


def _check_watch_from(fields: Fields, station: Station, stations: Mapping[str, Station]) -> None:
    for key in station.watch_from or ():
        check_reference(fields, "watch_from", key, stations, "station")
        if key in stations and station.heats and stations[key].cuts:
            fields.wrong("cutter beside heat", "watch_from", station=key, kind=station.kind)


def _people(fields: Fields) -> tuple[Person, ...]:
    seen = Seen()
    return tuple(_person(one, seen) for one in fields.each("people", "person"))


def _person(fields: Fields, seen: Seen) -> Person:
    fields.only(_PERSON)
    return Person(
        key=seen.key(fields, "people"),
        name=fields.name(),
        access=fields.choice("access", get_args(Access), "lead"),
        skills=fields.texts("skills"),
        hours=read_windows(fields, "hours"),
        start_up=fields.minutes("start_up_minutes", ZERO),
        tidy_up=fields.minutes("tidy_up_minutes", ZERO),
        removed=fields.flag("removed", False),
    )


def _jobs(fields: Fields, rooms: Mapping[str, Room]) -> tuple[ShopJob, ...]:
    seen, found = Seen(), []
    for one in fields.each("jobs", "job"):
        one.only(_JOB)
        key, room = seen.key(one, "jobs"), None if one.record.get("room") is None else one.key("room")
        check_reference(one, "room", room or "", rooms, "room")
        found.append(ShopJob(key, one.name(), one.minutes("minutes"), room))
    return tuple(found)
