"""The Review screen, and the history that Trays asks for."""

import csv
import io

import pytest
from flask.testing import FlaskClient

from runboard.app import House
from runboard.floor.runs import Wish, new_event, open_run
from runboard.floor.taps import record_events
from tests import scenario
from tests.conftest import START, HandClock
from tests.web.test_shop_pages import words


@pytest.fixture(autouse=True)
def _cut(house: House, clock: HandClock) -> None:
    """A run whose first board was cut by Ann."""
    house.workshop.books.save(scenario.shop(), START)
    open_run(house.workshop, Wish("rail", [{"line": "1", "pieces": 12}], name="=Rails"))
    for kind, minutes in (("load started", 6), ("machine started", 38), ("unloading started", 2), ("load done", 0)):
        event = new_event(house.workshop, kind, {}, run="r1", load="cut/1", person="ann")
        record_events(house.workshop, [event])
        clock.forward(minutes=minutes)


def test_the_runs_are_listed(client: FlaskClient) -> None:
    assert "=Rails" in words(client.get("/review"))


def test_a_run_shows_its_hours_and_every_element(client: FlaskClient) -> None:
    text = words(client.get("/review/runs/r1"))

    assert "8 min hands on" in text
    assert "machine time, CNC" in text
    assert "✓ measured" in text
    assert "Sat 7 Mar 2026, 10:00" in text


def test_an_empty_review_teaches(client: FlaskClient, house: House) -> None:
    open_run(house.workshop, Wish("rail", [{"line": "1", "pieces": 12}]))

    assert "Nothing has been pressed in this run yet" in words(client.get("/review/runs/r2"))


def test_the_table_goes_to_a_spreadsheet(client: FlaskClient) -> None:
    answer = client.get("/review/runs/r1.csv")

    assert answer.content_type == "text/csv; charset=utf-8; header=present"
    rows = list(csv.DictReader(io.StringIO(answer.data.decode(), newline="")))
    assert [(row["element"], row["minutes"], row["person"]) for row in rows] == [
        ("setup", "4.0", "Ann"),
        ("loading", "2.0", "Ann"),
        ("machine", "38.0", ""),
        ("unloading", "2.0", "Ann"),
    ]
    assert rows[0]["run"] == "'=Rails"
    assert rows[0]["began"] == "2026-03-07 10:00:00+01:00"


def test_who_was_removed_is_somebody(client: FlaskClient, house: House) -> None:
    record = scenario.shop()
    record["people"][0] = {"key": "ann", "name": "somebody", "removed": True}
    house.workshop.books.save(record, START)

    assert "Ann" not in client.get("/review/runs/r1.csv").text


def test_the_history_of_a_tray_is_json(client: FlaskClient) -> None:
    answer = client.get("/runs/r1/trays/1/history")

    assert answer.json is not None
    assert [one["code"] for one in answer.json["entries"]][:2] == ["run opened", "load started"]
    assert answer.json["entries"][-1]["facts"] == {"step": "Cut", "who": "Ann"}
    assert answer.json["entries"][1]["at"].startswith("2026-03-07T09:00:00.")
    assert answer.json["entries"][1]["facts"]["who"] == "Ann"


@pytest.mark.parametrize("path", ["/runs/r9/trays/1/history", "/runs/r1/trays/9/history", "/review/runs/r9"])
def test_what_nobody_knows_is_not_found(client: FlaskClient, path: str) -> None:
    assert client.get(path).status_code == 404
