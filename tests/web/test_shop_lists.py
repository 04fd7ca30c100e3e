"""The Shop page's lists: folded with their counts, what stands beside each thing, and what was saved last."""

import re
from typing import Any

import pytest
from flask.testing import FlaskClient

from runboard.house import House
from tests import scenario
from tests.conftest import START
from tests.web.test_shop_pages import a_station, words

pytestmark = pytest.mark.usefixtures("small_shop")

STOCK = {"key": "panel", "name": "Ash panel", "length": 1000, "width": 350, "thickness": 18, "have": 2}
CUTTER = {"key": "six", "name": "Upcut", "diameter": 6, "flutes": 2}
FEED = {"key": "ash", "cutter": "six", "rpm": 18000, "feed": 2160, "wood": "ash", "tore_out": True}


def put(house: House, **lists: list[dict[str, Any]]) -> None:
    house.workshop.books.save({**scenario.shop(), **lists}, START)


def lists_in(client: FlaskClient, address: str = "/shop") -> dict[str, bool]:
    """Every list of the page in its order, and whether it is open."""
    return {
        key: "open" in rest
        for key, rest in re.findall(r'<details class="list" id="(\w+)"([^>]*)>', client.get(address).text)
    }


def test_the_lists_are_folded_with_their_counts_in_an_order_that_makes_sense(client: FlaskClient) -> None:
    found = lists_in(client)

    assert list(found)[:5] == ["rooms", "stations", "services", "people", "jobs"]
    assert list(found)[-7:] == ["stocks", "supplies", "screws", "inserts", "cutters", "feeds", "jigs"]
    assert not any(found.values())
    assert re.search(r"<h2>Rooms</h2><span[^>]*>2</span>", client.get("/shop").text)


def test_what_is_needed_first_stands_open_while_it_is_empty(client: FlaskClient, house: House) -> None:
    house.workshop.books.save({"runboard_book": 1}, START)

    found = lists_in(client)

    assert [key for key, is_open in found.items() if is_open] == ["rooms", "stations", "people"]


def test_a_row_says_size_count_and_feed(client: FlaskClient, house: House) -> None:
    put(
        house,
        stocks=[STOCK],
        cutters=[CUTTER],
        feeds=[FEED],
        supplies=[{"key": "oil", "name": "hard oil", "unit": "ml"}],
    )

    text = words(client.get("/shop"))

    assert "Ash panel 1000 × 350 × 18 mm, 2 in stock" in text
    assert "Upcut 6 mm, 2 flutes" in text
    assert "ash, Upcut: tore out 18,000 turns, 2160 mm per minute" in text
    assert "hard oil not counted" in text


def test_what_was_saved_is_said_at_the_top_with_its_list_open(client: FlaskClient) -> None:
    answer = client.post("/shop/stations/new", data=a_station())
    page = client.get(answer.headers["Location"])

    assert "Drill press saved under Stations." in words(page)
    assert 'href="#stations.drill-press"' in page.text and 'id="stations.drill-press"' in page.text
    assert lists_in(client, answer.headers["Location"])["stations"]


def test_what_was_taken_out_and_a_sheet_that_was_saved_are_said(client: FlaskClient) -> None:
    removed = client.post("/shop/jobs/bins/remove", data={"seen": "1"})
    about = client.post("/shop/money", data={"seen": "2", "money.currency": "EUR", "money.margin_of": "cost"})

    assert "Removed from Odd jobs." in words(client.get(removed.headers["Location"]))
    assert about.status_code == 303
    assert re.search(r"Money[^.]*: saved\.", words(client.get(about.headers["Location"])))
    assert client.get("/shop?in=horses&saved=x&sheet=y").status_code == 200
    assert 'class="saved"' not in client.get("/shop?in=jobs").text


def test_an_insert_is_added_and_a_room(client: FlaskClient) -> None:
    text = words(client.get("/shop"))

    assert "Add an insert or magnet" in text
    assert "Add a room" in text


# jigs and sizes

JIG = {"seen": "1", "name": "Pairs", "station": "laser", "columns": "2", "rows": "1", "piece_length": "100", "piece_width": "50",
       "pitch_x": "110", "pitch_y": "60", "margin": "10", "clearance": "0.2", "kerf": "0.1"}  # fmt: skip


@pytest.mark.parametrize(
    ("sizes", "field"),
    [
        ({"pitch_x": "90"}, "pitch_x"),
        ({"pitch_x": "100.1"}, "pitch_x"),
        ({"rows": "2", "pitch_y": "50"}, "pitch_y"),
    ],
)
def test_places_that_overlap_are_refused_at_their_field(
    client: FlaskClient, house: House, sizes: Any, field: str
) -> None:
    answer = client.post("/shop/jigs/new", data={**JIG, **sizes})

    assert answer.status_code == 422
    assert f'id="{field}-error"' in answer.text
    assert "overlap" in words(answer)
    assert not house.workshop.books.latest().jigs


@pytest.mark.parametrize("sizes", [{"pitch_x": "100.2"}, {"pitch_y": "20"}, {"columns": "1", "pitch_x": "20"}])
def test_places_may_touch_and_one_row_needs_no_pitch(client: FlaskClient, sizes: Any) -> None:
    assert client.post("/shop/jigs/new", data={**JIG, **sizes}).status_code == 303


def test_a_jig_s_form_and_a_new_supply_say_what_is_meant(client: FlaskClient) -> None:
    jig, supply = words(client.get("/shop/jigs/new")), words(client.get("/shop/supplies/new"))

    assert "The beam’s width" in jig and "Middle to middle: the piece, and the gap." in jig
    assert "What to buy" in supply


def test_a_size_left_empty_is_asked_for_by_its_name(client: FlaskClient) -> None:
    answer = client.post(
        "/shop/stocks/new", data={"seen": "1", "name": "Panel", "length": "900", "width": "", "thickness": " "}
    )

    assert answer.status_code == 422
    assert "Enter the width." in words(answer)
    assert "Enter the thickness." in words(answer)
    assert "is no length" not in words(answer)
