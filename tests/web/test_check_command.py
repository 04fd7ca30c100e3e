"""'runboard check': a file looked at before a run, on paper's side of the screen: lines, JSON, exit codes, and one sentence where it
cannot be read."""

import json
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest

from runboard.cli import main
from runboard.demo.book import demo_book
from runboard.floor.looking import answers
from runboard.plan.before.asking import question_to_json
from runboard.plan.before.kinds import KINDS
from runboard.shop.book_json import book_from_json
from runboard.store.open import open_store
from tests import scenario
from tests.conftest import START

RAIL = """%
(entry key rail: its outline)
G21 G90 G17
T1 M6
S18000 M3
G0 Z5
G0 X0 Y0
G1 Z-3 F300
G1 X300 F1200
G1 Y60
G1 X0
G1 Y0
G0 Z5
M30
%
"""


def written(folder: Path, text: str | bytes = RAIL, name: str = "rail.ngc") -> str:
    path = folder / name
    path.write_bytes(text.encode() if isinstance(text, str) else text)
    return str(path)


def record(capsys: pytest.CaptureFixture[str], *typed: str) -> dict[str, Any]:
    assert main(["check", *typed, "--json"]) in (0, 1)
    found: dict[str, Any] = json.loads(capsys.readouterr().out)
    return found


def a_shop(folder: Path, **motion: float) -> str:
    shop = scenario.shop()
    shop["stations"][0]["motion"] = motion
    store = open_store(folder / "shop")
    store.books.save(shop, START)
    store.close()
    return str(folder / "shop")


