"""The run sheet on a page: what is found of a run, and initials beside it."""

import re

import pytest
from flask.testing import FlaskClient

from runboard.floor.changing.shop_book import book_record, save_book
from runboard.house import House
from tests.web.test_plan_pages import open_one
from tests.web.test_shop_pages import words

pytestmark = pytest.mark.usefixtures("small_shop")


def shown(client: FlaskClient) -> str:
    return client.get("/plan/runs/r1/before").text


def asked_of(page: str, check: str) -> dict[str, str]:
    found = re.search(rf'name="check" value="{check}"><input type="hidden" name="found" value="(\w+)"', page)
    assert found, page
    return {"check": check, "found": found[1]}


def test_a_look_is_passed_by_initials_and_says_by_whom(client: FlaskClient, house: House) -> None:
    open_one(client, wood="MDF")
    page = shown(client)

    nobody = client.post("/plan/runs/r1/before", data=asked_of(page, "wood"))
    passed = client.post("/plan/runs/r1/before", data={**asked_of(page, "wood"), "initials": "AN"})

    assert "read its data sheet before Engrave" in page
    assert (nobody.status_code, "Enter your initials" in words(nobody)) == (422, True)
    assert passed.status_code == 303
    assert passed.headers["Location"] == "/plan/runs/r1/before?initials=AN#wood"
    assert "Looked at by AN" in shown(client)
    assert 'value="AN"' not in client.get("/plan/runs/r1/before?initials=").text
    assert house.workshop.ledger.state.runs["r1"].passed["wood"].initials == "AN"


def test_initials_given_by_mistake_are_taken_back(client: FlaskClient, house: House) -> None:
    open_one(client, wood="MDF")
    client.post("/plan/runs/r1/before", data={**asked_of(shown(client), "wood"), "initials": "AN"})

    back = client.post("/plan/runs/r1/before/taken-back", data={"check": "wood"})
    twice = client.post("/plan/runs/r1/before/taken-back", data={"check": "wood"})

    assert (back.status_code, twice.status_code) == (303, 422)
    assert "wood" not in house.workshop.ledger.state.runs["r1"].passed
    assert asked_of(shown(client), "wood")


def test_whoever_opens_a_run_with_something_to_look_at_is_shown_that_first(client: FlaskClient) -> None:
    order = {"product": "rail", "certainty": "0.9", "orders.0.pieces": "12", "wood": "MDF"}

    opened = client.post("/plan/runs/new", data=order)

    assert opened.headers["Location"] == "/plan/runs/r1/before"
    assert "Check before it starts: " in words(client.get("/plan/runs/r1"))


def test_nothing_written_down_is_said_and_not_called_right(client: FlaskClient) -> None:
    open_one(client)

    assert "Not checked, because nothing is entered: boards" in words(client.get("/plan/runs/r1/before"))


def test_what_may_not_come_under_the_laser_is_a_stop_without_a_way_past(client: FlaskClient) -> None:
    open_one(client, wood="PVC")

    page = shown(client)

    assert "Don’t heat PVC" in page
    assert 'name="check" value="wood"' not in page
    assert "Fix one thing before it starts" in page


def test_a_skill_that_nobody_has_is_a_stop(client: FlaskClient, house: House) -> None:
    record = book_record(house.workshop)
    for person in record["people"]:
        person["skills"] = []
    record["products"][0]["operations"][0]["skill"] = "cnc"
    save_book(house.workshop, record)
    open_one(client)

    assert "needs the skill cnc, and nobody in the shop has it" in shown(client)


def test_the_run_leads_to_its_sheet_and_a_run_that_there_is_not_to_nothing(client: FlaskClient) -> None:
    open_one(client)

    assert '"/plan/runs/r1/before"' in client.get("/plan/runs/r1").text
    assert client.get("/plan/runs/r9/before").status_code == 404
