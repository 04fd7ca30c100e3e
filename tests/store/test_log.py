"""The real log: the contract, and what only a file can show."""

import sqlite3
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from pathlib import Path

import pytest

from runboard.store import connect
from runboard.store.open import Store, open_store
from tests.made_once import AS_SERVED
from tests.store.log_contract import NOON, DuesContract, LogContract, an_event


class TestLogFile(LogContract):
    """The contract, kept by the file."""


class TestDuesFile(DuesContract):
    """The contract, kept by the file."""


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE event SET person = 'bo'",
        "DELETE FROM event",
        "REPLACE INTO event SELECT * FROM event",
    ],
)
def test_an_event_is_never_changed_or_removed(store: Store, statement: str) -> None:
    with store.log.write() as write:
        write.append(an_event("a"), NOON)

    with pytest.raises(sqlite3.IntegrityError, match="only ever appended"):
        store.connections.here().conn.execute(statement)


def test_an_id_is_taken_once(store: Store) -> None:
    with pytest.raises(sqlite3.IntegrityError), store.log.write() as write:
        write.append(an_event("a"), NOON)
        write.append(an_event("a"), NOON)

    assert store.log.last_seq() == 0


def test_an_answered_press_is_on_the_disk_even_if_the_power_goes(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(connect, "_PRAGMAS", AS_SERVED)
    with closing(open_store(tmp_path)) as store:
        connection = store.connections.here().conn

        assert connection.execute("PRAGMA synchronous").fetchone() == (2,)
        assert connection.execute("PRAGMA journal_mode").fetchone() == ("wal",)


def test_what_is_written_without_waiting_for_the_disk_is_there_and_the_next_press_waits_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(connect, "_PRAGMAS", AS_SERVED)
    with closing(open_store(tmp_path)) as store:
        connection = store.connections.here().conn

        with store.connections.not_waiting_for_the_disk():
            assert connection.execute("PRAGMA synchronous").fetchone() == (0,)
            with store.log.write() as write:
                write.append(an_event("a"), NOON)

        assert connection.execute("PRAGMA synchronous").fetchone() == (2,)
        assert not store.connections.path.with_name("shop.db-wal").stat().st_size
        assert [event.id for event in store.log.events()] == ["a"]


def test_threads_that_write_at_once_all_get_their_turn(store: Store) -> None:
    def press(number: int) -> None:
        with store.log.write() as write:
            write.last_seq()
            write.append(an_event(f"e{number}"), NOON)

    with ThreadPoolExecutor(4) as threads:
        list(threads.map(press, range(60)))

    assert sorted(one.seq for one in store.log.events()) == list(range(1, 61))


def test_the_version_is_the_same_in_every_thread_and_process(store: Store, tmp_path: Path) -> None:
    other = open_store(tmp_path)
    before = store.log.version()

    with other.log.write() as write:
        write.append(an_event("a"), NOON)
    with ThreadPoolExecutor(1) as thread:
        elsewhere = thread.submit(store.log.version).result()

    assert before < store.log.version() == elsewhere == other.log.version()
    other.close()
