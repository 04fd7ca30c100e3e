"""The commands and the Shop page: a copy now, how old the last is, why one failed, and back again."""

from datetime import UTC, datetime
from pathlib import Path

import pytest
from flask.testing import FlaskClient

from runboard.app import build
from runboard.cli import main
from runboard.house import House, Settings
from runboard.store.connect import FILE_NAME
from runboard.store.holding import hold
from runboard.store.open import open_store
from runboard.words.sentences import day_in_words
from tests.conftest import HandClock
from tests.pairing import paired
from tests.scenario import shop
from tests.web.test_taps import batch, came


@pytest.fixture
def filled(house: House) -> House:
    house.workshop.books.save(shop(), house.workshop.clock.now())
    house.app.test_client().post("/taps", json=batch(came()))
    return house


def shown(client: FlaskClient) -> str:
    return " ".join(client.get("/shop").get_data(as_text=True).split())


def test_a_copy_is_made_from_the_shop_page(filled: House, client: FlaskClient) -> None:
    assert "No backup yet" in shown(client)

    answer = client.post("/shop/copies")

    assert (answer.status_code, answer.location) == (303, "/shop#copies")
    assert "Last backup: 10:00, 1 event." in shown(client)
    assert 'role="alert"' not in shown(client)


def test_an_old_copy_is_red(filled: House, client: FlaskClient, clock: HandClock) -> None:
    client.post("/shop/copies")

    clock.forward(hours=49)

    assert '<ul class="problems" role="alert"><li>Last backup: Sat 10:00.' in shown(client)


def test_a_copy_that_failed_is_red_and_says_why(
    filled: House, client: FlaskClient, clock: HandClock, monkeypatch: pytest.MonkeyPatch
) -> None:
    client.post("/shop/copies")
    monkeypatch.setattr("runboard.store.copying._LEFT_FREE", 10**18)
    clock.forward(days=1)

    answer = client.post("/shop/copies")

    assert answer.status_code == 303
    assert "<li>Backup failed (10:00)." in shown(client)
    assert "Not enough space in" in shown(client)
    assert "The last one is from Sat 10:00." in shown(client)


