"""What is ready is handed over: ticks are pressed on the list of who gets what, a packing slip is printed, a price is asked."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.pressing.taps import record_events
from runboard.opening import open_workshop
from tests.browser.beside import arrived, bodies
from tests.browser.conftest import PHONE
from tests.browser.looking import Looking
from tests.conftest import HandClock
from tests.pairing import browser_cookie, paired
from tests.phone import Phone
from tests.scenario import shop
from tests.serving import Served


def look(page: Page, server: Served, name: str) -> None:
    """Nothing is too small, too wide or hidden, in any size or light."""
    looking = Looking(page, server.address)
    looking.unfold()
    looking.at(name)
    assert looking.wrong == []


WHO = ("Meyer", "Ito", "Orchard Way", "Ana", "Mo", "Kim")


@pytest.fixture
def customers(data: Path) -> Path:
    """Six customers' two rails each, made at the bench alone, nine of them good: the fifth's are ready by half."""
    an_hour_ago = HandClock(datetime.now(UTC) - timedelta(hours=1))
    store, workshop = open_workshop(data, an_hour_ago)
    record = shop()
    record["products"][0]["operations"] = record["products"][0]["operations"][-1:]
    workshop.books.save(record, an_hour_ago.now())
    lines = [{"line": str(at), "pieces": 2, "for": whom, "text": str(80 + at)} for at, whom in enumerate(WHO, 1)]
    open_run(workshop, Wish("rail", lines, start=15), "ann")
    for tray, good in (("1", 5), ("2", 4)):
        count = {"good": good, "scrap": []}
        about = {"run": "r1", "person": "ann", "tray": tray, "operation": "hooks"}
        record_events(workshop, [new_event(workshop, "pieces counted", count, **about)])
    store.close()
    return data


def heights(page: Page) -> dict[str, float]:
    """How far down the screen each card stands that is seen."""
    return {
        str(card.get_attribute("id")): round(box["y"])
        for card in page.locator("li[id^=line-]").all()
        if (box := card.bounding_box())
    }


def test_an_order_line_is_ticked_off_where_it_stands_and_its_slip_printed(
    customers: Path, server: Served, phone: Page
) -> None:
    phone.goto(f"{server.address}plan/runs/r1")
    phone.get_by_role("link", name="Who gets what").click()
    expect(phone.get_by_text("5 to hand over, 1 not ready yet, 0 collected.")).to_be_visible()
    look(phone, server, "who gets what")
    phone.reload()

    for name in ("Packed", "Paid", "Collected"):
        phone.locator("#line-2").get_by_role("button", name=f"Ito: “82”: {name}").scroll_into_view_if_needed()
        before = heights(phone)["line-2"]
        phone.locator("#line-2").get_by_role("button", name=name).click()
        expect(phone.locator("#line-2").get_by_role("button", name=f"✓ {name}")).to_be_visible()
        assert heights(phone)["line-2"] == before
        phone.wait_for_timeout(700)  # a second press is no more half of a double one
    phone.locator("#line-2").get_by_role("button", name="✓ Paid").click()
    expect(phone.locator("#line-2").get_by_role("button", name="✓ Paid")).to_have_count(0)

    arrived(customers, "order ticked", number=4)
    assert [(one["line"], one["tick"], one["on"]) for one in bodies(customers, "order ticked")] == [
        ("2", "packed", True),
        ("2", "paid", True),
        ("2", "collected", True),
        ("2", "paid", False),
    ]
    phone.reload()
    expect(phone.get_by_text("Collected: 1", exact=True)).to_be_visible()
    look(phone, server, "who gets what, collected")
    phone.get_by_role("link", name="Print packing slips").click()
    expect(phone.get_by_label("Packing slips")).to_be_checked()
    phone.get_by_role("button", name="Print from the browser").click()
    expect(phone.get_by_text("packed by")).to_have_count(4)
    expect(phone.get_by_text("1 of 2, 1 to follow, Entry key rails")).to_have_count(1)


def test_presses_one_after_another_in_one_place_meet_one_customer(customers: Path, server: Served, phone: Page) -> None:
    phone.goto(f"{server.address}plan/runs/r1/lines")
    button = phone.locator("#line-3").get_by_role("button", name="Collected")
    button.scroll_into_view_if_needed()
    box = button.bounding_box()
    assert box
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2

    phone.mouse.dblclick(x, y)
    expect(phone.locator("#line-3").get_by_role("button", name="✓ Collected")).to_be_visible()
    for wait in (100, 700, 1500):
        phone.wait_for_timeout(wait)
        phone.mouse.click(x, y)
    phone.wait_for_timeout(500)

    said = bodies(customers, "order ticked")
    assert {(one["line"], one["tick"]) for one in said} == {("3", "collected")}
    assert said[0]["on"]


@pytest.mark.parametrize("scripts", [True, False])
def test_a_line_that_is_ready_by_half_is_asked_about(
    customers: Path, server: Served, chromium: Browser, scripts: bool
) -> None:
    context = chromium.new_context(java_script_enabled=scripts, viewport=PHONE, has_touch=True, is_mobile=True)
    context.add_cookies([browser_cookie(paired(customers))])
    phone = context.new_page()
    phone.goto(f"{server.address}plan/runs/r1/lines")

    phone.locator("#line-5").get_by_role("button", name="Collected").click()
    expect(phone.get_by_text("Only 1 of 2 is ready. Hand it over now?")).to_be_visible()
    phone.get_by_role("link", name="No", exact=True).click()
    expect(phone.get_by_text("Only 1 of 2 is ready")).to_have_count(0)
    assert bodies(customers, "order ticked") == []
    phone.wait_for_timeout(700)
    phone.locator("#line-5").get_by_role("button", name="Collected").click()
    phone.wait_for_timeout(700)
    if scripts:
        look(phone, server, "who gets what, asked")
        phone.wait_for_timeout(700)
    phone.get_by_role("button", name="Yes").click()

    expect(phone.get_by_text("Collected: 1 of 2,")).to_be_visible()
    assert bodies(customers, "order ticked") == [{"line": "5", "tick": "collected", "on": True, "pieces": 1}]
    assert phone.locator("li[id^=line-]").count() == (6 if scripts else 1)
    context.close()


def test_a_price_is_asked_and_every_line_of_it_is_read(ann: Phone, server: Served, phone: Page) -> None:
    phone.goto(f"{server.address}before/price?product=rail")
    look(phone, server, "price asked")
    phone.get_by_label("An hour of work is worth").fill("25")
    phone.get_by_label("Price today").fill("34")

    phone.get_by_role("button", name="Work it out").click()

    expect(phone.get_by_role("heading", name="A good piece costs")).to_be_visible()
    costs = phone.locator("details", has=phone.get_by_text("Costs", exact=True))
    costs.locator("summary").click()
    expect(costs.get_by_role("table")).to_contain_text("Total")
    expect(phone.get_by_role("table", name="What stays at each price")).to_contain_text("Mark-up 30 %")
    look(phone, server, "price answered")
