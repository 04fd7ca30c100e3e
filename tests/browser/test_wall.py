"""The wall page: read at three metres, on an old tablet and on the shop's screen, and nobody has to touch it."""

import time
from pathlib import Path

import pytest
from playwright.sync_api import Page, ViewportSize, expect

from tests.browser.beside import ago
from tests.browser.conftest import Phones
from tests.phone import Phone
from tests.serving import Served

TABLET: ViewportSize = {"width": 820, "height": 1180}
SCREENS: list[ViewportSize] = [TABLET, {"width": 1280, "height": 800}, {"width": 1024, "height": 768}]
# Five minutes of arc, what a good eye can read, are 4.4 mm at three metres. A tablet's pixel is 0.19 mm, and a capital
# is 0.7 of its letter's size: 33 pixels. Times want twice that.
TIME_PX, NAME_PX, WORD_PX = 66, 40, 33


@pytest.fixture
def ben(shop_with_a_run: Path, server: Served) -> Phone:
    """Ben's phone, which starts machines."""
    found = Phone(server.address, person="ben")
    found.state()
    return found


def wall(phones: Phones, server: Served, viewport: ViewportSize = TABLET) -> Page:
    page = phones.new(viewport=viewport)
    page.goto(f"{server.address}wall")
    return page


def letters(page: Page, place: str) -> float:
    return float(page.locator(place).first.evaluate("one => parseFloat(getComputedStyle(one).fontSize)"))


@pytest.mark.parametrize("screen", SCREENS, ids=lambda one: f"{one['width']}x{one['height']}")
def test_everything_is_on_the_screen_and_large_enough(
    ben: Phone, server: Served, phones: Phones, screen: ViewportSize
) -> None:
    Phone(server.address, person="ann").press("machine started", {"minutes": 40}, run="r1", load="engrave/1")
    ben.press("machine started", {"minutes": 0.01}, run="r1", load="cut/2")
    ben.press("load started", run="r1", load="sand:120/2")

    page = wall(phones, server, screen)

    expect(page.get_by_role("alert")).to_contain_text("CNC should be finished")
    expect(page.locator("article").filter(has_text="Laser")).to_contain_text("running")
    expect(page.get_by_text("Ben Sand 120, tray 2")).to_be_visible()
    assert page.evaluate("[wall.scrollHeight <= innerHeight, wall.scrollWidth <= innerWidth]") == [True, True]
    for place, least in (
        ("article time", TIME_PX),
        ("article h2", NAME_PX),
        ("article .line p", WORD_PX),
        ("li span", WORD_PX),
    ):
        assert letters(page, place) >= least, place


def test_it_flashes_for_an_alert_slower_than_three_times_a_second_until_somebody_answers(
    ben: Phone, server: Served, phones: Phones
) -> None:
    page = wall(phones, server)
    expect(page.locator("article, .idle").first).to_be_visible()
    flashes = "document.getAnimations().map(one => [one.effect.getComputedTiming().duration, one.effect.getKeyframes().length])"
    assert page.evaluate(flashes) == []

    ben.press("machine started", {"minutes": 0.01}, run="r1", load="cut/1")
    expect(page.get_by_role("alert")).to_be_visible()
    ((duration, keyframes),) = page.evaluate(flashes)
    assert (keyframes - 1) / 2 * 1000 / duration < 3  # WCAG 2.3.1; there and back is one flash

    ben.press("unloading started", run="r1", load="cut/1")
    expect(page.get_by_role("alert")).to_be_hidden()
    assert page.evaluate(flashes) == []


def test_who_wants_no_motion_gets_a_frame_that_stands_still(ben: Phone, server: Served, phones: Phones) -> None:
    ben.press("machine started", {"minutes": 0.01}, run="r1", load="cut/1")
    page = phones.new(viewport=TABLET, scheme="dark")
    page.emulate_media(reduced_motion="reduce")
    page.goto(f"{server.address}wall")

    expect(page.get_by_role("alert")).to_be_visible()

    assert page.evaluate("document.getAnimations().length") == 0
    assert page.evaluate("parseFloat(getComputedStyle(document.body, '::after').borderTopWidth)") > 10


def test_a_look_at_a_watched_machine_is_confirmed_by_one_tap(ben: Phone, server: Served, phones: Phones) -> None:
    page = wall(phones, server)
    ben.press("machine started", {"minutes": 22}, run="r1", load="engrave/1", at=ago(2.1))
    expect(page.get_by_role("alert")).to_contain_text("Stay and watch", timeout=10_000)
    expect(page.get_by_role("alert")).to_contain_text("It is not a fire watch")
    assert "danger-calls" not in (page.locator("body").get_attribute("class") or "")

    page.get_by_role("button", name="No flame, work flat, air assist and exhaust on").tap()

    expect(page.get_by_role("alert")).to_be_hidden()
    expect(page.locator("article").filter(has_text="Laser")).to_contain_text("Ben is watching")
    expect(page.get_by_role("listitem").filter(has_text="Ben")).to_contain_text("watching the Laser")
    assert answered_by(ben) == "ben"


def test_whoever_stands_there_says_so_and_a_missed_look_is_red(ben: Phone, server: Served, phones: Phones) -> None:
    page = wall(phones, server)
    ben.press("machine started", {"minutes": 22}, run="r1", load="engrave/1", at=ago(3.2))
    expect(page.get_by_role("alert")).to_contain_text("check missed", timeout=10_000)
    expect(page.locator("article").filter(has_text="Laser")).to_contain_text("watch check missed")
    assert "danger-calls" in (page.locator("body").get_attribute("class") or "")

    page.get_by_role("button", name="Ann is on it").tap()

    expect(page.get_by_role("alert")).to_be_hidden()
    assert answered_by(ben) == "ann"


def answered_by(ben: Phone) -> str:
    """Who looked at the laser, once it is stored."""
    for _ in range(50):
        state = ben.state()
        if state["runs"]["r1"]["loads"]["engrave/1"].get("checks") == 1:
            break
        time.sleep(0.1)
    (answer,) = (one for key, one in state["answers"].items() if key.startswith("watch check"))
    assert answer["answer"] == "seen"
    return str(answer["person"])
