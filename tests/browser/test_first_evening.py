"""From a paired phone in an empty shop to a first run that is being worked: how many presses that takes."""

from pathlib import Path

from playwright.sync_api import Page, expect

from tests.serving import Served

MOST_TAPS = 60
ROUTE = "cut 40 board of 10, clean up 5, sand 25, engrave 20, oil, overnight, hooks 10"


class Counting:
    """A thumb that counts: each button, link, tick and field is one tap."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.taps = 0

    def presses(self, name: str, role: str = "button") -> None:
        self.taps += 1
        self.page.get_by_role(role, name=name).first.click()  # type: ignore[arg-type]

    def types(self, label: str, text: str) -> None:
        self.taps += 1
        self.page.get_by_label(label).first.fill(text)

    def unticks(self, label: str) -> None:
        self.taps += 1
        self.page.get_by_role("checkbox", name=label).first.uncheck()


def test_an_own_first_run_takes_at_most_sixty_taps(phone: Page, server: Served, data: Path) -> None:
    thumb = Counting(phone)
    phone.goto(server.address)

    thumb.presses("Describe", "link")
    thumb.types("Your name", "Ann")
    thumb.unticks("Router table")
    thumb.presses("Save and add a product")
    thumb.types("Name", "Key rail")
    thumb.types("Steps, in one line", ROUTE)
    expect(phone.get_by_label("Engrave, at the Laser")).to_be_visible()
    thumb.types("Engrave, at the Laser", "5")
    thumb.presses("Create product")
    thumb.presses("Open a run", "link")
    thumb.types("Pieces", "10")
    thumb.presses("Open run")
    expect(phone.get_by_role("heading", level=1)).to_be_visible()
    thumb.presses("Now", "link")
    thumb.presses("2 h")
    expect(phone.get_by_role("heading", level=1)).to_contain_text("Cut, board 1")
    thumb.presses("Start")
    expect(phone.get_by_role("heading", level=1)).to_contain_text("Load: Cut")

    assert thumb.taps <= MOST_TAPS
