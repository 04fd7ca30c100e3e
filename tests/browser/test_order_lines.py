"""What is ready is handed over: ticks are pressed on the list of who gets what, a packing slip is printed, a price is asked."""

from pathlib import Path

from playwright.sync_api import Page, expect

from tests.browser.beside import arrived, bodies
from tests.browser.looking import Looking
from tests.phone import Phone
from tests.serving import Served


def look(page: Page, server: Served, name: str) -> None:
    """Nothing is too small, too wide or hidden, in any size or light."""
    looking = Looking(page, server.address)
    looking.unfold()
    looking.at(name)
    assert looking.wrong == []


def test_an_order_line_is_ticked_off_and_its_slip_printed(
    ann: Phone, server: Served, phone: Page, shop_with_a_run: Path
) -> None:
    phone.goto(f"{server.address}plan/runs/r1")
    phone.get_by_role("link", name="Who gets what").click()
    expect(phone.get_by_role("heading", name="Who gets what")).to_be_visible()
    look(phone, server, "who gets what")

    phone.get_by_role("button", name="Packed").first.click()
    expect(phone.get_by_role("button", name="✓ Packed")).to_have_attribute("aria-pressed", "true")
    phone.get_by_role("button", name="Paid").first.click()
    expect(phone.get_by_role("button", name="✓ Paid")).to_be_visible()
    phone.get_by_role("button", name="✓ Packed").click()
    expect(phone.get_by_role("button", name="✓ Packed")).to_have_count(0)
    phone.get_by_role("button", name="Collected").first.click()
    expect(phone.get_by_role("button", name="✓ Collected")).to_be_visible()

    arrived(shop_with_a_run, "order ticked", number=4)
    assert [(one["tick"], one["on"]) for one in bodies(shop_with_a_run, "order ticked")] == [
        ("packed", True),
        ("paid", True),
        ("packed", False),
        ("collected", True),
    ]
    look(phone, server, "who gets what, collected")
    phone.get_by_role("link", name="Print its packing slip").first.click()
    expect(phone.get_by_label("Packing slips")).to_be_checked()
    phone.get_by_role("button", name="Print from the browser").click()
    expect(phone.get_by_text("packed by")).to_have_count(1)


def test_a_price_is_asked_and_every_line_of_it_is_read(ann: Phone, server: Served, phone: Page) -> None:
    phone.goto(f"{server.address}before/price?product=rail")
    look(phone, server, "price asked")
    phone.get_by_label("What an hour of work is worth").fill("25")
    phone.get_by_label("It sells at, today").fill("34")

    phone.get_by_role("button", name="Work it out").click()

    expect(phone.get_by_role("heading", name="A good piece costs")).to_be_visible()
    expect(phone.get_by_role("table", name="What it costs")).to_contain_text("In all")
    expect(phone.get_by_role("table", name="What stays of a price")).to_contain_text("Mark-up 30 %")
    look(phone, server, "price answered")
