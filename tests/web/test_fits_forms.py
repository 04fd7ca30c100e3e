"""Screws, inserts, magnets and feeds as the shop writes them down, and what is asked of them before a run."""

from typing import Any

import pytest
from flask.testing import FlaskClient

from runboard.floor.changing.shop_book import book_record
from runboard.house import House
from tests.web.test_shop_pages import as_a_browser_posts, words

pytestmark = pytest.mark.usefixtures("small_shop")
HOOKS = "/plan/products/rail/operations/hooks"
HOOK = {"name": "Hook screw", "length": "5/8 in", "gauge": "4", "head": "round"}


def record(house: House) -> dict[str, Any]:
    return book_record(house.workshop)


def add(client: FlaskClient, house: House, thing: str, **said: Any) -> None:
    answer = client.post(f"/shop/{thing}/new", data=said | {"seen": str(record(house)["revision"])})
    assert answer.status_code == 303, words(answer)


def asked(client: FlaskClient, kind: str, **said: str) -> str:
    form = as_a_browser_posts(client.get(f"/before/{kind}").text)
    posted = client.post(f"/before/{kind}", data=form | said)
    return words(client.get(posted.location) if posted.status_code == 303 else posted)


def test_a_screw_is_written_down_in_inches_or_millimetres(client: FlaskClient, house: House) -> None:
    add(client, house, "screws", **HOOK)

    (screw,) = record(house)["screws"]
    assert (screw["key"], screw["length"], screw["gauge"], screw["pilot_hard"]) == ("hook-screw", 15.875, 4, None)
    assert "Hook screw" in words(client.get("/shop"))


@pytest.mark.parametrize("gauge", ["#6", "No. 6", "6"])
def test_a_gauge_is_read_as_it_stands_on_the_packet(client: FlaskClient, house: House, gauge: str) -> None:
    add(client, house, "screws", **HOOK | {"gauge": gauge})

    assert record(house)["screws"][0]["gauge"] == 6


def test_a_screw_saved_unread_stays_the_same(client: FlaskClient, house: House) -> None:
    add(client, house, "screws", **HOOK)
    before = record(house)["screws"]

    client.post("/shop/screws/hook-screw", data=as_a_browser_posts(client.get("/shop/screws/hook-screw").text))

    assert record(house)["screws"] == before


def test_a_new_screw_may_begin_with_a_usual_one(client: FlaskClient, house: House) -> None:
    page = client.get("/shop/screws/new?like=no-6")

    client.post("/shop/screws/new", data=as_a_browser_posts(page.text))

    assert "sources vary" in words(page)
    (screw,) = record(house)["screws"]
    assert (screw["gauge"], screw["length"], round(screw["pilot_hard"] / 25.4 * 64)) == (6, 19.05, 7)


def test_a_magnet_is_written_down(client: FlaskClient, house: House) -> None:
    add(client, house, "inserts", name="Disc magnet", what="magnet", diameter="10", length="3")

    assert record(house)["inserts"][0]["what"] == "magnet"


def test_a_good_feed_is_called_by_its_wood_and_cutter(client: FlaskClient, house: House) -> None:
    kept = record(house) | {"cutters": [{"key": "six", "name": "6 mm cutter", "diameter": 6, "flutes": 2}]}
    house.workshop.books.save(kept, house.workshop.clock.now())

    add(client, house, "feeds", cutter="six", rpm="18000", feed="70 in", wood="ash", note="clean")

    (feed,) = record(house)["feeds"]
    assert (feed["key"], feed["feed"]) == ("ash-6-mm-cutter", 1778)
    assert "ash, 6 mm cutter" in words(client.get("/shop"))
    assert "ash, 6 mm cutter" in words(client.get("/shop/feeds/ash-6-mm-cutter"))


def test_an_operation_says_its_screws_turns_and_feed(client: FlaskClient, house: House) -> None:
    add(client, house, "screws", **HOOK)
    form = as_a_browser_posts(client.get(HOOKS).text)
    row = {"fastenings.0.screw": ["hook-screw"], "fastenings.0.into": ["18"], "fastenings.0.washer": ["1/16 in"]}

    client.post(HOOKS, data=form | row | {"rpm": ["18000"], "feed": ["1800"]})

    hooks = record(house)["products"][0]["operations"][-1]
    assert (hooks["rpm"], hooks["feed"]) == (18_000, 1800)
    assert hooks["fastenings"] == [
        {"screw": "hook-screw", "through": 0, "into": 18, "margin": 3, "washer": 1.5875, "sunk": 0}
    ]


def test_a_screw_is_asked_about_and_kept_in_its_step(client: FlaskClient, house: House) -> None:
    add(client, house, "screws", **HOOK)
    form = as_a_browser_posts(client.get("/before/screw?product=rail&step=hooks").text)

    posted = client.post("/before/screw", data=form | {"washer": ["1"], "into": ["18"]})
    page = client.get(posted.location)

    assert "It stops 3.1 mm short of the far face." in words(page)
    assert "<svg" in page.text
    keep = {**as_a_browser_posts(page.text), "keep": "sheet hooks", "seen": str(record(house)["revision"])}
    assert client.post("/before/screw/keep", data=keep).status_code == 303
    hooks = record(house)["products"][0]["operations"][-1]
    assert hooks["setup_sheet"] == [["Pilot", "2 mm"], ["Depth stop", "14.8 mm"]]


def test_each_kind_is_asked_and_answered_on_its_page(client: FlaskClient) -> None:
    assert "comes out by 2 mm: take 10 mm" in asked(client, "screw", length="16", gauge="6", into="14")
    assert "left underneath" in asked(client, "fit", diameter="10", length="3")
    assert "1.8 mm wider" in asked(client, "movement", wood="ash", width="160")
    assert "0.05 mm per tooth." in asked(client, "feed", rpm="18000", flutes="2", feed="1800")


def test_what_is_missing_is_said(client: FlaskClient) -> None:
    assert "Choose a screw, or enter its length" in asked(client, "screw", gauge="6")
    assert "The fourth follows" in asked(client, "feed", rpm="18000")
    assert "zebrano is not known here" in asked(client, "movement", wood="zebrano")
