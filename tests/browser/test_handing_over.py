"""A lead gives work to somebody, looks at the first piece, goes to who calls, and says who was shown which machine."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from runboard.floor.changing.runs import Wish, open_run
from runboard.opening import open_workshop
from tests.browser.beside import arrived, bodies
from tests.browser.conftest import Phones
from tests.phone import Phone
from tests.scenario import a_pass, operation, shop
from tests.serving import Served, serving


@pytest.fixture
def ben(ann: Phone, server: Served) -> Phone:
    """Ben's other phone, without a screen."""
    found = Phone(server.address, person="ben")
    found.state()
    return found


def now(phones: Phones, server: Served, person: str) -> Page:
    page = phones.new()
    page.goto(server.address)
    page.get_by_role("button", name=person, exact=True).click()
    return page


def test_at_a_tray_what_comes_next_there_is_chosen_already(
    ann: Phone, server: Served, phones: Phones, data: Path
) -> None:
    lead = now(phones, server, "Ann")
    lead.goto(f"{server.address}trays")
    lead.locator("#tray-4").locator("summary").last.click()

    lead.locator("#tray-4").get_by_role("button", name="Assign to …").click()
    sheet = lead.get_by_role("dialog", name="Assign to …")
    sheet.get_by_role("button", name="Ben", exact=True).click()
    sheet.get_by_role("button", name=re.compile("^Assign Cut, tray 4, to Ben")).click()

    expect(lead.get_by_text("Ben: Cut, tray 4").first).to_be_visible()
    arrived(data, "operation given")
    assert bodies(data, "operation given") == [{"to": "ben", "trays": ["4"], "look": False}]


def test_the_lead_gives_three_trays_and_the_first_piece_waits_for_a_look(
    ben: Phone, server: Served, phones: Phones, data: Path
) -> None:
    lead, helper = now(phones, server, "Ann"), now(phones, server, "Ben")
    lead.goto(f"{server.address}trays")
    lead.get_by_role("button", name="Assign to …").click()
    sheet = lead.get_by_role("dialog", name="Assign to …")
    for tray in ("1", "2", "3"):
        sheet.get_by_role("button", name=tray, exact=True).click()
    sheet.get_by_role("button", name="Clean", exact=True).click()
    sheet.get_by_role("button", name="Ben", exact=True).click()
    sheet.get_by_label("Show me the first piece").check()
    sheet.get_by_role("button", name="Assign Clean, trays 1 to 3, to Ben").click()
    lead.get_by_role("navigation").get_by_role("link", name="Now").click()
    expect(lead.get_by_text("Ben: Clean, trays 1 to 3").first).to_be_visible()
    expect(helper.get_by_text("You: Clean, trays 1 to 3")).to_be_visible()

    ben.state()
    ben.press("load started", run="r1", load="clean/1")
    expect(helper.get_by_text("Assigned to you")).to_be_visible()
    expect(helper.get_by_role("button", name=re.compile("^Done"))).to_have_count(0)
    (refused,) = ben.send(ben.event("load done", run="r1", load="clean/1"))
    assert refused["code"] == "look first"
    assert "Show it first" in refused["sentence"]
    helper.get_by_role("button", name="Show the first piece").click()
    expect(helper.get_by_text("The lead has been called to look.")).to_be_visible()

    call = lead.locator(".panel", has_text="Ben calls from tray 1: check my first piece")
    call.get_by_role("button", name="Not yet").click()
    expect(helper.get_by_text("Not yet, says the lead.")).to_be_visible()
    helper.get_by_role("button", name="Show the first piece").click()
    call.get_by_role("button", name="Good, carry on").click()

    helper.get_by_role("button", name=re.compile("^Done, all 5 good")).click()
    arrived(data, "load done")
    assert bodies(data, "operation given") == [{"to": "ben", "trays": ["1", "2", "3"], "look": True}]
    # One look lets all three go on.
    assert [one["result"] for one in bodies(data, "look given")] == ["fail", "pass", "pass", "pass"]
    assert [one["why"] for one in bodies(data, "lead called")] == ["look", "look"]
    assert len(bodies(data, "load done")) == 1


