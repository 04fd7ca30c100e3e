"""The help: each place of the program leads to its part of it, and it holds nothing that anybody could come in by."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from flask.testing import FlaskClient

from runboard.app import build
from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.pressing.access import CREW, LEAD
from runboard.house import House, Settings
from runboard.lan.network import Network
from runboard.shop import limits
from runboard.web.door.serve import listen
from runboard.web.door.sessions import COOKIE
from runboard.words.sentences import say
from tests.conftest import HandClock
from tests.lan.places import HOME
from tests.pairing import paired
from tests.scenario import shop

ROOT = Path(__file__).parents[2]
NAMED = re.compile(r'href="/help#([\w-]+)"')
PARTS = re.compile(r'<(?:h2|h3) id="([\w-]+)"')
# The places of the program, and the part that each leads to.
PLACES = {
    "/shop": {"pairing", "phones", "cards", "alarms", "signals", "backup", "files"},
    "/shop/alarms": {"alarms"},
    "/shop/signals": {"signals"},
    "/shop/signals/cnc": {"signals", "button"},
    "/shop/import": {"files"},
    "/welcome": {"secure"},
    "/plan": {"plan"},
    "/before": {"before"},
    "/before/program": {"before"},
    "/before/price": {"price"},
    "/before/stock": {"boards"},
    "/before/lengths": {"boards"},
    "/plan/shopping": {"shopping"},
    "/plan/runs/r1/before": {"before-it-starts"},
    "/plan/runs/r1/lines": {"hand-over"},
    "/plan/runs/r1/cards": {"cards"},
    "/plan/runs/r1/paper": {"cards"},
    "/review": {"review"},
    "/review/runs/r1/answers": {"friend"},
}


@pytest.fixture
def lead(tmp_path: Path, clock: HandClock) -> Iterator[FlaskClient]:
    """A lead's phone of a shop on its network that asks everybody to pair, with a run that is open."""
    with listen(0) as secure:
        network = Network(tmp_path / "certificates", clock.now, 8210, secure, say, where=lambda: HOME)
        house = build(Settings(tmp_path, clock, hosts=network.hosts, ways=network))
        house.workshop.books.save(shop(), clock.now())
        open_run(house.workshop, Wish("rail", [{"line": "1", "pieces": 30}], start=30), "ann")
        client = house.app.test_client()
        client.set_cookie(COOKIE, paired(tmp_path, LEAD))
        yield client
        house.close()


@pytest.mark.parametrize("place", PLACES)
def test_a_place_leads_to_its_part_of_the_help(lead: FlaskClient, place: str) -> None:
    answer = lead.get(place)

    assert answer.status_code == 200
    assert set(NAMED.findall(answer.text)) >= PLACES[place]


def test_every_part_that_is_led_to_is_there(client: FlaskClient, small_shop: None) -> None:
    files = [*(ROOT / "templates").rglob("*.html"), *(ROOT / "static").rglob("*.js")]
    text = "".join(path.read_text("utf-8") for path in files if "vendor" not in path.parts)
    led_to = {*re.findall(r'\bhow\("([\w-]+)"', text), *NAMED.findall(text)}

    there = PARTS.findall(client.get("/help").text)

    assert len(led_to) > 10
    assert led_to | set().union(*PLACES.values()) <= set(there)
    assert len(set(there)) == len(there)


def test_its_contents_name_every_part(client: FlaskClient, small_shop: None) -> None:
    text = client.get("/help").text

    contents = re.findall(r'<li><a href="#([\w-]+)">', text)

    assert contents == re.findall(r'<section aria-labelledby="[\w-]+"><h2 id="([\w-]+)"', text)


def test_an_emergency_stands_first_and_is_called_by_a_tap(client: FlaskClient, small_shop: None) -> None:
    text = client.get("/help").text

    assert text.index('href="tel:112"') < text.index('id="contents"')
    assert text.index("Never leave a running machine") < text.index('id="contents"')


def test_it_is_the_same_for_everybody_and_tells_nothing_of_the_shop(
    lead: FlaskClient, tmp_path: Path, clock: HandClock
) -> None:
    helper = lead.application.test_client()
    helper.set_cookie(COOKIE, paired(tmp_path, CREW))

    text = lead.get("/help").text

    assert helper.get("/help").text == text
    assert not [name for name in ("Ann", "Ben", "Rail", "Test shop") if re.search(rf"\b{name}\b", text)]


def test_a_stranger_gets_the_welcome_page_instead(lead: FlaskClient) -> None:
    assert lead.application.test_client().get("/help").status_code == 401


def test_it_says_how_large_things_may_be_as_it_is(client: FlaskClient, small_shop: None) -> None:
    text = client.get("/help").text

    for most in (
        limits.MOST_PIECES,
        limits.MOST_TRAYS,
        limits.MOST_TRAYS_AT_FIRST,
        limits.MOST_LOADS,
        limits.MOST_STEPS,
    ):
        assert re.search(rf"\b{most}\b", text), most


def test_it_asks_for_no_script(client: FlaskClient, house: House, small_shop: None) -> None:
    assert "<script" not in client.get("/help").text
