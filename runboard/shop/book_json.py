"""The shop's book, products and operations as JSON: read with every problem said at once, and written.

Their fields are those of the dataclasses (``record``). Here are the laws between fields, and what a file has besides.
"""

import json
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import time
from pathlib import Path
from typing import Annotated, Any, TypeVar, get_args
from zoneinfo import ZoneInfo

from runboard.shop.book import STATION_KINDS, Book, Station, Walk
from runboard.shop.durations import minutes_of
from runboard.shop.hours import Hours
from runboard.shop.keys import PICTURE_NAME, is_picture_name
from runboard.shop.machines import Jig
from runboard.shop.money import Money
from runboard.shop.problem import BookError as BookError
from runboard.shop.problem import RecordProblem
from runboard.shop.product import Attendance, Check, Operation, Pass, Product, Wait
from runboard.shop.reading import Law, Reading, Record
from runboard.shop.record import Of, fields_of, schema_of, to_json
from runboard.shop.units import format_length
from runboard.shop.values import shown

VERSION = 1
# What a file has besides the book: which form it is of, and the pictures that the book names.
BESIDES = ("runboard_book", "pictures")
# A picture in a file, as base64: far more than one that is kept here has.
PICTURE_LENGTH = 20_000_000

# Millimetres: pitches of inches that come out as places touching.
SAME_MM = 1e-6

_CURRENCY = re.compile("[A-Za-z]{3}")
# A language, perhaps its script, perhaps a territory (BCP 47).
_LOCALE = re.compile("[A-Za-z]{2,3}(?:[-_][A-Za-z]{4})?(?:[-_](?:[A-Za-z]{2}|[0-9]{3}))?")
_RANK = {attendance: rank for rank, attendance in enumerate(reversed(get_args(Attendance)))}

T = TypeVar("T")


@dataclass(frozen=True)
class _File:
    runboard_book: int
    picture: Annotated[str, Of(most=PICTURE_LENGTH)]


def book_from_json(record: object) -> Book:
    """The book that a JSON record says. Raises ``BookError`` with everything that is wrong in it."""
    if not isinstance(record, Mapping):
        raise BookError([RecordProblem("", "", "not an object", {"what": "the book", "found": shown(record)})])
    reading = Reading(LAWS, "in" if record.get("units") == "in" else "mm")
    said = Record(record, reading)
    _check_file(said)
    book = said.read(Book, BESIDES)
    for ask in reading.at_the_end:
        ask()
    return _right(reading, book)


def book_to_json(book: Book) -> dict[str, Any]:
    """The record of a book, every field written out."""
    return {"runboard_book": VERSION, **to_json(book)}


product_to_json: Callable[[Product], dict[str, Any]] = to_json
operation_to_json: Callable[[Operation], dict[str, Any]] = to_json


def product_from_json(record: object, shop: Book | None = None) -> Product:
    """A product from its record. With ``shop`` its stations, services, finishes and attendances are checked too.

    Raises ``BookError`` with everything that is wrong.
    """
    reading = Reading(LAWS)
    if shop is not None:
        reading.units = shop.units
        for noun, things in (("station", shop.stations), ("service", shop.services), ("finish", shop.finishes)):
            reading.known[noun] = {thing.key: thing for thing in things if thing.key}
    said = Record({}, reading).inside(record, "product")
    return _right(reading, said.read(Product) if said else None)


def _right(reading: Reading, found: T | None) -> T:
    if reading.problems or found is None:
        raise BookError(reading.problems)
    return found


def _check_file(said: Record) -> None:
    """The form of the file, and the pictures that it brings; the book itself holds neither."""
    version, picture = fields_of(_File).values()
    if said.take(version) != VERSION and not said.reading.problems:
        said.wrong("other version", version.name, found=said.said[version.name])
    held = said.inside(said.said.get("pictures", {}), "pictures")
    for name in held.said if held else ():
        if held and is_picture_name(name):
            held.value(picture, held.said[name], name)
        else:
            wanted = "pictures, each under the name that the book gives it"
            said.wrong("wrong type", "pictures", wanted=wanted, found=shown(name))


