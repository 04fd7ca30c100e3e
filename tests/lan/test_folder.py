"""The folder of certificates through crashes, damage and careless rights."""

import os
import re
import threading
from collections.abc import Callable, Iterator
from datetime import UTC, timedelta
from pathlib import Path

import pytest

from runboard.lan import private_file
from runboard.lan.authority import AuthorityLost, Certificates
from runboard.lan.issue import make_authority, make_leaf, read_pair
from runboard.words.sentences import in_words
from tests.lan.places import HOME, NOW, at, said, verify


def mode(path: Path) -> int:
    return path.stat().st_mode & 0o777


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "certificates"


@pytest.fixture
def loose_umask() -> Iterator[None]:
    before = os.umask(0)
    yield
    os.umask(before)


def damage(path: Path, how: str) -> None:
    content = path.read_bytes()
    path.write_bytes({"empty": b"", "half": content[: len(content) // 2], "noise": b"\x00\xff" * 200}[how])


@pytest.mark.usefixtures("loose_umask")
def test_keys_are_made_readable_for_their_owner_alone(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    changed: list[Path] = []
    monkeypatch.setattr(Path, "chmod", lambda self, mode: changed.append(self))

    Certificates(folder).keep(NOW, HOME)

    assert mode(folder) == 0o700
    assert {path.name: mode(path) for path in folder.iterdir()} == {"authority.pem": 0o600, "leaf.pem": 0o600}
    assert changed == []  # they were so from the first moment


def test_rights_that_were_given_away_are_taken_back_and_told(folder: Path) -> None:
    Certificates(folder).keep(NOW, HOME)
    folder.chmod(0o755)
    (folder / "authority.pem").chmod(0o644)

    kept = Certificates(folder).keep(NOW, HOME)

    assert (mode(folder), mode(folder / "authority.pem")) == (0o700, 0o600)
    assert [said(trouble) for trouble in kept.troubles] == [
        f"Other users of this computer could read the key in {folder / 'authority.pem'}. Now they no longer can."
    ]
    assert Certificates(folder).keep(NOW, HOME).troubles == ()


@pytest.mark.parametrize("how", ["empty", "half", "noise"])
def test_a_damaged_leaf_is_told_and_made_anew(folder: Path, how: str) -> None:
    first = Certificates(folder).keep(NOW, HOME)
    damage(first.file, how)

    kept = Certificates(folder).keep(NOW, HOME)

    assert kept.made
    assert kept.authority == first.authority
    trouble = said(*kept.troubles)
    assert trouble.startswith(f"The server's certificate in {kept.file} could not be used: it is damaged")
    assert trouble.endswith("A new one was made.")
    verify(kept.leaf, first.authority, "shop-pc.local")


def test_a_leaf_with_the_key_of_another_is_made_anew(folder: Path) -> None:
    first = Certificates(folder).keep(NOW, HOME)
    other = make_leaf(make_authority("shop-pc", NOW), ["localhost"], [], NOW)
    key, certificate = other.pem().split(b"-----BEGIN CERT")[0], first.file.read_bytes().split(b"-----BEGIN CERT")[1]
    first.file.write_bytes(key + b"-----BEGIN CERT" + certificate)

    kept = Certificates(folder).keep(NOW, HOME)

    assert kept.made
    assert "its key does not belong to its certificate" in said(kept.troubles[0])


def test_a_leaf_of_another_authority_is_made_anew(folder: Path) -> None:
    first = Certificates(folder).keep(NOW, HOME)
    first.file.write_bytes(make_leaf(make_authority("shop-pc", NOW), ["localhost"], [], NOW).pem())

    kept = Certificates(folder).keep(NOW, HOME)

    verify(kept.leaf, first.authority, "shop-pc.local")


@pytest.mark.parametrize("how", ["empty", "half", "noise"])
def test_a_damaged_authority_is_told_and_never_replaced(folder: Path, how: str) -> None:
    Certificates(folder).keep(NOW, HOME)
    damage(folder / "authority.pem", how)
    before = {path: path.read_bytes() for path in folder.iterdir()}

    with pytest.raises(AuthorityLost) as lost:
        Certificates(folder).keep(NOW, HOME)
    assert re.search(r"authority\.pem cannot be used: it is damaged .* from a backup", said(lost.value.trouble))

    assert {path: path.read_bytes() for path in folder.iterdir()} == before


def test_an_authority_that_is_gone_is_told_and_never_replaced(folder: Path) -> None:
    Certificates(folder).keep(NOW, HOME)
    (folder / "authority.pem").unlink()

    with pytest.raises(AuthorityLost) as lost:
        Certificates(folder).keep(NOW, HOME)
    assert "it is not there, though a leaf of it is" in said(lost.value.trouble)
    with pytest.raises(AuthorityLost):
        Certificates(folder).authority()


def test_a_leaf_put_in_the_authoritys_place_is_none(folder: Path) -> None:
    kept = Certificates(folder).keep(NOW, HOME)
    (folder / "authority.pem").write_bytes(kept.file.read_bytes())

    with pytest.raises(AuthorityLost) as lost:
        Certificates(folder).keep(NOW, HOME)
    assert "no certificate authority of a shop" in said(lost.value.trouble)


def test_an_authority_that_has_ended_is_told_and_never_replaced(folder: Path) -> None:
    ends = Certificates(folder).keep(NOW, HOME).authority.not_valid_after_utc

    with pytest.raises(AuthorityLost) as lost:
        Certificates(folder).keep(ends + timedelta(days=1), HOME)
    assert f"ended on {in_words(ends.date(), UTC)}." in said(lost.value.trouble)


def test_asking_for_the_authority_makes_none(folder: Path) -> None:
    assert Certificates(folder).authority() is None
    assert not folder.exists()


@pytest.mark.parametrize("step", ["write", "fsync", "replace"])
@pytest.mark.parametrize("crash", [OSError(28, "No space left on device"), KeyboardInterrupt()])
def test_a_crash_while_renewing_leaves_the_old_leaf_whole(
    folder: Path, monkeypatch: pytest.MonkeyPatch, step: str, crash: BaseException
) -> None:
    kept = Certificates(folder).keep(NOW, HOME)
    before = kept.file.read_bytes()
    _crash_at(monkeypatch, step, crash)

    with pytest.raises(type(crash)):
        Certificates(folder).keep(NOW, at("10.0.0.5"))

    monkeypatch.undo()
    assert kept.file.read_bytes() == before
    assert sorted(path.name for path in folder.iterdir()) == ["authority.pem", "leaf.pem"]
    assert Certificates(folder).keep(NOW, at("10.0.0.5")).made


def test_what_a_power_cut_left_half_written_is_cleared_away(folder: Path) -> None:
    """After a power cut no clean-up has run: half a key lies beside the files."""
    kept = Certificates(folder).keep(NOW, HOME)
    (folder / ".leaf.pem.0a1b2c3d.new").write_bytes(kept.file.read_bytes()[:50])

    again = Certificates(folder).keep(NOW, HOME)

    assert not again.made
    assert sorted(path.name for path in folder.iterdir()) == ["authority.pem", "leaf.pem"]


def test_a_crash_before_the_first_authority_is_whole_leaves_none(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    _crash_at(monkeypatch, "fsync", KeyboardInterrupt())
    with pytest.raises(KeyboardInterrupt):
        Certificates(folder).keep(NOW, HOME)
    monkeypatch.undo()

    assert list(folder.iterdir()) == []
    assert Certificates(folder).keep(NOW, HOME).made


def test_two_servers_that_start_at_once_agree_on_one_authority(folder: Path) -> None:
    folder.mkdir()
    ready = threading.Barrier(8)

    def begin(number: int) -> None:
        ready.wait()
        first = private_file.write_first(folder / "authority.pem", str(number).encode())
        won.extend([number] if first else [])

    won: list[int] = []
    threads = [threading.Thread(target=begin, args=(number,)) for number in range(8)]
    for one in threads:
        one.start()
    for one in threads:
        one.join()

    assert [(folder / "authority.pem").read_text()] == [str(one) for one in won]


def test_a_disk_without_hard_links_will_do(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> None:
        raise OSError(95, "Operation not supported")

    monkeypatch.setattr(os, "link", refuse)

    kept = Certificates(folder).keep(NOW, HOME)

    assert read_pair((folder / "authority.pem").read_bytes()).certificate == kept.authority


def _crash_at(monkeypatch: pytest.MonkeyPatch, step: str, crash: BaseException) -> None:
    def fail(*_: object, **__: object) -> None:
        raise crash

    if step == "write":
        real: Callable[..., object] = os.fdopen

        def half(opened: int, how: str) -> object:
            file = real(opened, how)
            monkeypatch.setattr(os, "fsync", fail)
            file.write(b"half")  # type: ignore[attr-defined]
            return file

        monkeypatch.setattr(os, "fdopen", half)
    else:
        monkeypatch.setattr(*((os, "fsync") if step == "fsync" else (Path, "replace")), fail)
