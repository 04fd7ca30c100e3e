"""What to buy, on a phone: somebody counts, opens a run, reads what is missing, buys it and sees it gone."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from runboard.opening import open_workshop
from tests.browser.conftest import Phones
from tests.browser.looking import Looking
from tests.conftest import HandClock
from tests.scenario import key_rails, shop
from tests.serving import Here


@pytest.fixture
def data(tmp_path: Path) -> Path:
    """The small shop with its supplies written down, none of them counted."""
    folder = tmp_path / "shop"
    clock = HandClock(datetime.now(UTC) - timedelta(hours=1))
    store, workshop = open_workshop(folder, clock)
    rails = key_rails()
    rails["operations"][0]["cutter"] = "six"
    rails["operations"][2]["uses"] = [{"supply": "Sanding discs", "each": 0.2}]
    rails["operations"][4]["uses"] = [{"supply": "Hard oil", "each": 4, "unit": "ml"}]
    supplies = [
        {"key": "hooks", "name": "Hooks", "pack": 50, "price": 9.9, "low": 10},
        {"key": "oil", "name": "Hard oil", "unit": "ml", "pack": 500, "price": 18},
        {"key": "discs", "name": "Sanding discs", "pack": 10, "price": 7.5},
    ]
    cutters = [{"key": "six", "name": "6 mm upcut, two flutes", "life": 20, "price": 21}]
    money = {"currency": "EUR", "locale": "en-IE"}
    book = shop() | {"products": [rails], "supplies": supplies, "cutters": cutters, "money": money}
    workshop.books.save(book, clock.now())
    store.close()
    return folder


def count(page: Page, **amounts: str) -> None:
    """Count what is there, as one does with the list in hand."""
    if not page.get_by_role("button", name="Save counts").is_visible():
        page.get_by_text("Count what is there").click()
    form = page.locator("#count")
    for name, amount in amounts.items():
        form.get_by_label(name.replace("_", " ")).fill(amount)
    page.get_by_role("button", name="Save counts").click()
    expect(page.get_by_role("status").filter(has_text="Counted.")).to_be_visible()


def test_counted_opened_read_bought_and_gone(phones: Phones, server: Here, data: Path) -> None:
    page = phones.new()
    page.goto(f"{server.address}plan")
    page.get_by_role("link", name="What to buy").click()
    count(page, Hooks="70", Hard_oil="60", Sanding_discs="40")

    page.goto(f"{server.address}plan/runs/new?product=rail")
    page.get_by_label("Pieces").first.fill("30")
    preview = page.get_by_role("region", name="What it will take")
    expect(preview.get_by_text("Enough of Sanding discs.")).to_be_visible()
    expect(preview.get_by_text("Hard oil: enough for trays 1 to 3, not for tray 4 at Oil")).to_be_visible()
    expect(preview.get_by_text("change it before trays 4 and 7")).to_be_visible()
    looking = Looking(page, server.address)
    looking.at("shopping in the preview")
    page.get_by_role("button", name="Open run").click()
    page.wait_for_url("**/plan/runs/r1/before")
    expect(page.locator(".found > p").get_by_text("Hooks: enough for trays 1 to 3").first).to_be_visible()

    page.goto(f"{server.address}plan/runs/r1")
    runs_out = page.get_by_role("region", name="Running out")
    expect(runs_out.get_by_text("Hooks: enough for trays 1 to 3, not for tray 4 at Hooks.")).to_be_visible()
    looking.at("shopping on the run")
    runs_out.get_by_role("link", name="What to buy").click()
    hooks = page.locator(".item").filter(has=page.get_by_role("heading", name="Hooks"))
    expect(hooks.get_by_text("Buy 3 packets (150), €29.70")).to_be_visible()
    expect(hooks.get_by_label("Hooks")).to_have_value("150")
    looking.unfold()
    looking.at("shopping list")

    for name in ("Hooks", "Hard oil"):
        page.get_by_role("button", name=f"I bought this {name}").click()
        expect(page.get_by_role("heading", name=name)).to_have_count(0)
    to_buy = page.get_by_role("region", name="To buy").get_by_role("heading", level=3)
    expect(to_buy).to_have_text(["6 mm upcut, two flutes"])
    page.get_by_role("button", name="I fitted a new one at the CNC").click()
    expect(page.get_by_text("Saved: its wear starts at 0")).to_be_visible()
    looking.unfold()
    looking.at("shopping list bought")

    assert looking.wrong == []
    said = server.house.workshop.ledger.state.supplies
    assert {word: [one.what for one in some] for word, some in said.items()} == {
        "hooks": ["counted", "bought"],
        "hard oil": ["counted", "bought"],
        "sanding discs": ["counted"],
    }
    assert server.house.workshop.ledger.state.cutters["cnc"][0].cutter == "six"


def test_undo_on_now_takes_back_what_a_form_said_though_nobody_said_who_they_are(
    phones: Phones, server: Here, data: Path
) -> None:
    page = phones.new()
    with page.expect_response(lambda answer: "/state?person=" in answer.url):
        page.goto(server.address)
    expect(page.get_by_role("button", name="2 h")).to_be_visible()
    page.goto(f"{server.address}plan/shopping")
    page.get_by_role("button", name="I fitted a new one at the CNC").click()
    expect(page.get_by_text("Saved: its wear starts at 0")).to_be_visible()
    assert server.house.workshop.ledger.state.cutters["cnc"]

    page.goto(server.address)
    with page.expect_response(lambda answer: answer.request.method == "POST"):
        page.get_by_role("button", name="Undo").click()
    page.goto(f"{server.address}plan/shopping")
    expect(page.get_by_text("No change entered.")).to_be_visible()


def test_on_paper_the_list_has_nothing_to_press(phones: Phones, server: Here) -> None:
    page = phones.new()
    page.goto(f"{server.address}plan/shopping")
    count(page, Hooks="0")

    page.emulate_media(media="print")

    assert [one for one in page.locator("button, nav, input").all() if one.is_visible()] == []
