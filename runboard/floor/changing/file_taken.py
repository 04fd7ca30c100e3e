"""A file that came in: looked at, said what it would change, and taken, pictures and all, or not at all.

Between the look and the press that takes it, it is kept in the data folder, where nothing reads it.
"""

from dataclasses import dataclass
from typing import Any, BinaryIO, Protocol

from runboard.floor.changing.exchange import Coming, import_run, look_at_run
from runboard.floor.changing.file_in import Take, nothing, read_file
from runboard.floor.changing.kept_changes import changes_in, take_changes
from runboard.floor.changing.pictures import Shelf
from runboard.floor.changing.shop_book import book_record, check_book, save_book
from runboard.floor.looking.at_hand import Called, names_now
from runboard.floor.workshop import KeptSettings, Workshop
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from runboard.shop.book_json import book_from_json
from runboard.shop.limits import check_limits

Record = dict[str, Any]
_PARTS = ("rooms", "services", "stations", "people", "jobs", "finishes", "products")


class HeldFiles(Protocol):
    """Where a file is kept between the look at it and the press that takes it."""

    def keep(self, stream: BinaryIO) -> str: ...
    def open(self, name: str) -> BinaryIO | None: ...
    def drop(self, name: str) -> None: ...


@dataclass(frozen=True)
class BookComing:
    """A book's file: for each part of the book what comes, goes and changes, by name."""

    name: str
    changes: tuple[tuple[str, list[str], list[str], list[str]], ...]


@dataclass(frozen=True)
class RunComing:
    """A run's file: what it would make, how many ``changes`` to try come with it, and what is called how here."""

    coming: Coming
    changes: int
    names: Called

    @property
    def run(self) -> RunState:
        return self.coming.run

    @property
    def people(self) -> list[str]:
        """Who pressed, by name where they are known here."""
        known = {person.key: person.name for person in self.names.book.people}
        return sorted({known.get(event.person, event.person) for event in self.coming.file.own if event.person})

    @property
    def stations(self) -> list[str]:
        return sorted({self.names.station(load.station) for load in self.run.loads.values()})


def look_at_file(workshop: Workshop, incoming: HeldFiles, name: str) -> BookComing | RunComing:
    """What taking a kept file would do. Refused, ``Unreadable`` or ``BookError`` where it cannot be taken at all."""
    record = _read(incoming, name)
    if "runboard_run" not in record:
        return BookComing(str(record.get("name") or "My shop"), tuple(_book_changes(book_record(workshop), record)))
    return RunComing(look_at_run(workshop, record), len(changes_in(record)), names_now(workshop))


def take_file(
    workshop: Workshop, incoming: HeldFiles, shelf: Shelf, settings: KeptSettings, name: str, seen: int
) -> str:
    """Take all of a kept file, or nothing; pictures only once nothing else is wrong, and before anything names them.

    Answers the run's key, '' for a book. ``seen`` is the book's revision that the person had before them.
    """
    record, key = _read(incoming, name), ""
    if "runboard_run" in record:
        look_at_run(workshop, record)
        changes = changes_in(record)
        _read(incoming, name, shelf.keep)
        import_run(workshop, record)
        key = str(record["run"])
        take_changes(workshop, settings, key, changes)
    else:
        check_book(workshop, record, seen)
        _read(incoming, name, shelf.keep)
        save_book(workshop, record, seen)
    incoming.drop(name)
    return key


def _read(incoming: HeldFiles, name: str, take: Take = nothing) -> Record:
    """The record of a file that is kept; a book is checked."""
    stream = incoming.open(name)
    if stream is None:
        raise Refused("file gone")
    with stream:
        record = read_file(stream, take)
    if "runboard_book" in record:
        book = book_from_json(record)
        check_limits(book)
    return record


def _book_changes(here: Record, there: Record) -> list[tuple[str, list[str], list[str], list[str]]]:
    """For each part of the book: (part, names that come, names that go, names that change)."""
    found = []
    for part in _PARTS:
        now = {thing["key"]: thing for thing in here.get(part, ())}
        then = {thing["key"]: thing for thing in there.get(part, ())}
        come = [thing["name"] for key, thing in then.items() if key not in now]
        go = [thing["name"] for key, thing in now.items() if key not in then]
        change = [thing["name"] for key, thing in then.items() if key in now and thing != now[key]]
        found.append((part.replace("jobs", "small jobs"), come, go, change))
    return found
