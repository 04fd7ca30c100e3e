"""A phone in a person's hand: a real Chromium with a phone's viewport, on a real server."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright

from tests.serving import Running, running

PHONE = {"width": 360, "height": 740}
TABLET = {"width": 820, "height": 1180}
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    """Debian's Chromium, for the whole session."""
    place = shutil.which("chromium")
    assert place, "Chromium is missing: apt-get install chromium"
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=place, args=FLAGS)
        yield browser
        browser.close()


@pytest.fixture
def data(tmp_path: Path) -> Path:
    """The shop's data folder; a test fills it before it asks for ``server``."""
    return tmp_path / "shop"


@pytest.fixture
def server(data: Path) -> Iterator[Running]:
    """``runboard serve`` on the data folder."""
    with running("serve", "--data", str(data)) as served:
        yield served


@pytest.fixture
def phone_context(chromium: Browser) -> Iterator[BrowserContext]:
    """A phone of its own: nothing remembered."""
    context = chromium.new_context(
        viewport=PHONE,
        device_scale_factor=2,
        has_touch=True,
        is_mobile=True,
        locale="en-GB",
        timezone_id="Europe/Berlin",
    )
    context.set_default_timeout(10_000)
    yield context
    context.close()


@pytest.fixture
def phone(phone_context: BrowserContext) -> Iterator[Page]:
    """A page on that phone. Whatever the page's script complained of fails the test."""
    page = phone_context.new_page()
    complaints: list[str] = []
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.on("console", lambda message: complaints.append(message.text) if message.type == "error" else None)
    yield page
    assert complaints == []
