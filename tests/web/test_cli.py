"""The commands: what was typed wrong gets a sentence and exit code 2, and nothing is half-written."""

import json
import re
import socket
import time
from pathlib import Path

import httpx
import pytest

from runboard.cli import main
from runboard.floor.changing.exchange import export_run
from runboard.floor.changing.runs import Wish, open_run
from runboard.opening import open_workshop
from tests.scenario import shop
from tests.serving import running
from tests.web.at_terminal import Terminal
from tests.web.test_taps import BOOK

LASER = {"key": "laser", "name": "Laser", "kind": "laser", "room": "shop"}


@pytest.fixture
def data(tmp_path: Path) -> Path:
    return tmp_path / "shop"


def written(place: Path, record: object) -> str:
    path = place / "file.json"
    path.write_text(record if isinstance(record, str) else json.dumps(record), "utf-8")
    return str(path)


def test_a_book_goes_in_and_comes_out_again(data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["import", "--data", str(data), written(tmp_path, BOOK)]) == 0
    capsys.readouterr()

    assert main(["export", "--data", str(data)]) == 0
    first = json.loads(capsys.readouterr().out)
    main(["import", "--data", str(tmp_path / "other"), written(tmp_path, first)])
    capsys.readouterr()
    main(["export", "--data", str(tmp_path / "other")])

    assert json.loads(capsys.readouterr().out) == first
    assert first["name"] == BOOK["name"]


@pytest.mark.parametrize(
    ("record", "said"),
    [
        ({**BOOK, "rooms": [{"key": "shop"}]}, "the field 'name' is missing"),
        ({**BOOK, "time_zone": "Nowhere/At-all"}, "no time zone 'Nowhere/At-all'"),
        ({**BOOK, "stations": [LASER | {"watch_every_minutes": 6}]}, "asked at least every 5 min"),
        ({"runboard_book": 9}, "runboard_book 9"),
        ({"name": "?"}, "is neither a shop's book nor a run"),
        ([], "is neither a shop's book nor a run"),
        ('{"runboard_book": 1,\n "name": }', "is no JSON. Line 2, column 10."),
    ],
)
def test_a_wrong_file_gets_a_sentence_and_makes_no_folder(
    data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], record: object, said: str
) -> None:
    code = main(["import", "--data", str(data), written(tmp_path, record)])

    assert code == 2
    assert said in capsys.readouterr().err
    assert not data.exists()


def test_a_file_that_is_not_there_is_named(data: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["import", "--data", str(data), "nothing.json"]) == 2

    assert capsys.readouterr().err == "runboard: nothing.json cannot be read: No such file or directory.\n"


def test_export_makes_no_folder(data: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["export", "--data", str(data)]) == 2

    assert "there is no data folder" in capsys.readouterr().err
    assert not data.exists()


def test_a_run_that_is_not_there_gets_a_sentence(
    data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["import", "--data", str(data), written(tmp_path, BOOK)])
    capsys.readouterr()

    assert main(["export", "--data", str(data), "--run", "r9"]) == 2

    told = capsys.readouterr()
    assert told.out == ""
    assert told.err.startswith("runboard: ")


@pytest.mark.parametrize("ending", ["json", "zip", "sqlite"])
def test_tables_of_everything_are_written_in_the_form_that_their_file_is_named_after(
    data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], ending: str
) -> None:
    store, workshop = open_workshop(data)
    workshop.books.save(shop(), workshop.clock.now())
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": 12}], name="Rails"), "ann")
    store.close()
    file = tmp_path / f"all.{ending}"

    assert main(["export", "--data", str(data), "--tables", str(file)]) == 0

    assert file.stat().st_size
    assert capsys.readouterr().out == f"{file}: 1 run, 0 times.\n"
    assert [path.name for path in tmp_path.iterdir() if "part" in path.name] == []


def test_a_file_for_tables_that_says_no_form_is_not_written(
    data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    open_workshop(data)[0].close()

    assert main(["export", "--data", str(data), "--tables", str(tmp_path / "all.xlsx")]) == 2

    assert "End its name with one of these: .json, .zip, .sqlite." in capsys.readouterr().err
    assert not (tmp_path / "all.xlsx").exists()


@pytest.mark.parametrize(("answer", "code", "events"), [("n", 2, 0), ("y", 0, 1)])
def test_whoever_takes_a_run_at_a_terminal_is_shown_it_and_asked(
    data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch,
    answer: str, code: int, events: int,
) -> None:  # fmt: skip
    friend = open_workshop(tmp_path / "friend")
    friend[1].books.save(shop(), friend[1].clock.now())
    open_run(friend[1], Wish("rail", [{"line": "1", "pieces": 12}], name="Rails"), "ann")
    file = written(tmp_path, export_run(friend[1], "r1"))
    friend[0].close()
    main(["import", "--data", str(data), written(tmp_path / "friend", shop())])
    monkeypatch.setattr("sys.stdin", Terminal(f"{answer}\n"))
    capsys.readouterr()

    assert main(["import", "--data", str(data), file]) == code

    assert "Rails: 12 pieces wanted, 3 trays, 1 event new here" in capsys.readouterr().out
    store, _ = open_workshop(data)
    assert store.log.last_seq() == events
    store.close()


def test_a_port_that_is_taken_is_told(data: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with socket.create_server(("127.0.0.1", 0)) as other:
        port = other.getsockname()[1]
        code = main(["serve", "--data", str(data), "--port", str(port), "--no-open"])

    assert code == 2
    assert f"port {port} cannot be used" in capsys.readouterr().err
    assert not data.exists()


def test_a_code_for_a_lost_phone_pairs_while_the_shop_is_served(data: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with running("serve", "--data", str(data)) as server:
        server.pair()
        main(["pair", "--data", str(data)])
        code = capsys.readouterr().out.removeprefix("The code is ")[:14]

        answer = httpx.post(f"{server.address}pair", data={"code": code, "name": "Another phone"})

    assert answer.status_code == 303
    assert answer.headers["set-cookie"].startswith("runboard=")


def test_a_served_shop_shows_a_code_until_a_lead_is_paired(data: Path) -> None:
    with running("serve", "--data", str(data)) as server:
        until = time.monotonic() + 10  # what it prints is read by a thread of its own
        while "code" not in "".join(server.said) and time.monotonic() < until:
            time.sleep(0.02)
        server.pair()
    first = "".join(server.said)
    with running("serve", "--data", str(data)) as server:
        pass

    assert re.search(r"code ([2-9A-Z]{4}-[2-9A-Z]{4}-[2-9A-Z]{4}), once.*\n\S+/pair\?code=\1\n", first)
    assert server.said[0] == f"runboard is at {server.address}\n"
    assert "pair" not in "".join(server.said)


def test_a_code_makes_no_folder(data: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["pair", "--data", str(data)]) == 2

    assert "there is no data folder" in capsys.readouterr().err
    assert not data.exists()


@pytest.mark.parametrize("port", ["-1", "65536", "http", ""])
def test_what_is_no_port_is_told(data: Path, capsys: pytest.CaptureFixture[str], port: str) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["serve", "--data", str(data), "--port", port])

    assert ended.value.code == 2
    assert "port" in capsys.readouterr().err


def test_the_demo_keeps_out_of_a_folder_with_something_in_it(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "letter.txt").write_text("mine", "utf-8")

    assert main(["demo", "--data", str(tmp_path), "--no-open"]) == 2

    assert "holds something else" in capsys.readouterr().err
    assert [path.name for path in tmp_path.iterdir()] == ["letter.txt"]
