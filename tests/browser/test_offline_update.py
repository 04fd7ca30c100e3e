"""A new version of the page arrives while presses wait, and takes none of them; and the page can be installed."""

import shutil
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.coming_back import SamePort
from tests.browser.conftest import FLAGS, WHOLE, Phones
from tests.browser.installed import button, install, installs, says, until
from tests.browser.test_outbox import WORKED, all_sent, foot, worked
from tests.pairing import browser_cookie, paired
from tests.serving import ROOT, running

# The server, with the pages and scripts of another folder.
FROM = """
import sys
from pathlib import Path
from runboard import places
places._PACKAGE = Path(sys.argv.pop(1))
from runboard.cli import main
main()
"""
A_NEW_ONE_WAITS = "navigator.serviceWorker.getRegistration().then((found) => Boolean(found.waiting))"
KEPT = "caches.keys()"
OLD_WORDS, NEW_WORDS = "Called away", "I am called away"


class OtherFolder(SamePort):
    """A server whose pages and scripts can be changed: a process, since the catalogue is read once in each."""

    def __init__(self, data: Path, pages: Path) -> None:
        self.pages = pages
        for name in ("static", "templates"):
            shutil.copytree(ROOT / name, pages / name)
        super().__init__(data)

    def starts(self) -> None:
        python = (sys.executable, "-c", FROM, str(self.pages))
        command = ("serve", "--data", str(self.data))
        self.now = self._stack.enter_context(running(*command, python=python, port=str(self.port)))

    def changes_a_word(self) -> None:
        file = self.pages / "static" / "words" / "en.ftl"
        text = file.read_text("utf-8")
        assert f"go-away = {OLD_WORDS}\n" in text
        file.write_text(text.replace(f"go-away = {OLD_WORDS}\n", f"go-away = {NEW_WORDS}\n"), "utf-8")


@pytest.fixture
def server(shop_with_a_run: Path, tmp_path: Path) -> Iterator[OtherFolder]:
    with OtherFolder(shop_with_a_run, tmp_path / "pages") as served:
        yield served


@pytest.fixture
def page(phones: Phones, server: OtherFolder) -> Page:
    """Ann's phone with the page installed; her presses do not get through."""
    found = phones.new()
    install(found, server)
    phones.forgive_silence_of_the_server()
    found.context.route("**/taps", lambda route: route.abort())
    return found


def finishes_a_tray(page: Page, then: str) -> None:
    button(page, "^Done, all 5 good").click()
    says(page, f"Clean, tray {then}")
    expect(foot(page)).to_contain_text("saved here")


def opened_again(page: Page, server: OtherFolder) -> Page:
    """The page closed, and opened anew: with no page open a new version takes over, however busy the browser is. A reload
    alone does it too, but as late as the browser lets the old worker go."""
    context = page.context
    page.close()
    fresh = context.new_page()
    fresh.goto(server.now.address)
    return fresh


def shows(page: Page, words: str) -> None:
    expect(page.get_by_role("button", name=words, exact=True)).to_be_visible()


def test_a_new_version_takes_over_and_loses_no_press(page: Page, server: OtherFolder) -> None:
    finishes_a_tray(page, "2")
    (before,) = page.evaluate(KEPT)
    server.changes_a_word()

    page.reload()
    shows(page, OLD_WORDS)
    until(page, A_NEW_ONE_WAITS)
    shows(page, OLD_WORDS)
    finishes_a_tray(page, "3")
    page = opened_again(page, server)

    shows(page, NEW_WORDS)
    says(page, "Clean, tray 3")
    expect(foot(page)).to_contain_text("saved here")
    page.context.unroute("**/taps")
    all_sent(page)
    assert worked(server.data) == WORKED
    (after,) = page.evaluate(KEPT)
    assert after != before


def test_a_page_that_is_open_goes_on_with_the_files_that_it_began_with(page: Page, server: OtherFolder) -> None:
    other = page.context.new_page()
    other.goto(server.now.address)
    shows(other, OLD_WORDS)
    server.changes_a_word()
    other.reload()
    until(other, A_NEW_ONE_WAITS)

    other.reload()
    shows(other, OLD_WORDS)
    shows(page, OLD_WORDS)
    page.close()
    other = opened_again(other, server)

    shows(other, NEW_WORDS)


def test_the_browser_finds_nothing_that_keeps_the_page_from_being_installed(
    chromium: Browser, server: OtherFolder, tmp_path: Path
) -> None:
    context = chromium.browser_type.launch_persistent_context(tmp_path / "home", executable_path=WHOLE, args=FLAGS)
    try:
        context.add_cookies([browser_cookie(paired(server.data))])
        page = context.new_page()
        page.goto(server.now.address)
        installs(page)

        errors = context.new_cdp_session(page).send("Page.getInstallabilityErrors")

        assert errors["installabilityErrors"] == []
    finally:
        context.close()
