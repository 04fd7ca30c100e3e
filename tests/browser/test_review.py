"""A review on a phone and a tablet: the first screen whole without scrolling, and the pages of evidence in order."""

from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from runboard.demo.book import demo_book
from runboard.floor.changing.adopt import adopt_change
from runboard.floor.changing.runs import close_run
from runboard.floor.looking import review as looking
from runboard.floor.workshop import Workshop
from runboard.opening import WallClock, open_workshop
from runboard.review.essentials import Essentials
from tests.browser.conftest import Phones
from tests.browser.looking import Looking
from tests.serving import Here
from tests.web import reviewed

RUN = f"review/runs/{reviewed.RUN}"
PAGES = {
    RUN: "first", f"{RUN}/times": "times", f"{RUN}/happened": "happened", f"{RUN}/held": "held", f"{RUN}/changes": "changes",
    f"{RUN}/log": "log", "review": "runs", "review/changes": "ledger",
}  # fmt: skip
# How far the picture reaches on the screen, and where the bar with the five screens begins.
_REACH = """() => [document.querySelector("figure").getBoundingClientRect().bottom,
  document.querySelector(".screens").getBoundingClientRect().top]"""


@pytest.fixture
def data(data: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A shop with a run whose review is the made-up one."""
    clock = WallClock()
    store, workshop = open_workshop(data, clock)
    workshop.books.save(demo_book(datetime.now(UTC), "Europe/Berlin"), clock.now())
    reviewed.open_a_run(workshop)
    close_run(workshop, reviewed.RUN, "run finished")
    adopt_change(workshop, reviewed.RUN, reviewed.tried()[0], "robin")
    store.close()
    monkeypatch.setattr(looking, "essentials_at", reviewed.essentials_at)
    return data


def test_nothing_of_the_first_screen_has_to_be_scrolled_to(phone: Page, server: Here) -> None:
    phone.goto(server.address + RUN)
    expect(phone.get_by_role("heading", level=1)).to_have_text("Key rails, run 7")

    reach, bar = phone.evaluate(_REACH)

    assert reach <= bar


def test_each_line_opens_its_evidence(phone: Page, server: Here) -> None:
    phone.goto(server.address + RUN)

    for line, title in (
        ("58 of 60 good", "What happened"),
        ("Furthest from the guess", "Times learned"),
        ("Lost:", "What happened"),
        ("Bottleneck:", "Bottleneck"),
        ("Try first:", "Changes to try"),
    ):
        phone.get_by_role("link", name=line).click()
        expect(phone.get_by_role("heading", level=1)).to_have_text(title)
        phone.go_back()


def test_a_link_into_a_folded_section_opens_it_with_its_heading_in_sight(phone: Page, server: Here) -> None:
    phone.goto(f"{server.address}{RUN}/happened#lost")

    expect(phone.locator("#lost")).to_be_visible()
    expect(phone.locator("#waiting")).to_be_hidden()
    expect(phone.get_by_role("heading", name="Lost, and what came good")).to_be_in_viewport()


def test_what_happened_is_short_until_it_is_unfolded(phone: Page, server: Here) -> None:
    phone.goto(f"{server.address}{RUN}/happened")

    assert phone.evaluate("document.documentElement.scrollHeight") < 2000


@pytest.mark.parametrize("path", PAGES)
def test_a_page_of_a_review_is_in_order(path: str, phones: Phones, server: Here) -> None:
    page = phones.new()
    looking_at = Looking(page, server.address)
    page.goto(server.address + path)
    expect(page.get_by_role("heading", level=1)).to_be_visible()

    looking_at.unfold()
    looking_at.at(f"review {PAGES[path]}")

    assert looking_at.wrong == []


@pytest.mark.parametrize(
    ("path", "said"),
    [
        ("", "Bottleneck: the drying rack places"),
        ("/held", "What an hour less would have been worth"),
        ("/changes", "Do it next time"),
    ],
)
def test_what_is_worked_out_still_comes_by_itself(
    path: str, said: str, phone: Page, server: Here, monkeypatch: pytest.MonkeyPatch
) -> None:
    def still_coming(workshop: Workshop, run: str) -> Essentials:
        whole = reviewed.essentials_at(workshop, run)
        return replace(whole, held=None, tried=None, together=None, is_weighed=False)

    monkeypatch.setattr(looking, "essentials_at", still_coming)
    phone.goto(server.address + RUN + path)
    expect(phone.get_by_text("working it out…").first).to_be_visible()

    monkeypatch.setattr(looking, "essentials_at", reviewed.essentials_at)

    expect(phone.locator("main")).to_contain_text(said)
    expect(phone.get_by_text("working it out…")).to_have_count(0)
