"""At 150 and 200 %, and with the browser's own text twice as large, each page reflows on a phone.

Some pages of each kind; all with RUNBOARD_ALL_SIZES=1, by hand. With RUNBOARD_PICTURES=FOLDER each is also written there.
"""

import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.conftest import Phones
from tests.browser.enlarged import ZOOMED, with_large_text, wrong
from tests.browser.looking import Looking
from tests.browser.test_screens import PAGES, RUN, demo, demo_data
from tests.serving import Served

__all__ = ["demo_data"]

SOME = ("plan", "plan run", "plan product", "review run", "review held", "review days", "shop", "shop station", "care")
SEEN = PAGES if os.environ.get("RUNBOARD_ALL_SIZES") else {name: PAGES[name] for name in SOME}
SCREENS = {"now": "", **SEEN, "trays": f"trays?run={RUN}"}


@pytest.fixture(scope="module")
def server(demo_data: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    with demo(demo_data, tmp_path_factory.mktemp("enlarged")) as found:
        yield found.server


def opened(phones: Phones, server: Served, size: tuple[int, int]) -> Page:
    """Robin's phone, of that size in layout pixels."""
    page = phones.new(viewport={"width": size[0], "height": size[1]})
    page.context.add_cookies([{"name": "person", "value": "robin", "url": server.address}])
    return page


def goes_through(page: Page, phones: Phones, server: Served, how: str) -> list[str]:
    """Each screen, and a sheet over Now."""
    found = []
    for name, address in SCREENS.items():
        page.goto(server.address + address)
        expect(page.get_by_role("heading", level=1).first).to_be_visible()
        looking = Looking(page, server.address)
        looking.rests()
        found += wrong(page, f"{name}, {how}")
        if name == "not found":
            phones.complaints.clear()  # the browser tells of the 404 itself
        if looking.pictures:
            page.screenshot(path=Path(looking.pictures) / f"{name}-{how}.png".replace(" ", "-"), full_page=True)
        if name == "now":
            page.get_by_role("button", name="Something is wrong").click()
            expect(page.get_by_role("dialog")).to_be_visible()
            found += wrong(page, f"sheet, {how}")
    return found


@pytest.mark.parametrize("how", ZOOMED)
def test_a_phone_shows_every_page_enlarged(how: str, server: Served, phones: Phones) -> None:
    page = opened(phones, server, ZOOMED[how])

    assert goes_through(page, phones, server, how) == []


def test_a_phone_shows_every_page_with_text_twice_as_large(server: Served, chromium: Browser) -> None:
    with with_large_text(chromium) as phones:
        page = opened(phones, server, (360, 740))

        assert goes_through(page, phones, server, "large text") == []
        assert phones.complaints == []


def test_at_200_percent_axe_finds_nothing(server: Served, phones: Phones) -> None:
    page = opened(phones, server, ZOOMED["200 %"])
    looking = Looking(page, server.address)
    for name in ("", "plan", "shop"):
        page.goto(server.address + name)
        expect(page.get_by_role("heading", level=1)).to_be_visible()
        looking.rests()
        assert [one["id"] for one in looking._violations("phone", "light")] == []
