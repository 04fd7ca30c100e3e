"""The Shop screen: forms over the book. Nothing typed is lost, and what is wrong is said where it is."""

import html
import io
import json
import re
from typing import Any

import pytest
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.changing.shop_book import book_record
from runboard.floor.pressing.taps import record_events
from runboard.house import House
from tests import scenario
from tests.conftest import START

pytestmark = pytest.mark.usefixtures("small_shop")


def words(answer: TestResponse) -> str:
    """A page as text, its entities read and its tags gone."""
    return re.sub(r"\s+", " ", html.unescape(re.sub(r"<[^>]+>", " ", answer.text)))


def inputs(answer: TestResponse) -> dict[str, str]:
    """The values of a page's inputs."""
    found = re.findall(r'<input[^>]*?name="([^"]+)" value="([^"]*)"', answer.text)
    return {name: html.unescape(value) for name, value in found}


def record(house: House) -> dict[str, Any]:
    return book_record(house.workshop)


def station(house: House, key: str) -> dict[str, Any]:
    return next(one for one in record(house)["stations"] if one["key"] == key)


def a_station(**more: Any) -> dict[str, Any]:
    return {"seen": "1", "name": "Drill press", "kind": "other machine", "room": "shop", "watch_usual": "yes", **more}


@pytest.mark.parametrize("path", ["/shop", "/shop/about", "/shop/stations/cnc", "/shop/people/new", "/shop/import"])
def test_every_screen_of_the_shop_opens(client: FlaskClient, path: str) -> None:
    answer = client.get(path)

    assert answer.status_code == 200
    assert "<h1>" in answer.text


@pytest.mark.parametrize("path", ["/shop/horses/new", "/shop/stations/nothing"])
def test_what_is_not_in_the_book_is_not_found(client: FlaskClient, path: str) -> None:
    assert client.get(path).status_code == 404


def test_an_empty_shop_teaches_the_first_steps(client: FlaskClient, house: House) -> None:
    house.workshop.books.save({"runboard_book": 1}, START)

    text = words(client.get("/shop"))

    assert "Rooms come first" in text
    assert "Add yourself first" in text


def test_a_saved_form_is_a_new_revision_and_leads_back(client: FlaskClient, house: House) -> None:
    answer = client.post("/shop/stations/new", data=a_station())

    assert (answer.status_code, answer.headers["Location"]) == (303, "/shop?in=stations&saved=drill-press")
    assert station(house, "drill-press")["kind"] == "other machine"
    assert record(house)["revision"] == 2


@pytest.mark.parametrize("path", ["rooms/shop", "services/extraction", "stations/cnc", "people/ann", "jobs/bins"])
def test_a_form_saved_unread_changes_nothing(client: FlaskClient, house: House, path: str) -> None:
    before = record(house)
    form = client.get(f"/shop/{path}").text

    client.post(f"/shop/{path}", data=as_a_browser_posts(form))

    assert record(house) == {**before, "revision": 2}


def test_how_a_running_machine_moves_can_be_changed(client: FlaskClient, house: House) -> None:
    """The stations from which it is watched come back from the form in the order of the shop's list."""
    book = scenario.shop()
    book["stations"][0] |= {"watch_from": ["sander", "bench"]}
    house.workshop.books.save(book, START)
    run = open_run(house.workshop, Wish("rail", [{"line": "1", "pieces": 12}]))
    about = {"run": run, "load": "cut/1", "person": "ann"}
    record_events(house.workshop, [new_event(house.workshop, "machine started", {"minutes": 20}, **about)])
    form = as_a_browser_posts(client.get("/shop/stations/cnc").text)

    saved = client.post("/shop/stations/cnc", data={**form, "motion.accel_x": ["100"]})

    assert saved.status_code == 303
    assert station(house, "cnc")["motion"]["accel_x"] == 100


