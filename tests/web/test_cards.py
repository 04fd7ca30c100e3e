"""Cards made from the run's page: as a PDF in the background, or from the browser."""

import html
import io
import re
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from flask.testing import FlaskClient
from pypdf import PdfReader
from werkzeug.test import TestResponse

from runboard.app import build
from runboard.cards.pdf import PACKAGES, NoPango
from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.letting_in.travellers import read_keys, tray_of_token
from runboard.floor.pressing.taps import record_events
from runboard.house import House, Settings
from runboard.web.fittings import fitted
from runboard.web.trays import card_desk, cards
from tests import scenario
from tests.conftest import START, HandClock
from tests.web.at_once import AtOnce

PAGE = "/plan/runs/r1/cards"


@pytest.fixture(autouse=True)
def _run(house: House) -> None:
    house.workshop.books.save(scenario.shop(), START)
    open_run(house.workshop, Wish("rail", [{"line": "1", "pieces": 15}], start=15), "ann")


@pytest.fixture
def at_once(house: House) -> None:
    """Cards are made here, where it is not asked how another process makes them."""
    fitted(house.app).cards.work = AtOnce()


def made(client: FlaskClient, asked: TestResponse) -> str:
    """The progress page of an order, once it is over."""
    assert asked.status_code == 303
    end = time.monotonic() + 60
    while "hx-get" in (text := client.get(asked.location).text):
        assert time.monotonic() < end, text
        time.sleep(0.05)
    return text


def prints(house: House) -> list[int]:
    return [tray.print for tray in house.workshop.ledger.state.runs["r1"].trays.values()]


def pdf_text(client: FlaskClient, asked: TestResponse) -> str:
    """The text of an order's PDF."""
    answer = client.get(f"{asked.location}.pdf")
    assert answer.content_type == "application/pdf"
    return "\n".join(page.extract_text() for page in PdfReader(io.BytesIO(answer.data)).pages)


def test_the_travellers_of_all_trays_are_made_and_opened(client: FlaskClient, house: House) -> None:
    asked = client.post(PAGE, data={"kind": "travellers", "paper": "a6", "how": "pdf"})

    text = made(client, asked)

    assert "cards are made" in text
    assert f'href="{asked.location}.pdf"' in text
    assert "Entry key rails" in pdf_text(client, asked)
    assert prints(house) == [1, 1, 1]


@pytest.mark.usefixtures("at_once")
def test_only_the_trays_that_are_picked_are_printed_and_noted(client: FlaskClient, house: House) -> None:
    for _ in range(2):
        made(client, client.post(PAGE, data={"kind": "travellers", "tray": "2", "how": "pdf"}))

    assert prints(house) == [0, 2, 0]


@pytest.mark.usefixtures("at_once")
def test_other_kinds_note_no_print_of_a_traveller(client: FlaskClient, house: House) -> None:
    asked = client.post(PAGE, data={"kind": ["sheet", "jigs"], "how": "pdf", "language": "en"})

    assert "made" in made(client, asked)
    assert prints(house) == [0, 0, 0]


def test_what_has_no_card_now_says_so(client: FlaskClient, house: House) -> None:
    asked = client.post(PAGE, data={"kind": "shelves", "how": "pdf"})

    assert asked.status_code == 422
    assert "There is nothing to print" in asked.text
    assert house.workshop.log.last_seq() == 1


def test_from_the_browser_the_same_cards_come_as_a_page(client: FlaskClient, house: House) -> None:
    asked = client.post(PAGE, data={"kind": "travellers", "tray": "3", "paper": "4x6", "how": "browser"})

    page = client.get(asked.location)

    assert prints(house) == [0, 0, 1]
    assert "Entry key rails" in page.text
    assert "<style" not in page.text
    assert "/static/cards/4x6.css" in page.text
    assert client.get("/static/cards/4x6.css").status_code == 200


def test_looking_at_the_page_again_prints_nothing_more(client: FlaskClient, house: House) -> None:
    asked = client.post(PAGE, data={"kind": "travellers", "how": "browser"})

    pages = [client.get(asked.location).text for _ in range(2)]

    assert pages[0] == pages[1]
    assert prints(house) == [1, 1, 1]


def test_the_code_on_a_card_opens_its_tray(house: House, client: FlaskClient) -> None:
    fitted(house.app).cards.work.start = _at_once(orders := [])

    client.post(PAGE, data={"tray": "2", "how": "pdf"}, base_url="http://localhost:8210")

    link = orders[0].cards[0].link
    assert link.address.startswith("http://localhost:8210/t/")
    token = link.address.rpartition("/")[2]
    trays = [("r1", key) for key in ("1", "2", "3")]
    assert tray_of_token(read_keys(house.store.settings), trays, token) == ("r1", "2")


def _at_once(orders: list[Any]) -> Callable[..., None]:
    def start(_what: str, _subject: str, _work: object, order: object, _out: Path) -> None:
        orders.append(order)

    return start


def test_where_too_much_is_waiting_nothing_is_noted(house: House, client: FlaskClient) -> None:
    fitted(house.app).cards.work.start = _at_once([])

    asked = client.post(PAGE, data={"how": "pdf"})

    assert asked.status_code == 422
    assert "Other cards are still being made" in asked.text
    assert prints(house) == [0, 0, 0]


def no_pango(_order: object, _out: Path, _told: object) -> int:
    raise NoPango


def falls(_order: object, _out: Path, _told: object) -> int:
    raise ValueError("the ink is dry")


def waits(_order: object, _out: Path, told: Callable[[int, int], None]) -> int:
    told(3, 60)
    time.sleep(60)
    return 0


