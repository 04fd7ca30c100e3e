"""What a copy may not do when it is put back: reach beyond itself, be another than it was, or let in whom nobody chose."""

import hashlib
import os
import sqlite3
import subprocess
from collections.abc import Callable
from contextlib import closing
from dataclasses import dataclass, field
from datetime import timedelta
from pathlib import Path

import pytest

from runboard.floor.keeping.broker import Broker, set_broker
from runboard.floor.keeping.outside import add_channel
from runboard.floor.keeping.signals import Ears, make_sensor
from runboard.floor.letting_in.devices import Door, begin_session, make_code, pair, revoke_device, who
from runboard.floor.letting_in.travellers import read_keys, traveller_link
from runboard.floor.workshop import Workshop
from runboard.run.calls.device import Device
from runboard.run.calls.push import Subscription
from runboard.store.backup import BackupFolder
from runboard.store.let_in import DeviceIn, LetIn
from runboard.store.open import Store, open_store
from runboard.store.pictures import PictureFolder
from runboard.store.proof import BadCopy
from runboard.store.restore import look_at, restore
from tests.conftest import START, HandClock
from tests.floor.fakes import Told
from tests.scenario import shop
from tests.store.test_backup import ids_in, write_notes


@dataclass
class Copied:
    """A copy on a stick, with a picture and a program beside it, and the folder of another shop, which it may replace."""

    stick: Path
    file: Path
    data: Path
    picture: str
    kept: dict[str, str] = field(default_factory=dict)

    @property
    def list_(self) -> Path:
        return self.file.with_suffix(".sha256")

    def files(self) -> list[str]:
        """What lies in the files of the shop's folder."""
        return sorted(str(one.relative_to(self.data)) for one in (self.data / "files").rglob("*") if not one.is_dir())

    def left(self) -> dict[str, str]:
        return dict(look_at(self.data, self.file, START).files.left)


@pytest.fixture
def copied(tmp_path: Path) -> Copied:
    made, stick, data = tmp_path / "made", tmp_path / "stick", tmp_path / "data"
    store = open_store(made)
    store.books.save(shop(), START)
    write_notes(store, 1, 2)
    picture = PictureFolder(made).keep(b"a picture", "jpg")
    (made / "files" / "ab").mkdir()
    (made / "files" / "ab" / "rail.ngc").write_text("G0 X0", "utf-8")
    file = BackupFolder(made).make(START).path
    store.close()
    (made / "backups").rename(stick)
    other = open_store(data)
    other.books.save(shop(), START)
    write_notes(other, 8, 9)
    other.close()
    return Copied(stick, stick / file.name, data, picture)


def named(content: bytes) -> str:
    return f"files/{hashlib.sha256(content).hexdigest()}.jpg"


def add(copied: Copied, name: str, content: bytes) -> Path:
    """One more file in the copy, which its list names."""
    path = copied.stick / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(content)
    listed(copied, name, content)
    return path


def listed(copied: Copied, name: str, content: bytes = b"") -> None:
    with copied.list_.open("a", encoding="utf-8") as file:
        file.write(f"{hashlib.sha256(content).hexdigest()}  {name}\n")


def stays(copied: Copied, code: str) -> None:
    """The copy is refused, and the shop is as it was."""
    with pytest.raises(BadCopy) as bad:
        restore(copied.data, copied.file, START)
    assert bad.value.code == code
    assert ids_in(copied.data) == ["note-8", "note-9"]
    assert not list(copied.data.glob("replaced-*")) and not (copied.data / "files").exists()


def test_a_copy_brings_its_files_along(copied: Copied) -> None:
    restore(copied.data, copied.file, START)

    assert copied.files() == [f"files/{copied.picture}", "files/ab/rail.ngc"]
    assert copied.left() == {}
    assert ids_in(copied.data) == ["note-1", "note-2"]


def test_the_list_is_read_by_sha256sum(copied: Copied) -> None:
    subprocess.run(
        ["sha256sum", "-c", "--strict", copied.list_.name], cwd=copied.stick, check=True, capture_output=True
    )