def schema_text() -> str:
    """The file's JSON Schema, as ``book.schema.json`` beside this module has it; ``python -m runboard.shop.book_json`` writes
    it again."""
    records: dict[str, Any] = {}
    book = schema_of(Book, records)
    (_, picture) = schema_of(_File, records)["properties"].values()
    book["properties"] |= {
        "runboard_book": {"const": VERSION},
        "pictures": {"type": "object", "propertyNames": {"pattern": PICTURE_NAME}, "additionalProperties": picture},
    }
    head = {"$schema": "https://json-schema.org/draft/2020-12/schema", "$id": f"urn:runboard:book:{VERSION}"}
    return json.dumps({**head, **book, "required": ["runboard_book"], "$defs": records}, indent=1) + "\n"


# laws


def _book(said: Record, book: Book) -> None:
    try:
        ZoneInfo(book.time_zone or "UTC")
    except (KeyError, ValueError, OSError):  # unknown, a path out of the folder, a folder
        said.wrong("unknown time zone", "time_zone", key=book.time_zone)


def _money(said: Record, money: Money) -> None:
    if money.currency and not _CURRENCY.fullmatch(money.currency):
        said.wrong("not a currency", "currency", found=shown(money.currency))
    if money.locale and not _LOCALE.fullmatch(money.locale):
        said.wrong("not a locale", "locale", found=shown(money.locale))


def _hours(said: Record, hours: Hours) -> None:
    if hours.closes != time(0) and hours.closes <= hours.opens:
        said.wrong("window backwards", "to", opens=said.said["from"], closes=said.said["to"])


def _walk(said: Record, walk: Walk) -> None:
    if len(walk.rooms) == 2 and not said.is_new(walk.pair):
        one, other = walk.pair
        said.wrong("walk said twice", "rooms", one=one, other=other)


def _station(said: Record, station: Station) -> None:
    said.reading.at_the_end.append(lambda: _check_watched_from(said, station))


def _check_watched_from(said: Record, station: Station) -> None:
    stations = said.reading.known.get("station", {})
    for key in station.watch_from or ():
        if key in stations and station.heats and stations[key].cuts:
            said.wrong("cutter beside heat", "watch_from", station=key, kind=station.kind)


def _operation(said: Record, operation: Operation) -> None:
    station = said.reading.known.get("station", {}).get(operation.station)
    if station is None:
        return
    least = STATION_KINDS[station.kind].least
    if _RANK[operation.attendance] < _RANK[least]:
        facts = {"station": f"'{station.key}'", "kind": station.kind, "least": least}
        said.wrong("attendance too small", "attendance", attendance=operation.attendance, **facts)


def _pass(said: Record, pass_: Pass) -> None:
    if pass_.size in ("jig", "board") and pass_.pieces is None:
        said.wrong("jig without pieces", "pieces", size=pass_.size)


def _wait(said: Record, wait: Wait) -> None:
    if wait.latest is not None and wait.latest < wait.least:
        latest, least = minutes_of(wait.latest), minutes_of(wait.least)
        said.wrong("latest before least", "latest_minutes", latest=latest, least=least)
    services = said.reading.known.get("service", {})
    for key, count in wait.holds.items():
        holds = said.inside(said.said["holds"], "holds")
        if holds and key in services and count > services[key].capacity:
            holds.wrong("more than there are", key, key=key, count=count, capacity=services[key].capacity)


def _check(said: Record, check: Check) -> None:
    for name in ("plus", "minus"):
        if getattr(check, name) is not None and said.said.get("nominal") is None:
            said.wrong("tolerance without nominal", name)


def _jig(said: Record, jig: Jig) -> None:
    sides = (
        ("pitch_x", jig.columns, jig.piece_length, jig.pitch_x),
        ("pitch_y", jig.rows, jig.piece_width, jig.pitch_y),
    )
    for name, places, piece, pitch in sides:
        if None in (places, piece, pitch, jig.clearance):  # said to be wrong already
            continue
        place = piece + jig.clearance
        if places > 1 and pitch < place - SAME_MM:
            least, found = (format_length(mm, said.reading.units) for mm in (place, pitch))
            said.wrong("places overlap", name, place=least, pitch=found)


LAWS: Mapping[type, Law] = {
    Book: _book, Hours: _hours, Walk: _walk, Station: _station, Operation: _operation, Pass: _pass, Wait: _wait,
    Check: _check, Money: _money, Jig: _jig,
}  # fmt: skip

if __name__ == "__main__":
    Path(__file__).with_name("book.schema.json").write_text(schema_text(), encoding="utf-8")
