"""The one object that floor functions work on, and what they ask of the world outside."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from contextlib import AbstractContextManager
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any, Protocol

from runboard.floor.pressing.rates import Rates
from runboard.run.calls.climb import Steps
from runboard.run.calls.dues import Due
from runboard.run.fold.ledger import Ledger
from runboard.run.log.event import Event
from runboard.run.refusal import AnsweredBefore
from runboard.shop.book import Book
from runboard.turn import Turn


class LogWrite(Protocol):
    """One transaction on the log; it is committed at the end of its block, or not at all."""

    def last_seq(self) -> int: ...
    def events(self, after: int) -> list[Event]: ...
    def known(self, ids: Sequence[str]) -> dict[str, AnsweredBefore]: ...
    def append(self, event: Event, received_at: datetime) -> int: ...
    def refuse(
        self, record: Mapping[str, Any], code: str, facts: Mapping[str, Any], received_at: datetime, device: str = ""
    ) -> None: ...
    def set_dues(self, put: Iterable[Due], drop: Iterable[str]) -> None: ...
    def dues_held(self) -> dict[str, datetime]: ...


class Log(Protocol):
    def write(self, wait: float = ...) -> AbstractContextManager[LogWrite]: ...
    def events(self, after: int = 0) -> list[Event]: ...
    def last_seq(self) -> int: ...
    def version(self) -> int: ...
    def give_way(self) -> None: ...


class Books(Protocol):
    def revision(self) -> int: ...
    def latest(self) -> Book: ...
    def record(self, revision: int | None = None) -> dict[str, Any]: ...
    def save(self, record: Mapping[str, Any], saved_at: datetime) -> Book: ...


class KeptSettings(Protocol):
    """Settings by key, no part of the book; what was never set is an empty record."""

    def get(self, key: str) -> dict[str, Any]: ...
    def put(self, key: str, record: Mapping[str, Any]) -> None: ...
    def put_first(self, key: str, record: Mapping[str, Any]) -> dict[str, Any]: ...


class Clock(Protocol):
    """What time it is in the shop."""

    def now(self) -> datetime: ...


class Tell(Protocol):
    """Says to whoever listens that something changed; it never fails and never waits."""

    def changed(self, seq: int) -> None: ...


@dataclass
class Telling:
    """Says it to each of those who listen: nobody, until somebody is put in."""

    listeners: list[Callable[[int], object]] = field(default_factory=list)

    def changed(self, seq: int) -> None:
        for told in self.listeners:
            told(seq)


@dataclass
class Workshop:
    """Everything a floor function needs: the store, the clock, who is told, and the fold kept warm.

    ``since`` is when the server came up: what fell due before that is told late. ``steps`` say how alerts climb.
    ``planned`` is the newest plan, where somebody plans, and ``figured`` the newest of which the figures are there.
    """

    log: Log
    books: Books
    clock: Clock
    tell: Tell
    book: Book = field(default_factory=Book)
    ledger: Ledger = field(default_factory=lambda: Ledger(Book()))
    version: int = -1
    since: datetime | None = None
    steps: Steps = field(default_factory=Steps)
    lock: Turn = field(default_factory=Turn)
    rates: Rates = field(default_factory=Rates)
    kept: dict[str, Any] = field(default_factory=dict)
    planned: Any = None  # a runboard.floor.planning.plans.Planned, which knows this module
    figured: Any = None  # a runboard.floor.planning.figures.Figured
    reviews: Any = None  # a runboard.floor.looking.reviews.Reviews, where somebody works them out