def test_the_nightly_copy_fails_without_ending_anything(filled: House, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("runboard.store.copying._LEFT_FREE", 10**18)

    assert not filled.nightly.turn()
    monkeypatch.undo()

    assert "Backup failed" in shown(filled.app.test_client())


def test_the_nightly_copy_is_made_by_the_server(filled: House) -> None:
    assert [filled.nightly.turn(), filled.nightly.turn()] == [True, False]
    assert "Last backup: " in shown(filled.app.test_client())


@pytest.mark.parametrize(("day", "words"), [(25, "today"), (24, "yesterday"), (23, "Mon 23 Nov"), (26, "tomorrow")])
def test_a_day_is_said_as_people_do(day: int, words: str) -> None:
    now = datetime(2026, 11, 25, 12, tzinfo=UTC)

    assert day_in_words(datetime(2026, 11, day, 3, tzinfo=UTC), now, UTC) == words


def test_a_folder_that_others_could_read_is_said_at_the_start_and_on_the_shop_page(
    data: Path, clock: HandClock, caplog: pytest.LogCaptureFixture
) -> None:
    for path in (data, *data.iterdir()):
        path.chmod(0o755 if path.is_dir() else 0o644)

    built = build(Settings(data, clock, open_to_all=True))

    assert "Other users of this computer could read the shop in" in shown(built.app.test_client())
    built.close()
    assert f"could read the shop in {data}, with its keys and passwords. Now they no longer can." in caplog.text
    caplog.clear()
    build(Settings(data, clock, open_to_all=True)).close()
    assert caplog.text == ""


@pytest.fixture
def data(tmp_path: Path, clock: HandClock) -> Path:
    """A data folder that nobody serves."""
    folder = tmp_path / "shop"
    built = build(Settings(folder, clock, open_to_all=True))
    built.workshop.books.save(shop(), clock.now())
    assert built.app.test_client().post("/taps", json=batch(came())).status_code == 200
    built.close()
    return folder


def test_a_copy_goes_out_and_comes_back(data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["backup", "--data", str(data), "--to", str(tmp_path)]) == 0
    (copy,) = tmp_path.glob("shop-*.db")
    assert capsys.readouterr().out == f"{copy}: 1 event.\n"

    assert main(["restore", "--data", str(data), str(copy)]) == 0

    out = capsys.readouterr().out
    assert f"{copy} is whole: {shop()['name']}, 1 event, the last of Sat 7 Mar 2026, 10:00." in out
    assert f"It is in place in {data}. What it replaced is in {data / 'replaced-'}" in out


def test_a_copy_goes_into_the_data_folder_by_itself(data: Path) -> None:
    with hold(data):  # while a server serves it
        assert main(["backup", "--data", str(data)]) == 0

    assert len(list((data / "backups").glob("shop-*.db"))) == 1


@pytest.mark.parametrize(
    ("command", "said"),
    [
        (["backup", "--data", "{tmp}/nowhere"], "There is no shop in {tmp}/nowhere."),
        (["backup", "--data", "{data}", "--to", "{tmp}/nowhere"], "There is no folder {tmp}/nowhere. Is the disk"),
        (["restore", "--data", "{data}", "{tmp}/nothing.db"], "There is no file {tmp}/nothing.db."),
        (["restore", "--data", "{data}", "{tmp}/letter.txt"], "is not a backup of a shop: it is not a database."),
        (["restore", "--data", "{data}", "{data}/shop.db"], "is the shop itself, not a backup of it."),
    ],
)
def test_what_cannot_be_done_gets_a_sentence(
    data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], command: list[str], said: str
) -> None:
    (tmp_path / "letter.txt").write_text("Dear Ann, " * 99, "utf-8")
    before = (data / FILE_NAME).read_bytes()

    code = main([part.format(data=data, tmp=tmp_path) for part in command])

    assert code == 2
    assert said.format(tmp=tmp_path) in capsys.readouterr().err
    assert (data / FILE_NAME).read_bytes() == before
    assert not (tmp_path / "nowhere").exists()


def test_nothing_is_put_back_under_a_running_server(
    data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["backup", "--data", str(data), "--to", str(tmp_path)])
    (copy,) = tmp_path.glob("shop-*.db")

    with hold(data):
        assert main(["restore", "--data", str(data), str(copy)]) == 2

    assert "is in use. Stop runboard there" in capsys.readouterr().err


@pytest.mark.parametrize("command", ["serve", "export"])
def test_nothing_opens_a_shop_that_is_being_put_back(
    data: Path, capsys: pytest.CaptureFixture[str], command: str
) -> None:
    with hold(data, alone=True):
        more = ["--port", "0", "--no-open"] if command == "serve" else []
        assert main([command, "--data", str(data), *more]) == 2

    assert "a backup is being restored" in capsys.readouterr().err


@pytest.mark.parametrize("command", ["serve", "export"])
def test_a_ruined_database_is_told_with_what_to_do(
    data: Path, capsys: pytest.CaptureFixture[str], command: str
) -> None:
    (data / FILE_NAME).write_bytes(b"ruined" * 999)

    more = ["--port", "0", "--no-open"] if command == "serve" else []
    assert main([command, "--data", str(data), *more]) == 2

    assert "restore a backup with runboard restore" in capsys.readouterr().err


# Whom a copy lets in


@pytest.fixture
def lent(data: Path, tmp_path: Path) -> Path:
    """A copy with a lead's phone, whose name would wipe a terminal, and a helper's."""
    paired(data, name="Ann's \x1b[2Jphone\nand more")
    paired(data, "crew", "Bench tablet")
    main(["backup", "--data", str(data), "--to", str(tmp_path)])
    (copy,) = tmp_path.glob("shop-*.db")
    return copy


