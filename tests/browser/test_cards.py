"""A lead makes the cards of a run, prints them from the browser, and types in one that was written on."""

import io
import multiprocessing
import re
import time
from multiprocessing.process import BaseProcess
from urllib.parse import urlsplit

import pytest
from PIL import Image
from playwright.sync_api import Browser, Page, expect

from tests.browser.conftest import Phones, Scheme
from tests.browser.looking import Looking
from tests.cards.printing import codes
from tests.phone import Phone
from tests.serving import Served

SIDES = re.compile(r"/plan/runs/r1/cards\?")  # how many sides it will be, asked at each choice
ENOUGH = 60_000  # milliseconds in which a busy machine has made some cards


def look(page: Page, server: Served, name: str) -> None:
    """Nothing is too small, too wide or hidden, in any size or light."""
    looking = Looking(page, server.address)
    looking.unfold()
    looking.at(name)
    assert looking.wrong == []


def open_cards(page: Page, server: Served) -> None:
    """From Plan to the run's cards."""
    page.goto(f"{server.address}plan/runs/r1")
    page.get_by_role("link", name="Cards", exact=True).click()
    expect(page.get_by_role("heading", name="Cards")).to_be_visible()


def test_the_cards_are_made_while_the_page_says_how_far_it_is(ann: Phone, server: Served, phone: Page) -> None:
    open_cards(phone, server)
    look(phone, server, "cards choose")
    with phone.expect_response(SIDES):
        phone.get_by_label("Paper").select_option("a4")
    with phone.expect_response(SIDES):
        phone.get_by_label("Run sheet").check()

    phone.get_by_role("button", name="Make the PDF").click()

    opens = phone.get_by_role("link", name="Open PDF")
    expect(opens).to_be_visible(timeout=ENOUGH)
    expect(phone.get_by_text(re.compile(r"\d+ cards are made"))).to_be_visible()
    look(phone, server, "cards made")
    answer = phone.request.get(server.address + opens.get_attribute("href")[1:])
    assert answer.body().startswith(b"%PDF-")
    assert {tray.get("print") for tray in ann.state()["runs"]["r1"]["trays"].values()} == {1}


def test_a_killed_child_is_said_and_the_page_goes_on(ann: Phone, server: Served, phone: Page) -> None:
    open_cards(phone, server)
    others = set(multiprocessing.active_children())
    phone.get_by_role("button", name="Make the PDF").click()

    killed = kill_the_child(others)

    if killed:
        expect(phone.get_by_role("alert")).to_contain_text("The cards could not be made")
    open_cards(phone, server)
    phone.get_by_role("button", name="Make the PDF").click()
    expect(phone.get_by_role("link", name="Open PDF")).to_be_visible(timeout=ENOUGH)


def kill_the_child(others: set[BaseProcess]) -> bool:
    """Kill the child that makes cards, as a computer short of memory does; False where it was quicker. ``others`` are there
    for something else."""
    end = time.monotonic() + 3
    while time.monotonic() < end:
        for child in set(multiprocessing.active_children()) - others:
            child.kill()
            return True
        time.sleep(0.01)
    return False


def test_one_trays_card_prints_from_the_browser(ann: Phone, server: Served, phone: Page) -> None:
    phone.goto(f"{server.address}plan/runs/r1/cards?tray=2")
    expect(phone.get_by_label("2", exact=True)).to_be_checked()

    phone.get_by_role("button", name="Print from the browser").click()

    expect(phone).to_have_title(re.compile("rail", re.IGNORECASE))
    assert phone.locator(".card").count() >= 1
    assert phone.evaluate("getComputedStyle(document.querySelector('.card')).fontFamily") != ""
    trays = ann.state()["runs"]["r1"]["trays"]
    assert [trays[key].get("print", 0) for key in ("1", "2", "3")] == [0, 1, 0]


