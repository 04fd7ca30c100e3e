"""The power goes while a copy is put back: the old shop or the new one is in place, whole."""

import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from runboard.store.backup import BackupFolder
from runboard.store.open import open_store
from runboard.store.restore import restore
from tests.conftest import START
from tests.scenario import shop
from tests.store.test_backup import ids_in, write_notes

OLD = [f"note-{number}" for number in range(1, 6)]
NEW = OLD[:3]
# Restores in a child that dies at the first touch of the disk (a file or folder opened, made, linked, renamed, removed),
# then in one that dies at the second, and so on, each in a folder of its own, until one comes to its end.
DIES = """
import os, shutil, signal, sys
from datetime import datetime
from pathlib import Path
from runboard.store.restore import restore

folder, copy = Path(sys.argv[1]), Path(sys.argv[2])
TOUCHES = ("open", "os.mkdir", "os.link", "os.rename", "os.remove", "sqlite3.connect")


def restore_until(last, place):
    left = last

    def count(event, args):
        nonlocal left
        if event in TOUCHES and place.name in str(args[0]):
            left -= 1
            if left == 0:
                os.kill(os.getpid(), signal.SIGKILL)

    sys.addaudithook(count)
    restore(place, copy, datetime.fromisoformat("2026-03-07T09:00:00Z"))


for last in range(1, 200):
    place = folder.with_name(f"try-{last:03d}")
    shutil.copytree(folder, place)
    child = os.fork()
    if child == 0:
        restore_until(last, place)
        os._exit(0)
    if os.waitpid(child, 0)[1] == 0:
        break
"""


@pytest.fixture
def folder(tmp_path: Path) -> Iterator[Path]:
    """A shop of five notes whose server was killed, and beside it a copy of the first three."""
    made = tmp_path / "made"
    store = open_store(made)
    store.books.save(shop(), START)
    write_notes(store, 1, 2, 3)
    BackupFolder(made).make(START).path.rename(tmp_path / "copy.db")
    write_notes(store, 4, 5)
    killed = tmp_path / "killed"
    shutil.copytree(made, killed)  # with its log beside it, as a killed server leaves it
    store.close()
    yield killed


def test_a_kill_at_any_moment_leaves_the_old_or_the_new(folder: Path, tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-c", DIES, str(folder), str(tmp_path / "copy.db")], capture_output=True, text=True
    )
    tries = sorted(tmp_path.glob("try-*"))
    kept_at = [bool(list(place.glob("replaced-*/shop.db"))) for place in tries]
    found = [ids_in(place) for place in tries]

    assert done.returncode == 0 and done.stderr == ""
    assert found[0] == OLD and found[-1] == NEW
    assert found == sorted(found, key=len, reverse=True)  # the old, and from one moment on the new
    assert all(kept for kept, ids in zip(kept_at, found, strict=True) if ids == NEW)


def test_after_a_kill_it_is_done_again(folder: Path, tmp_path: Path) -> None:
    subprocess.run([sys.executable, "-c", DIES, str(folder), str(tmp_path / "copy.db")], check=True)
    tries = sorted(tmp_path.glob("try-*"))

    for place in tries[:: len(tries) // 6]:
        restore(place, tmp_path / "copy.db", START)

        assert ids_in(place) == NEW
        assert not list(place.glob(".shop-*"))
        assert OLD in [ids_in(kept) for kept in place.glob("replaced-*")]
