"""The run sheet on a phone: a run is opened, what is to be looked at is seen first, and let pass by initials."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from playwright.sync_api import expect

from runboard.opening import open_workshop
from tests.browser.conftest import Phones
from tests.browser.looking import Looking
from tests.conftest import HandClock
from tests.scenario import key_rails, shop
from tests.serving import Here


@pytest.fixture
def data(tmp_path: Path) -> Path:
    """The small shop, whose rails use hooks that nobody counted."""
    folder = tmp_path / "shop"
    clock = HandClock(datetime.now(UTC) - timedelta(hours=1))
    store, workshop = open_workshop(folder, clock)
    supplies = [{"key": "hooks", "name": "Hooks", "pack": 50, "price": 9.9}]
    workshop.books.save(shop() | {"products": [key_rails()], "supplies": supplies}, clock.now())
    store.close()
    return folder


def test_what_is_to_be_looked_at_comes_first_and_is_let_pass_by_initials(phones: Phones, server: Here) -> None:
    page = phones.new()
    page.goto(f"{server.address}plan/runs/new?product=rail")
    page.get_by_label("Pieces").first.fill("10")
    page.get_by_label("Wood").fill("MDF")
    page.get_by_role("button", name="Open run").click()

    page.wait_for_url("**/plan/runs/r1/before")
    sheet = page.locator("#wood")
    expect(sheet.get_by_text("read its data sheet before Engrave")).to_be_visible()
    looking = Looking(page, server.address)
    looking.at("run sheet")
    sheet.get_by_label("Initials").fill("AN")
    sheet.get_by_role("button", name="Let it pass").click()
    expect(sheet.get_by_text("Looked at by AN")).to_be_visible()
    expect(page.get_by_label("Initials").first).to_have_value("AN")
    looking.unfold()
    looking.at("run sheet let pass")
    sheet.get_by_role("button", name="Undo ‘seen’").click()
    expect(sheet.get_by_text("Looked at by AN")).to_have_count(0)

    assert looking.wrong == []
    assert "wood" not in server.house.workshop.ledger.state.runs["r1"].passed
