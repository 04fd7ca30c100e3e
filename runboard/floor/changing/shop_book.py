"""Changing the shop's book: every save is a new revision, and a save made on an outdated one loses nothing."""

import copy
from collections.abc import Callable, Mapping
from typing import Any

from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.run.care.sight import running
from runboard.run.fold.state import ShopState
from runboard.run.refusal import Refused
from runboard.shop.book import Book, Station
from runboard.shop.book_json import book_from_json, book_to_json

Record = dict[str, Any]


def book_record(workshop: Workshop) -> Record:
    """The record of the latest revision, every field written out; the caller's own to change."""
    catch_up(workshop)
    return book_to_json(workshop.book)


def record_at_work(workshop: Workshop) -> Record:
    """The same without people who are removed: what a form offers to choose from."""
    record = book_record(workshop)
    return {**record, "people": [person for person in record["people"] if not person["removed"]]}


def save_book(workshop: Workshop, record: Mapping[str, Any], seen: int | None = None) -> Book:
    """Save a whole book as the next revision.

    ``seen`` is the revision that the person had before them: refused 'book outdated' where there is a newer one.
    Raises ``BookError`` with everything that is wrong, and refuses to take away what is at work; nothing is stored then.
    """
    with workshop.lock:
        check_book(workshop, record, seen)
        saved = workshop.books.save(record, workshop.clock.now())
        workshop.version = -1  # the book alone has changed: a log need not say so
        catch_up(workshop)
        seq = workshop.ledger.last_seq
    workshop.tell.changed(seq)
    return saved


def check_book(workshop: Workshop, record: Mapping[str, Any], seen: int | None = None) -> None:
    """Refuses what ``save_book`` would; nothing is stored."""
    with workshop.lock:
        catch_up(workshop)
        if seen is not None and seen != workshop.book.revision:
            raise Refused("book outdated")
        check_nothing_at_work_goes(workshop.ledger.state, workshop.book, book_from_json(record))


def change_book(
    workshop: Workshop, seen: int, change: Callable[[Record], None], about: Callable[[Record], object]
) -> Book:
    """Apply ``change`` to the latest record and save it.

    ``about`` picks out of a record what the person had before them. Where somebody saved meanwhile, and that part is
    no longer what it was at the revision ``seen``, this is refused 'book outdated'; other changes of theirs stay.
    """
    with workshop.lock:
        record = book_record(workshop)
        if seen != workshop.book.revision and about(record) != about(record_at(workshop, seen)):
            raise Refused("book outdated")
        changed = copy.deepcopy(record)
        change(changed)
        return save_book(workshop, changed)


def record_at(workshop: Workshop, revision: int) -> Record:
    """A revision's record, written out as ``book_to_json`` does; an empty book's where nobody knows the revision."""
    try:
        return book_to_json(book_from_json(workshop.books.record(revision)))
    except (KeyError, IndexError):
        return book_to_json(Book())


def check_nothing_at_work_goes(state: ShopState, before: Book, after: Book) -> None:
    """Refused 'station runs', 'station in use' and 'person at work': what an open run or somebody's hands need stays in
    the book, and how a machine that runs is watched stays as it was when it was started."""
    staying = {station.key: station for station in after.stations}
    for _, load in running(state):
        station, changed = before.station(load.station), staying.get(load.station)
        if station is not None and (changed is None or _watched_as(station) != _watched_as(changed)):
            raise Refused("station runs", station=station.name)
    for station in before.stations:
        if station.key not in staying:
            for run in state.runs.values():
                routes = [revision.route for revision in run.revisions]
                used = any(step.operation.station == station.key for route in routes for step in route.steps)
                if run.state == "open" and used:
                    raise Refused("station in use", station=station.name, run=run.name)
    working = {person.key for person in after.people if not person.removed}
    for person in before.people:
        seen = state.people.get(person.key)
        if person.key not in working and seen is not None and seen.hands is not None:
            raise Refused("person at work", person=person.name)


def _watched_as(station: Station) -> tuple[object, ...]:
    """The stations in whatever order: a form gives them in the shop's own."""
    seen_from = None if station.watch_from is None else frozenset(station.watch_from)
    return station.kind, station.room, seen_from, station.watch_every
