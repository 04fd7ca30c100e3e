"""The shop as it is now for whoever looks at a page: its book, its runs, and what people and stations are called."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from threading import Lock
from typing import Any, TypeVar, cast

from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.review.hours import is_helper
from runboard.run.fold.state import PersonState, RunState, ShopState
from runboard.shop.book import Book
from runboard.shop.book_json import book_from_json

MOST_KEPT = 24
Made = TypeVar("Made")


def shop_now(workshop: Workshop) -> tuple[Book, ShopState]:
    """The book and the state with everything that is stored by now."""
    with workshop.lock:
        catch_up(workshop)
        return workshop.book, workshop.ledger.state


def book_now(workshop: Workshop) -> Book:
    """The book's newest revision."""
    return shop_now(workshop)[0]


def book_at(workshop: Workshop, revision: int) -> Book:
    """The book as a revision has it, read once: none ever changes. An empty one where nobody knows the revision."""
    kept: dict[int, Book] = workshop.kept.setdefault("books", {})
    if revision not in kept:
        try:
            kept[revision] = book_from_json(workshop.books.record(revision))
        except (KeyError, IndexError):
            return Book()
    return kept[revision]


def runs_now(workshop: Workshop) -> list[RunState]:
    """Every run, the oldest first."""
    return list(shop_now(workshop)[1].runs.values())


def run_now(workshop: Workshop, key: str) -> RunState | None:
    """The run of that key; None where there is none."""
    return shop_now(workshop)[1].runs.get(key)


def as_read(workshop: Workshop) -> tuple[Book, Mapping[str, RunState]]:
    """The book and the runs as they were read last, without another look: for what only wants their names."""
    return workshop.book, workshop.ledger.state.runs


def first_person(workshop: Workshop, asked: str) -> str:
    """Whom a page without a person is drawn for: who was asked for, where the book has them, else the first lead."""
    people = [person for person in workshop.books.latest().people if not person.removed]
    leads = [person.key for person in people if person.access == "lead"]
    return asked if any(person.key == asked for person in people) else next(iter(leads), "")


@dataclass(frozen=True)
class Called:
    """Names for what the log keeps by its key. A guest, who is in no book, has the name they gave, else 'helper'; who was
    removed is 'somebody'."""

    book: Book
    people: Mapping[str, PersonState]

    def person(self, key: str) -> str:
        if not key:
            return ""
        known, guest = self.book.person(key), self.people.get(key)
        return known.name if known else (guest.name or "helper") if guest else "somebody"

    def station(self, key: str) -> str:
        found = self.book.station(key)
        return found.name if found else key

    def is_helper(self, key: str) -> bool:
        return is_helper(self.book, key)

    def who_can_be_named(self) -> tuple[tuple[str, str], ...]:
        """(key, name) of everybody who works here, then of guests who gave a name."""
        known = ((person.key, person.name) for person in self.book.people if not person.removed)
        return (*known, *((person.key, person.name) for person in self.people.values() if person.name))


def names_now(workshop: Workshop) -> Called:
    """What everybody and every station is called."""
    book, state = shop_now(workshop)
    return Called(book, state.people)


@dataclass
class _Kept:
    held: dict[Any, tuple[Any, Any]] = field(default_factory=dict)
    making: Lock = field(default_factory=Lock)


def made_once(workshop: Workshop, what: str, about: Any, stands: Any, make: Callable[[], Made]) -> Made:
    """What was made last of ``about``, as long as what it says still ``stands``: many who load a page at once make it once."""
    kept: _Kept = workshop.kept.setdefault(f"made|{what}", _Kept())
    with kept.making:  # whoever asks meanwhile waits, and has the same
        known = kept.held.get(about)
        if known is None or known[0] != stands:
            if len(kept.held) >= MOST_KEPT:
                kept.held.clear()
            known = kept.held[about] = (stands, make())
        return cast(Made, known[1])
