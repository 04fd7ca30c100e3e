"""A program dropped on a product: looked at in a child, its time taken into the step by a press, and known to be old once the
program was changed."""

import io
import time
from pathlib import Path
from typing import Any

import pytest
from flask.testing import FlaskClient

from runboard.floor.changing.shop_book import book_record
from runboard.house import House
from runboard.web.fittings import fitted
from tests import scenario
from tests.attack.cast import device_with, shut_house
from tests.conftest import START, HandClock
from tests.web.at_once_here import Here
from tests.web.test_check_command import RAIL
from tests.web.test_shop_pages import as_a_browser_posts, words

pytestmark = pytest.mark.usefixtures("small_shop")


@pytest.fixture(autouse=True)
def at_once(house: House, request: pytest.FixtureRequest) -> None:
    """A program is looked at where it is asked about: the child that does so has tests of its own."""
    if "ended" not in request.node.name:
        fitted(house.app).answers.work = Here()


def answered(client: FlaskClient, address: str) -> Any:
    for _ in range(200):
        page = client.get(address)
        if "Working it out" not in page.text:
            return page
        time.sleep(0.1)
    raise AssertionError("no answer came")


def dropped(client: FlaskClient, content: bytes, name: str = "rail.ngc") -> tuple[str, Any]:
    posted = client.post("/before/file", data={"product": "rail", "file": (io.BytesIO(content), name)})
    assert posted.status_code == 303, words(posted)
    return posted.location, answered(client, posted.location)


def keep(client: FlaskClient, page: Any, key: str) -> Any:
    return client.post("/before/program/keep", data=form_to(page, "/before/program/keep") | {"keep": key})


def form_to(page: Any, action: str) -> dict[str, list[str]]:
    form = page.text.partition(f'action="{action}"')[2].partition("</form>")[0]
    return as_a_browser_posts(f"<form{form}</form>")


def cut(house: House) -> dict[str, Any]:
    found: dict[str, Any] = book_record(house.workshop)["products"][0]["operations"][0]["passes"][0]
    return found


def test_its_time_is_taken_into_the_step_and_said_on_the_product_s_page(client: FlaskClient, house: House) -> None:
    _, page = dropped(client, RAIL.encode())
    kept = keep(client, page, "take cut")

    assert "About 38 s per load, 36 s of it cutting" in words(page)
    assert "Use 38 s for Cut" in words(page)
    assert "Engrave" not in page.text.partition("Use 38 s")[2].partition("</button>")[0]
    assert kept.status_code == 303
    assert "from rail.ngc" in words(client.get(kept.location))
    assert cut(house)["machine_minutes"] == pytest.approx(38 / 60)
    assert cut(house)["reckoned"]["name"] == "rail.ngc"
    assert cut(house)["reckoned"]["day"] == house.workshop.clock.now().date().isoformat()
    assert (cut(house)["reckoned"]["reach_x"], cut(house)["reckoned"]["reach_y"]) == (300, 60)
    product = words(client.get("/plan/products/rail"))
    assert "38 s machine time per board (15 pieces), from the program rail.ngc" in product
    form = words(client.get("/plan/products/rail/operations/cut"))
    assert "From the program rail.ngc. Enter another time to make it your own." in form
    assert "Except machine time from a file" in form
    assert "from the program" not in words(client.get("/plan/products/rail/operations/clean"))


def test_taking_it_twice_takes_it_once(client: FlaskClient, house: House) -> None:
    _, page = dropped(client, RAIL.encode())
    keep(client, page, "take cut")
    revision = house.workshop.books.revision()

    twice = keep(client, page, "take cut")

    assert twice.status_code == 422
    assert "nothing is saved yet" in words(twice)
    assert house.workshop.books.revision() == revision


def test_a_changed_program_makes_its_step_s_time_an_old_one(client: FlaskClient) -> None:
    _, page = dropped(client, RAIL.encode())
    keep(client, page, "take cut")
    before = words(client.get("/plan/products/rail"))

    dropped(client, RAIL.replace("X300", "X310").encode())

    assert "after its time was taken" not in before
    assert "Cut: the program rail.ngc changed on" in words(client.get("/plan/products/rail"))


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"\x7fELF\0\0\1", "his is not text"),
        (b"G1 X10 (open\nM30\n", "the comment has no closing parenthesis"),
        (b" \n\n", "This file is empty"),
    ],
    ids=["binary", "unmatched", "blank"],
)
def test_a_file_that_is_no_program_gets_one_sentence(client: FlaskClient, content: bytes, says: str) -> None:
    _, page = dropped(client, content)

    assert page.status_code == 422
    assert says in words(page)
    assert page.text.count('class="error"') == 1


def test_what_takes_long_can_be_ended(client: FlaskClient) -> None:
    posted = client.post("/before/file", data={"product": "rail", "file": (io.BytesIO(RAIL.encode()), "rail.ngc")})
    coming = client.get(posted.location)

    ended = client.post("/before/program/end", data=form_to(coming, "/before/program/end"))

    assert "Working it out" in coming.text and "hx-get" in coming.text
    assert ended.status_code == 200
    assert "Working it out" not in ended.text and "rail.ngc" in ended.text


def test_a_helper_may_look_and_not_keep(tmp_path: Path, clock: HandClock) -> None:
    with shut_house(tmp_path, clock) as house:
        house.workshop.books.save(scenario.shop(), START)
        helper, lead = device_with(house, "crew")[0], device_with(house, "lead")[0]

        address, seen = dropped(helper, RAIL.encode())
        offered = lead.get(address)

        assert " per load, " in seen.text and "Use " not in seen.text
        assert keep(helper, offered, "take cut").status_code == 403
        assert cut(house)["reckoned"] is None
        assert keep(lead, offered, "take cut").status_code == 303
        assert cut(house)["reckoned"]["name"] == "rail.ngc"
