"""A tray's code on the lead's phone opens its tray though nothing was printed, and only a lead is shown it."""

import re

import pytest
from flask.testing import FlaskClient

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.letting_in.travellers import read_keys, traveller_link, tray_of_code
from runboard.floor.pressing.taps import record_events
from runboard.house import House
from tests import scenario
from tests.conftest import START
from tests.web.test_shop_pages import words

TRAYS = [("r1", key) for key in ("1", "2", "3")]


@pytest.fixture(autouse=True)
def _run(house: House) -> None:
    house.workshop.books.save(scenario.shop(), START)
    open_run(house.workshop, Wish("rail", [{"line": "1", "pieces": 15}], start=15), "ann")


def test_it_is_the_code_of_the_trays_card_and_nothing_is_noted_as_printed(client: FlaskClient, house: House) -> None:
    text = client.get("/plan/runs/r1/trays/2/code").text

    shown = re.search(r'class="tray-letters">([^<]+)<', text)
    assert shown is not None
    assert tray_of_code(read_keys(house.store.settings), TRAYS, shown[1]) == ("r1", "2")
    assert shown[1] == traveller_link(read_keys(house.store.settings), "r1", "2").code
    assert "Tray 2" in text
    assert "Cut" in text
    assert "<svg" in text
    assert [tray.print for tray in house.workshop.ledger.state.runs["r1"].trays.values()] == [0, 0, 0]


def test_no_cache_keeps_it(client: FlaskClient) -> None:
    assert client.get("/plan/runs/r1/trays/2/code").headers["Cache-Control"] == "no-store"


def test_the_run_leads_to_the_codes_of_its_trays(client: FlaskClient) -> None:
    assert 'href="/plan/runs/r1/codes"' in client.get("/plan/runs/r1").text
    listed = client.get("/plan/runs/r1/codes").text

    assert [f"/plan/runs/r1/trays/{key}/code" in listed for key in ("1", "2", "3")] == [True] * 3


def test_a_tray_or_run_that_there_is_not_has_none(client: FlaskClient) -> None:
    assert client.get("/plan/runs/r1/trays/9/code").status_code == 404
    assert client.get("/plan/runs/r9/trays/1/code").status_code == 404


def test_a_run_that_is_over_shows_no_code(client: FlaskClient, house: House) -> None:
    record_events(house.workshop, [new_event(house.workshop, "run finished", {}, run="r1")])

    text = client.get("/plan/runs/r1/trays/2/code").text

    assert "open nothing" in text
    assert "tray-letters" not in text


def test_crew_is_not_shown_it(crew: FlaskClient) -> None:
    answers = [crew.get(path).status_code for path in ("/plan/runs/r1/trays/2/code", "/plan/runs/r1/codes")]

    assert answers == [403, 403]
    assert "/plan/runs/r1/codes" not in crew.get("/plan/runs/r1").text


# What would keep the friend from it


def test_a_code_says_to_whom_its_step_is_assigned_and_one_press_lets_anyone_do_it(
    client: FlaskClient, house: House
) -> None:
    body = {"to": "ben", "trays": ["2"]}
    record_events(house.workshop, [new_event(house.workshop, "operation given", body, run="r1", operation="cut")])
    before = words(client.get("/plan/runs/r1/trays/2/code"))

    answer = client.post("/plan/runs/r1/trays/2/code", data={"step": "cut"})

    assert "Cut on this tray is assigned to Ben. A friend can do it once anyone may." in before
    assert "Anyone may do it" in before
    assert (answer.status_code, answer.headers["Location"]) == (303, "/plan/runs/r1/trays/2/code")
    assert house.workshop.ledger.state.runs["r1"].given == {}
    assert "assigned" not in words(client.get("/plan/runs/r1/trays/2/code"))


def test_a_step_that_nobody_gave_is_not_given_back(client: FlaskClient, house: House) -> None:
    held = len(house.workshop.ledger.held)

    assert client.post("/plan/runs/r1/trays/2/code", data={"step": "cut"}).status_code == 303
    assert client.post("/plan/runs/r1/trays/2/code", data={"step": "sand"}).status_code == 303

    assert len(house.workshop.ledger.held) == held


@pytest.mark.parametrize("path", ["/plan/runs/r1/trays/2/code", "/plan/runs/r1/cards"])
def test_an_address_that_only_this_computer_has_says_so(client: FlaskClient, path: str) -> None:
    said = (
        "Codes made here open on this computer only. With 'runboard serve', a phone in the shop's Wi-Fi can open them."
    )

    assert said in words(client.get(path))
    assert said not in words(client.get(path, base_url="http://shop.example"))
