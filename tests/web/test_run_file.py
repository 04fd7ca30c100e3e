"""A run's file comes in by a page: looked at first, kept meanwhile, and taken whole or not at all."""

import io
import json
from pathlib import Path
from typing import Any

import pytest
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from runboard.app import build
from runboard.floor.changing.file_in import MOST_TEXT_BYTES, read_file
from runboard.floor.changing.runs import Wish, close_run, open_run
from runboard.house import House, Settings
from runboard.run.refusal import Refused
from tests.conftest import HandClock
from tests.scenario import shop
from tests.web.test_shop_pages import as_a_browser_posts, upload, words


@pytest.fixture
def file(tmp_path: Path, clock: HandClock) -> dict[str, Any]:
    """A finished run of another shop, as its page saves it."""
    other = build(Settings(tmp_path / "other", clock, open_to_all=True))
    other.workshop.books.save(shop(), clock.now())
    open_run(other.workshop, Wish("rail", [{"line": "1", "pieces": 12}], name="Rails for the hall"), "ann")
    close_run(other.workshop, "r1", "run finished", "ben")
    saved: dict[str, Any] = other.app.test_client().get("/plan/runs/r1/run.json").json or {}
    other.close()
    return saved


@pytest.fixture
def here(house: House) -> House:
    house.workshop.books.save(shop(), house.workshop.clock.now())
    return house


def look_at(client: FlaskClient, record: dict[str, Any]) -> TestResponse:
    return upload(client, json.dumps(record).encode())


def kept(here: House) -> list[str]:
    folder = here.settings.data / "incoming"
    return sorted(path.name for path in folder.iterdir()) if folder.exists() else []


def test_a_run_is_looked_at_before_it_is_taken(client: FlaskClient, here: House, file: dict[str, Any]) -> None:
    shop_event = {"id": "harm-0001", "kind": "station out of use", "at": file["events"][0]["at"], "station": "cnc"}
    file["events"].append(shop_event)

    look = look_at(client, file)

    said = words(look)
    assert look.status_code == 200
    assert here.workshop.ledger.state.runs == {}
    assert "Rails for the hall" in said
    assert "12 pieces wanted" in said
    assert "2 new events" in said
    assert "Entered by Ann, Ben" in said
    assert "station out of use" in said

    taken = client.post("/shop/import", data=as_a_browser_posts(look.text))

    assert (taken.status_code, taken.headers["Location"]) == (303, "/plan/runs/r1")
    assert here.workshop.ledger.state.runs["r1"].state == "finished"
    assert here.workshop.ledger.state.stations.get("cnc") is None or not here.workshop.ledger.state.stations["cnc"].out
    assert kept(here) == []


def test_a_run_that_is_left_alone_is_not_here(client: FlaskClient, here: House, file: dict[str, Any]) -> None:
    look_at(client, file)

    assert here.workshop.log.last_seq() == 0


def test_what_changed_between_the_look_and_the_press_is_judged_again(
    client: FlaskClient, here: House, file: dict[str, Any]
) -> None:
    look = look_at(client, file)
    open_run(here.workshop, Wish("rail", [{"line": "1", "pieces": 6}]), "ann")

    taken = client.post("/shop/import", data=as_a_browser_posts(look.text))

    assert taken.status_code == 422
    assert "The run 'r1' is already open" in words(taken).replace("’", "'")
    assert here.workshop.log.last_seq() == 1


def test_a_wrong_file_is_not_kept(client: FlaskClient, here: House, file: dict[str, Any]) -> None:
    file["events"][-1]["run"] = "r9"

    look = look_at(client, file)

    assert look.status_code == 422
    assert "belongs to another run (r9)" in words(look)
    assert kept(here) == []


def test_at_most_three_files_are_kept(client: FlaskClient, here: House, file: dict[str, Any]) -> None:
    looks = [look_at(client, {**file, "name": f"copy {number}"}) for number in range(5)]

    assert len(kept(here)) == 3

    gone = client.post("/shop/import", data=as_a_browser_posts(looks[0].text))

    assert gone.status_code == 422
    assert "Choose it again" in words(gone)


@pytest.mark.parametrize("name", ["", "../../shop.db", "a" * 64, "..", "0" * 63])
def test_only_what_came_in_is_taken(client: FlaskClient, here: House, name: str) -> None:
    answer = client.post("/shop/import", data={"take": "yes", "kept": name})

    assert answer.status_code == 422
    assert here.workshop.log.last_seq() == 0


def test_more_text_than_a_file_may_hold_is_refused(client: FlaskClient, here: House) -> None:
    with pytest.raises(Refused) as refused:
        read_file(io.BytesIO(b" " * (MOST_TEXT_BYTES + 1)))

    assert refused.value.code == "file too long"


def test_an_upload_beyond_all_bounds_is_refused_unread(client: FlaskClient, here: House) -> None:
    answer = client.post("/shop/import", data=b"x", environ_overrides={"CONTENT_LENGTH": "200000000"})

    assert answer.status_code == 413


def test_a_file_of_a_hundred_trays_of_ten_thousand_loads_is_refused(
    client: FlaskClient, here: House, file: dict[str, Any]
) -> None:
    opened = next(one for one in file["events"] if one["kind"] == "run opened")
    opened["body"]["trays"] = [{"tray": str(at), "pieces": 50_000} for at in range(100)]
    opened["body"]["boards"] = {}

    look = look_at(client, file)

    assert look.status_code == 422
    assert "That makes 5,000,000 pieces, but a run holds 3,000 at most." in words(look)
    assert here.workshop.log.last_seq() == 0


def test_a_run_that_grows_beyond_its_size_by_many_events_is_refused(
    client: FlaskClient, here: House, file: dict[str, Any]
) -> None:
    opened, *rest = file["events"]
    more = [
        {"id": f"board-{at:04d}", "kind": "board added", "at": opened["at"].replace(".000Z", ".500Z"), "run": "r1",
         "body": {"board": f"cut/{at}", "pieces": {f"b{at}": 100}}}
        for at in range(2, 40)
    ]  # fmt: skip

    look = look_at(client, {**file, "events": [opened, *more]})

    assert look.status_code == 422
    assert "but a run holds 3,000 at most" in words(look)
    assert rest
