"""A price asked on its page: the form begins with what the shop wrote down, each line is shown, the price is kept by one press."""

from typing import Any

import pytest
from flask.testing import FlaskClient

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.changing.shop_book import book_record
from runboard.floor.pressing.taps import record_events
from runboard.house import House
from tests import scenario
from tests.conftest import START, HandClock
from tests.web.test_shop_pages import words


@pytest.fixture(autouse=True)
def priced_shop(house: House) -> None:
    record = scenario.shop() | {"hour_rate": 25, "money": {"currency": "EUR", "locale": "de-DE", "fee_share": 0.1}}
    record["products"][0]["price"] = 34
    house.workshop.books.save(record, START)


MORE = {"material_each": "2.5", "certainty": "90", "watched": "100", "margin": "30", "margin_of": "price"}


def ask(client: FlaskClient, **more: str) -> Any:
    said = {"asked": "yes", "product": "rail", "pieces": "10", "price": "34", "good_rate": "100"}
    return client.post("/before/price", data={**said, **MORE, **more}, follow_redirects=True)


def test_the_form_begins_with_the_product_and_what_the_shop_wrote_of_money(client: FlaskClient) -> None:
    page = client.get("/before/price?product=rail").text

    assert '<option value="rail" selected>' in page
    assert 'name="price" value="34"' in page
    assert 'name="fee_share" value="10"' in page
    assert 'name="times' not in page


def test_the_answer_shows_every_line_and_a_bar_for_each_kind_of_cost(client: FlaskClient) -> None:
    answer = ask(client)

    assert answer.status_code == 200, words(answer)
    said = words(answer)
    assert "A good piece costs" in said
    assert "Hooks, hands-on 0,333 h × 25,00 €" in said.replace("\u00a0", " ")
    assert "Total" in said
    assert "<svg" in answer.text


def test_what_cannot_be_reckoned_says_what_to_change(client: FlaskClient) -> None:
    answer = ask(client, start="4")

    assert answer.status_code == 422
    assert "4 started cannot give 10 good ones" in words(answer)


def test_the_price_that_the_margin_makes_is_kept_by_one_press(client: FlaskClient, house: House) -> None:
    page = ask(client).text
    seen = page[page.index('name="seen" value="') + 19 :].split('"')[0]
    said = {"asked": "yes", "product": "rail", "pieces": "10", "price": "34", "good_rate": "100", **MORE}

    answer = client.post("/before/price/keep", data={**said, "keep": "price meant", "seen": seen})

    assert answer.status_code == 303, words(answer)
    price = book_record(house.workshop)["products"][0]["price"]
    assert price not in (None, 34)
    kept = f"{price:.2f}".replace(".", ",")
    assert f"Keep {kept}\u00a0€ as price of Entry key rails" in page


def test_hours_that_were_measured_say_how_often(client: FlaskClient, house: House, clock: HandClock) -> None:
    open_run(house.workshop, Wish("rail", [{"line": "1", "pieces": 10}], start=10), "ann")
    for tray in "12":
        press(house, "load started", load=f"clean/{tray}")
        clock.forward(minutes=9)
        press(house, "load done", load=f"clean/{tray}")
    answer = ask(client)

    costs, _, rest = words(answer).partition("Hooks, hands")
    assert "measured 2 times" in costs[costs.index("Clean, hands") :]
    assert "measured" not in rest[: rest.index("Total")]


def press(house: House, kind: str, **fields: str) -> None:
    record_events(house.workshop, [new_event(house.workshop, kind, {}, run="r1", person="ann", **fields)])