# Beyond itself


SECRET = b"what only the lead may read"


def link(place: Path, outside: Path) -> None:
    place.symlink_to(outside / "secret.txt")


def link_to_a_folder(place: Path, outside: Path) -> None:
    place.symlink_to(outside)


def hard_link(place: Path, outside: Path) -> None:
    os.link(outside / "secret.txt", place)


def pipe(place: Path, outside: Path) -> None:
    os.mkfifo(place)


@pytest.mark.parametrize(
    ("how", "why"), [(link, "link"), (link_to_a_folder, "link"), (hard_link, "hard link"), (pipe, "no file")]
)
@pytest.mark.parametrize("name", [named(SECRET), "files/ab/more.ngc"])
def test_what_is_no_plain_file_is_left_and_said(
    copied: Copied, tmp_path: Path, name: str, how: Callable[[Path, Path], None], why: str
) -> None:
    outside = tmp_path / "outside"
    outside.mkdir()
    (outside / "secret.txt").write_bytes(SECRET)
    how(copied.stick / name, outside)
    listed(copied, name, SECRET)

    assert copied.left() == {name: why}
    restore(copied.data, copied.file, START)

    assert copied.files() == [f"files/{copied.picture}", "files/ab/rail.ngc"]
    assert SECRET not in b"".join(one.read_bytes() for one in copied.data.rglob("*") if one.is_file())


def test_files_that_are_a_link_themselves_are_left(copied: Copied, tmp_path: Path) -> None:
    (copied.stick / "files").rename(tmp_path / "away")
    (copied.stick / "files").symlink_to(tmp_path / "away")

    assert copied.left()["files"] == "link"
    restore(copied.data, copied.file, START)

    assert not (copied.data / "files").exists()


def test_a_backup_follows_no_link_either(tmp_path: Path) -> None:
    store = open_store(tmp_path / "shop")
    store.books.save(shop(), START)
    (tmp_path / "secret.txt").write_bytes(SECRET)
    (tmp_path / "shop" / "files").mkdir()
    (tmp_path / "shop" / "files" / "linked.ngc").symlink_to(tmp_path / "secret.txt")

    BackupFolder(tmp_path / "shop").make(START)

    assert not (tmp_path / "shop" / "backups" / "files").exists()
    store.close()


@pytest.mark.parametrize(
    "name",
    ["../../evil", "/etc/evil", "files/../../evil", "files/a/../../../evil", "files\\..\\evil", "files/a\nb", "files/.evil", "files/", "files/C:evil"],
)  # fmt: skip
def test_a_list_that_names_what_lies_elsewhere_is_refused(copied: Copied, name: str) -> None:
    listed(copied, name)

    stays(copied, "bad list")


@pytest.mark.parametrize("text", ["", "Dear Ann", "\xff", "0" * 64 + "  files/x.ngc\n", ("0" * 64 + "  shop.db\n") * 2])
def test_what_is_no_list_is_refused(copied: Copied, text: str) -> None:
    copied.list_.write_text(text, "latin-1")

    stays(copied, "bad list")


def test_names_that_no_file_of_a_shop_has_are_left(copied: Copied) -> None:
    deep = "files" + "/a" * 40
    copied.list_.unlink()
    (copied.stick / deep).mkdir(parents=True)
    for name in ("files/.hidden.ngc", "files/a\nb.ngc", f"{deep}/x.ngc"):
        (copied.stick / name).write_text("G0", "utf-8")

    assert set(copied.left().values()) == {"bad name"} and len(copied.left()) == 3


# Another than it was


def test_a_file_that_was_changed_or_is_gone_is_left_and_said(copied: Copied) -> None:
    gone = add(copied, "files/gone.ngc", b"G1")
    gone.unlink()
    (copied.stick / "files" / copied.picture).write_bytes(b"a pictuRe")
    (copied.stick / "files" / "ab" / "rail.ngc").write_text("G0 X9", "utf-8")

    assert copied.left() == {
        f"files/{copied.picture}": "differs",
        "files/ab/rail.ngc": "differs",
        "files/gone.ngc": "missing",
    }
    restore(copied.data, copied.file, START)

    assert ids_in(copied.data) == ["note-1", "note-2"] and not (copied.data / "files").exists()