def as_a_browser_posts(form: str) -> dict[str, list[str]]:
    """What a browser would send of the first form of a page, as it came."""
    body = form[form.index("<form") : form.index("</form>")]
    data: dict[str, list[str]] = {}
    for tag in re.findall(r"<input[^>]*>", body):
        found = dict(re.findall(r'([\w-]+)="([^"]*)"', tag))
        if found.get("type") != "checkbox" or " checked" in tag:
            data.setdefault(found["name"], []).append(html.unescape(found.get("value", "")))
    for name, rest in re.findall(r'<select id="[^"]*" name="([^"]*)".*?>(.*?)</select>', body, re.DOTALL):
        chosen = re.search(r'value="([^"]*)" selected', rest) or re.search(r'value="([^"]*)"', rest)
        data.setdefault(name, []).append(html.unescape(chosen[1]) if chosen else "")
    for name, text in re.findall(r'<textarea id="[^"]*" name="([^"]*)".*?>\n(.*?)</textarea>', body, re.DOTALL):
        data.setdefault(name, []).append(html.unescape(text))
    return data


def test_what_is_wrong_is_said_at_its_field_and_nothing_typed_is_lost(client: FlaskClient, house: House) -> None:
    answer = client.post("/shop/stations/new", data=a_station(name="Drill & press", watch_every_minutes="soon"))

    assert answer.status_code == 422
    assert '<p class="error" id="watch_every_minutes-error">&#39;soon&#39; is no span of time.' in answer.text
    assert inputs(answer)["name"] == "Drill & press"
    assert inputs(answer)["watch_every_minutes"] == "soon"
    assert record(house)["revision"] == 1


def test_an_empty_name_is_asked_for(client: FlaskClient) -> None:
    answer = client.post("/shop/rooms/new", data={"seen": "1", "name": " "})

    assert 'id="name-error">Write something here.' in answer.text


def test_walking_times_are_written_with_the_room(client: FlaskClient, house: House) -> None:
    client.post("/shop/rooms/new", data={"seen": "1", "name": "Shed", "walk.shop": "1", "walk.house": ""})

    assert {"rooms": ["shed", "shop"], "minutes": 1} in record(house)["walks"]
    assert len(record(house)["walks"]) == 2


def test_hours_are_rows_and_a_row_may_be_taken_out(client: FlaskClient, house: House) -> None:
    hours = {"hours.0.days": ["mon", "tue"], "hours.0.from": "18:00", "hours.0.to": "00:00", "hours.0.gone": "yes"}
    more = {"hours.1.days": ["sat"], "hours.1.from": "08:00", "hours.1.to": "00:00"}

    client.post("/shop/people/ann", data={"seen": "1", "name": "Ann", "access": "lead", **hours, **more})

    ann = record(house)["people"][0]
    assert ann["hours"] == [{"days": ["sat"], "from": "08:00", "to": "24:00"}]


def test_an_error_in_a_row_stands_in_that_row(client: FlaskClient) -> None:
    hours = {"hours.3.days": ["mon"], "hours.3.from": "20:00", "hours.3.to": "18:00"}

    answer = client.post("/shop/people/ann", data={"seen": "1", "name": "Ann", "access": "lead", **hours})

    assert 'id="hours.0.to-error"' in answer.text
    assert inputs(answer)["hours.0.from"] == "20:00"


def test_a_removed_person_leaves_a_nameless_id(client: FlaskClient, house: House) -> None:
    client.post("/shop/people/new", data={"seen": "1", "name": "Carla Stone", "access": "crew", "skills": "laser\n"})
    client.post("/shop/people/p1/remove", data={"seen": "2"})

    carla = next(one for one in record(house)["people"] if one["key"] == "p1")
    assert carla["removed"]
    assert "Carla" not in json.dumps(record(house))
    assert "Carla" not in client.get("/shop").text
    assert client.get("/shop/people/p1").status_code == 404


def test_what_something_still_needs_cannot_be_removed(client: FlaskClient, house: House) -> None:
    answer = client.post("/shop/stations/sander/remove", data={"seen": "1"})

    assert answer.status_code == 422
    assert "there is no station 'sander'" in words(answer)
    assert station(house, "sander")


def test_a_station_stays_while_an_open_run_is_made_there(client: FlaskClient, house: House) -> None:
    open_run(house.workshop, Wish("rail", [{"line": "1", "pieces": 12}]))
    house.workshop.books.save({**scenario.shop(), "products": []}, START)

    answer = client.post("/shop/stations/sander/remove", data={"seen": "2"})

    assert "Sander can't be removed yet" in words(answer)


