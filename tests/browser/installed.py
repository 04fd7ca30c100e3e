"""A page that is installed on a phone, and what a person does with it."""

import re
import time

from playwright.sync_api import Locator, Page, expect

from tests.browser.coming_back import SamePort
from tests.browser.inside import LATER, OWN
from tests.phone import Phone

INSTALLED = "navigator.serviceWorker.controller?.state === 'activated'"
_IS_UP_TO_DATE = f"""async () => {{
    const modules = {OWN};
    return modules["door/shop.js"].serverReached() && !modules["door/outbox.js"].waiting().length;
}}"""


def install(page: Page, server: SamePort) -> None:
    """Boards 1 and 2 are cut, Ann is cleaning tray 1, and her page is installed."""
    before = Phone(server.now.address)
    for board in ("cut/1", "cut/2"):
        before.press("load done", run="r1", load=board)
    before.press("load started", run="r1", load="clean/1")
    page.goto(server.now.address)
    page.get_by_role("button", name="Ann", exact=True).click()
    says(page, "Clean, tray 1")
    installs(page)


def installs(page: Page) -> None:
    """The page does now what it does three seconds after it was opened: it fetches all for a time without the server."""
    page.evaluate(f"(async () => (await {LATER}('door/install.js')).keepForOffline())()")
    until(page, INSTALLED)


def until(page: Page, script: str, seconds: float = 20) -> None:
    """Wait for what a script says. The page allows no text to be run as script, so that it is asked from here."""
    give_up = time.monotonic() + seconds
    while not page.evaluate(script):
        assert time.monotonic() < give_up, script
        page.wait_for_timeout(50)


def until_up_to_date(page: Page) -> None:
    """Wait until the page has sent everything and heard of it."""
    until(page, _IS_UP_TO_DATE)


def says(page: Page, words: str) -> None:
    """The first thing on Now."""
    expect(page.get_by_role("heading", level=1)).to_contain_text(words)


def button(page: Page | Locator, words: str) -> Locator:
    """The first button whose words match."""
    return page.get_by_role("button", name=re.compile(words)).first


def reopened(page: Page, address: str) -> Page:
    """The page closed, and opened again."""
    again = page.context.new_page()
    page.close()
    again.goto(address)
    return again
