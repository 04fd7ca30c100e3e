"""GET /state and the table: asked for every two seconds by every page, so mostly answered with nothing new."""

import gzip
import json

import pytest
from flask.testing import FlaskClient

from runboard.house import House
from runboard.web.door import packing, pages
from tests.conftest import START, HandClock
from tests.serving import ROOT
from tests.web.test_taps import BOOK, batch, came


def ask(client: FlaskClient, etag: str = "") -> tuple[int, str]:
    answer = client.get("/state?person=ann", headers={"If-None-Match": etag} if etag else {})
    return answer.status_code, answer.headers["ETag"]


def test_a_poll_that_finds_nothing_new_is_empty(client: FlaskClient, house: House) -> None:
    house.workshop.books.save(BOOK, START)
    _, etag = ask(client)

    again = client.get("/state?person=ann", headers={"If-None-Match": etag})

    assert (again.status_code, again.data) == (304, b"")


def test_a_press_a_saved_book_and_another_person_are_news(client: FlaskClient, house: House) -> None:
    house.workshop.books.save(BOOK, START)
    _, first = ask(client)

    client.post("/taps", json=batch(came()))
    status, second = ask(client, first)
    house.workshop.books.save({**BOOK, "name": "Bo's shop"}, START)
    later_status, third = ask(client, second)
    other = client.get("/state?person=bo", headers={"If-None-Match": third})

    assert (status, later_status, other.status_code) == (200, 200, 200)


def test_a_moment_that_passes_is_news_without_an_event(client: FlaskClient, house: House, clock: HandClock) -> None:
    house.workshop.books.save(BOOK, START)
    client.post("/taps", json=batch(came(body={"until": "2026-03-07T11:00:00.000Z"})))
    _, etag = ask(client)

    clock.forward(hours=3)

    assert ask(client, etag)[0] == 200


def test_the_state_is_json_with_the_time(client: FlaskClient, house: House) -> None:
    house.workshop.books.save(BOOK, START)

    answer = client.get("/state?person=ann")

    assert answer.content_type == "application/json"
    assert json.loads(answer.data)["now"] == "2026-03-07T09:00:00.000Z"


def test_an_unchanged_state_is_gzipped_once_and_still_says_the_time(
    client: FlaskClient, house: House, clock: HandClock, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(pages, "LEAST", 10)
    house.workshop.books.save(BOOK, START)
    first = client.get("/state?person=ann", headers={"Accept-Encoding": "gzip"})
    before = packing._deflated.cache_info()

    clock.forward(seconds=5)
    again = client.get("/state?person=ann", headers={"Accept-Encoding": "gzip"})

    after = packing._deflated.cache_info()
    assert (after.misses - before.misses, after.hits - before.hits) == (0, 1)
    assert again.headers["Content-Encoding"] == "gzip" and "Accept-Encoding" in again.headers["Vary"]
    assert json.loads(gzip.decompress(first.data))["now"] == "2026-03-07T09:00:00.000Z"
    plain = json.loads(client.get("/state?person=ann").data)
    assert json.loads(gzip.decompress(again.data)) == {**plain, "now": "2026-03-07T09:00:05.000Z"}


def test_a_tray_of_an_unknown_run_is_not_found(client: FlaskClient) -> None:
    answer = client.get("/runs/nothing/trays/1/history")

    assert answer.status_code == 404
    assert answer.json is not None and answer.json["sentence"]


def test_the_table_is_the_one_that_the_server_reads(client: FlaskClient) -> None:
    first = client.get("/table.json")
    again = client.get("/table.json", headers={"If-None-Match": first.headers["ETag"]})

    assert first.data == (ROOT / "runboard" / "run" / "fold" / "table.json").read_bytes()
    assert again.status_code == 304
