"""Now at arm's length: the thing to do is the largest, its button is always in sight, a caution is said once, an alert is one
panel that pushes nothing off the screen, and what an emergency needs stands first."""

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, ViewportSize, expect

from tests.browser.beside import ago, arrived, asks_again, bodies, fetches, opened
from tests.browser.conftest import Phones
from tests.phone import Phone
from tests.serving import Served

SCREENS: list[ViewportSize] = [
    {"width": 360, "height": 740},
    {"width": 360, "height": 568},
    {"width": 820, "height": 1180},
    {"width": 740, "height": 360},
]
SIZE = "one => parseFloat(getComputedStyle(one).fontSize)"
# Whether nothing lies over a thing's middle.
ON_TOP = """one => { const {x, y, width, height} = one.getBoundingClientRect();
  return one.contains(document.elementFromPoint(x + width / 2, y + height / 2)); }"""
# By how much the last thing of the page reaches under the foot, once it is scrolled to.
UNDER = """() => {
  window.scrollTo(0, document.documentElement.scrollHeight);
  const rest = [...document.querySelectorAll(".second-column *")]
    .filter((one) => one.checkVisibility() && !one.closest(".unseen") && !one.children.length && one.innerText?.trim());
  return Math.max(...rest.map((one) => one.getBoundingClientRect().bottom)) - document.querySelector(".last").getBoundingClientRect().top;
}"""


def idle(ann: Phone) -> None:
    ann.press("load done", run="r1", load="cut/1")


def loading(ann: Phone) -> None:
    ann.press("load started", run="r1", load="engrave/1")


def working(ann: Phone) -> None:
    ann.press("machine started", {"minutes": 38}, run="r1", load="cut/2", at=ago(0.2))
    ann.press("load started", run="r1", load="sand:120/1")


def with_an_alert(ann: Phone) -> None:
    ann.press("machine started", {"minutes": 0.01}, run="r1", load="cut/2", at=ago(0.2))
    ann.press("load started", run="r1", load="sand:120/1")


def with_three(ann: Phone) -> None:
    with_an_alert(ann)
    ann.press("station out of use", {"why": "belt", "until": ago(0.1)}, run="", station="laser", at=ago(0.2))
    ann.press("lead called", {"why": "help"}, run="r1", tray="1", load="", person="ben")


STATES: dict[str, Callable[[Phone], None]] = {
    "idle": idle,
    "loading": loading,
    "working": working,
    "with an alert": with_an_alert,
    "with three": with_three,
}


def big(page: Page) -> Locator:
    """The big button of what is to be done."""
    return page.locator(".last > .go")


def in_sight(one: Locator) -> bool:
    box, screen = one.bounding_box(), one.page.viewport_size
    assert box and screen
    inside = box["y"] >= 0 and box["y"] + box["height"] <= screen["height"] and box["x"] >= 0
    return inside and box["x"] + box["width"] <= screen["width"] and bool(one.evaluate(ON_TOP))


def alert(page: Page) -> Locator:
    return page.locator("[role=alert] > .panel")


@pytest.mark.parametrize("name", STATES)
def test_the_big_button_is_in_sight_wherever_the_page_is_scrolled_to(
    name: str, ann: Phone, phones: Phones, server: Served
) -> None:
    STATES[name](ann)
    page = opened(phones.new(), server)
    expect(big(page)).to_be_visible()
    fetches(page, "alerts", "others", "tray list", "below")
    if "with" in name:
        expect(alert(page)).to_be_visible()

    for screen in SCREENS:
        page.set_viewport_size(screen)
        for to in ("0", "200", "document.documentElement.scrollHeight"):
            page.evaluate(f"window.scrollTo(0, {to})")
            assert in_sight(big(page)), f"{screen}, scrolled to {to}"
        foot, nav = page.locator(".last").bounding_box(), page.locator(".screens").bounding_box()
        assert foot and nav
        assert foot["y"] + foot["height"] <= nav["y"] + 1
        assert page.evaluate(UNDER) <= 0, "what stands last can be scrolled free"
        assert foot["y"] >= (0.64 if screen["height"] > 500 else 0.55) * screen["height"], (
            "it leaves most of the screen"
        )


