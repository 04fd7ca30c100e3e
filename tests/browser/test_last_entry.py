"""The foot of Now: what this person's last entry was, also where another phone made it."""

import re

from playwright.sync_api import Page, expect

from tests.browser.beside import opened
from tests.phone import Phone
from tests.serving import Served


def test_an_entry_from_another_phone_is_named(ann: Phone, phone: Page, server: Served) -> None:
    ann.press("load started", run="r1", load="sand:120/1")
    opened(phone, server)

    foot = phone.locator("footer.last")

    expect(foot).to_contain_text(re.compile(r"On another phone: started\s+Sand.120,\s+tray.1"))
    expect(foot.get_by_role("button", name="Undo")).to_be_visible()


def test_who_has_finished_for_today_is_offered_nothing_to_do(ann: Phone, phone: Page, server: Served) -> None:
    for reminder in ann.send(ann.event("person went", {"ticked": []}))[0].get("facts", {}).get("reminders", []):
        ann.press("reminder answered", {"reminder": reminder, "done": "none"})
        ann.press("person went", {"ticked": []})
    opened(phone, server)
    expect(phone.get_by_role("heading", level=1)).to_contain_text("Finished for today")
    expect(phone.get_by_role("heading", name="Trays")).to_be_visible()

    expect(phone.get_by_text("Do something else")).to_have_count(0)