def let_in(folder: Path) -> list[str]:
    """The names of the devices that a shop lets in."""
    store = open_store(folder)
    names = [one.name for one in store.devices.devices() if one.revoked_at is None]
    store.close()
    return names


def at_the_terminal(monkeypatch: pytest.MonkeyPatch, answer: str | type[BaseException]) -> list[str]:
    """A person who is asked answers so; gives what they were asked."""
    asked: list[str] = []

    def answered(question: str) -> str:
        asked.append(question)
        if isinstance(answer, str):
            return answer
        raise answer

    monkeypatch.setattr("sys.stdin.isatty", lambda: True)
    monkeypatch.setattr("builtins.input", answered)
    return asked


@pytest.mark.parametrize(
    ("answer", "are_kept"), [("y", True), ("Yes ", True), ("", False), ("n", False), ("what", False)]
)
def test_a_person_at_the_terminal_says_whether_a_copys_devices_stay_let_in(
    lent: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, answer: str,
    are_kept: bool,
) -> None:  # fmt: skip
    asked = at_the_terminal(monkeypatch, answer)

    assert main(["restore", "--data", str(tmp_path / "new"), str(lent)]) == 0

    out = capsys.readouterr().out
    assert (
        "These get access as soon as it is served:\n  Ann's [2Jphone and more (a lead's)\n  Bench tablet (a helper's)\n"
        in out
    )
    assert asked[0].startswith("Keep their access?") and asked[0].endswith("[y/N] ")
    assert bool(let_in(tmp_path / "new")) is are_kept
    assert ("Nobody has access: " in out) is not are_kept


@pytest.mark.parametrize("answer", [EOFError, KeyboardInterrupt])
def test_who_gives_up_at_the_question_changes_nothing(
    lent: Path, data: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch,
    answer: type[BaseException],
) -> None:  # fmt: skip
    at_the_terminal(monkeypatch, answer)
    before = (data / FILE_NAME).read_bytes()

    assert main(["restore", "--data", str(data), str(lent)]) == 2

    assert capsys.readouterr().err == "runboard: Nothing was changed.\n"
    assert (data / FILE_NAME).read_bytes() == before


def test_where_nobody_can_be_asked_the_command_has_to_say_it(
    lent: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    command = ["restore", "--data", str(tmp_path / "new"), str(lent)]

    assert main(command) == 2
    assert "--let-in all, or --let-in nobody" in capsys.readouterr().err
    assert not (tmp_path / "new").exists()
    assert main([*command, "--let-in", "nobody"]) == 0
    assert let_in(tmp_path / "new") == []
    assert main([*command, "--let-in", "all"]) == 0
    assert len(let_in(tmp_path / "new")) == 2


def test_a_device_that_was_revoked_since_is_said(
    lent: Path, data: Path, clock: HandClock, capsys: pytest.CaptureFixture[str]
) -> None:
    store = open_store(data)
    (helper,) = [one for one in store.devices.devices() if one.access == "crew"]
    store.devices.revoke(helper.id, clock.now())
    store.close()

    main(["restore", "--data", str(data), "--let-in", "nobody", str(lent)])

    assert "Bench tablet (a helper's), shut out here after the backup was made\n" in capsys.readouterr().out


def test_what_of_a_copy_is_not_taken_or_cannot_be_compared_is_said(
    lent: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    lent.with_suffix(".sha256").unlink()
    (tmp_path / "files").mkdir()
    (tmp_path / "files" / "leak.ngc").symlink_to("/etc/hostname")

    assert main(["restore", "--data", str(tmp_path / "new"), "--let-in", "nobody", str(lent)]) == 0

    out = capsys.readouterr().out
    assert "It has no list of digests beside it" in out
    assert "These of its files are left out:\n  files/leak.ngc: a link to somewhere else\n" in out