@pytest.mark.parametrize("name", STATES)
def test_the_thing_to_do_is_the_largest_text(name: str, ann: Phone, phone: Page, server: Served) -> None:
    STATES[name](ann)
    opened(phone, server)
    expect(big(phone)).to_be_visible()
    fetches(phone, "alerts", "others", "tray list", "below")
    if "with" in name:
        expect(alert(phone)).to_be_visible()

    largest = phone.locator("section.now h1").evaluate(SIZE)

    assert largest == 36
    sizes = """() => [...document.querySelectorAll("main *")].filter((one) => one.checkVisibility() && one.tagName !== "H1"
      && [...one.childNodes].some((node) => node.nodeType === 3 && node.data.trim())).map((one) => parseFloat(getComputedStyle(one).fontSize))"""
    assert max(phone.evaluate(sizes)) < largest
    for caution in phone.locator("section.now ul.cautions").all():
        assert 20 <= caution.evaluate(SIZE) <= 22


def said(page: Page) -> list[str]:
    """The cautions on the page, also what is folded."""
    found = page.locator("ul.cautions li")
    expect(found.first).to_contain_text(re.compile("[a-z]"))
    return [text.strip() for text in found.all_text_contents()]


@pytest.mark.parametrize("name", STATES)
def test_no_caution_is_said_twice(name: str, ann: Phone, phone: Page, server: Served) -> None:
    STATES[name](ann)
    opened(phone, server)
    expect(big(phone)).to_be_visible()

    cautions = said(phone)

    assert len(cautions) == len(set(cautions))
    assert all(cautions)