def test_a_database_that_is_not_as_its_list_says_is_refused(copied: Copied) -> None:
    with closing(sqlite3.connect(copied.file)) as database:
        database.execute("PRAGMA user_version = 7")

    stays(copied, "not as listed")


def test_a_log_beside_a_copy_is_refused(copied: Copied) -> None:
    copied.file.with_name(f"{copied.file.name}-wal").write_bytes(b"\0" * 32)

    stays(copied, "not as listed")


def test_a_copy_from_before_there_were_lists_is_taken_and_said_to_be_unchecked(copied: Copied) -> None:
    assert look_at(copied.data, copied.file, START).is_listed
    copied.list_.unlink()
    (copied.stick / named(b"what it says")).write_bytes(b"something else")

    looked = look_at(copied.data, copied.file, START)

    assert not looked.is_listed and looked.files.unchecked == 1  # the program; a picture is named by what is in it
    assert copied.left() == {named(b"what it says"): "differs"}
    restore(copied.data, copied.file, START)
    assert copied.files() == [f"files/{copied.picture}", "files/ab/rail.ngc"]


def test_what_belongs_to_another_copy_is_no_fault_of_this_one(copied: Copied) -> None:
    (copied.stick / named(b"later")).write_bytes(b"later")

    assert copied.left() == {}


def test_a_file_of_the_shop_that_is_spoilt_is_put_right(copied: Copied) -> None:
    (copied.data / "files").mkdir()
    (copied.data / "files" / copied.picture).write_bytes(b"b picture")

    restore(copied.data, copied.file, START)

    assert (copied.data / "files" / copied.picture).read_bytes() == b"a picture"


def test_a_copy_that_changes_after_it_was_looked_at_replaces_nothing(copied: Copied) -> None:
    copied.list_.unlink()
    looked = look_at(copied.data, copied.file, START)
    (copied.stick / "files" / "ab" / "rail.ngc").write_text("G0 X9", "utf-8")

    with pytest.raises(BadCopy, match="changing"):
        restore(copied.data, copied.file, START, looked=looked)

    assert ids_in(copied.data) == ["note-8", "note-9"] and copied.files() == []