def test_a_program_is_said_in_lines(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", written(tmp_path)]) == 0

    said = capsys.readouterr().out.splitlines()
    assert said[0] == "About 38 s per load, 36 s of it cutting"
    assert "Cutting    36 s  720 mm" in said


def test_a_program_s_record_has_what_other_programs_read(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    found = record(capsys, written(tmp_path))

    assert found["kind"] == "program"
    assert {"total", "cutting", "rapid", "plunge", "dwell"} <= found["seconds"].keys()
    assert found["length_mm"]["cutting"] == pytest.approx(720)
    assert found["extent_mm"] == {"x": [0, 300], "y": [0, 60], "z": [-3, 5]}
    assert 0 < found["air_share"] < 1
    assert [tool["tool"] for tool in found["tools"]] == [1]
    assert found["doubts"] == []


def test_figures_that_are_typed_take_the_place_of_the_station_s(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file, shop = written(tmp_path), a_shop(tmp_path, rapid=600.0)

    usual, slow = record(capsys, file), record(capsys, file, "--data", shop, "--station", "cnc")
    typed = record(capsys, file, "--data", shop, "--station", "CNC", "--rapid", "5000")
    lively = record(capsys, file, "--accel", "4000", "--corner", "0.5")

    assert slow["seconds"]["rapid"] < usual["seconds"]["rapid"] + 10
    assert typed["seconds"]["cutting"] == usual["seconds"]["cutting"]
    assert lively["seconds"]["cutting"] < usual["seconds"]["cutting"]


def test_a_doubt_that_may_change_the_time_is_an_exit_code(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = written(tmp_path, RAIL.replace("F1200", "").replace("F300", ""))

    assert main(["check", file, "--json"]) == 1

    doubts = json.loads(capsys.readouterr().out)["doubts"]
    assert {doubt["line"] for doubt in doubts} == {8, 9, 10, 11, 12}
    assert all(doubt["text"].startswith("Line ") for doubt in doubts)


def test_a_file_without_an_ending_is_read_by_how_it_begins(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert record(capsys, written(tmp_path, name="rail"))["kind"] == "program"


def test_a_question_as_json_names_its_kind_and_its_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    written(tmp_path)
    file = written(tmp_path, json.dumps({"kind": "program", "file": "rail.ngc", "rapid": 800}), "asked.json")

    assert record(capsys, file)["file"] == "rail.ngc"


def test_its_drawing_is_written_as_a_file_that_a_browser_opens(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check", written(tmp_path), "--out", str(tmp_path / "rail.svg")]) == 0

    drawing = ElementTree.parse(tmp_path / "rail.svg").getroot()
    assert drawing.tag == "{http://www.w3.org/2000/svg}svg"
    assert ".travel" in (drawing.findtext("{http://www.w3.org/2000/svg}style") or "")


@pytest.mark.parametrize("name", [kind.name for kind in KINDS.values() if not kind.needs_file])
def test_every_kind_is_asked_by_its_fields(tmp_path: Path, capsys: pytest.CaptureFixture[str], name: str) -> None:
    book = demo_book(START, "Europe/Berlin")
    store = open_store(tmp_path / "shop")
    store.books.save(book, START)
    store.close()
    begun = question_to_json(KINDS[name].begin(book_from_json(book), {"product": "rails"}))
    asked = written(tmp_path, json.dumps({"kind": name, **begun}), "asked.json")

    code = main(["check", asked, "--data", str(tmp_path / "shop"), "--json"])

    said = capsys.readouterr()
    if code == 2:
        assert (said.out, len(said.err.splitlines())) == ("", 1)
    else:
        assert json.loads(said.out)["kind"] == name


@pytest.mark.parametrize(
    ("name", "content", "says"),
    [
        ("a.ngc", b"", "a.ngc is empty"),
        ("a.ngc", b"G0 X1\n\0\1\2", "Line 2: this is not text"),
        ("a.ngc", b"G1 X10 (open\nM30\n", "Line 1: the comment has no closing parenthesis"),
        ("a.ngc", b"G1 X" + b"1" * 9_000, "Line 1 is too long"),
        ("a.json", b"{", "cannot be read"),
        ("a.json", b'{"kind": "weather"}', "does not name its kind of question"),
        ("a.json", b'{"kind": "program"}', "Choose a file first"),
        ("a.json", b'{"kind": "program", "file": "gone.ngc"}', "cannot be opened"),
        ("a.json", b'{"kind": "program", "file": "a.json", "rapid": -5}', "cannot be read"),
    ],
)
def test_what_cannot_be_read_gets_one_sentence(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], name: str, content: bytes, says: str
) -> None:
    assert main(["check", written(tmp_path, content, name)]) == 2

    said = capsys.readouterr()
    assert (said.out, len(said.err.splitlines())) == ("", 1)
    assert says in said.err


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ([], "Name a file"),
        (["{rail}", "--station", "cnc"], "Say where it is with --data"),
        (["{rail}", "--rapid", "fast"], "--rapid needs a number"),
        (["{rail}", "--out", "{folder}/drawing.pdf"], "nothing to write"),
        (["{folder}/gone.ngc"], "cannot be opened"),
        (["{folder}"], "cannot be opened"),
        (["{rail}", "--data", "{folder}"], "there is no shop"),
    ],
)
def test_what_was_typed_wrong_is_said(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], typed: list[str], says: str
) -> None:
    rail = written(tmp_path)

    assert main(["check", *(word.format(rail=rail, folder=tmp_path) for word in typed)]) == 2

    assert says in capsys.readouterr().err


def test_a_file_that_is_too_large_is_not_read(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(answers, "A_PROGRAM", 1_000)

    assert main(["check", written(tmp_path, b"G0 X1\n" * 1_000)]) == 2

    assert "too much to read" in capsys.readouterr().err


def test_a_run_is_looked_through_and_says_by_its_exit_code_whether_something_is_open(
    data: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    lines_code = main(["check", "--run", "r1", "--data", str(data)])
    lines = capsys.readouterr().out
    json_code = main(["check", "--data", str(data), "--json"])
    found = json.loads(capsys.readouterr().out)

    assert (lines_code, json_code) == ((0, 0) if found["ready"] else (1, 1))
    assert lines.splitlines()[1].endswith("before it starts.")
    assert found["kind"] == "run-sheet"
    assert {check["level"] for check in found["checks"]} <= {"green", "look", "stop"}
    assert all(check["text"] and check["text"] in lines for check in found["checks"])


def test_a_run_without_its_shop_is_none(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", "--run", "r1"]) == 2
    assert "--data" in capsys.readouterr().err


def test_its_help_tells_the_exit_codes(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit):
        main(["check", "--help"])

    assert "2: not readable" in " ".join(capsys.readouterr().out.split())


def test_what_would_stop_or_spoil_is_printed_below_the_headline(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["check", written(tmp_path, RAIL.replace("G1 X300 F1200", "G0 X300\nF1200"))])

    assert capsys.readouterr().out.splitlines()[1].startswith("Line 9 moves fast across")
