"""What a machine's row on Now says and opens: its presses come first, a clock that still runs is not lost by one press, and who
watches reads it. The big button of any sheet is in sight."""

import re
from pathlib import Path

from playwright.sync_api import Locator, Page, ViewportSize, expect

from tests.browser.beside import ago, arrived, asks_again, bodies, opened
from tests.browser.conftest import Phones
from tests.browser.test_arms_length import in_sight
from tests.phone import Phone
from tests.serving import Served

LOW: ViewportSize = {"width": 360, "height": 568}
WATCH = "Stay and watch. Never leave it running."


def running(ann: Phone, minutes: float = 38) -> None:
    ann.press("machine started", {"minutes": minutes}, run="r1", load="cut/1", at=ago(0.2))


def row(page: Page) -> Locator:
    return page.get_by_role("button", name=re.compile("^CNC"))


def the_sheet(page: Page) -> Locator:
    row(page).click()
    sheet = page.get_by_role("dialog")
    expect(sheet.locator("ul.cautions li").first).to_contain_text(re.compile("[a-z]"))
    return sheet


def test_a_running_machines_presses_come_before_its_cautions(ann: Phone, phone: Page, server: Served) -> None:
    running(ann)
    sheet = the_sheet(opened(phone, server))

    first, cautions = sheet.locator(".stack button").first, sheet.locator("ul.cautions").first

    assert in_sight(first)
    above, below = first.bounding_box(), cautions.bounding_box()
    assert above and below
    assert above["y"] < below["y"]


def test_a_machine_with_minutes_left_is_unloaded_only_after_it_is_said_to_have_stopped(
    ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    running(ann)
    sheet = the_sheet(opened(phone, server))

    sheet.get_by_role("button", name="I'm unloading it").click()
    expect(sheet).to_contain_text("Still 37 min on the clock. Has it stopped?")
    sheet.get_by_role("button", name="No", exact=True).click()
    expect(sheet).not_to_contain_text("Has it stopped?")
    assert bodies(data, "unloading started") == []

    sheet.get_by_role("button", name="I'm unloading it").click()
    sheet.get_by_role("button", name="Yes", exact=True).click()
    arrived(data, "unloading started")


def test_who_watches_reads_so_and_nobody_watches_what_has_stopped(ann: Phone, phone: Page, server: Served) -> None:
    running(ann)
    opened(phone, server)
    expect(row(phone)).to_contain_text("You are watching. Stay")
    expect(phone.get_by_text(WATCH)).to_be_visible()

    ann.state()
    for kind in ("machine ended", "unloading started"):
        ann.press(kind, run="r1", load="cut/1")
    asks_again(phone)

    expect(phone.get_by_role("heading", level=1)).to_contain_text("Unload")
    expect(phone.get_by_text("Fire risk:").first).to_be_visible()
    expect(phone.get_by_text(WATCH)).to_have_count(0)


def test_a_long_sheets_big_button_is_in_sight(ann: Phone, phones: Phones, server: Served) -> None:
    ann.press("load done", run="r1", load="cut/1")
    ann.press("load started", run="r1", load="engrave/1")
    page = opened(phones.new(viewport=LOW), server)

    page.locator(".last > .go").click()
    sheet = page.get_by_role("dialog")
    expect(sheet.get_by_role("checkbox")).to_have_count(8)
    assert in_sight(sheet.locator(".go"))
    sheet.get_by_role("button", name="Close").click()

    page.get_by_role("button", name="Something is wrong").click()
    page.get_by_role("button", name="A bad piece").click()
    assert in_sight(sheet.locator(".go"))
