"""What the shop writes down for the sake of care: finishes, noise, eyewear, watching, forbidden materials."""

import re
from typing import Any

import pytest
from flask.testing import FlaskClient

from runboard.floor.changing.shop_book import book_record
from runboard.house import House
from runboard.shop.finish import common_finishes
from tests.web.test_shop_pages import as_a_browser_posts, inputs, words

SHEET = {
    "name": "Hard oil",
    "sheet_date": "2026-03-14",
    "recoat_minutes": "12 h",
    "handle_minutes": "1 day",
    "cure_minutes": "2 weeks",
    "self_heats": "yes",
    "solvent": "yes",
    "airing_minutes": "12 h",
    "ventilation": "both doors open",
}


pytestmark = pytest.mark.usefixtures("small_shop")


def record(house: House) -> dict[str, Any]:
    return book_record(house.workshop)


def add(client: FlaskClient, house: House, **said: str) -> None:
    answer = client.post("/shop/finishes/new", data=SHEET | said | {"seen": str(record(house)["revision"])})
    assert answer.status_code == 303, words(answer)


def is_ticked(form: str, name: str) -> bool:
    return re.search(rf'name="{name}" value="yes" checked', form) is not None


# finishes


def test_a_finish_is_written_down_as_its_label_says(client: FlaskClient, house: House) -> None:
    add(client, house)

    assert record(house)["finishes"] == [
        {
            "key": "hard-oil",
            "name": "Hard oil",
            "recoat_minutes": 720,
            "handle_minutes": 1440,
            "cure_minutes": 20160,
            "airing_minutes": 720,
            "self_heats": True,
            "solvent": True,
            "ventilation": "both doors open",
            "sheet_date": "2026-03-14",
        }
    ]
    assert "label of 14 Mar 2026" in words(client.get("/shop"))


def test_a_finish_without_its_sheets_date_is_common_practice(client: FlaskClient, house: House) -> None:
    add(client, house, sheet_date="")

    assert "common practice, read the label" in words(client.get("/shop"))


def test_a_finish_saved_unread_stays_the_same(client: FlaskClient, house: House) -> None:
    add(client, house)
    before = record(house)["finishes"]

    client.post("/shop/finishes/hard-oil", data=as_a_browser_posts(client.get("/shop/finishes/hard-oil").text))

    assert record(house)["finishes"] == before
    assert record(house)["revision"] == 3


def test_a_new_finish_heats_until_somebody_says_that_it_does_not(client: FlaskClient) -> None:
    form = client.get("/shop/finishes/new").text

    assert is_ticked(form, "self_heats")
    assert not is_ticked(form, "solvent")
    assert "Dry to the touch is not cured." in form


@pytest.mark.parametrize("key", list(common_finishes()))
def test_a_kind_gives_a_new_finish_its_usual_figures_without_a_date(
    client: FlaskClient, house: House, key: str
) -> None:
    answer = client.get(f"/shop/finishes/new?like={key}")

    client.post("/shop/finishes/new", data=as_a_browser_posts(answer.text))

    assert "common practice, read the label" in words(answer)
    saved = record(house)["finishes"][0]
    assert (saved["name"], saved["sheet_date"]) == (common_finishes()[key]["name"], "")
    assert saved["self_heats"] == common_finishes()[key]["self_heats"]


def test_no_form_calls_a_finish_safe(client: FlaskClient) -> None:
    for path in ("/shop", "/shop/finishes/new", *(f"/shop/finishes/new?like={key}" for key in common_finishes())):
        assert "food" not in client.get(path).text.lower()
        assert "safe" not in words(client.get(path)).lower()


def test_a_date_that_is_none_is_said_at_its_field_and_nothing_is_lost(client: FlaskClient, house: House) -> None:
    answer = client.post("/shop/finishes/new", data=SHEET | {"seen": "1", "sheet_date": "March"})

    assert answer.status_code == 422
    assert 'id="sheet_date-error"' in answer.text
    assert inputs(answer)["recoat_minutes"] == "12 h"
    assert record(house)["finishes"] == []


