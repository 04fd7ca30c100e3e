"""A phone whose storage takes nothing: it says so, names what is not saved, keeps it in the page, and sends it."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.coming_back import SamePort
from tests.browser.conftest import Phones
from tests.browser.installed import button, install, says
from tests.browser.test_outbox import WORKED, all_sent, cleans_two_trays, foot, worked

# As a browser refuses to write when the disk or the quota is full.
FILLS_UP = """
for (const [shape, name] of [[IDBObjectStore, "add"], [IDBObjectStore, "put"], [Storage, "setItem"]]) {
    const real = shape.prototype[name];
    shape.prototype[name] = function (...facts) {
        if (globalThis.storageIsFull) throw new DOMException("full", "QuotaExceededError");
        return real.apply(this, facts);
    };
}
"""
LEAVING_IS_ASKED = """() => {
    const leaving = new Event("beforeunload", { cancelable: true });
    dispatchEvent(leaving);
    return leaving.defaultPrevented;
}"""


@pytest.fixture
def server(shop_with_a_run: Path) -> Iterator[SamePort]:
    with SamePort(shop_with_a_run) as served:
        yield served


@pytest.fixture
def full(phones: Phones, server: SamePort) -> Page:
    """Ann's phone, whose storage has just filled up; the server is away."""
    page = phones.new(init_script=FILLS_UP)
    install(page, server)
    phones.forgive_silence_of_the_server()
    server.goes()
    page.evaluate("globalThis.storageIsFull = true")
    return page


def notice(page: Page) -> Locator:
    return page.get_by_role("alert").filter(has_text="out of storage")


def test_presses_that_the_storage_does_not_take_are_named_and_sent(full: Page, server: SamePort) -> None:
    cleans_two_trays(full)
    expect(foot(full)).to_contain_text("not saved on this phone; leave this page open")
    expect(notice(full).get_by_role("listitem")).to_have_text(
        [re.compile("^Done: Clean, tray.1"), re.compile("tray.2")]
    )
    assert full.evaluate(LEAVING_IS_ASKED)

    server.starts()

    all_sent(full)
    expect(notice(full).get_by_role("listitem")).to_have_count(0)
    assert not full.evaluate(LEAVING_IS_ASKED)
    assert worked(server.data) == WORKED


def test_presses_are_saved_once_there_is_room_again(full: Page, server: SamePort) -> None:
    cleans_two_trays(full)
    expect(notice(full).get_by_role("listitem")).to_have_count(2)

    full.evaluate("globalThis.storageIsFull = false")

    expect(notice(full)).to_be_hidden(timeout=40_000)  # it tries again after at most 36 s
    expect(foot(full)).to_contain_text("saved here")
    full.reload()
    says(full, "Clean, tray 3")
    server.starts()
    all_sent(full)
    assert worked(server.data) == WORKED


def test_a_press_can_be_undone_while_nothing_can_be_saved(full: Page, server: SamePort) -> None:
    cleans_two_trays(full)
    button(full, "^Undo").click()
    says(full, "Clean, tray 2")

    server.starts()

    all_sent(full)
    says(full, "Clean, tray 2")
