"""The outbox in two other engines, WebKit as on an iPhone and Firefox: the server is killed and comes back."""

from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager
from pathlib import Path

import pytest

from tests.browser.coming_back import SamePort
from tests.browser.engines import Engine, firefox, webkit
from tests.browser.test_outbox import WORKED, worked
from tests.pairing import browser_cookie, paired
from tests.phone import Phone

HAS_COME_TO_REST = """
return performance.getEntriesByType("resource").some((one) => one.name.endsWith("/table.json") && one.responseEnd);
"""
IS_INSTALLED = "return navigator.serviceWorker?.controller?.state === 'activated'"


@pytest.fixture
def server(shop_with_a_run: Path) -> Iterator[SamePort]:
    with SamePort(shop_with_a_run) as served:
        yield served


@pytest.fixture(scope="module", params=[webkit, firefox], ids=["webkit", "firefox"])
def engine(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Engine]:
    """That engine, started once. What a page keeps it keeps by its port, which is another in each test."""
    start: Callable[[Path], AbstractContextManager[Engine]] = request.param
    with start(tmp_path_factory.mktemp("home")) as found:
        yield found


@pytest.fixture
def page(engine: Engine, server: SamePort) -> Engine:
    """Ann's page in that engine."""
    at_the_bench(engine, server)
    return engine


def test_presses_made_without_the_server_are_sent_once_when_it_is_back(page: Engine, server: SamePort) -> None:
    server.goes()
    cleans_two_trays(page)
    page.says("footer", "saved here")
    page.says("main", "No answer from the server")

    server.starts()

    all_sent(page)
    page.open(server.now.address)
    page.says("h1", "Clean, tray 3")
    assert worked(server.data) == WORKED


def test_the_installed_page_opens_without_the_server_and_still_has_the_presses(page: Engine, server: SamePort) -> None:
    page.until(IS_INSTALLED)
    server.goes()
    cleans_two_trays(page)
    page.says("footer", "saved here")

    page.open(server.now.address)

    page.says("h1", "Clean, tray 3")
    page.says("footer", "saved here")
    server.starts()
    all_sent(page)
    assert worked(server.data) == WORKED


def cleans_two_trays(page: Engine) -> None:
    """Two presses: each ends a tray and begins the next."""
    for tray in (2, 3):
        page.press("Done, all 5 good")
        page.says("h1", f"Clean, tray {tray}")


def all_sent(page: Engine) -> None:
    page.says("footer", "sent", seconds=35)


def at_the_bench(page: Engine, server: SamePort) -> None:
    """Ann has begun to clean tray 1; the page can do without the server."""
    before = Phone(server.now.address)
    for board in ("cut/1", "cut/2"):
        before.press("load done", run="r1", load=board)
    before.press("load started", run="r1", load="clean/1")
    page.open(f"{server.now.address}static/icon.svg")
    cookie = browser_cookie(paired(server.data))
    page.add_cookie({"name": cookie["name"], "value": cookie["value"]})
    page.open(server.now.address)
    page.press("Ann")
    page.says("h1", "Clean, tray 1")
    page.until(HAS_COME_TO_REST)