def test_a_card_that_was_written_on_is_typed_in(ann: Phone, server: Served, phones: Phones) -> None:
    phone = phones.new()
    phone.goto(f"{server.address}plan/runs/r1")
    phone.get_by_role("link", name="Enter a paper card").click()
    look(phone, server, "paper trays")
    phone.get_by_role("link", name="Tray 1", exact=True).click()
    cut, clean = phone.get_by_role("group", name="Cut"), phone.get_by_role("group", name="Clean")
    cut.get_by_label("Good").fill("5")
    cut.get_by_label("Who").select_option("Ann")
    clean.get_by_label("Good").fill("9")
    phone.get_by_role("button", name="Check before saving").click()

    expect(phone.get_by_text("Tray 1 has 5 free for Clean, not 9. Choose fewer.")).to_be_visible()
    look(phone, server, "paper wrong")
    assert [one for one in phones.complaints if "422" not in one] == []
    phones.complaints.clear()  # Chromium says of such an answer that it failed
    clean.get_by_label("Good").fill("4")
    clean.get_by_label("Scrap", exact=True).fill("1")
    clean.get_by_label("Why scrap").fill("crack")
    phone.get_by_role("button", name="Check before saving").click()

    expect(phone.get_by_role("heading", name="This will be saved")).to_be_visible()
    expect(phone.get_by_role("region", name="What will be saved")).to_contain_text("4 good, 1 scrap")
    assert ann.state()["runs"]["r1"]["trays"]["1"]["at"] == {"cut": 5}
    look(phone, server, "paper look")
    phone.get_by_role("button", name="Save it").click()

    expect(phone.get_by_text("Tray 1 is saved.")).to_be_visible()
    assert ann.state()["runs"]["r1"]["trays"]["1"]["at"] == {"sand:120": 4}


def test_trays_lead_to_the_card_of_each(ann: Phone, server: Served, phones: Phones) -> None:
    page = phones.new()
    page.goto(f"{server.address}trays")
    page.locator("#tray-2 summary").click()

    page.get_by_role("link", name="Print card").click()

    expect(page.get_by_role("heading", name="Cards")).to_be_visible()
    expect(page.get_by_label("2", exact=True)).to_be_checked()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_lead_shows_a_trays_code_and_a_helpers_phone_opens_it(
    ann: Phone, server: Served, phones: Phones, chromium: Browser, scheme: Scheme
) -> None:
    page = phones.new(scheme=scheme)
    page.goto(f"{server.address}trays")
    press = page.get_by_role("link", name="Show tray 2's code")
    room = press.bounding_box()
    assert room is not None and min(room["width"], room["height"]) >= 56
    press.click()

    expect(page.get_by_role("heading", name="Tray 2's code")).to_be_visible()
    look(page, server, "tray code")
    code = page.get_by_role("img", name="The code of tray 2")
    box = code.bounding_box()
    assert box is not None
    assert box["width"] >= 300
    (address,) = codes(Image.open(io.BytesIO(code.screenshot())).convert("L"))
    helper = Phones(chromium).new()
    helper.goto(server.address + urlsplit(address).path[1:])
    expect(helper.get_by_text("tray 2", exact=False).first).to_be_visible()
    helper.get_by_role("textbox").fill("Mia")
    helper.locator("button.go").click()
    expect(helper).to_have_url(re.compile("/helper$"))
    assert ann.state()["runs"]["r1"]["trays"]["2"].get("print", 0) == 0


def test_the_choice_says_how_many_sides_it_will_be(ann: Phone, server: Served, phone: Page) -> None:
    open_cards(phone, server)
    expect(phone.get_by_text("6 trays: 12 sides, 5 station sheets: 7 sides.")).to_be_visible()

    phone.get_by_label("Station sheets").uncheck()

    expect(phone.get_by_text("6 trays: 12 sides. 12 pages to print.")).to_be_visible()
    phone.get_by_label("Full cards").check()
    expect(phone.get_by_text("6 trays: 12 sides")).to_have_count(0)
