"""The page of cautions: all of them, each with its source, and what runboard is not."""

import re

import pytest
from flask.testing import FlaskClient

from runboard.house import House
from runboard.run.care.cautions import CATALOGUE, SIGNS
from runboard.web.door.guard import may_ask
from runboard.web.now.care import comes_with
from runboard.words.sentences import say
from tests import scenario
from tests.conftest import START
from tests.web.test_shop_pages import words

pytestmark = pytest.mark.usefixtures("small_shop")


def test_every_caution_stands_on_the_page_with_its_source_and_where_it_is_shown(
    client: FlaskClient, house: House
) -> None:
    text = words(client.get("/care"))
    number = house.workshop.books.latest().emergency

    for one in CATALOGUE.values():
        assert say("care", one.key, {"number": number}) in text
        assert one.source.casefold() in text.casefold()
        assert f"Shown: {', '.join(one.shown)}." in text


def test_every_sign_is_shown_under_the_title_it_is_registered_by(client: FlaskClient) -> None:
    pictures = re.findall(r'<img src="/static/signs/(\w+)\.svg"[^>]*alt="([^"]+)"', client.get("/care").text)

    assert {number for number, _ in pictures} <= set(SIGNS)
    assert all(title == f"{number}, {SIGNS[number]}" for number, title in pictures)


@pytest.mark.parametrize("number", SIGNS)
def test_a_sign_is_served_as_a_picture(client: FlaskClient, number: str) -> None:
    answer = client.get(f"/static/signs/{number}.svg")

    assert answer.status_code == 200
    assert answer.content_type.startswith("image/svg+xml")


@pytest.mark.parametrize(
    "sentence",
    [
        "It is no interlock.",
        "It is no fire alarm and no fire watch.",
        "It is no substitute for training, local codes and licensed people.",
        "The machine's manual comes first",
        "Never leave a running machine that must be watched.",
    ],
)
def test_the_page_says_plainly_what_runboard_is_not(client: FlaskClient, sentence: str) -> None:
    assert sentence in words(client.get("/care"))


def test_the_emergency_number_is_the_shops_own(client: FlaskClient, house: House) -> None:
    house.workshop.books.save({**scenario.shop(), "emergency": "0-911"}, START)

    assert "Get out. Call 0-911." in words(client.get("/care"))


def test_the_shop_page_leads_to_it(client: FlaskClient) -> None:
    assert 'href="/care"' in client.get("/shop").text


def test_a_helper_may_read_it() -> None:
    assert may_ask("crew", "care.care", reading=True)


def test_what_brings_a_caution_is_said_in_words() -> None:
    assert comes_with(CATALOGUE["hands-clear"]) == "a hand-guided cutter"
    assert comes_with(CATALOGUE["stay-and-watch"]) == "any machine that must be watched"
    assert comes_with(CATALOGUE["lifting"]) == ""
