"""Whoever looks for people is told how a friend helps with their own phone."""

import pytest
from flask.testing import FlaskClient

from runboard.floor.changing.runs import Wish, open_run
from runboard.house import House
from tests import scenario
from tests.conftest import START

PAGES = ("/shop?in=people", "/shop?in=people&saved=ben", "/shop/people/ben", "/shop/people/new")


@pytest.fixture(autouse=True)
def _shop(house: House) -> None:
    house.workshop.books.save(scenario.shop(), START)


@pytest.mark.parametrize("path", PAGES)
def test_people_lead_to_the_codes_of_the_open_run(client: FlaskClient, house: House, path: str) -> None:
    open_run(house.workshop, Wish("rail", [{"line": "1", "pieces": 15}], start=15), "ann")

    text = client.get(path).text

    assert 'A friend with their own phone: <a href="/plan/runs/r1/codes">show them a tray' in text


@pytest.mark.parametrize("path", PAGES)
def test_without_an_open_run_it_says_when_there_will_be_codes(client: FlaskClient, path: str) -> None:
    assert "once a run is open" in client.get(path).text


def test_other_things_of_the_shop_say_nothing_of_phones(client: FlaskClient) -> None:
    assert "their own phone" not in client.get("/shop/rooms/new").text
