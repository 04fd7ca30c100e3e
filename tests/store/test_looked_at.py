"""Files that were looked at: under their digest, for days, within bounds, and in no copy of the shop."""

import hashlib
import os
from pathlib import Path

import pytest

from runboard.store import looked_at
from runboard.store.files import copy_files
from runboard.store.looked_at import DAYS, FOLDER_NAME, LookedAt


def folder(data: Path) -> Path:
    return data / FOLDER_NAME


def make_older(data: Path, digest: str, days: float) -> None:
    path = folder(data) / digest
    at = path.stat().st_mtime - days * 86_400
    os.utime(path, (at, at))


def test_a_file_lies_under_its_digest_once(tmp_path: Path) -> None:
    files = LookedAt(tmp_path)

    digest = files.keep(b"G0 X1", ())
    again = files.keep(b"G0 X1", ())

    path = files.path(digest)
    assert digest == again == hashlib.sha256(b"G0 X1").hexdigest()
    assert path is not None and path.read_bytes() == b"G0 X1"
    assert [each.name for each in folder(tmp_path).iterdir()] == [digest]
    assert path.stat().st_mode & 0o777 == 0o600


@pytest.mark.parametrize("name", ["", ".", "..", "../shop.db", "a" * 64, "A" * 64, "a" * 64 + "\n"])
def test_what_is_not_there_and_what_is_no_digest_has_no_place(tmp_path: Path, name: str) -> None:
    (tmp_path / "shop.db").write_bytes(b"")
    LookedAt(tmp_path).keep(b"G0 X1", ())

    assert LookedAt(tmp_path).path(name) is None


def test_one_that_nobody_asked_for_lately_goes_but_for_what_the_book_names(tmp_path: Path) -> None:
    files = LookedAt(tmp_path)
    old, named, asked = files.keep(b"old", ()), files.keep(b"named", ()), files.keep(b"asked", ())
    for digest in (old, named, asked):
        make_older(tmp_path, digest, DAYS + 1)
    files.path(asked)

    new = files.keep(b"new", {named})

    assert {each.name for each in folder(tmp_path).iterdir()} == {named, asked, new}


def test_all_together_stay_within_bounds(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(looked_at, "MOST_BYTES", 250)
    files = LookedAt(tmp_path)
    first = files.keep(b"1" * 100, ())
    make_older(tmp_path, first, 1)
    second = files.keep(b"2" * 100, ())

    third = files.keep(b"3" * 100, ())

    assert {each.name for each in folder(tmp_path).iterdir()} == {second, third}


def test_no_copy_of_the_shop_has_them(tmp_path: Path) -> None:
    (tmp_path / "shop").mkdir()
    LookedAt(tmp_path / "shop").keep(b"G0 X1", ())

    assert copy_files(tmp_path / "shop", tmp_path / "copy") == {}
