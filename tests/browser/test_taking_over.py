"""Where the plan has somebody take over a watch, their phone says when, and one press takes it over."""

import re
from datetime import UTC, datetime, timedelta
from pathlib import Path

from playwright.sync_api import Page, Route, expect

from runboard.run.log.event import write_moment
from tests.browser.beside import arrived, opened
from tests.phone import Phone
from tests.serving import Served


def wanted_in(page: Page, minutes: float) -> None:
    """The server's state, with a plan that has whoever looks take over the watch in so many minutes."""
    at = write_moment(datetime.now(UTC) + timedelta(minutes=minutes))

    def answer(route: Route) -> None:
        found = route.fetch()
        state = found.json() if found.status == 200 else {}
        for move in state.get("moves", ()):
            if move["code"] == "take over":
                move["facts"]["at"] = at
        return route.fulfill(response=found, json=state) if state else route.fulfill(response=found)

    page.route("**/state?*", answer)


def test_it_is_said_when_and_from_whom_and_one_press_takes_it_over(
    ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    ann.press("load done", run="r1", load="cut/1")
    ann.press("load started", run="r1", load="cut/2")
    ann.press("machine started", run="r1", load="cut/2")
    wanted_in(phone, 12)
    opened(phone, server)

    phone.get_by_role("button", name="Ben", exact=True).click()
    said = phone.locator("section.now").get_by_text(re.compile(r"Watch the CNC from (\w+ )?\d+:\d\d"))
    expect(said).to_be_visible()
    phone.get_by_role("button", name="Start", exact=True).click()
    expect(said).to_be_visible()

    phone.get_by_text("Do something else").click()
    phone.locator("li.row", has_text="until you take over").get_by_role("button").click()
    phone.get_by_role("button", name="I'm watching it now").click()
    expect(said).to_have_count(0)
    arrived(data, "watch taken")
    phone.unroute_all(behavior="wait")
