"""A phone is paired, works, is revoked, keeps what it was told, and sends it once it is paired again."""

import re
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from runboard.opening import open_workshop
from tests.browser.conftest import PHONE, Phones
from tests.serving import Running, Served, running

_WITH_CODE = re.compile(r"http://\S+/pair\?code=\S+")


@pytest.fixture
def unpaired(chromium: Browser, server: Served) -> Iterator[Page]:
    """A phone that the shop does not know. Its browser complains of each answer 401: that is no mistake of the page."""
    phones = Phones(chromium)
    yield phones.new()
    assert [one for one in phones.complaints if "401" not in one] == []


@pytest.fixture
def printing(data: Path) -> Iterator[Running]:
    """The shop served by a process, whose output is read."""
    with running("serve", "--data", str(data)) as served:
        yield served


def printed_address(server: Running) -> str:
    """The address with the code that the server printed."""
    for _ in range(100):
        if found := _WITH_CODE.search("".join(server.said)):
            return found[0]
        time.sleep(0.05)
    raise AssertionError(f"no code was printed: {server.said}")


def test_the_first_phone_pairs_by_what_the_server_printed_without_any_script(
    chromium: Browser, printing: Running
) -> None:
    context = chromium.new_context(viewport=PHONE, java_script_enabled=False)
    phone = context.new_page()
    phone.goto(f"{printing.address}plan")
    expect(phone.get_by_role("heading", level=1)).to_have_text("Pair this device with the shop")

    phone.goto(printed_address(printing))
    phone.get_by_label("Name of this device").fill("Ann's phone")
    phone.get_by_role("button", name="Pair this device").click()

    phone.get_by_role("link", name="Shop", exact=True).click()
    expect(phone.get_by_role("link", name="Ann's phone")).to_be_visible()
    context.close()


def test_a_helpers_phone_is_paired_revoked_and_paired_again(
    phone: Page, unpaired: Page, shop_with_a_run: Path, server: Served
) -> None:
    pairs(unpaired, server, code_on(phone, server, "Pair a helper"))
    unpaired.get_by_role("button", name="Ben", exact=True).click()
    expect(unpaired.get_by_role("heading", level=1)).to_contain_text("Cut, board 1")

    opens_its_page(phone, server)
    phone.get_by_text("Revoke Ben's phone").first.click()
    phone.get_by_role("button", name="Revoke Ben's phone").click()
    expect(unpaired.get_by_text("This phone is not paired with the shop")).to_be_visible(timeout=15_000)
    unpaired.get_by_role("button", name="Start", exact=True).click()
    expect(unpaired.locator("footer")).to_contain_text("saved here")
    assert stored(shop_with_a_run) == []

    opens_its_page(phone, server)
    phone.get_by_text("Pair it again").click()
    phone.get_by_role("button", name="Pair as helper").click()
    code = phone.locator(".code").inner_text()
    unpaired.get_by_role("link", name="Pair this phone").click()
    unpaired.get_by_label("Code").fill(code)
    unpaired.get_by_role("button", name="Pair this device").click()

    expect(unpaired.locator("footer")).to_contain_text(re.compile(r"sent\s*(Undo)?$"), timeout=15_000)
    expect(unpaired.get_by_text("This phone is not paired")).to_be_hidden()
    assert stored(shop_with_a_run) == ["load started"]


def opens_its_page(phone: Page, server: Served) -> None:
    phone.goto(f"{server.address}shop")
    if phone.get_by_text("Revoked", exact=True).count():
        phone.get_by_text("Revoked", exact=True).click()
    phone.get_by_role("link", name="Ben's phone").click()


def code_on(phone: Page, server: Served, button: str) -> str:
    phone.goto(f"{server.address}shop")
    phone.get_by_role("button", name=button).click()
    expect(phone.get_by_role("img").or_(phone.locator(".shown svg"))).to_be_visible()
    return phone.locator(".code").inner_text()


def pairs(phone: Page, server: Served, code: str) -> None:
    phone.goto(server.address)
    phone.get_by_label("Code").fill(code.lower())
    phone.get_by_label("Name of this device").fill("Ben's phone")
    phone.get_by_role("button", name="Pair this device").click()
    expect(phone.get_by_role("button", name="Ben", exact=True)).to_be_visible()


def stored(data: Path) -> list[str]:
    """What a phone pressed since the run was opened."""
    store, workshop = open_workshop(data)
    try:
        return [one.kind for one in workshop.log.events() if one.kind.startswith("load")]
    finally:
        store.close()
