"""``runboard review``: what a run took, as lines, as a record for other programs, and as one file."""

import json
import shutil
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from runboard.cli import main
from runboard.demo.make import make_demo
from runboard.floor.warm import catch_up
from runboard.opening import open_workshop
from runboard.review import weighing

NOW = datetime(2026, 6, 1, 17, 0, tzinfo=UTC)


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("reviewed")
    make_demo(folder, NOW, zone="Europe/Berlin")
    return folder


@pytest.fixture(autouse=True)
def not_compiled(monkeypatch: pytest.MonkeyPatch) -> None:
    """The rule in plain Python answers alike, and need not be compiled first."""
    monkeypatch.setattr(weighing, "warm", lambda: False)


@pytest.fixture
def printed(capsys: pytest.CaptureFixture[str]) -> Any:
    def print_(*arguments: str) -> str:
        assert main(["review", *arguments]) == 0
        return capsys.readouterr().out

    return print_


def closed_last(demo: Path) -> str:
    store, workshop = open_workshop(demo)
    catch_up(workshop)
    runs = [run for run in workshop.ledger.state.runs.values() if run.closed_at is not None]
    store.close()
    return max(runs, key=lambda run: run.closed_at or NOW).id


def test_without_a_run_it_is_of_the_one_that_was_finished_last(demo, printed):
    run = closed_last(demo)

    assert printed("--data", str(demo)).splitlines()[0].endswith(f"({run})")


def test_the_record_has_the_fields_that_other_programs_are_promised(demo, printed):
    found = json.loads(printed("r2", "--data", str(demo), "--json"))

    assert found["run"] == "r2"
    assert set(found["pieces"]) == {"wanted", "started", "good", "scrap"}
    shapes = {
        "elements": {"operation", "element", "guess", "median", "n", "left_out"},
        "lost": {"operation", "reason", "wood", "board", "pieces"},
        "waiting": {"who", "why", "minutes"},
        "held_by": {"what", "from", "to", "minutes"},
        "value_of_an_hour": {"what", "finish_minutes"},
        "changes": {"sentence", "finish_minutes", "hands_minutes", "pieces", "cost", "payback_runs"},
        "order_lines": {"for", "due", "done", "late_minutes"},
    }
    for name, fields in shapes.items():
        assert all(set(row) == fields for row in found[name]), name
    assert found["pieces"]["started"] == found["pieces"]["good"] + found["pieces"]["scrap"]
    assert found["hands_on_minutes"] == pytest.approx(found["minutes_a_good_piece"] * found["pieces"]["good"], rel=0.01)
    assert sum(lost["pieces"] for lost in found["lost"]) == found["pieces"]["scrap"]
    assert all((row["median"] is None) == (row["n"] == 0) for row in found["elements"])


def test_a_run_that_nobody_knows_and_a_file_of_another_kind_get_a_sentence(demo, capsys):
    assert main(["review", "r99", "--data", str(demo)]) == 2
    assert main(["review", "r2", "--data", str(demo), "--out", "review.doc"]) == 2

    said = capsys.readouterr().err
    assert "no run 'r99'" in said
    assert "neither .html nor .pdf" in said


def test_it_is_written_as_one_file_without_anybody_s_name(demo, printed, tmp_path):
    page, paper = tmp_path / "review.html", tmp_path / "review.pdf"

    printed("r2", "--data", str(demo), "--out", str(page))
    printed("r2", "--data", str(demo), "--out", str(paper))

    text = page.read_text("utf-8")
    printed_text = "".join(sheet.extract_text() for sheet in PdfReader(paper).pages)
    for shown in (text, printed_text):
        assert "Fit hooks" in shown
        assert "Robin" not in shown
    assert "://" not in text.replace("http://www.w3.org/2000/svg", "")


def test_who_is_in_the_book_only_since_the_run_is_not_named_either(demo, printed, tmp_path):
    later, page = tmp_path / "later", tmp_path / "review.html"
    shutil.copytree(demo, later)
    store, workshop = open_workshop(later)
    record = workshop.books.record()
    somebody = {**record["people"][1], "key": "fit", "name": "Fit"}
    workshop.books.save({**record, "people": [*record["people"], somebody]}, NOW)
    store.close()

    printed("r2", "--data", str(later), "--out", str(page))

    assert "Fit hooks" not in page.read_text("utf-8")