def test_files_that_are_too_large_for_the_disk_are_refused_unread(
    copied: Copied, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("runboard.store.restore._room", lambda data: 5)
    monkeypatch.setattr("runboard.store.files.digest_of", lambda *_: pytest.fail("it was read"))

    stays(copied, "no room")


def test_where_the_last_step_fails_no_file_stays(copied: Copied, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("runboard.store.restore._replace", full)

    with pytest.raises(BadCopy, match="no room"):
        restore(copied.data, copied.file, START)

    assert ids_in(copied.data) == ["note-8", "note-9"] and copied.files() == []
    with pytest.raises(BadCopy, match="no room"):
        restore(copied.data.with_name("new"), copied.file, START)
    assert not copied.data.with_name("new").exists()


# Whom it lets in


@dataclass
class Paired:
    """A shop with devices, a sensor, cards and ways out, and the secrets of those whom it lets in."""

    copy: Path
    lead: str
    guest: str
    code: str
    card: str
    device: str


@pytest.fixture
def paired(tmp_path: Path, clock: HandClock) -> Paired:
    store = open_store(tmp_path / "made")
    store.books.save(shop(), START)
    door, ears = door_of(store, clock), Ears(workshop_of(store, clock), store.sensors, store.settings)
    lead, session = pair(door, make_code(door, "lead")[0], "Ann's phone", "10.0.0.2")
    _, gone = pair(door, make_code(door, "lead")[0], "Lost phone", "10.0.0.3")
    revoke_device(door, gone.device.id)
    guest, _ = begin_session(door, Device("g1", "Mia", "guest", START, run="r1", tray="4"), START + timedelta(hours=8))
    begin_session(door, Device("g2", "Tom", "guest", START, run="r1", tray="5"), START)  # their hours are over
    store.push.put(Subscription(session.device.id, "https://push.example/1", "p", "a", START))
    make_sensor(ears, "cnc", "Plug")
    add_channel(store.settings, "Lamp", "json://192.168.1.20/lamp", bool)
    set_broker(ears, Broker(on=True, host="broker.local"))
    card = traveller_link(read_keys(store.settings), "r1", "4").code
    code, _ = make_code(door, "lead")
    copy = BackupFolder(tmp_path / "made").make(START).path
    store.close()
    return Paired(copy, lead, guest, code, card, session.device.id)


def door_of(store: Store, clock: HandClock) -> Door:
    return Door(store.devices, clock)


def workshop_of(store: Store, clock: HandClock) -> Workshop:
    return Workshop(store.log, store.books, clock, Told())


def test_a_copy_says_whom_it_lets_in_and_where_it_sends(paired: Paired, tmp_path: Path, clock: HandClock) -> None:
    assert look_at(tmp_path / "data", paired.copy, clock.now()).let_in == LetIn(
        devices=(DeviceIn("Ann's phone", "lead"), DeviceIn("Mia", "guest")),
        sensors=("Plug",),
        cards=True,
        channels=("Lamp",),
        broker="broker.local",
    )


def test_a_device_that_was_revoked_since_the_copy_is_marked(paired: Paired, tmp_path: Path, clock: HandClock) -> None:
    store = open_store(tmp_path / "made")
    revoke_device(door_of(store, clock), paired.device)
    store.close()

    def marked() -> list[str]:
        looked = look_at(tmp_path / "made", paired.copy, START)
        return [one.name for one in looked.let_in.devices if one.revoked_here]

    assert marked() == ["Ann's phone"]
    restore(tmp_path / "made", paired.copy, START)
    (tmp_path / "made" / "shop.db").write_bytes(b"ruined" * 999)
    assert marked() == []


def test_nobody_is_let_in_whom_no_person_chose(paired: Paired, tmp_path: Path, clock: HandClock) -> None:
    restore(tmp_path / "data", paired.copy, START)

    store = open_store(tmp_path / "data")
    door = door_of(store, clock)
    assert who(door, paired.lead) is None and who(door, paired.guest) is None
    assert store.sensors.sensors() == [] and store.push.subscriptions() == []
    assert traveller_link(read_keys(store.settings), "r1", "4").code != paired.card
    with pytest.raises(Exception, match="pairing code wrong"):
        pair(door, paired.code, "", "10.0.0.9")
    # A device that pairs again is known as the one that it was.
    _, session = pair(door, make_code(door, "lead")[0], "", "10.0.0.2", paired.lead)
    assert session.device.id == paired.device
    store.close()


def test_those_whom_a_person_chose_to_keep_are_let_in_but_no_waiting_code(
    paired: Paired, tmp_path: Path, clock: HandClock
) -> None:
    restore(tmp_path / "data", paired.copy, START, let_in=True)

    store = open_store(tmp_path / "data")
    door = door_of(store, clock)
    assert who(door, paired.lead) and who(door, paired.guest)
    assert len(store.sensors.sensors()) == len(store.push.subscriptions()) == 1
    assert traveller_link(read_keys(store.settings), "r1", "4").code == paired.card
    with pytest.raises(Exception, match="pairing code wrong"):
        pair(door, paired.code, "", "10.0.0.9")
    store.close()


def test_a_session_that_ends_at_no_moment_is_refused(paired: Paired, tmp_path: Path) -> None:
    paired.copy.with_suffix(".sha256").unlink()
    with closing(sqlite3.connect(paired.copy)) as database:
        database.execute("UPDATE session SET ends_at = 'never'")
        database.commit()

    with pytest.raises(BadCopy, match="does not fold"):
        restore(tmp_path / "data", paired.copy, START, let_in=True)
    assert not (tmp_path / "data").exists()
