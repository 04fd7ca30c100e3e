"""The installed page: it opens without the server, a tray is worked with it, and nothing that was pressed is lost."""

import signal
from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.pressing.taps import record_events
from runboard.opening import open_workshop
from runboard.run.log.event import write_moment
from tests.browser.coming_back import Mortal, SamePort
from tests.browser.conftest import Phones
from tests.browser.installed import button, install, reopened, says, until_up_to_date
from tests.browser.test_outbox import all_sent, foot
from tests.browser.truth import differences, what_it_shows, what_the_fold_says
from tests.scenario import key_rails, shop

# Marks, in the page's own clock, when the first thing to do stands there.
MARK = """
new MutationObserver((_, watching) => {
    if (!document.querySelector("section.now h1")) return;
    performance.mark("shown");
    watching.disconnect();
}).observe(document, { childList: true, subtree: true });
"""
SHOWN = "performance.getEntriesByName('shown')[0].startTime"


@pytest.fixture
def rails_with_lists(data: Path) -> Path:
    """A run of key rails, cleaned up after a start list and by a setup sheet; Ann and Ben have come."""
    rails = key_rails()
    clean = rails["operations"][1]
    clean |= {"checklist": ["Bench clear", "Scraper sharp"], "setup_sheet": [["Stop", "rail, short side"]]}
    store, workshop = open_workshop(data)
    workshop.books.save({**shop(), "products": [rails]}, workshop.clock.now())
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": 30}], start=30), "ann")
    until = {"until": write_moment(workshop.clock.now() + timedelta(hours=3))}
    record_events(workshop, [new_event(workshop, "person came", until, person=person) for person in ("ann", "ben")])
    store.close()
    return data


@pytest.fixture
def server(rails_with_lists: Path) -> Iterator[SamePort]:
    with SamePort(rails_with_lists) as served:
        yield served


@pytest.fixture
def mortal(rails_with_lists: Path) -> Iterator[Mortal]:
    with Mortal(rails_with_lists) as served:
        yield served
        served.thaws()


@pytest.fixture
def installed(phones: Phones, server: SamePort) -> Page:
    """Ann's phone with the page installed."""
    return installed_from(server, phones)


def installed_from(server: SamePort, phones: Phones) -> Page:
    page = phones.new(init_script=MARK)
    install(page, server)
    phones.forgive_silence_of_the_server()
    return page


@pytest.mark.parametrize("how", [signal.SIGKILL, signal.SIGSTOP], ids=["killed", "frozen"])
def test_now_opens_without_the_server_as_it_was(phones: Phones, mortal: Mortal, how: signal.Signals) -> None:
    page = installed_from(mortal, phones)
    mortal.now.process.send_signal(how)

    page = reopened(page, mortal.now.address)

    says(page, "Clean, tray 1")
    expect(page.get_by_text("No answer from the server.")).to_be_visible(timeout=12_000)
    shown_after = page.evaluate(SHOWN)
    print(f"Now stood there {shown_after:.0f} ms after it was opened, the server {how.name}")
    assert shown_after < 2000


def test_trays_opens_without_the_server_too(installed: Page, server: SamePort) -> None:
    server.goes()

    page = reopened(installed, f"{server.now.address}trays")

    expect(page.get_by_role("heading", level=1)).to_contain_text("Trays")
    expect(page.get_by_role("heading", name="tray 6")).to_be_visible()


def test_the_help_opens_without_the_server_from_where_now_says_so(installed: Page, server: SamePort) -> None:
    server.goes()
    page = reopened(installed, server.now.address)
    expect(page.get_by_text("No answer from the server")).to_be_visible(timeout=12_000)

    page.get_by_role("link", name="How this works").click()

    page.wait_for_url("**/help#away")
    expect(page.get_by_role("heading", name="When the server is away")).to_be_in_viewport()
    expect(page.get_by_role("link", name="Call 112")).to_be_attached()
    assert page.evaluate("getComputedStyle(document.querySelector('.emergency')).borderTopWidth") == "3px"
    page.goto(server.now.address)
    says(page, "Clean, tray 1")


def test_now_leads_to_no_help_that_would_not_open(phones: Phones, server: SamePort) -> None:
    """Where nothing is kept for a time without the server, whoever follows a link has lost the page."""
    page = phones.new()
    page.goto(server.now.address)
    page.get_by_role("button", name="Ann", exact=True).click()
    phones.forgive_silence_of_the_server()

    server.goes()

    expect(page.get_by_text("No answer from the server")).to_be_visible(timeout=12_000)
    expect(page.get_by_role("link", name="How this works")).to_have_count(0)


def test_a_tray_is_worked_without_the_server_and_is_what_the_server_says_afterwards(
    installed: Page, server: SamePort
) -> None:
    server.goes()
    page = reopened(installed, server.now.address)

    a_setup_sheet_opens(page)
    a_list_is_ticked(page)
    button(page, "^Done, all 5 good").click()
    says(page, "Clean, tray 2")
    a_piece_is_bad(page)
    button(page, "^Called away").click()
    says(page, "You were called away")
    button(page, "^I'm back, carry on with").click()
    button(page.get_by_role("dialog"), "^Carry on").click()
    button(page, "^Done, 4 good, 1 scrap").click()
    says(page, "Clean, tray 3")
    button(page, "^Undo").click()
    says(page, "Clean, tray 2")
    page.reload()
    says(page, "Clean, tray 2")
    expect(foot(page)).to_contain_text("saved here")
    offline = what_it_shows(page)
    server.starts()
    all_sent(page)

    # What was running is asked by the server that came back.
    assert differences(offline, what_the_fold_says(server.data, "ann"), but="asks") == []
    until_up_to_date(page)
    assert differences(what_it_shows(page), what_the_fold_says(server.data, "ann")) == []


def a_setup_sheet_opens(page: Page) -> None:
    page.get_by_text("List, setup, first piece: Clean").first.click()
    expect(page.get_by_text("rail, short side").first).to_be_visible()


def a_list_is_ticked(page: Page) -> None:
    button(page, "^Open start list: 2 points").click()
    dialog = page.get_by_role("dialog")
    for point in ("Bench clear", "Scraper sharp"):
        dialog.get_by_role("checkbox", name=point).check()
    button(dialog, "^All ticked").click()


def a_piece_is_bad(page: Page) -> None:
    """One of tray 2 has a tear-out."""
    button(page, "^Something is wrong").click()
    button(page.get_by_role("dialog"), "^A bad piece").click()
    button(page.get_by_role("dialog"), "^tear-out").click()
    button(page.get_by_role("dialog"), "^1 scrap: tear-out").click()