def test_a_list_that_was_ticked_in_full_is_one_press_away_and_asked_no_more(
    ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    loading(ann)
    opened(phone, server)
    big(phone).click()
    expect(phone.get_by_role("dialog").get_by_role("checkbox")).to_have_count(8)
    for point in phone.get_by_role("dialog").get_by_role("checkbox").all():
        point.check()
    phone.get_by_role("dialog").locator(".go").click()
    arrived(data, "machine started")
    ann.state()
    for kind in ("machine ended", "unloading started", "load done"):
        ann.press(kind, run="r1", load="engrave/1")
    ann.press("load started", run="r1", load="engrave/2")
    asks_again(phone)

    expect(big(phone)).to_contain_text("laser", ignore_case=True)
    phone.get_by_role("button", name="See the list").click()
    expect(phone.get_by_role("dialog").get_by_role("checkbox")).to_have_count(8)
    phone.get_by_role("button", name="Close").click()
    big(phone).click()

    arrived(data, "machine started", number=2)
    assert [one["list"] for one in bodies(data, "checklist ticked")] == ["full", "short"]


def test_what_matters_while_a_machine_runs_stays_readable_and_the_rest_is_one_press_away(
    ann: Phone, phone: Page, server: Served
) -> None:
    working(ann)
    opened(phone, server)
    said(phone)

    expect(phone.get_by_text("Stay and watch. Never leave it running.")).to_be_visible()
    expect(phone.get_by_text("Fire risk:")).to_be_visible()
    folded = phone.locator("details.care")
    expect(folded.locator("summary img.sign").first).to_be_visible()
    expect(folded.get_by_text("Dust mask on")).to_be_hidden()
    folded.locator("summary").click()
    expect(folded.get_by_text("Dust mask on")).to_be_visible()
    expect(folded.get_by_text("Disconnect before changing the cutter.")).to_be_visible()


def test_a_start_list_says_no_caution_of_its_step_again(ann: Phone, phone: Page, server: Served) -> None:
    loading(ann)
    opened(phone, server)
    cautions = said(phone)

    big(phone).click()
    sheet = phone.get_by_role("dialog")
    expect(sheet.get_by_role("checkbox").first).to_be_visible()

    listed = sheet.inner_text()
    assert [one for one in cautions if one in listed] == []


def test_machines_stand_below_what_is_done_by_hand(ann: Phone, phone: Page, server: Served) -> None:
    working(ann)
    opened(phone, server)
    said(phone)

    machine = phone.locator(".machine").first.bounding_box()
    for mine in (
        phone.locator("section.now"),
        phone.locator("details.care"),
        phone.get_by_role("button", name="Called away"),
    ):
        box = mine.bounding_box()
        assert machine and box
        assert box["y"] + box["height"] <= machine["y"]


def test_an_alert_is_one_panel_with_its_two_answers_and_the_thing_to_do_stays_in_sight(
    ann: Phone, phone: Page, server: Served
) -> None:
    with_three(ann)
    opened(phone, server)
    fetches(phone, "alerts")

    expect(alert(phone)).to_have_count(1)
    for answer in alert(phone).locator("button.go, summary").all()[:2]:
        assert in_sight(answer)
    assert in_sight(phone.locator("section.now h1"))
    others = phone.locator("[role=alert] .alert-row")
    expect(others).to_have_count(2)

    others.first.click()
    expect(phone.locator("[role=alert] .alert-row + .asked button").first).to_be_visible()


def test_on_a_tablet_an_alert_stands_beside_the_work(ann: Phone, phones: Phones, server: Served) -> None:
    with_an_alert(ann)
    page = opened(phones.new(viewport={"width": 820, "height": 1180}), server)
    expect(alert(page)).to_be_visible()

    work, panel = page.locator("section.now h1").bounding_box(), alert(page).bounding_box()

    assert work and panel
    assert panel["x"] >= work["x"] + work["width"] - 1
    assert work["y"] < 200
    assert panel["height"] < 400


def lines_of(one: Locator) -> int:
    return int(
        one.evaluate(
            """one => { const range = document.createRange(); range.selectNodeContents(one);
            return new Set([...range.getClientRects()].filter(({width}) => width > 0).map(({top}) => Math.round(top))).size; }"""
        )
    )


@pytest.mark.parametrize("minutes", [2.1, 3.2])
def test_an_alerts_title_and_buttons_take_two_lines_at_most(
    ann: Phone, phone: Page, server: Served, minutes: float
) -> None:
    ann.press("machine started", {"minutes": 22}, run="r1", load="engrave/1", at=ago(minutes))
    opened(phone, server)

    expect(alert(phone)).to_be_visible()

    assert lines_of(alert(phone).locator(".alert-title")) <= 2
    for button in alert(phone).get_by_role("button").all():
        assert lines_of(button) <= 2, button.inner_text()


def test_what_an_emergency_needs_stands_first_red_and_tappable(ann: Phone, phone: Page, server: Served) -> None:
    working(ann)
    opened(phone, server)

    phone.get_by_role("button", name="Something is wrong").click()

    first = phone.get_by_role("dialog").locator(".inside > :not(header)").first
    expect(first).to_have_attribute("aria-label", "Someone is hurt, or there's a fire")
    expect(first).to_contain_text("call 112", ignore_case=True)
    link = first.get_by_role("link", name="Call 112")
    expect(link).to_have_attribute("href", "tel:112")
    expect(link).to_have_class(re.compile(r"\bdanger\b"))
    assert in_sight(link)


def test_who_does_not_watch_reads_who_does(ann: Phone, phone: Page, server: Served) -> None:
    ann.press("machine started", {"minutes": 38}, run="r1", load="cut/1", person="ben", at=ago(0.2))
    opened(phone, server)

    row = phone.get_by_role("button", name=re.compile("^CNC.*running"))

    expect(row).to_contain_text("Ben is watching")
    expect(row).not_to_contain_text("Stay and watch")
