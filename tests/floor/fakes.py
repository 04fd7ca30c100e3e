"""The store and the clock in memory, for tests of what a person does. They keep the same contract as the real ones."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime, timedelta
from typing import Any

from runboard.background.task import Failure, Task
from runboard.floor.workshop import Workshop
from runboard.run.calls.dues import Due
from runboard.run.log.event import Event, event_from_json, event_to_json
from runboard.run.refusal import AnsweredBefore
from runboard.shop.book import Book
from runboard.shop.book_json import book_from_json, book_to_json
from runboard.shop.limits import check_limits
from runboard.store.events import MOST_REFUSED_OF_ONE

MONDAY = datetime(2026, 6, 1, 16, 0, tzinfo=UTC)


class FakeClock:
    def __init__(self, moment: datetime = MONDAY) -> None:
        self.moment = moment

    def now(self) -> datetime:
        return self.moment

    def pass_(self, minutes: float) -> datetime:
        self.moment += timedelta(minutes=minutes)
        return self.moment


class FakeLog:
    def __init__(self) -> None:
        self.stored: list[Event] = []
        self.refused: dict[str, AnsweredBefore] = {}
        self.records: dict[str, tuple[str, Mapping[str, Any]]] = {}
        self.dues: dict[str, Due] = {}

    @contextmanager
    def write(self, wait: float = 0) -> Iterator["FakeLog"]:
        kept = list(self.stored), dict(self.refused), dict(self.dues)
        try:
            yield self
        except BaseException:
            self.stored, self.refused, self.dues = kept
            raise

    def last_seq(self) -> int:
        return len(self.stored)

    def version(self) -> int:
        return len(self.stored)

    def give_way(self) -> None:
        """Nobody waits."""

    def events(self, after: int = 0) -> list[Event]:
        return self.stored[after:]

    def known(self, ids: Sequence[str]) -> dict[str, AnsweredBefore]:
        accepted = {event.id: AnsweredBefore("accepted") for event in self.stored if event.id in ids}
        return {key: one for key, one in self.refused.items() if key in ids} | accepted

    def append(self, event: Event, received_at: datetime) -> int:
        seq = len(self.stored) + 1
        self.stored.append(event_from_json({**event_to_json(event), "seq": seq}))
        return seq

    def refuse(
        self, record: Mapping[str, Any], code: str, facts: Mapping[str, Any], received_at: datetime, device: str = ""
    ) -> None:
        self.refused.setdefault(record["id"], AnsweredBefore("refused", code, facts))
        self.records.setdefault(record["id"], (device, record))
        mine = [key for key, (one, _) in self.records.items() if one == device]
        for key in mine[:-MOST_REFUSED_OF_ONE]:
            del self.refused[key], self.records[key]

    def set_dues(self, put: Iterable[Due], drop: Iterable[str]) -> None:
        for key in drop:
            self.dues.pop(key, None)
        self.dues.update({due.id: due for due in put})

    def dues_held(self) -> dict[str, datetime]:
        return {key: due.due_at for key, due in self.dues.items()}


class FakeBooks:
    def __init__(self, record: Mapping[str, Any] | None = None) -> None:
        self.records: list[dict[str, Any]] = []
        self.book = Book()
        self.save(record or book_to_json(Book()), MONDAY)

    def revision(self) -> int:
        return len(self.records)

    def latest(self) -> Book:
        return self.book

    def record(self, revision: int | None = None) -> dict[str, Any]:
        return self.records[(revision or len(self.records)) - 1]

    def save(self, record: Mapping[str, Any], saved_at: datetime) -> Book:
        fresh = book_from_json({**record, "revision": len(self.records) + 1})
        check_limits(fresh)
        self.book = fresh.following(self.book, saved_at)
        self.records.append(dict(record))
        return self.latest()


@dataclass(frozen=True)
class WorkTask:
    id: str
    arguments: tuple[Any, ...] = ()
    subject: str = ""
    state: str = "running"
    done: int = 0
    total: int = 0
    latest: Any = None
    result: Any = None
    failure: Failure | None = None
    is_over: bool = False


@dataclass
class FakeWork:
    """Long work that does nothing until the test says what came of it."""

    tasks: dict[str, WorkTask] = field(default_factory=dict)
    ended: list[str] = field(default_factory=list)
    is_full: bool = False

    def start(self, what: str, subject: str, work: Callable[..., Any], *arguments: Any) -> WorkTask | None:
        if self.is_full:
            return None
        task = WorkTask(f"task {len(self.tasks) + 1}", arguments)
        self.tasks[task.id] = task
        return task

    def look(self, task_id: str) -> WorkTask | None:
        return self.tasks.get(task_id)

    def newest(self, what: str, subject: str = "") -> WorkTask | None:
        return next(reversed(self.tasks.values()), None)

    def end(self, task_id: str) -> None:
        self.ended.append(task_id)


@dataclass
class FakeKept:
    """Kept work that is done when a test lets it ``go_on``, or that finds what the test says it ``found``."""

    work: Callable[..., Any] | None = None
    prepared: Any = True
    tasks: dict[str, Task] = field(default_factory=dict)
    jobs: dict[str, tuple[Any, ...]] = field(default_factory=dict)
    ended: list[str] = field(default_factory=list)
    is_closed: bool = False

    def begin(self) -> None:
        """It is ready already."""

    def give(self, *job: Any) -> Task | None:
        if self.is_closed:
            return None
        task = Task(f"task {len(self.tasks) + 1}", "search", state="running")
        self.tasks[task.id], self.jobs[task.id] = task, job
        return task

    @property
    def newest(self) -> Task:
        return next(reversed(self.tasks.values()))

    def look(self, task_id: str) -> Task | None:
        return self.newest if self.tasks and self.newest.id == task_id else None

    def end(self, task_id: str) -> None:
        if (task := self.look(task_id)) is not None and not task.is_over:
            self.ended.append(task_id)
            self._change(state="ended")

    def found(self, latest: Any, *, is_last: bool = False) -> None:
        """The newest job tells of something, or is done with it."""
        self._change(latest=latest, **({"state": "done", "result": latest} if is_last else {}))

    def failed(self, kind: str) -> None:
        self._change(state="failed", failure=Failure(kind))

    def go_on(self) -> None:
        """Work at the newest job, up to where it would wait to be stopped."""
        task = self.newest
        if task.is_over or self.work is None:
            return

        def told(done: int, total: int, latest: Any = None) -> None:
            self._change(done=done, total=total, latest=latest)

        def stopped() -> bool:
            raise _Waits

        try:
            self._change(state="done", result=self.work(*self.jobs[task.id], told, stopped))
        except _Waits:
            pass
        except Exception as why:  # noqa: BLE001 - as a child says it
            self._change(state="failed", failure=Failure(type(why).__name__, str(why)))

    def _change(self, **changes: Any) -> None:
        self.tasks[self.newest.id] = replace(self.newest, **changes)


class _Waits(BaseException):
    """Work would go on until it is stopped."""


class Told:
    def __init__(self) -> None:
        self.seqs: list[int] = []

    def changed(self, seq: int) -> None:
        self.seqs.append(seq)


def workshop(record: Mapping[str, Any] | None = None) -> Workshop:
    """A workshop in memory with this book."""
    return Workshop(FakeLog(), FakeBooks(record), FakeClock(), Told())
