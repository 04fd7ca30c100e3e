"""The way that phones go: installed over https from a name on the shop's network, by a computer that trusts the shop's
authority in its NSS database; then the server is gone."""

from contextlib import ExitStack
from pathlib import Path

from playwright.sync_api import Browser, expect

from runboard.floor.changing.runs import new_event
from runboard.floor.pressing.taps import record_events
from runboard.opening import open_workshop
from runboard.web.door.sessions import COOKIE_BY_HTTPS
from tests.browser.conftest import PHONE
from tests.browser.installed import button, installs, says
from tests.browser.test_outbox import foot
from tests.browser.test_trusted_certificate import believe, computer
from tests.browser.test_trusted_certificate import home as home
from tests.pairing import paired
from tests.web.test_lan import Shop


def test_a_page_that_was_installed_over_https_opens_and_takes_presses_without_the_server(
    chromium: Browser, home: Path, shop_with_a_run: Path
) -> None:
    at_the_bench(shop_with_a_run)
    cookie = {"name": COOKIE_BY_HTTPS, "value": paired(shop_with_a_run), "secure": True, "sameSite": "Strict"}
    with ExitStack() as server:
        shop = server.enter_context(Shop(shop_with_a_run).serving())
        assert shop.network.trusted
        believe(home, shop.network.trusted.der)
        with computer(chromium, home) as page:
            address = f"https://shop-pc.local:{shop.secure}/"
            page.context.add_cookies([{**cookie, "url": address}])
            page.set_viewport_size(PHONE)
            page.goto(address)
            button(page, "^Ann$").click()
            installs(page)
            assert page.evaluate("window.isSecureContext")

            server.close()
            page.goto("about:blank")
            page.goto(address)

            says(page, "Clean, tray 1")
            button(page, "^Done, all 5 good").click()
            says(page, "Clean, tray 2")
            expect(foot(page)).to_contain_text("saved here")


def at_the_bench(data: Path) -> None:
    """Ann has begun to clean tray 1."""
    store, workshop = open_workshop(data)
    presses = [("load done", "cut/1"), ("load done", "cut/2"), ("load started", "clean/1")]
    events = [new_event(workshop, kind, {}, person="ann", run="r1", load=load) for kind, load in presses]
    record_events(workshop, events)
    store.close()
