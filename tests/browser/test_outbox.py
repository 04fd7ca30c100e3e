"""The server is frozen, killed and away: presses stay on the phone, say so, and arrive once, in their order."""

import re
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, Route, expect

from runboard.floor.warm import catch_up
from runboard.opening import open_workshop
from tests.browser.beside import fetches
from tests.browser.coming_back import Mortal, SamePort
from tests.browser.conftest import Phones
from tests.phone import Phone

WORKED = ["load started", "load done", "load started", "load done", "load started"]


@pytest.fixture
def phone(phones: Phones) -> Page:
    """A phone whose browser may complain that nobody answered."""
    phones.forgive_silence_of_the_server()
    return phones.new()


@pytest.fixture
def same_port(shop_with_a_run: Path) -> Iterator[SamePort]:
    with SamePort(shop_with_a_run) as server:
        yield server


@pytest.fixture
def mortal(shop_with_a_run: Path) -> Iterator[Mortal]:
    with Mortal(shop_with_a_run) as server:
        yield server


def test_presses_made_while_the_server_is_frozen_are_sent_when_it_thaws(phone: Page, mortal: Mortal) -> None:
    at_the_bench(phone, mortal)
    mortal.freezes()
    try:
        cleans_two_trays(phone)
        expect(foot(phone)).to_contain_text("saved here")
    finally:
        mortal.thaws()

    all_sent(phone)
    assert worked(mortal.data) == WORKED


def test_presses_made_while_the_server_is_dead_are_sent_once_when_it_is_back(phone: Page, mortal: Mortal) -> None:
    at_the_bench(phone, mortal)
    mortal.goes()
    cleans_two_trays(phone)
    expect(foot(phone)).to_contain_text("saved here")
    expect(phone.get_by_text("No answer from the server")).to_be_visible()

    mortal.starts()

    all_sent(phone)
    expect(phone.get_by_text("No answer from the server")).to_be_hidden()
    assert worked(mortal.data) == WORKED


def test_presses_that_wait_on_the_phone_survive_a_closed_page(phone: Page, same_port: SamePort) -> None:
    at_the_bench(phone, same_port)
    same_port.goes()
    cleans_two_trays(phone)
    expect(foot(phone)).to_contain_text("saved here")
    again = phone.context.new_page()
    phone.close()

    same_port.starts()
    again.goto(same_port.now.address)

    expect(again.get_by_role("heading", level=1)).to_contain_text("Clean, tray 3")
    all_sent(again)
    assert worked(same_port.data) == WORKED


def test_an_answer_that_was_lost_on_the_way_doubles_nothing(phone: Page, same_port: SamePort) -> None:
    at_the_bench(phone, same_port)
    lost = []

    def lose_the_answer(route: Route) -> None:
        lost.append(route.fetch().status)
        route.abort()

    phone.route("**/taps", lose_the_answer, times=2)
    cleans_two_trays(phone)

    all_sent(phone)
    assert lost == [200, 200]
    assert worked(same_port.data) == WORKED


def at_the_bench(phone: Page, server: SamePort) -> None:
    """Ann has begun to clean tray 1; everything is sent."""
    before = Phone(server.now.address)
    for board in ("cut/1", "cut/2"):
        before.press("load done", run="r1", load=board)
    before.press("load started", run="r1", load="clean/1")
    phone.goto(server.now.address)
    phone.get_by_role("button", name="Ann", exact=True).click()
    expect(phone.get_by_role("heading", level=1)).to_contain_text("Clean, tray 1")
    fetches(phone, "overlay")  # it can do without the server


def cleans_two_trays(phone: Page) -> None:
    """Two presses: each ends a tray and begins the next. The page knows the next by itself."""
    for tray in (2, 3):
        phone.get_by_role("button", name=re.compile("^Done, all 5 good")).click()
        expect(phone.get_by_role("heading", level=1)).to_contain_text(f"Clean, tray {tray}")


def all_sent(phone: Page) -> None:
    expect(foot(phone)).to_contain_text(re.compile(r"sent\s*(Undo)?$"), timeout=35_000)


def foot(phone: Page) -> Locator:
    return phone.locator("footer")


def worked(data: Path) -> list[str]:
    """What was stored of the bench, in the order of arrival; nothing twice, nothing to settle."""
    store, workshop = open_workshop(data)
    try:
        catch_up(workshop)
        events = list(workshop.log.events())
        assert not workshop.ledger.state.unsettled
    finally:
        store.close()
    assert max(Counter(event.id for event in events).values()) == 1
    return [event.kind for event in events if event.load.startswith("clean/")]