def test_a_save_on_an_outdated_revision_says_so_and_loses_nothing(client: FlaskClient, house: House) -> None:
    client.post("/shop/stations/bench", data=a_station(name="Long bench", kind="bench"))

    late = client.post("/shop/stations/bench", data=a_station(name="My bench", kind="bench"))
    again = client.post(
        "/shop/stations/bench", data=a_station(name="My bench", kind="bench", seen=inputs(late)["seen"])
    )

    assert late.status_code == 422
    assert "Someone else saved this meanwhile" in words(late)
    assert "Name: Long bench" in words(late)
    assert inputs(late)["name"] == "My bench"
    assert again.status_code == 303
    assert station(house, "bench")["name"] == "My bench"


def test_two_people_may_change_different_things_at_once(client: FlaskClient, house: House) -> None:
    client.post("/shop/stations/bench", data=a_station(name="Long bench", kind="bench"))

    other = client.post("/shop/jobs/bins", data={"seen": "1", "name": "Bins", "minutes": "6", "room": ""})

    assert other.status_code == 303
    assert station(house, "bench")["name"] == "Long bench"
    assert record(house)["jobs"][0] == {"key": "bins", "name": "Bins", "minutes": 6, "room": None}


def test_the_shop_itself_is_a_form(client: FlaskClient, house: House) -> None:
    said = {"seen": "1", "name": "A", "units": "in", "emergency": "112", "late_counts": "lines", "allowance_of": "work"}

    wrong = client.post("/shop/about", data={**said, "time_zone": "Mars/Base"})
    right = client.post("/shop/about", data={**said, "time_zone": "Europe/Paris"})

    assert 'id="time_zone-error"' in wrong.text
    assert right.status_code == 303
    assert (record(house)["units"], record(house)["time_zone"]) == ("in", "Europe/Paris")


def test_the_shop_says_what_counts_where_not_all_can_be_in_time(client: FlaskClient, house: House) -> None:
    before = words(client.get("/shop")), words(client.get("/shop/about"))

    said = {
        "seen": "1",
        "name": "A",
        "units": "mm",
        "emergency": "112",
        "time_zone": "Europe/Paris",
        "allowance_of": "work",
    }
    client.post("/shop/about", data={**said, "late_counts": "lines"})

    assert "If not all can be on time: keep total lateness small" in before[0]
    assert "fewest late order lines" in before[1]
    assert "If not all can be on time: fewest late order lines" in words(client.get("/shop"))
    assert (record(house)["late_counts"], house.workshop.book.late_counts) == ("lines", "lines")


def test_the_shop_says_what_its_standard_times_have_beyond_the_work(client: FlaskClient, house: House) -> None:
    said = {"seen": "1", "name": "A", "units": "mm", "emergency": "112", "time_zone": "UTC", "late_counts": "lines"}

    client.post("/shop/about", data={**said, "allowance": "15", "allowance_of": "day"})

    book = house.workshop.book
    assert (book.allowance, book.allowance_of, book.rating) == (0.15, "day", None)


# the whole book as a file


def upload(client: FlaskClient, content: bytes) -> TestResponse:
    data = {"file": (io.BytesIO(content), "shop.json")}
    return client.post("/shop/import", data=data, content_type="multipart/form-data")


def test_the_book_goes_out_and_comes_in_again_after_a_look(client: FlaskClient, house: House) -> None:
    saved = client.get("/shop/book.json").data
    changed = json.loads(saved) | {"name": 'The "other" shop'}
    changed["jobs"] = []

    look = upload(client, json.dumps(changed).encode())
    before = record(house)["name"]
    taken = client.post("/shop/import", data=inputs(look) | {"take": "yes"})

    assert "Gone: Empty the bins" in words(look)
    assert before == "Test shop"
    assert taken.status_code == 303
    assert record(house)["name"] == 'The "other" shop'


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "Choose a file first."),
        (b"{", "The file is no JSON. Line 1, column 2."),
        (b"\xff", "The file is no UTF-8 text."),
        (b"[]", "neither shop data nor a run"),
        (b'{"runboard_book": 1, "colour": 3}', "there is no field 'colour' here"),
    ],
)
def test_a_wrong_file_gets_its_sentence_and_changes_nothing(
    client: FlaskClient, house: House, content: bytes, said: str
) -> None:
    answer = upload(client, content)

    assert answer.status_code == 422
    assert said.lower() in words(answer).lower()
    assert record(house)["revision"] == 1


