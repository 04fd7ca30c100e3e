"""The data folder is closed to other users of the computer: made so, and brought to it at opening."""

import os
import stat
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from runboard.store import closed
from runboard.store.backup import BackupFolder
from runboard.store.connect import FILE_NAME
from runboard.store.open import open_store
from runboard.store.pictures import PictureFolder
from runboard.store.restore import restore
from tests.conftest import START
from tests.scenario import shop

STRANGER = 99_999  # a user whom no system has
pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="rights are kept elsewhere there")


@pytest.fixture(params=[0o000, 0o022, 0o077])
def umask(request: pytest.FixtureRequest) -> Iterator[int]:
    before = os.umask(request.param)
    yield request.param
    os.umask(before)


def mode(path: Path) -> int:
    return stat.S_IMODE(path.stat().st_mode)


def open_to_others(folder: Path) -> list[str]:
    """What in a folder anybody but its owner may read, write or enter, by names; '.' is the folder itself."""
    every = [folder, *folder.rglob("*")]
    return sorted(str(path.relative_to(folder)) for path in every if not path.is_symlink() and mode(path) & 0o077)


def used(folder: Path) -> None:
    """A shop that was worked: a book, a picture, a copy; a log that a kill left beside the database."""
    store = open_store(folder)
    store.books.save(shop(), START)
    PictureFolder(folder).keep(b"a picture", "jpg")
    BackupFolder(folder).make(START)
    (folder / f"{FILE_NAME}-wal").read_bytes()  # it is there while the store is open
    assert open_to_others(folder) == []
    store.close()


def opened_to_all(folder: Path) -> None:
    """As an earlier version left it, under the usual umask."""
    used(folder)
    for path in [folder, *folder.rglob("*")]:
        path.chmod(0o755 if path.is_dir() else 0o644)


def test_what_is_made_is_its_owners_alone_whatever_the_umask(tmp_path: Path, umask: int) -> None:
    used(tmp_path / "made" / "shop")
    restore(tmp_path / "new", next((tmp_path / "made" / "shop" / "backups").glob("*.db")), START)

    assert open_to_others(tmp_path / "made" / "shop") == open_to_others(tmp_path / "new") == []


def test_a_failure_of_a_copy_is_kept_where_only_the_owner_reads_it(tmp_path: Path) -> None:
    os.umask(os.umask(0o022))
    copies = BackupFolder(tmp_path)
    with pytest.raises(Exception, match="nothing to copy"):
        copies.make(START)

    assert open_to_others(tmp_path) == []


def test_a_folder_that_others_could_read_is_closed_at_opening_and_said(tmp_path: Path) -> None:
    folder = tmp_path / "shop"
    opened_to_all(folder)

    store = open_store(folder)

    assert store.found == closed.OpenFolder("was open", {"folder": str(folder)})
    assert open_to_others(folder) == []
    store.close()
    again = open_store(folder)
    assert again.found is None
    again.close()


def test_an_empty_folder_is_closed_and_nothing_is_said(tmp_path: Path) -> None:
    (tmp_path / "shop").mkdir(mode=0o755)

    store = open_store(tmp_path / "shop")

    assert store.found is None and mode(tmp_path / "shop") == 0o700
    store.close()


def test_what_hangs_in_a_folder_by_a_link_stays_as_it_is(tmp_path: Path) -> None:
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir(mode=0o755)
    (elsewhere / "letter.txt").write_text("mine", "utf-8")
    folder = tmp_path / "shop"
    opened_to_all(folder)
    (folder / "replaced-1").symlink_to(elsewhere)
    (folder / "files" / "linked").symlink_to(elsewhere / "letter.txt")

    open_store(folder).close()

    assert mode(elsewhere) == 0o755 and mode(elsewhere / "letter.txt") == 0o644
    assert open_to_others(folder) == []


@pytest.mark.parametrize("how", ["other folders", "everybody's"])
def test_a_folder_that_is_others_too_is_left_while_the_shops_files_are_closed(tmp_path: Path, how: str) -> None:
    folder = tmp_path / "srv"
    opened_to_all(folder)
    if how == "other folders":
        (folder / "music").mkdir(mode=0o755)
    folder.chmod(0o755 if how == "other folders" else 0o1777)

    store = open_store(folder)

    assert store.found == closed.OpenFolder("shared", {"folder": str(folder)})
    assert set(open_to_others(folder)) <= {".", "music"}
    store.close()


def test_a_folder_of_another_user_is_said_and_left(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = tmp_path / "shop"
    opened_to_all(folder)
    monkeypatch.setattr(closed, "_me", lambda: STRANGER)

    store = open_store(folder)

    assert store.found is not None and store.found.code == "other owner"
    assert store.found.facts["owner"] and store.found.facts["me"] == str(STRANGER)
    assert mode(folder) == 0o755
    store.close()


def test_a_disk_that_knows_no_rights_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = tmp_path / "shop"
    opened_to_all(folder)

    def refuse(path: object, mode: int, **_: object) -> None:
        raise PermissionError(1, "Operation not permitted")

    monkeypatch.setattr(os, "chmod", refuse)

    store = open_store(folder)

    assert store.found == closed.OpenFolder("stays open", {"folder": str(folder)})
    store.close()