def test_a_finish_that_an_operation_brings_on_stays(client: FlaskClient, house: House) -> None:
    add(client, house)
    form = as_a_browser_posts(client.get("/plan/products/rail/operations/oil").text)
    client.post("/plan/products/rail/operations/oil", data=form | {"finish": ["hard-oil"]})

    answer = client.post("/shop/finishes/hard-oil/remove", data={"seen": "3"})

    assert answer.status_code == 422
    assert "there is no finish 'hard-oil'" in words(answer)
    assert len(record(house)["finishes"]) == 1


# stations


def test_a_station_says_its_noise_its_eyewear_and_how_often_it_is_looked_at(client: FlaskClient, house: House) -> None:
    form = as_a_browser_posts(client.get("/shop/stations/laser").text)

    form |= {"noise_db": ["68,5"], "eyewear": ["450 nm, OD 6+"], "watch_every_minutes": ["90 s"]}
    answer = client.post("/shop/stations/laser", data=form)

    assert answer.status_code == 303, words(answer)
    laser = next(one for one in record(house)["stations"] if one["key"] == "laser")
    assert (laser["noise_db"], laser["eyewear"], laser["watch_every_minutes"]) == (68.5, "450 nm, OD 6+", 1.5)


def test_a_station_that_would_be_looked_at_too_seldom_is_refused_at_its_field(
    client: FlaskClient, house: House
) -> None:
    form = as_a_browser_posts(client.get("/shop/stations/laser").text)

    answer = client.post("/shop/stations/laser", data=form | {"name": ["Big laser"], "watch_every_minutes": ["6 min"]})

    assert answer.status_code == 422
    assert '<p class="error" id="watch_every_minutes-error">Whoever watches Big laser is asked at least' in answer.text
    assert 'value="6 min"' in answer.text
    assert record(house)["revision"] == 1


def test_the_usual_interval_of_each_kind_is_said_where_one_is_asked_for(client: FlaskClient) -> None:
    text = words(client.get("/shop/stations/laser"))

    assert "laser 2 min" in text
    assert "CNC router 10 min" in text
    assert "not a fire watch" in text


def test_a_noise_that_cannot_be_is_said_at_its_field(client: FlaskClient) -> None:
    form = as_a_browser_posts(client.get("/shop/stations/laser").text)

    answer = client.post("/shop/stations/laser", data=form | {"noise_db": ["loud"]})

    assert 'id="noise_db-error"' in answer.text
    assert inputs(answer)["noise_db"] == "loud"


# forbidden materials and noise


def test_forbidden_materials_are_a_line_each(client: FlaskClient, house: House) -> None:
    form = as_a_browser_posts(client.get("/shop/limits").text)

    answer = client.post("/shop/limits", data=form | {"forbidden": ["PVC\r\n\r\n unknown foam "]})

    assert answer.status_code == 303
    assert record(house)["forbidden"] == ["PVC", "unknown foam"]
    assert "PVC, unknown foam" in words(client.get("/shop"))


def test_the_limits_saved_unread_stay_the_same(client: FlaskClient, house: House) -> None:
    before = record(house)

    client.post("/shop/limits", data=as_a_browser_posts(client.get("/shop/limits").text))

    assert record(house) == {**before, "revision": 2}


@pytest.mark.parametrize(("rule", "figures"), [("90/5", (90, 5)), ("80/3", (80, 3)), ("own", (82.5, 4))])
def test_a_rule_for_noise_is_chosen_or_said_in_own_figures(
    client: FlaskClient, house: House, rule: str, figures: tuple[float, float]
) -> None:
    said = {"noise_rule": [rule], "noise_limit_db": ["82.5"], "noise_exchange_db": ["4"]}

    client.post("/shop/limits", data=as_a_browser_posts(client.get("/shop/limits").text) | said)

    assert (record(house)["noise_limit_db"], record(house)["noise_exchange_db"]) == figures
    assert f'value="{rule}" selected' in client.get("/shop/limits").text


def test_own_figures_out_of_range_are_said_at_their_field(client: FlaskClient) -> None:
    said = {"noise_rule": ["own"], "noise_limit_db": ["300"]}

    answer = client.post("/shop/limits", data=as_a_browser_posts(client.get("/shop/limits").text) | said)

    assert answer.status_code == 422
    assert 'id="noise_limit_db-error"' in answer.text


def test_noise_is_told_as_information(client: FlaskClient) -> None:
    text = words(client.get("/shop/limits"))

    assert "as information" in text
    assert "Not sure what it is? Don’t cut it." in text
