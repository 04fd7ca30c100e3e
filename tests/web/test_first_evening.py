"""The first evening: the shop on one page, and the way to the first run in sight until it is open."""

from collections.abc import Mapping

import pytest
from flask.testing import FlaskClient

from runboard.floor.changing.first_evening import first_steps
from runboard.floor.changing.shop_book import book_record
from runboard.house import House
from tests import scenario
from tests.web.test_shop_pages import inputs, words

USUAL = {"lead": "Ann", "near": "Shop", "far_room": "House", "walk": "2", "station.cnc": "on", "station.laser": "on",
         "station.bench": "on", "far.laser": "on", "hours.evenings": "on"}  # fmt: skip


def said(client: FlaskClient, **more: str | None) -> Mapping[str, str]:
    seen = inputs(client.get("/shop/first"))["seen"]
    return {key: value for key, value in {**USUAL, "seen": seen, **more}.items() if value is not None}


def test_one_page_describes_a_shop_that_a_product_can_be_made_in(client: FlaskClient, house: House) -> None:
    answer = client.post("/shop/first", data=said(client))

    record = book_record(house.workshop)
    rooms = {room["key"]: room["name"] for room in record["rooms"]}
    assert answer.location == "/plan/products/new"
    assert {one["name"]: rooms[one["room"]] for one in record["stations"]} == {
        "CNC": "Shop",
        "Laser": "House",
        "Bench": "Shop",
    }
    assert [(walk["minutes"]) for walk in record["walks"]] == [2]
    (ann,) = record["people"]
    assert (ann["name"], ann["access"]) == ("Ann", "lead")
    assert [(hours["from"], hours["to"], len(hours["days"])) for hours in ann["hours"]] == [("18:00", "22:00", 5)]


def test_the_usual_things_are_ticked(client: FlaskClient) -> None:
    page = client.get("/shop/first").text

    assert page.count(" checked>") == 6 + 1 + 2


@pytest.mark.parametrize(
    ("left_out", "sentence"),
    [
        ({"lead": ""}, "Your name is missing"),
        ({"station.cnc": None, "station.laser": None, "station.bench": None}, "No station is ticked"),
        ({"hours.evenings": None}, "No hours are ticked"),
    ],
)
def test_what_is_missing_is_named_and_nothing_typed_is_lost(
    client: FlaskClient, house: House, left_out: dict[str, str | None], sentence: str
) -> None:
    answer = client.post("/shop/first", data=said(client, friend="Kim", **left_out))

    assert answer.status_code == 422
    assert sentence in words(answer)
    assert inputs(answer)["friend"] == "Kim"
    assert not book_record(house.workshop)["stations"]


def test_a_friend_helps_without_hours_of_their_own(client: FlaskClient, house: House) -> None:
    client.post("/shop/first", data=said(client, friend="Kim"))

    (_, kim) = book_record(house.workshop)["people"]
    assert (kim["name"], kim["access"], kim["hours"]) == ("Kim", "crew", [])


def test_one_room_is_enough(client: FlaskClient, house: House) -> None:
    client.post("/shop/first", data=said(client, far_room=""))

    record = book_record(house.workshop)
    assert len(record["rooms"]) == 1
    assert record["walks"] == []


def test_a_shop_that_is_there_is_never_overwritten(client: FlaskClient, house: House) -> None:
    late = said(client)
    client.post("/shop/first", data=late)

    again = client.post("/shop/first", data={**late, "lead": "Ola"})

    assert again.status_code in (409, 422)
    assert [person["name"] for person in book_record(house.workshop)["people"]] == ["Ann"]
    assert client.get("/shop/first").location == "/shop"


def test_the_first_steps_stay_in_sight_until_a_run_is_open(client: FlaskClient, house: House) -> None:
    assert "Describe your shop" in words(client.get("/shop"))
    assert "Describe your shop" in words(client.get("/plan"))

    house.workshop.books.save(scenario.shop(), house.workshop.clock.now())
    assert "Open a run" in words(client.get("/plan/products/rail"))
    assert first_steps(house.workshop) is not None

    client.post("/plan/runs/new", data={"product": "rail", "certainty": "0.9", "orders.0.pieces": "12"})
    assert first_steps(house.workshop) is None
    assert "First steps" not in client.get("/shop").text
