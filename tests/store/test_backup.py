"""Copies: whole while others write, dated, proved; and put back without losing what they replace."""

import os
import sqlite3
import stat
import threading
from datetime import timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from runboard.run.log.event import Event
from runboard.store.backup import KEPT, BackupFolder, copy_to
from runboard.store.connect import FILE_NAME, connect
from runboard.store.holding import InUse, hold
from runboard.store.migrations import STEPS
from runboard.store.open import Store, open_store
from runboard.store.proof import BadCopy, prove
from runboard.store.restore import restore
from tests.conftest import START
from tests.scenario import shop

NOW = START.astimezone(ZoneInfo("America/New_York"))  # 04:00 on 7 March 2026


def note(number: int) -> Event:
    return Event(
        id=f"note-{number}", v=1, kind="note written", run="r1", person="ann", device="phone", at=START,
        body={"text": f"note {number}"},
    )  # fmt: skip


def write_notes(store: Store, *numbers: int) -> None:
    for number in numbers:
        with store.log.write() as write:
            write.append(note(number), START)


def ids_in(folder: Path) -> list[str]:
    store = open_store(folder)
    ids = [event.id for event in store.log.events()]
    store.close()
    return ids


def names_in(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


@pytest.fixture
def filled(store: Store) -> Store:
    store.books.save(shop(), START)
    write_notes(store, 1, 2, 3)
    return store


@pytest.fixture
def copy(filled: Store, tmp_path: Path) -> Path:
    """A copy of three notes; a fourth was written since, and the server has ended."""
    made = BackupFolder(tmp_path).make(NOW).path
    write_notes(filled, 4)
    filled.close()
    return made


def test_a_copy_is_named_by_the_shops_own_time_and_read_by_its_owner_only(filled: Store, tmp_path: Path) -> None:
    made = BackupFolder(tmp_path).make(NOW)

    assert made.path == tmp_path / "backups" / "shop-2026-03-07-0400.db"
    assert stat.S_IMODE(made.path.stat().st_mode) == 0o600
    assert made.events == prove(made.path).events == 3
    assert names_in(made.path.parent) == [made.path.name, "shop-2026-03-07-0400.sha256"]


def test_a_copy_made_while_others_write_is_whole(filled: Store, tmp_path: Path) -> None:
    writer = threading.Thread(target=write_notes, args=(filled, *range(10, 60)))
    writer.start()

    made = [BackupFolder(tmp_path).make(NOW) for _ in range(3)]

    writer.join()
    assert [prove(one.path).events for one in made] == [one.events for one in made]
    assert [one.events for one in made] == sorted(one.events for one in made)


def test_two_copies_of_one_minute_are_both_kept(filled: Store, tmp_path: Path) -> None:
    copies = BackupFolder(tmp_path)

    first, second = copies.make(NOW), copies.make(NOW)

    assert (first.path.name, second.path.name) == ("shop-2026-03-07-0400.db", "shop-2026-03-07-0400-2.db")
    last = copies.last(NOW)
    assert last is not None and last.path == second.path


def test_the_last_thirty_are_kept_and_nothing_else_is_touched(filled: Store, tmp_path: Path) -> None:
    folder = tmp_path / "backups"
    folder.mkdir()
    others = ["shop-2026-99-99-0300.db", "shop-of-ours.db", "letter.txt"]
    older = [f"shop-2026-02-{day:02d}-0300.db" for day in range(1, 29)] + [
        f"shop-2026-03-{day:02d}-0300.db" for day in range(1, 7)
    ]
    for name in [*others, *older]:
        (folder / name).touch()

    BackupFolder(tmp_path).make(NOW)

    assert sorted(path.name for path in folder.iterdir()) == sorted(
        [*others, *older[1 - KEPT :], "shop-2026-03-07-0400.db", "shop-2026-03-07-0400.sha256"]
    )


def test_the_list_of_a_copy_goes_with_it(filled: Store, tmp_path: Path) -> None:
    copies = BackupFolder(tmp_path)
    for day in range(KEPT + 2):
        copies.make(NOW + timedelta(days=day))
    alone = tmp_path / "backups" / "shop-2026-03-01-0300.sha256"
    alone.touch()
    os.utime(alone, (0, 0))

    copies.make(NOW + timedelta(days=99))

    kept = names_in(tmp_path / "backups")
    assert len(kept) == 2 * KEPT
    assert {name.partition(".")[0] for name in kept if name.endswith(".db")} == {
        name.partition(".")[0] for name in kept if name.endswith(".sha256")
    }


def test_a_copy_dated_ahead_by_a_wrong_clock_is_not_taken_for_the_last(filled: Store, tmp_path: Path) -> None:
    copies = BackupFolder(tmp_path)
    copies.make(NOW + timedelta(days=4000))

    assert copies.last_at(NOW) is None
    assert copies.make(NOW).path.exists()


def test_a_copy_goes_to_a_folder_that_is_named_if_it_is_there(filled: Store, tmp_path: Path) -> None:
    stick = tmp_path / "stick"
    with pytest.raises(BadCopy, match="no folder"):
        copy_to(tmp_path, stick, NOW)
    stick.mkdir()

    made = copy_to(tmp_path, stick, NOW)

    assert made.path.parent == stick
    assert not (tmp_path / "backups").exists()


def test_pictures_and_programs_go_with_a_copy_and_come_back(filled: Store, tmp_path: Path) -> None:
    (tmp_path / "files" / "ab").mkdir(parents=True)
    (tmp_path / "files" / "ab" / "ab12.ngc").write_text("G0 X0", "utf-8")
    made = BackupFolder(tmp_path).make(NOW)

    restore(tmp_path / "new", made.path, NOW)

    assert (tmp_path / "new" / "files" / "ab" / "ab12.ngc").read_text("utf-8") == "G0 X0"


def test_a_failure_is_kept_until_a_copy_succeeds(filled: Store, tmp_path: Path) -> None:
    (tmp_path / "backups").write_text("in the way", "utf-8")
    with pytest.raises(BadCopy):
        BackupFolder(tmp_path).make(NOW)
    (tmp_path / "backups").unlink()
    copies = BackupFolder(tmp_path)
    assert copies.failure() is None  # it could not be written, and another process knows nothing of it

    (tmp_path / "shop.db").rename(tmp_path / "away.db")
    with pytest.raises(BadCopy):
        copies.make(NOW)
    failure = BackupFolder(tmp_path).failure()
    assert failure is not None and (failure.code, failure.at) == ("nothing to copy", START)

    (tmp_path / "away.db").rename(tmp_path / "shop.db")
    copies.make(NOW)
    assert copies.failure() is None and BackupFolder(tmp_path).failure() is None


def test_a_full_disk_gives_no_copy_and_no_remains(
    filled: Store, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("runboard.store.copying._LEFT_FREE", 10**18)

    with pytest.raises(BadCopy, match="no room"):
        BackupFolder(tmp_path).make(NOW)

    assert [path.name for path in (tmp_path / "backups").iterdir()] == ["last-failure.json"]


def test_a_copy_comes_back_and_what_it_replaces_is_kept(copy: Path, tmp_path: Path) -> None:
    before = copy.read_bytes()

    done = restore(tmp_path, copy, NOW)

    assert done.proof.events == 3 and done.proof.until == START and done.proof.shop == shop()["name"]
    assert done.kept == tmp_path / "replaced-2026-03-07-0400"
    assert ids_in(tmp_path) == ["note-1", "note-2", "note-3"]
    assert ids_in(done.kept) == ["note-1", "note-2", "note-3", "note-4"]
    assert copy.read_bytes() == before and names_in(copy.parent) == [copy.name, "shop-2026-03-07-0400.sha256"]


def test_a_copy_comes_back_twice(copy: Path, tmp_path: Path) -> None:
    kept = [restore(tmp_path, copy, NOW).kept for _ in range(2)]

    assert [path.name for path in kept if path] == ["replaced-2026-03-07-0400", "replaced-2026-03-07-0400-2"]
    assert len(ids_in(tmp_path)) == 3


def test_a_copy_comes_into_a_new_folder(copy: Path, tmp_path: Path) -> None:
    done = restore(tmp_path / "new" / "shop", copy, NOW)

    assert done.kept is None
    assert len(ids_in(tmp_path / "new" / "shop")) == 3


def test_an_older_copy_comes_back_and_is_brought_up_to_date(tmp_path: Path) -> None:
    names = [step.name for step in STEPS.pending(connect(tmp_path / "empty.db"))]
    old = connect(tmp_path / "old.db")
    STEPS.apply(old, stop_before=names[names.index("books") + 1 :])
    old.close()

    restore(tmp_path / "new", tmp_path / "old.db", NOW)

    assert ids_in(tmp_path / "new") == []


def spoilt(copy: Path, how: str) -> None:
    database = sqlite3.connect(copy, isolation_level=None)
    match how:
        case "damaged":
            database.close()
            pages = bytearray(copy.read_bytes())
            pages[4096 * 2 :] = b"\x55" * (len(pages) - 4096 * 2)
            copy.write_bytes(pages)
        case "no database":
            database.close()
            copy.write_text("Dear Ann, " * 999, "utf-8")
        case "newer":
            database.execute("INSERT INTO _sqlite_migrations SELECT * FROM _sqlite_migrations WHERE 0")
            database.execute(
                "INSERT INTO _sqlite_migrations (migration_set, name, applied_at) VALUES ('runboard', 'flying', '2031')"
            )
        case "other tables":
            database.execute("DROP TRIGGER event_no_delete")
        case "no shop":
            database.executescript("DROP TABLE event; DELETE FROM _sqlite_migrations")
        case "does not fold":
            database.execute("DROP TRIGGER event_no_update")
            database.execute("UPDATE event SET at = 'yesterday'")
            database.execute(
                "CREATE TRIGGER event_no_update BEFORE UPDATE ON event "
                "BEGIN SELECT RAISE(ABORT, 'the log is only ever appended to'); END"
            )
        case "missing":
            copy.unlink()
    database.close()


@pytest.mark.parametrize(
    "how", ["damaged", "no database", "newer", "other tables", "no shop", "does not fold", "missing"]
)
def test_a_copy_that_cannot_be_proved_replaces_nothing(copy: Path, tmp_path: Path, how: str) -> None:
    spoilt(copy, how)

    for folder in (tmp_path, tmp_path / "new"):
        with pytest.raises(BadCopy) as bad:
            restore(folder, copy, NOW)
        assert bad.value.code == how

    assert len(ids_in(tmp_path)) == 4
    assert not list(tmp_path.glob("replaced-*")) and not list(tmp_path.glob(".shop-*"))
    assert not (tmp_path / "new").exists()


def test_nothing_is_replaced_while_a_server_serves_the_folder(copy: Path, tmp_path: Path) -> None:
    with hold(tmp_path), hold(tmp_path), pytest.raises(BadCopy, match="in use"):
        restore(tmp_path, copy, NOW)

    assert len(ids_in(tmp_path)) == 4


def test_no_server_comes_up_in_a_folder_that_is_being_restored(tmp_path: Path) -> None:
    with hold(tmp_path, alone=True), pytest.raises(InUse), hold(tmp_path):
        pass


def test_nothing_is_replaced_while_any_program_has_the_database_open(copy: Path, tmp_path: Path) -> None:
    other = connect(tmp_path / FILE_NAME)
    other.conn.execute("SELECT count(*) FROM event").fetchone()

    with pytest.raises(BadCopy, match="in use"):
        restore(tmp_path, copy, NOW)

    other.close()
    assert len(ids_in(tmp_path)) == 4


def test_a_database_that_is_ruined_is_replaced_and_kept_as_it_was(copy: Path, tmp_path: Path) -> None:
    ruin = b"\x00ruined" * 999
    (tmp_path / FILE_NAME).write_bytes(ruin)
    (tmp_path / f"{FILE_NAME}-wal").write_bytes(ruin)

    kept = restore(tmp_path, copy, NOW).kept

    assert kept is not None
    assert (kept / FILE_NAME).read_bytes() == (kept / f"{FILE_NAME}-wal").read_bytes() == ruin
    assert len(ids_in(tmp_path)) == 3


def test_the_database_itself_is_no_copy(filled: Store, tmp_path: Path) -> None:
    filled.close()

    with pytest.raises(BadCopy, match="same file"):
        restore(tmp_path, tmp_path / FILE_NAME, NOW)