def test_a_book_whose_laser_is_looked_at_too_seldom_is_said_before_it_is_taken(
    client: FlaskClient, house: House
) -> None:
    book = json.loads(client.get("/shop/book.json").data)
    laser = next(one for one in book["stations"] if one["key"] == "laser")
    laser["watch_every_minutes"] = 5.5

    answer = upload(client, json.dumps(book).encode())

    assert answer.status_code == 422
    assert "Station 'laser': whoever watches Laser is asked at least every 5 min" in words(answer)


def test_a_book_that_changed_since_the_look_is_not_overwritten(client: FlaskClient, house: House) -> None:
    look = upload(client, client.get("/shop/book.json").data)
    client.post("/shop/jobs/bins", data={"seen": "1", "name": "Bins", "minutes": "6", "room": ""})

    taken = client.post("/shop/import", data=inputs(look) | {"take": "yes"})

    assert taken.status_code == 422
    assert record(house)["jobs"][0]["name"] == "Bins"


# money


def test_the_shop_says_its_currency_margin_and_fees_once(client: FlaskClient, house: House) -> None:
    said = {"money.currency": "EUR", "money.locale": "de-DE", "money.margin": "35", "money.margin_of": "cost"}

    answer = client.post("/shop/money", data={"seen": "1", **said, "money.fee_share": "", "money.fee_each": ".35"})

    assert answer.status_code == 303, words(answer)
    money = record(house)["money"]
    assert (money["currency"], money["locale"], money["margin"], money["margin_of"]) == ("EUR", "de-DE", 0.35, "cost")
    assert (money["fee_share"], money["fee_each"], money["packing_each"]) == (0, 0.35, 0)
    assert "Money: EUR, a mark-up of 35 % on the cost." in words(client.get("/shop"))


def test_the_money_form_saved_unread_changes_nothing(client: FlaskClient, house: House) -> None:
    before = record(house)

    client.post("/shop/money", data=as_a_browser_posts(client.get("/shop/money").text))

    assert record(house)["money"] == before["money"]


def test_a_locale_that_is_none_is_said_at_its_field(client: FlaskClient, house: House) -> None:
    answer = client.post("/shop/money", data={"seen": "1", "money.currency": "EUR", "money.locale": "German money"})

    assert answer.status_code == 422
    assert "Write a language and a country" in words(answer)
    assert record(house)["money"]["currency"] == ""


def test_a_locale_that_nobody_knows_is_said_at_its_field(client: FlaskClient, house: House) -> None:
    answer = client.post("/shop/money", data={"seen": "1", "money.currency": "EUR", "money.locale": "zz-QQ"})

    assert answer.status_code == 422
    assert "cannot be zz-QQ. Write a language and a country" in words(answer)
    assert record(house)["money"]["locale"] == ""


def test_it_is_said_that_no_amount_is_converted(client: FlaskClient) -> None:
    assert "Amounts are not converted" in words(client.get("/shop/money"))


def test_a_machine_s_hour_and_a_product_s_price_are_written_down_in_their_forms(
    client: FlaskClient, house: House
) -> None:
    form = as_a_browser_posts(client.get("/shop/stations/cnc").text)
    assert client.post("/shop/stations/cnc", data={**form, "hour_rate": "6.50"}).status_code == 303
    page = client.get("/plan/products/rail").text
    form = as_a_browser_posts(page[page.rindex("<form", 0, page.index('name="price"')) :])
    assert client.post("/plan/products/rail", data={**form, "price": "34"}).status_code == 303

    assert station(house, "cnc")["hour_rate"] == 6.5
    assert record(house)["products"][0]["price"] == 34
