"""A machine speaks by HTTP: with a token of its own, for its own station, and it is only ever asked about."""

import re

import pytest
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.keeping.signals import make_sensor, settle_signals
from runboard.floor.pressing.taps import record_events
from runboard.house import House
from runboard.run.fold.state import Load
from tests.conftest import HandClock
from tests.scenario import shop


@pytest.fixture
def token(house: House) -> str:
    """The token of the plug at the CNC, which runs."""
    workshop = house.workshop
    workshop.books.save(shop(), workshop.clock.now())
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": 30}], start=30), "ann")
    record_events(workshop, [new_event(workshop, "machine started", {}, run="r1", load="cut/1", person="ann")])
    return make_sensor(house.leaving.ears, "cnc", "Plug")[0]


def says(client: FlaskClient, token: str, text: str, station: str = "cnc") -> TestResponse:
    return client.post(f"/signals/{station}", data=text, headers={"Authorization": f"Bearer {token}"})


def load(house: House) -> Load:
    return house.workshop.ledger.state.runs["r1"].loads["cut/1"]


def asked(client: FlaskClient) -> list[str]:
    state = client.get("/state?person=ann").json
    assert state is not None
    return [one["kind"] for one in state["dues"] if one["kind"] == "looks ended"]


def signals(house: House) -> list[bool]:
    return [event.get("on") for event in house.store.log.events() if event.kind == "signal received"]


def test_a_machine_below_the_limit_for_long_enough_is_asked_about(
    client: FlaskClient, house: House, clock: HandClock, token: str
) -> None:
    assert says(client, token, '{"watts": 140}').json == {"station": "cnc", "runs": True}
    clock.forward(minutes=5)
    assert says(client, token, '{"watts": 3}').json == {"station": "cnc", "runs": None}
    assert asked(client) == []
    clock.forward(seconds=31)

    assert says(client, token, "3").json == {"station": "cnc", "runs": False}

    assert asked(client) == ["looks ended"]
    assert load(house).state == "running"
    assert signals(house) == [True, False]


def test_a_plug_that_says_nothing_more_is_asked_about_too(
    client: FlaskClient, house: House, clock: HandClock, token: str
) -> None:
    says(client, token, "140")
    says(client, token, "3")

    clock.forward(seconds=31)

    assert [settle_signals(house.leaving.ears), settle_signals(house.leaving.ears)] == [1, 0]
    assert asked(client) == ["looks ended"]


def test_readings_that_say_nothing_new_are_not_written_down(client: FlaskClient, house: House, token: str) -> None:
    for watts in (140, 150, 120, 145):
        says(client, token, str(watts))

    assert signals(house) == [True]


def test_a_word_is_believed_at_once(client: FlaskClient, token: str) -> None:
    says(client, token, "on")

    assert says(client, token, "off").json == {"station": "cnc", "runs": False}
    assert asked(client) == ["looks ended"]


@pytest.mark.parametrize("header", [None, "", "Bearer", "Bearer wrong", "Basic YTpi"])
def test_without_its_token_nothing_is_taken(client: FlaskClient, house: House, token: str, header: str | None) -> None:
    answer = client.post("/signals/cnc", data="off", headers={"Authorization": header} if header else {})

    assert answer.status_code == 401
    assert answer.headers["WWW-Authenticate"] == "Bearer"
    assert "token" in (answer.json or {})["sentence"]
    assert signals(house) == []


@pytest.mark.parametrize("station", ["laser", "nowhere"])
def test_a_token_speaks_of_its_own_station_only(client: FlaskClient, house: House, token: str, station: str) -> None:
    assert says(client, token, "off", station).status_code == 401
    assert signals(house) == []


def test_whoever_guesses_tokens_has_to_wait(client: FlaskClient, clock: HandClock, token: str) -> None:
    answers = [says(client, f"guess {at}", "off").status_code for at in range(11)]

    assert answers == [401] * 10 + [429]
    assert says(client, token, "off").status_code == 429
    clock.forward(minutes=10)
    assert says(client, token, "on").status_code == 200


@pytest.mark.parametrize("text", ["", "warm", "-3", "NaN", "[1]", "{}", '{"watts": "much"}', "[" * 3000, "9" * 5000])
def test_what_is_no_reading_gets_a_sentence(client: FlaskClient, house: House, token: str, text: str) -> None:
    answer = says(client, token, text)

    assert answer.status_code in (413, 422)
    assert (answer.json or {})["sentence"]
    assert signals(house) == []


def test_a_token_is_made_on_the_shop_page_shown_once_and_revoked_there(
    client: FlaskClient, house: House, token: str
) -> None:
    made = client.post("/shop/signals/laser/tokens", data={"name": "Plug at the laser"})
    (fresh,) = re.findall(r"<p class=\"token\"><code>([^<]+)</code>", made.text)

    assert made.headers["Cache-Control"] == "no-store"
    assert says(client, fresh, "on", "laser").status_code == 200
    page = client.get("/shop/signals/laser").text
    assert "Plug at the laser" in page and fresh not in page
    stored = house.store.connections.here().conn.execute("SELECT * FROM sensor").fetchall()
    assert fresh not in str(stored)

    (revoke,) = re.findall(r'action="(/shop/signals/laser/tokens/\w+/revoke)"', page)
    assert client.post(revoke).status_code == 303
    assert says(client, fresh, "off", "laser").status_code == 401
    assert client.post(revoke).status_code == 404


def test_the_limits_of_a_station_are_set_on_its_page(
    client: FlaskClient, house: House, clock: HandClock, token: str
) -> None:
    assert client.post("/shop/signals/cnc", data={"watts": "60", "seconds": "0"}).status_code == 303

    assert says(client, token, "59").json == {"station": "cnc", "runs": False}
    assert 'value="60"' in client.get("/shop/signals/cnc").text


@pytest.mark.parametrize("watts, seconds", [("", "30"), ("0", "30"), ("20", "-1"), ("20", "99999"), ("nan", "nan")])
def test_limits_that_make_no_sense_come_back_with_a_sentence(
    client: FlaskClient, token: str, watts: str, seconds: str
) -> None:
    answer = client.post("/shop/signals/cnc", data={"watts": watts, "seconds": seconds})

    assert answer.status_code == 422
    assert "Write watts above 0" in answer.text


def test_a_station_that_the_book_lost_is_heard_no_more(client: FlaskClient, house: House, token: str) -> None:
    empty = {**shop(), "products": [], "stations": []}
    house.store.books.save(empty, house.settings.clock.now())

    assert says(client, token, "off").status_code == 404
    assert settle_signals(house.leaving.ears) == 0