def test_only_the_lead_gives(ben: Phone, server: Served, phones: Phones) -> None:
    page = now(phones, server, "Ben")
    page.goto(f"{server.address}trays")

    expect(page.get_by_role("article").first).to_be_visible()

    expect(page.get_by_role("button", name="Assign to …")).to_have_count(0)


def test_somebody_calls_and_hears_that_the_lead_is_on_the_way(
    ben: Phone, server: Served, phones: Phones, data: Path
) -> None:
    lead, helper = now(phones, server, "Ann"), now(phones, server, "Ben")
    ben.press("lead called", {"why": "help", "note": "it chatters"}, run="r1", tray="4", operation="clean")
    call = lead.locator(".panel", has_text="Ben calls from tray 4: help needed")
    expect(call).to_contain_text("it chatters")

    call.get_by_role("button", name="I'm going").click()

    expect(call).to_be_hidden()
    expect(helper.get_by_text("Ann is on the way to Ben at tray 4: help needed")).to_be_visible()
    lead.locator(".asked", has_text="Ann is on the way to Ben").get_by_role("button", name="Done", exact=True).click()
    arrived(data, "alert answered")
    assert [one["answer"] for one in bodies(data, "alert answered")] == ["done"]
    assert ben.state()["calls"] == {}


def test_somebody_hurt_is_red_and_names_the_emergency_number(
    ben: Phone, server: Served, phones: Phones, data: Path
) -> None:
    lead, helper = now(phones, server, "Ann"), now(phones, server, "Ben")
    ben.press("load started", run="r1", load="sand:120/4")
    expect(helper.get_by_role("heading", level=1)).to_contain_text("Sand 120")

    helper.get_by_role("button", name="Something is wrong").click()
    helper.get_by_role("button", name="Someone is hurt: call the lead").click()

    call = lead.locator(".panel.red")
    expect(call).to_contain_text("Someone is hurt. Ben calls from tray 4")
    expect(call).to_contain_text("call 112", ignore_case=True)
    assert bodies(data, "lead called") == [{"why": "hurt"}]


def test_the_lead_says_who_was_shown_which_machine(ben: Phone, server: Served, phones: Phones, data: Path) -> None:
    lead = now(phones, server, "Ann")
    lead.locator("summary", has_text="Machine training").click()
    lead.get_by_role("button", name="Add training …").click()
    sheet = lead.get_by_role("dialog", name="Training: Ben")
    sheet.get_by_role("button", name="Laser", exact=True).click()

    sheet.get_by_role("button", name="I trained Ben on the Laser").click()

    expect(lead.get_by_text("Trained on: Laser")).to_be_visible()
    arrived(data, "shown how")
    assert bodies(data, "shown how") == [{"person": "ben"}]


def test_the_lead_shows_clamps_that_run_for_a_time_of_their_own(phones: Phones, data: Path) -> None:
    glue = operation("glue", "clamps", a_pass(machine=30), attendance="watched")
    book = shop()
    book["stations"].append({"key": "clamps", "name": "Clamps", "kind": "clamping", "room": "shop"})
    book["products"][0]["operations"].append(glue)
    store, workshop = open_workshop(data)
    workshop.books.save(book, workshop.clock.now())
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": 4, "text": "12"}], start=5), "ann")
    store.close()

    with serving(data) as server:
        lead = now(phones, server, "Ann")
        lead.locator("summary", has_text="Machine training").click()
        lead.get_by_role("button", name="Add training …").click()
        sheet = lead.get_by_role("dialog", name="Training: Ben")
        expect(sheet.get_by_role("button", name="Bench", exact=True)).to_be_hidden()
        sheet.get_by_role("button", name="Clamps", exact=True).click()
        sheet.get_by_role("button", name="I trained Ben on the Clamps").click()

        expect(lead.get_by_text("Trained on: Clamps")).to_be_visible()
        arrived(data, "shown how")
        phones.close()  # before the server, of which an open page would say that it is silent
