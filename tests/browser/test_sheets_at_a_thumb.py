"""Sheets and the head as a thumb meets them: nothing slides under it, a sheet opens at its top, what is asked comes first."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, Route, expect

from runboard.opening import open_workshop
from tests.browser.beside import ago, arrived, bodies, opened
from tests.phone import Phone
from tests.scenario import shop
from tests.serving import Here, Served


def test_an_assignment_asks_trays_then_operation_then_who_and_its_button_keeps_its_place(
    ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    ann.press("load done", run="r1", load="cut/1")
    phone.goto(f"{server.address}trays")
    phone.get_by_role("button", name="Assign to …").click()
    sheet = phone.get_by_role("dialog", name="Assign to …")
    expect(sheet.get_by_role("button", name="Choose trays first")).to_be_disabled()
    expect(sheet.get_by_role("group", name="Which operation?")).to_have_count(0)

    sheet.get_by_role("button", name="2", exact=True).click()

    operations = sheet.get_by_role("group", name="Which operation?")
    expect(operations.locator("[aria-pressed=true]")).to_have_text("Clean")
    expect(operations.get_by_role("button", name="Cut", exact=True)).to_have_count(0)
    go = sheet.get_by_role("button", name="Choose who first")
    expect(go).to_be_disabled()
    look = sheet.get_by_label("Show me the first piece")
    expect(look).to_be_disabled()
    before = sheet.locator(".go").bounding_box()
    sheet.get_by_role("button", name="Ben", exact=True).click()
    expect(look).to_be_enabled()
    after = sheet.locator(".go").bounding_box()
    assert before and after
    assert before["y"] == after["y"]
    sheet.get_by_role("button", name="Assign Clean, tray 2, to Ben").click()
    arrived(data, "operation given")
    assert bodies(data, "operation given") == [{"to": "ben", "trays": ["2"], "look": False}]


def test_a_bad_piece_opens_at_its_top_and_names_its_tray(ann: Phone, phone: Page, server: Served) -> None:
    ann.press("load started", run="r1", load="cut/1")
    opened(phone, server)
    phone.get_by_role("button", name="Something is wrong").click()
    bad = phone.get_by_role("button", name="A bad piece")
    expect(bad).to_be_visible()
    phone.set_viewport_size({"width": 360, "height": 420})
    phone.evaluate("() => document.querySelector('dialog').scrollTo(0, 9999)")

    bad.click()

    sheet = phone.get_by_role("dialog", name=re.compile("^Bad piece"))
    expect(sheet.get_by_text("Which tray?")).to_be_in_viewport()
    assert phone.evaluate("() => document.querySelector('dialog').scrollTop") == 0
    sheet.get_by_role("group", name="Which tray?").get_by_role("button", name="tray 2").click()
    sheet.get_by_role("button", name="crack", exact=True).click()
    expect(sheet.locator(".go")).to_have_text("1 scrap, tray 2: crack")


def test_what_is_wrong_is_a_short_red_card_then_faults_then_changes(ann: Phone, phone: Page, server: Served) -> None:
    ann.press("load started", run="r1", load="clean/1")
    opened(phone, server)
    phone.get_by_role("button", name="Something is wrong").click()

    sheet = phone.get_by_role("dialog", name="Something is wrong")
    card = sheet.locator("section.emergency").bounding_box()
    assert card
    assert card["height"] <= 130
    expect(sheet.get_by_role("heading", name="Something has changed")).to_be_visible()
    assert sheet.locator(".stack").nth(1).get_by_role("button").all_inner_texts() == [
        "Run out of something",
        "Hold pieces",
        "New cutter, wood, jig or focus",
    ]


def test_who_only_watches_finds_what_else_may_be_done_within_the_first_screen(
    ann: Phone, phone: Page, server: Served
) -> None:
    ann.press("load done", run="r1", load="cut/1")
    ann.press("machine started", {"minutes": 38}, run="r1", load="cut/2")
    ann.press("load started", run="r1", load="clean/1", person="ben")
    for move in ann.state()["moves"]:
        if move["code"] not in ("watch", "free", "stop"):
            ann.press("move declined", {"move": move["id"], "because": "tired", "until": ago(-60)}, run="r1")
    opened(phone, server)
    expect(phone.get_by_role("heading", level=1)).to_contain_text("Watch the CNC")

    other = phone.locator("summary", has_text="Do something else while watching")

    expect(other).to_have_count(1)
    box = other.bounding_box()
    assert box
    assert box["y"] + box["height"] < 740 - 60


@pytest.fixture
def with_robin(shop_with_a_run: Path) -> Path:
    """The shop has a third person, who has never come yet."""
    store, workshop = open_workshop(shop_with_a_run)
    record = shop()
    record["people"].append({"key": "robin", "name": "Robin", "access": "crew", "hours": record["people"][0]["hours"]})
    workshop.books.save(record, workshop.clock.now())
    store.close()
    return shop_with_a_run


LINES = """() => [...document.querySelectorAll(".run > div:first-child > *, .run > .run-rest")].reduce((all, one) => {
  const range = document.createRange(); range.selectNodeContents(one);
  return all + new Set([...range.getClientRects()].map((rect) => Math.round(rect.top / 4))).size; }, 0)"""


def test_from_three_people_on_names_are_a_list_and_the_head_takes_three_lines(
    with_robin: Path, server: Here, phone: Page
) -> None:
    def planned(route: Route) -> None:
        found = route.fetch()
        if found.status != 200:
            return route.fulfill(response=found)
        state = found.json()
        state["plan"] = {**(state.get("plan") or {}), "done": {"r1": ago(-2 * 24 * 60)}}
        state["runs"]["r1"]["orders"] = [{**state["runs"]["r1"]["orders"][0], "pieces": 10, "due": ago(-3 * 24 * 60)}]
        return route.fulfill(response=found, json=state)

    phone.route("**/state?*", planned)
    phone.goto(server.address)
    head = phone.locator("header.run")
    head.get_by_label("You are").select_option("Ann")

    rest = phone.locator(".run-rest")
    expect(rest).to_have_text(re.compile("^done about "))
    words = rest.bounding_box()
    assert words
    assert words["width"] >= 0.95 * 328
    expect(head.locator(".run-rest")).to_contain_text("0 of 30 good · 0 of 10 good for")
    assert phone.evaluate(LINES) <= 3
    phone.unroute_all(behavior="wait")


def test_how_long_one_has_is_asked_before_the_big_button_is_loud(with_robin: Path, server: Here, phone: Page) -> None:
    phone.goto(server.address)
    phone.get_by_label("You are").select_option("Robin")
    expect(phone.get_by_role("heading", name="How long have you got?")).to_be_visible()
    big = phone.locator(".last > .go")
    ground = "one => getComputedStyle(one).backgroundColor"
    quiet = big.evaluate(ground)

    phone.get_by_role("button", name="2 h", exact=True).click()

    expect(phone.get_by_role("heading", name="How long have you got?")).to_have_count(0)
    assert big.evaluate(ground) != quiet
