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

# Restores, and dies at the given touch of the disk: each file or folder opened, made, linked, renamed, removed.
DIES = """
import os, signal, sys
from datetime import datetime
from pathlib import Path
from runboard.store.restore import restore

folder, copy, last = Path(sys.argv[1]), Path(sys.argv[2]), int(sys.argv[3])
touched = 0

def count(event, args):
    global touched
    if event not in ("open", "os.mkdir", "os.link", "os.rename", "os.remove", "sqlite3.connect"):
        return
    if folder.name not in str(args[0]):
        return
    touched += 1
    if touched == last:
        os.kill(os.getpid(), signal.SIGKILL)

sys.addaudithook(count)
restore(folder, copy, datetime.fromisoformat("2026-03-07T09:00:00Z"))
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


def restores(folder: Path, last: int) -> bool:
    """Whether it came to its end."""
    copy = folder.parent / "copy.db"
    done = subprocess.run(
        [sys.executable, "-c", DIES, str(folder), str(copy), str(last)], capture_output=True, text=True
    )
    assert done.returncode in (0, -9), done.stderr
    return done.returncode == 0


@pytest.mark.skipif(sys.platform == "win32", reason="there is no SIGKILL")
def test_a_kill_at_any_moment_leaves_the_old_or_the_new(folder: Path, tmp_path: Path) -> None:
    old, new = [f"note-{number}" for number in range(1, 6)], ["note-1", "note-2", "note-3"]
    seen = []

    for last in range(1, 100):
        place = tmp_path / f"try-{last}"
        shutil.copytree(folder, place)
        ended = restores(place, last)
        seen.append(ids_in(place))
        if ended:
            break
        restore(place, tmp_path / "copy.db", START)
        assert ids_in(place) == new
        assert not list(place.glob(".shop-*"))
        assert old in [ids_in(kept) for kept in place.glob("replaced-*")]

    assert seen[0] == old and seen[-1] == new
    assert seen == sorted(seen, key=len, reverse=True)