@pytest.mark.usefixtures("at_once")
def test_without_pango_the_packages_are_named_and_the_browser_prints(
    client: FlaskClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(card_desk, "write_pdf", no_pango)

    text = made(client, client.post(PAGE, data={"how": "pdf"}))

    assert PACKAGES in text
    form = client.get(PAGE).text
    assert PACKAGES in form
    assert form.index('value="browser"') < form.index('value="pdf"')


@pytest.mark.usefixtures("at_once")
def test_what_fails_is_said(client: FlaskClient, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(card_desk, "write_pdf", falls)

    assert "the ink is dry" in made(client, client.post(PAGE, data={"how": "pdf"}))


def test_progress_is_a_whole_page_or_its_part_and_can_be_stopped(
    client: FlaskClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(card_desk, "write_pdf", waits)
    asked = client.post(PAGE, data={"how": "pdf"})
    end = time.monotonic() + 30
    while "3 of 60 cards" not in (text := client.get(asked.location).text):
        assert time.monotonic() < end, text
        time.sleep(0.05)

    part = client.get(asked.location, headers={"HX-Request": "true"}).text
    assert part.lstrip().startswith("<section")
    assert "<html" in text
    assert client.get(f"{asked.location}.pdf").status_code == 404

    stopped = client.post(f"{asked.location}/end")
    assert "Stopped: no PDF was made." in client.get(stopped.location).text


def test_an_order_that_is_not_known_leads_to_a_new_one(client: FlaskClient) -> None:
    answer = client.get(f"{PAGE}/0123")

    assert (answer.status_code, answer.location) == (303, PAGE)
    assert client.get(f"{PAGE}/0123.pdf").status_code == 404


def test_a_run_that_is_over_prints_no_more_travellers(client: FlaskClient, house: House) -> None:
    record_events(house.workshop, [new_event(house.workshop, "run finished", {}, run="r1")])

    asked = client.post(PAGE, data={"how": "pdf"})

    assert asked.status_code == 422
    assert "is finished" in asked.text
    assert "Only packing slips" in client.get(PAGE).text


def test_a_trays_own_link_picks_its_tray(client: FlaskClient) -> None:
    text = client.get(f"{PAGE}?tray=2").text

    assert 'name="tray" value="2" checked' in text
    assert 'name="tray" value="1" checked' not in text


def test_the_run_leads_to_its_cards(client: FlaskClient) -> None:
    text = client.get("/plan/runs/r1").text

    assert f'href="{PAGE}"' in text
    assert 'href="/plan/runs/r1/paper"' in text


def test_crew_may_look_and_not_print(crew: FlaskClient) -> None:
    assert "Only a lead's phone can print cards." in crew.get(PAGE).text
    assert crew.post(PAGE, data={"how": "pdf"}).status_code == 403


def test_nothing_is_left_when_the_server_is_put_down(tmp_path: Path, clock: HandClock) -> None:
    built = build(Settings(tmp_path / "own", clock, open_to_all=True))
    built.workshop.books.save(scenario.shop(), START)
    open_run(built.workshop, Wish("rail", [{"line": "1", "pieces": 15}], start=15), "ann")
    client = built.app.test_client()
    made(client, client.post(PAGE, data={"kind": "travellers", "how": "pdf"}))
    folder = built.cards.folder

    built.close()

    assert folder is not None
    assert not folder.exists()


def test_of_many_trays_the_browser_prints_some_at_a_time_and_each_once(
    client: FlaskClient, house: House, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(cards, "TRAYS_A_PAGE", 2)
    whole = "kind=travellers&kind=sheet&kind=shelves&tray=1&tray=2&tray=3"

    first = client.get(f"{PAGE}/print?{whole}").text
    after = re.search(r'<p class="more"><a href="([^"]+)">([^<]+)<', first)
    assert after is not None
    rest = client.get(html.unescape(after[1])).text

    assert after[2] == "1 of 3 trays are not on this page. Print these first, then the next 1"
    assert 'class="more"' not in rest
    monkeypatch.setattr(cards, "TRAYS_A_PAGE", 99)
    everything = client.get(f"{PAGE}/print?{whole}").text
    assert 'class="more"' not in everything
    assert sorted(faces(first) + faces(rest)) == sorted(faces(everything))


def faces(page: str) -> list[str]:
    return re.findall(r"<section class=.*?</section>", page.replace(" whole", " at1"), re.DOTALL)


def test_an_address_with_a_line_break_leads_on_to_one_that_can_be_sent(client: FlaskClient) -> None:
    answer = client.post("/plan/runs/a%0Ab%7C/cards/x/end")

    assert (answer.status_code, answer.headers["Location"]) == (303, "/plan/runs/a%0Ab%7C/cards/x")


def test_the_page_says_how_many_sides_it_will_be_and_again_when_the_choice_changes(client: FlaskClient) -> None:
    text = client.get(PAGE).text
    full = client.get(f"{PAGE}?kind=travellers&full=1", headers={"HX-Request": "true"}).text

    assert 'value="stations" checked' in text
    assert re.findall(r"role=\"status\"[^>]*>([^<]+)<", text) == [
        "3 trays: 6 sides, 5 station sheets: 7 sides. 13 pages to print."
    ]
    assert full.lstrip().startswith("<p")
    (sides,) = re.findall(r"3 trays: (\d+) sides", full)
    assert int(sides) > 6


@pytest.mark.usefixtures("at_once")
def test_full_cards_carry_what_else_stands_on_the_stations_sheets(client: FlaskClient) -> None:
    asked = client.post(PAGE, data={"kind": "travellers", "tray": "1", "full": "1", "how": "pdf"})
    made(client, asked)

    assert "Stay and watch. Never leave" in pdf_text(client, asked)
