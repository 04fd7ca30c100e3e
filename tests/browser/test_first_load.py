"""What a phone that has never been here fetches before Now is drawn, and until it has come to rest; nothing twice."""

import re
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Page, Request, Route, expect

from tests.browser.beside import fetches
from tests.browser.inside import LATER
from tests.browser.test_screens import demo, demo_data
from tests.serving import Served

__all__ = ["demo_data"]

MOST_BYTES, MOST_REQUESTS = 60_000, 15
PARTS = ("alarm", "alerts", "asks", "below", "others", "overlay", "positions", "sheets", "tray list")
COMES_LATER = re.compile(r"\.later\.js$|/en\.(?:sheets|care)\.ftl$|/table\.json$")
IS_RUN = f"(async () => Boolean(await {LATER}('door/install.js')))()"


@pytest.fixture
def server(demo_data: Path, tmp_path: Path) -> Iterator[Served]:
    """The demo in the middle of its evening."""
    with demo(demo_data, tmp_path) as found:
        yield found.server


@pytest.fixture
def asked(phone: Page) -> list[Request]:
    """What that phone asks for, as it goes on."""
    found: list[Request] = []
    phone.on("request", lambda request: found.append(request))
    return found


def places(asked: list[Request]) -> list[str]:
    return [urlsplit(request.url).path for request in asked]


def test_a_first_load_of_now_is_light(server: Served, phone: Page, asked: list[Request]) -> None:
    phone.context.add_cookies([{"name": "person", "value": "robin", "url": server.address}])
    held: list[Route] = []
    drawn: list[Request] = []
    phone.route(COMES_LATER, lambda route: route.continue_() if drawn else held.append(route))
    phone.goto(server.address)
    expect(phone.get_by_role("heading", level=1)).to_be_visible()
    drawn += [one for one in asked if not COMES_LATER.search(one.url) and not one.url.endswith("/stream")]
    for route in held:
        route.continue_()
    fetches(phone, *PARTS)

    sizes = {one.url: one.sizes() for one in drawn}
    weight = sum(size["responseBodySize"] for size in sizes.values())
    assert "/composed/now.js" in places(drawn) and weight > 20_000
    assert weight <= MOST_BYTES, {urlsplit(one).path: size["responseBodySize"] for one, size in sizes.items()}
    assert len(drawn) <= MOST_REQUESTS, places(drawn)


def test_each_script_is_there_once(server: Served, phone: Page, asked: list[Request]) -> None:
    """A second instance of a module would hold a state and an outbox of its own."""
    for screen in ("", "trays", "wall"):
        asked.clear()
        with phone.expect_response(re.compile(r"\.later\.js$")):  # it has come to rest
            phone.goto(server.address + screen)
        phone.evaluate(IS_RUN)

        scripts = [one for one in places(asked) if one.endswith(".js")]

        assert len(scripts) == len(set(scripts))
        assert {one for one in scripts if one != "/worker.js"} <= {
            f"/composed/{screen or 'now'}.js",
            f"/composed/{screen or 'now'}.later.js",
        }
