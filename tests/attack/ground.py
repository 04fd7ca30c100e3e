"""Where the fuzzer works: a small shop half at work, made once a process and copied for each chapter."""

import logging
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from types import TracebackType
from typing import Any

from flask.testing import FlaskClient

import runboard
import tests.made_once  # noqa: F401 - importing it is enough
from runboard.app import build
from runboard.floor.changing.exchange import export_run
from runboard.floor.changing.runs import new_event
from runboard.floor.changing.shop_book import book_record
from runboard.floor.pressing.taps import record_events
from runboard.house import House, Settings
from runboard.web.door.sessions import COOKIE
from tests.attack.cast import cast, device_with, shut_house
from tests.attack.fuzz_http import Shown, read_forms
from tests.attack.promises import CREW, GUEST, LEAD, NOBODY, SENSOR
from tests.conftest import HandClock

# In memory where there is such a place: what the disk takes is not what is tested here.
_MEMORY = Path("/dev/shm")
FAST = str(_MEMORY) if _MEMORY.is_dir() else None
# What answers after every chapter, and after a restart.
PAGES = ("/", "/trays", "/wall", "/state?person=ann", "/runs/r1/trays/1/history", "/plan", "/plan/runs/r1", "/plan/runs/r1/cards", "/care", "/shop",
         "/review", "/review/runs/r1", "/shop/signals", "/plan/runs/r1/run.json", "/shop/book.json", "/plan/runs/r1/paper")  # fmt: skip


@dataclass(frozen=True)
class Ground:
    """A folder to copy; the secrets of the sessions in it by role; what is mutated."""

    folder: Path
    keys: dict[str, str]
    forms: list[Shown]
    run: dict[str, Any]
    book: dict[str, Any]


@contextmanager
def ground() -> Iterator[Ground]:
    """Make the shop."""
    with tempfile.TemporaryDirectory(prefix="runboard-fuzz-", dir=FAST) as made:
        folder, clock = Path(made) / "shop", HandClock()
        folder.mkdir()
        with shut_house(folder, clock) as house:
            everybody = cast(house)
            _work(house, clock)
            lead = everybody.clients[LEAD]
            found = Ground(
                folder,
                everybody.keys,
                read_forms(house, lead),
                export_run(house.workshop, "r1"),
                book_record(house.workshop),
            )
        yield found


def _work(house: House, clock: HandClock) -> None:
    """One board is cut, a tray is clean, and the second board is on the machine."""
    for kind, load in [
        *((kind, "cut/1") for kind in ("load started", "machine started", "unloading started", "load done")),
        ("load started", "clean/1"), ("load done", "clean/1"), ("load started", "cut/2"), ("machine started", "cut/2"),
    ]:  # fmt: skip
        clock.forward(minutes=3)
        record_events(house.workshop, [new_event(house.workshop, kind, {}, run="r1", load=load, person="ann")])


@contextmanager
def copied(place: Ground) -> Iterator[Path]:
    """A copy of the folder, until the end of the block."""
    with tempfile.TemporaryDirectory(prefix="runboard-fuzz-", dir=FAST) as made:
        folder = Path(made) / "shop"
        shutil.copytree(place.folder, folder)
        yield folder


@contextmanager
def reopened(folder: Path, clock: HandClock) -> Iterator[House]:
    """The shop as a server has it that starts on the folder."""
    house = build(Settings(folder, clock, plans=False))
    try:
        yield house
    finally:
        house.close()


def clients_of(house: House, keys: dict[str, str]) -> dict[str, FlaskClient]:
    """A client for each role, with the session that it had."""
    found = {role: house.app.test_client() for role in (NOBODY, SENSOR, GUEST, CREW, LEAD)}
    for role in (GUEST, CREW, LEAD):
        found[role].set_cookie(COOKIE, keys[role])
    found[SENSOR].environ_base["HTTP_AUTHORIZATION"] = f"Bearer {keys[SENSOR]}"
    return found


def silent_pages(house: House) -> Iterator[str]:
    """A line for each page that a lead's phone, paired anew, does not get."""
    lead, _ = device_with(house, "lead")
    for page in PAGES:
        answer = lead.get(page)
        if answer.status_code != 200:
            yield f"{page} answers {answer.status_code}"


@dataclass
class Heard(logging.Handler):
    """What the server logs of its failures: where in the program each came from."""

    causes: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        super().__init__(logging.ERROR)

    def __hash__(self) -> int:
        return id(self)

    def emit(self, record: logging.LogRecord) -> None:
        if record.exc_info and record.exc_info[1]:
            self.causes.append(cause(record.exc_info[1]))

    def __enter__(self) -> "Heard":
        logger = logging.getLogger("runboard")
        self._before, logger.handlers = logger.handlers, [self]
        logger.propagate = False
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        logger = logging.getLogger("runboard")
        logger.handlers = self._before
        logger.propagate = True


def cause(error: BaseException) -> str:
    """What failed, and the last lines of ours on the way to it."""
    ours, trace = [], error.__traceback__
    home = str(Path(runboard.__file__).parent)
    while trace is not None:
        name = trace.tb_frame.f_code.co_filename
        if name.startswith(home):
            ours.append(f"{name[len(home) + 1 :]}:{trace.tb_lineno}")
        trace = trace.tb_next
    return f"{type(error).__name__}: {str(error)[:100]!r} at {' < '.join(reversed(ours[-2:]))}"
