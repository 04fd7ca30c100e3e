"""The shop's book written as a JSON record; ``book_json`` reads it back to the same."""

from typing import Any

from runboard.shop.book import Book, Person, Station
from runboard.shop.durations import minutes_of
from runboard.shop.finish import Finish
from runboard.shop.route_record import product_to_json
from runboard.shop.windows_json import write_windows


def book_to_json(book: Book) -> dict[str, Any]:
    """The record of a book, every field written out."""
    return {
        "runboard_book": 1,
        "name": book.name,
        "time_zone": book.time_zone,
        "units": book.units,
        "emergency": book.emergency,
        "late_counts": book.late_counts,
        "revision": book.revision,
        "rooms": [{"key": room.key, "name": room.name} for room in book.rooms],
        "walks": [{"rooms": list(pair), "minutes": minutes_of(walk)} for pair, walk in book.walks.items()],
        "services": [{"key": one.key, "name": one.name, "capacity": one.capacity} for one in book.services],
        "stations": [_station(station) for station in book.stations],
        "people": [_person(person) for person in book.people],
        "jobs": [
            {"key": job.key, "name": job.name, "minutes": minutes_of(job.minutes), "room": job.room}
            for job in book.jobs
        ],
        "finishes": [_finish(finish) for finish in book.finishes],
        "forbidden": list(book.forbidden),
        "noise_limit_db": book.noise_limit_db,
        "noise_exchange_db": book.noise_exchange_db,
        "products": [product_to_json(product) for product in book.products],
    }


def _station(station: Station) -> dict[str, Any]:
    return {
        "key": station.key,
        "name": station.name,
        "kind": station.kind,
        "room": station.room,
        "services": list(station.services),
        "watch_from": None if station.watch_from is None else list(station.watch_from),
        "quiet": write_windows(station.quiet),
        "watch_every_minutes": None if station.watch_every is None else minutes_of(station.watch_every),
        "noise_db": station.noise_db,
        "eyewear": station.eyewear,
    }


def _finish(finish: Finish) -> dict[str, Any]:
    spans = {name: getattr(finish, name) for name in ("recoat", "handle", "cure", "airing")}
    return {
        "key": finish.key,
        "name": finish.name,
        **{f"{name}_minutes": None if span is None else minutes_of(span) for name, span in spans.items()},
        "self_heats": finish.self_heats,
        "solvent": finish.solvent,
        "ventilation": finish.ventilation,
        "sheet_date": finish.sheet_date,
    }


def _person(person: Person) -> dict[str, Any]:
    return {
        "key": person.key,
        "name": person.name,
        "access": person.access,
        "skills": list(person.skills),
        "hours": write_windows(person.hours),
        "start_up_minutes": minutes_of(person.start_up),
        "tidy_up_minutes": minutes_of(person.tidy_up),
        "removed": person.removed,
    }
