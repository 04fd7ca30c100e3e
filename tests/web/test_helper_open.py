"""Where nobody has to pair, as in the demo, a tray's card opens the helper's page all the same."""

import pytest
from flask.testing import FlaskClient

from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.letting_in.travellers import read_keys, traveller_link
from runboard.house import House
from runboard.run.log.event import write_moment
from tests.scenario import shop


@pytest.fixture
def card(house: House) -> str:
    """The address on tray 2's card."""
    workshop = house.workshop
    workshop.books.save(shop(), workshop.clock.now())
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": 30}], start=30), "ann")
    return traveller_link(read_keys(house.store.settings), "r1", "2").path


def test_a_cards_code_opens_the_helpers_page(client: FlaskClient, card: str) -> None:
    asked = client.get(card)
    came = client.post(card, data={"name": "Ola"})

    assert asked.status_code == 200
    assert "tray 2" in asked.text.lower()
    assert (came.status_code, came.location) == (303, "/helper")
    assert client.get("/helper").status_code == 200
    assert client.get("/helper/state").json["title"] == "Tray 2"


def test_the_same_browser_stays_the_leads_elsewhere(client: FlaskClient, card: str) -> None:
    client.post(card, data={"name": "Ola"})

    assert client.get("/").status_code == 200
    assert client.get("/shop").status_code == 200


def test_a_press_on_the_helpers_page_is_the_guests(client: FlaskClient, card: str, house: House) -> None:
    client.post(card, data={"name": "Ola"})
    state, at = client.get("/helper/state").json, write_moment(house.workshop.clock.now())
    about = {**state["about"], "person": state["person"], "tray": "2", "seen": state["seq"], "at": at}
    event = {"id": "press-1", "kind": "lead called", "body": {"why": "help"}, **about}

    told = {"json": {"device": "d", "taps": [event]}, "headers": {"Referer": "http://localhost/helper"}}
    said = client.post("/taps", **told).json["taps"][0]

    assert said["answer"] == "accepted", said
    assert house.workshop.ledger.arrived["press-1"].device != "d"


def test_without_a_card_there_is_no_helpers_page(client: FlaskClient, card: str) -> None:
    assert client.get("/helper").status_code == 404
