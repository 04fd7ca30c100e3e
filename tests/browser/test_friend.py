"""A friend opens the file of a review on a phone without a network, answers, and sends the answers back; another does so by a
code."""

import re
import time
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from runboard.cards.friends_file import friends_file
from runboard.cards.friends_page import file_html
from runboard.floor.looking import review as looking
from runboard.review.answers import read_answers
from tests.browser.conftest import PATIENCE, PHONE, Phones
from tests.browser.engines import firefox
from tests.browser.looking import Looking
from tests.cards.friends import essentials_of, named_shop
from tests.serving import Served

ENOUGH = 60_000  # milliseconds in which a busy machine has made a PDF


@pytest.fixture(autouse=True)
def _essentials(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(looking, "essentials_at", essentials_of, raising=False)


class FriendsPhone:
    """A phone of nobody here, by default without any network. ``asked`` are the addresses that its page asked for."""

    def __init__(self, chromium: Browser, *, offline: bool = True, script: bool = True) -> None:
        self.context = chromium.new_context(
            viewport=PHONE,
            has_touch=True,
            is_mobile=True,
            offline=offline,
            java_script_enabled=script,
            accept_downloads=True,
        )
        self.context.set_default_timeout(PATIENCE)
        self.page = self.context.new_page()
        self.asked: list[str] = []
        self.complaints: list[str] = []
        self.page.on("request", lambda request: self.asked.append(request.url))
        self.page.on("pageerror", lambda error: self.complaints.append(str(error)))
        self.page.on("console", lambda said: said.type == "error" and self.complaints.append(said.text))


def answer(page: Page, operation: str, way: str, why: str = "", saves: str = "") -> None:
    """As a thumb does."""
    section = page.locator("section.operation").filter(has=page.get_by_role("heading", name=operation))
    if not section.locator("details.one").evaluate("details => details.open"):
        section.locator("summary").click()
    section.get_by_role("radio", name=way).check()
    section.get_by_role("textbox", name="In a sentence").fill(why)
    section.get_by_role("textbox", name="Saves about").fill(saves)


def look(page: Page, server: Served, name: str) -> None:
    looking = Looking(page, server.address)
    looking.unfold()
    looking.at(name)
    assert looking.wrong == []


@pytest.mark.usefixtures("shop_with_a_run")
def test_a_file_is_answered_without_a_network_and_its_answers_stand_at_their_operation(
    chromium: Browser, phone: Page, server: Served, tmp_path: Path
) -> None:
    phone.goto(f"{server.address}review/runs/r1/answers")
    look(phone, server, "friend")
    with phone.expect_download() as saved:
        phone.get_by_role("button", name="Save the file").click()
    file = tmp_path / "review.html"
    saved.value.save_as(file)
    friend = FriendsPhone(chromium)
    friend.page.goto(file.as_uri())
    look(friend.page, server, "friend file")

    answer(friend.page, "Hooks", "Simplify", "A stop on the jig.\nNobody measures.", "0,5")
    answer(friend.page, "Cut", "Leave as it is")
    friend.page.get_by_label("Your name").fill("Sam")
    with friend.page.expect_download() as sent:
        friend.page.get_by_role("button", name="Save the answers").click()
    answers = tmp_path / "answers.json"
    sent.value.save_as(answers)

    expect(friend.page.get_by_role("status")).to_have_text("Saved. Send that file back.")
    assert friend.complaints == []
    assert [one for one in friend.asked if not one.startswith(("file:", "blob:"))] == []
    phone.get_by_label("The file your friend sent").set_input_files(answers)
    phone.get_by_role("button", name="Take the answers in").click()
    expect(phone.get_by_text("2 answers taken in.")).to_be_visible()
    at_hooks = phone.locator("section#hooks")
    expect(at_hooks).to_contain_text(
        re.compile(r"Simplify.*saves about 0.5\smin per piece.*A stop on the jig. Nobody measures..*Sam", re.DOTALL)
    )
    look(phone, server, "friend answered")
    at_hooks.get_by_role("button", name="Set aside").click()
    expect(at_hooks).to_contain_text("set aside")
    friend.context.close()


@pytest.mark.usefixtures("shop_with_a_run")
def test_the_review_is_made_a_pdf_to_write_on(phone: Page, server: Served) -> None:
    phone.goto(f"{server.address}review/runs/r1/answers")
    phone.get_by_role("button", name="Make a PDF to write on").click()

    opens = phone.get_by_role("link", name="Open PDF")
    expect(opens).to_be_visible(timeout=ENOUGH)
    look(phone, server, "friend pdf")

    answer = phone.request.get(server.address + (opens.get_attribute("href") or "")[1:])
    assert answer.body().startswith(b"%PDF-")


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """A friend's file on disk."""
    place = tmp_path / "review.html"
    place.write_text(
        file_html(friends_file(essentials_of(named_shop()), lambda _: ["58 of 60 good."])), encoding="utf-8"
    )
    return place


def test_what_is_no_number_and_what_says_nothing_is_not_saved(chromium: Browser, file: Path) -> None:
    friend = FriendsPhone(chromium)
    friend.page.goto(file.as_uri())
    saves = friend.page.get_by_role("button", name="Save the answers")

    saves.click()
    expect(friend.page.get_by_role("status")).to_have_text("No answers yet.")
    answer(friend.page, "Cut", "Combine", saves="much")
    saves.click()

    expect(friend.page.get_by_text("Write the minutes as a number, such as 1.5.").first).to_be_visible()
    expect(friend.page.locator("[name=saves-cut]")).to_be_focused()
    friend.context.close()


def test_the_answers_can_be_copied_as_text_while_they_are_written(chromium: Browser, file: Path) -> None:
    friend = FriendsPhone(chromium)
    friend.page.goto(file.as_uri())

    answer(friend.page, "Hooks", "Simplify", "A stop.", "0.5")

    friend.page.get_by_text("Or copy them as text").click()
    text = friend.page.get_by_role("textbox", name="Or copy them as text").input_value()
    assert "[hooks] Hooks\ndo: simplify\nwhy: A stop.\nsaves: 0.5\n" in text
    assert text.count("\ndo: ") == 1
    friend.context.close()


def test_without_script_the_file_says_so_and_has_the_text_to_copy(chromium: Browser, file: Path) -> None:
    friend = FriendsPhone(chromium, script=False)
    friend.page.goto(file.as_uri())

    expect(friend.page.get_by_text("cannot save answers")).to_be_visible()
    expect(friend.page.get_by_role("button", name="Save the answers")).to_be_hidden()
    expect(friend.page.get_by_role("textbox", name="Or copy them as text")).to_be_editable()
    friend.context.close()


def test_the_answers_are_saved_from_disk_in_another_engine(file: Path, tmp_path: Path) -> None:
    with firefox(tmp_path) as page:
        page.open(file.as_uri())

        page.run("""document.querySelector("[name=do-cut][value=combine]").click();""")
        page.press("Save the answers")
        page.says("[data-said]", "Saved. Send that file back.")
        saved = saved_in(tmp_path)

    assert [(one.operation, one.do) for one in read_answers(saved).answers] == [("cut", "combine")]


def saved_in(home: Path) -> bytes:
    """What a browser wrote, once it has."""
    give_up = time.monotonic() + PATIENCE / 1000
    while not (found := [one for one in home.rglob("answers-*.json") if one.stat().st_size]):
        assert time.monotonic() < give_up, [*home.rglob("*.json")]
        time.sleep(0.05)
    return found[0].read_bytes()


@pytest.mark.usefixtures("shop_with_a_run")
def test_a_code_opens_the_review_on_a_phone_that_nobody_paired(
    chromium: Browser, phones: Phones, server: Served, phone: Page
) -> None:
    phone.goto(f"{server.address}review/runs/r1/answers")
    phone.get_by_role("button", name="Make a code").click()
    look(phone, server, "friend code")
    link = phone.locator(".address code").inner_text()
    friend = FriendsPhone(chromium, offline=False)
    friend.page.goto(link)

    answer(friend.page, "Hooks", "Simplify", "A stop on the jig.")
    friend.page.get_by_role("button", name="Send the answers to the shop").click()

    expect(friend.page.get_by_role("heading", name="Thank you!")).to_be_visible()
    assert friend.complaints == []
    assert {one.split("/friend/")[0] for one in friend.asked} <= {server.address.rstrip("/"), "data:,"}
    phone.goto(f"{server.address}review/runs/r1/answers")
    expect(phone.locator("section#hooks")).to_contain_text("A stop on the jig.")
    phone.get_by_role("button", name="Take back").click()
    friend.page.goto(link)
    expect(friend.page.get_by_role("heading", name="This code was taken back")).to_be_visible()
    friend.context.close()
