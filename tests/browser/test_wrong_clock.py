"""Clocks that are wrong: a phone's is said once and does no harm; what a server's left in the log is put right by a press."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from runboard.opening import open_workshop
from runboard.run.log.event import Event
from tests.browser.conftest import Phones
from tests.serving import Served

# A tablet without a battery, which wakes up in the nineties.
OFF = """
const Real = Date, off = Date.UTC(1996, 4, 1) - Real.now();
globalThis.Date = class extends Real {
  constructor(...given) { if (given.length) super(...given); else super(Real.now() + off); }
  static now() { return Real.now() + off; }
};
"""
WRONG = "This phone's clock is wrong"


def stored(data: Path) -> list[Event]:
    store, workshop = open_workshop(data)
    try:
        return workshop.log.events()
    finally:
        store.close()


def test_a_phone_years_off_works_and_says_once_that_its_clock_is_wrong(
    shop_with_a_run: Path, server: Served, phones: Phones
) -> None:
    phone = phones.new(init_script=OFF)
    phone.goto(server.address)
    phone.get_by_role("button", name="Ann", exact=True).click()

    phone.get_by_role("button", name="Start", exact=True).click()
    expect(phone.locator("footer")).to_contain_text("sent")

    pressed = next(one for one in stored(shop_with_a_run) if one.kind == "load started")
    assert abs(pressed.moment - datetime.now(UTC)) < timedelta(minutes=5)
    expect(phone.get_by_text(WRONG)).to_be_visible()
    phone.get_by_role("button", name="OK, got it").click()
    expect(phone.get_by_text(WRONG)).to_be_hidden()
    phone.reload()
    expect(phone.get_by_role("button", name="Test the sound")).to_be_visible()
    expect(phone.get_by_text(WRONG)).to_be_hidden()


@pytest.fixture
def years_ahead(shop_with_a_run: Path) -> Path:
    """The server's clock was 400 days ahead for one press."""
    store, workshop = open_workshop(shop_with_a_run)
    ahead = datetime.now(UTC) + timedelta(days=400)
    with workshop.log.write() as write:
        write.append(Event("from-afar", "load started", ahead, run="r1", load="cut/1", person="ann", body={}), ahead)
    store.close()
    return shop_with_a_run


def test_what_is_dated_after_now_is_said_to_the_lead_and_put_right_by_a_press(
    years_ahead: Path, server: Served, phone: Page
) -> None:
    phone.goto(server.address)
    phone.get_by_role("button", name="Ann", exact=True).click()
    expect(phone.get_by_role("heading", name="Dated in the future")).to_be_visible()
    expect(phone.get_by_text(f"in {(datetime.now(UTC) + timedelta(days=400)).year}.")).to_be_visible()

    phone.get_by_role("button", name="Date them when they arrived").click()

    expect(phone.get_by_role("heading", name="Dated in the future")).to_be_hidden()
    assert stored(years_ahead)[-1].kind == "event amended"
    expect(phone.get_by_role("heading", level=1)).to_contain_text("Cut")
