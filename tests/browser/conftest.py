"""A phone in a person's hand: a real Chromium with a phone's viewport, on a real server."""

import functools
import http.server
import shutil
import threading
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any, Literal

import pytest
from playwright.sync_api import Browser, BrowserContext, ConsoleMessage, Page, ViewportSize, expect, sync_playwright

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.pressing.taps import record_events
from runboard.opening import open_workshop
from runboard.run.log.event import write_moment
from tests.conftest import HandClock
from tests.pairing import browser_cookie, paired
from tests.phone import Phone
from tests.scenario import shop
from tests.serving import Here, Served, serving

Scheme = Literal["light", "dark"]
STATIC = Path(__file__).parents[2] / "static"
PHONE: ViewportSize = {"width": 360, "height": 740}
TABLET: ViewportSize = {"width": 820, "height": 1180}
PATIENCE = 20_000  # milliseconds: a busy machine of two cores may take several seconds to open a page
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
# What the browser says of a request, or of its service worker's script, that nobody answers, or a server as it goes.
SILENCE = ("ERR_", "occurred when fetching the script", "status of 503")
# A phone on the build without windows costs a quarter of the time: each context of the whole browser opens a window, with
# all that stands around a page.
WHOLE = shutil.which("chromium") or "chromium: apt-get install chromium"
WITHOUT_WINDOWS = shutil.which("chromium-headless-shell") or WHOLE


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    """Debian's Chromium without its windows, for the whole session."""
    expect.set_options(timeout=PATIENCE)
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=WITHOUT_WINDOWS, args=FLAGS)
        yield browser
        browser.close()


@pytest.fixture
def data(tmp_path: Path) -> Path:
    """The shop's data folder; a test fills it before it asks for ``server``."""
    return tmp_path / "shop"


@pytest.fixture
def server(data: Path) -> Iterator[Here]:
    """The shop in the data folder, served on a thread."""
    with serving(data) as served:
        yield served


SWITCHED_ON: list["Phones"] = []


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_teardown() -> None:
    """Phones are put away before their server goes: what a browser says of its silence then is nobody's mistake."""
    while SWITCHED_ON:
        SWITCHED_ON.pop().close()


class Phones:
    """Phones out of their boxes: each a browser context of its own, with nothing remembered but that it is paired with
    the shop in ``data``, as a lead's."""

    def __init__(self, chromium: Browser, data: Path | None = None) -> None:
        self.chromium = chromium
        self.data = data
        self.contexts: list[BrowserContext] = []
        self.complaints: list[str] = []
        self.forgives_silence = False
        SWITCHED_ON.append(self)

    def close(self) -> None:
        for context in self.contexts:
            context.close()

    def new(self, *, viewport: ViewportSize = PHONE, scheme: Scheme = "light", init_script: str = "") -> Page:
        """A page on a phone of its own; ``init_script`` runs before the page's own."""
        context = self.chromium.new_context(
            viewport=viewport,
            color_scheme=scheme,
            device_scale_factor=2,
            has_touch=True,
            is_mobile=True,
            locale="en-GB",
            timezone_id="Europe/Berlin",
        )
        context.set_default_timeout(PATIENCE)
        if self.data:
            context.add_cookies([browser_cookie(paired(self.data))])
        if init_script:
            context.add_init_script(init_script)
        self.contexts.append(context)
        page = context.new_page()
        page.on("pageerror", lambda error: self.complaints.append(str(error)))
        page.on("console", self._heard)
        return page

    def _heard(self, message: ConsoleMessage) -> None:
        if message.type == "error" and not (self.forgives_silence and any(one in message.text for one in SILENCE)):
            self.complaints.append(f"{message.text} ({message.location.get('url')})")

    def forgive_silence_of_the_server(self) -> None:
        """What the browser says of requests that nobody answered: a test that stops the server expects it."""
        self.forgives_silence = True
        self.complaints = [one for one in self.complaints if not any(said in one for said in SILENCE)]


@pytest.fixture
def phones(chromium: Browser, data: Path) -> Iterator[Phones]:
    """As many phones as a test wants. Whatever a page's script complained of fails the test."""
    found = Phones(chromium, data)
    yield found
    assert found.complaints == []


@pytest.fixture
def phone(phones: Phones) -> Page:
    """A page on one phone."""
    return phones.new()


@pytest.fixture
def shop_with_a_run(data: Path) -> Path:
    """The small shop with a run of key rails, in the data folder; Ann and Ben have come, an hour ago."""
    an_hour_ago = HandClock(datetime.now(UTC) - timedelta(hours=1))
    store, workshop = open_workshop(data, an_hour_ago)
    workshop.books.save(shop(), an_hour_ago.now())
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": 30}], start=30), "ann")
    until = {"until": write_moment(an_hour_ago.now() + timedelta(hours=4))}
    record_events(workshop, [new_event(workshop, "person came", until, person=person) for person in ("ann", "ben")])
    store.close()
    return data


@pytest.fixture
def ann(shop_with_a_run: Path, server: Served) -> Phone:
    """Ann's other phone, without a screen."""
    found = Phone(server.address)
    found.state()
    return found


class Quiet(http.server.SimpleHTTPRequestHandler):
    """Serves files, and says nothing of it."""

    def log_message(self, *args: Any) -> None:
        """Nobody reads it."""


@pytest.fixture(scope="module")
def page(chromium: Browser) -> Iterator[Page]:
    """A page on which the static folder's modules can be imported."""
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Quiet, directory=STATIC))
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    opened = chromium.new_page()
    opened.goto(f"http://127.0.0.1:{server.server_port}/icon.svg")
    yield opened
    opened.close()
    server.shutdown()
    server.server_close()
    thread.join()
