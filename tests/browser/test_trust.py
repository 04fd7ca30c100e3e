"""What must not be forgotten, as two phones see it: who watches, what only a press says to run, holds, late order lines."""

import os
from datetime import UTC, datetime, timedelta
from pathlib import Path

from playwright.sync_api import Page, expect

from tests.browser.beside import arrived, bodies, opened
from tests.browser.conftest import Phones
from tests.phone import Phone
from tests.scenario import key_rails
from tests.serving import Served


def ago(minutes: float) -> str:
    return (datetime.now(UTC) - timedelta(minutes=minutes)).isoformat()


def pictured(page: Page, name: str) -> None:
    """A picture of the screen, light and dark, where somebody wants to look at it."""
    folder = os.environ.get("RUNBOARD_PICTURES")
    for scheme in ("light", "dark") if folder else ():
        page.emulate_media(color_scheme=scheme)
        page.screenshot(path=Path(folder or "") / f"{name}-{scheme}.png")
    page.emulate_media(color_scheme="light")


def as_ben(page: Page, server: Served) -> None:
    opened(page, server)
    page.get_by_role("button", name="Ben", exact=True).click()


def test_everybody_else_reads_by_name_who_watches(ann: Phone, phones: Phones, server: Served) -> None:
    ann.press("machine started", {"minutes": 22}, run="r1", load="engrave/1")
    mine, bens = phones.new(), phones.new()

    opened(mine, server)
    as_ben(bens, server)

    expect(mine.locator(".machine", has_text="Laser")).to_contain_text("You are watching. Stay")
    expect(bens.locator(".machine", has_text="Laser")).to_contain_text("Ann is watching")
    pictured(bens, "ann-is-watching")


def test_whoever_confirms_a_look_from_another_station_puts_that_aside_and_watches(
    ann: Phone, phones: Phones, server: Served, data: Path
) -> None:
    ann.press("machine started", {"minutes": 22}, run="r1", load="engrave/1", at=ago(5))
    ann.press("load started", run="r1", load="clean/2", person="ben", at=ago(4))
    page = phones.new()
    as_ben(page, server)
    panel = page.locator("[role=alert] .panel").first
    expect(panel).to_contain_text("You can't watch while working on Clean, tray 2.")
    pictured(page, "a-look-from-elsewhere")

    panel.locator("button.go").click()

    arrived(data, "watch checked")
    state = ann.state()["runs"]["r1"]["loads"]
    assert state["engrave/1"]["watcher"] == "ben"
    assert "people" not in state["clean/2"]


def test_what_only_a_press_says_to_run_stands_among_the_machines_until_somebody_says_that_it_does_not(
    ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    ann.press("load started", run="r1", load="engrave/1")
    blind = Phone(server.address, person="ben", token=ann.token)
    blind.press("machine started", {"minutes": 22}, run="r1", load="engrave/2", seen=0)
    opened(phone, server)
    row = phone.get_by_role("button", name="may be running: go and look")
    expect(row).to_be_visible()
    pictured(phone, "may-be-running")

    row.click()
    sheet = phone.get_by_role("dialog")
    expect(sheet).to_contain_text("Ben entered")
    pictured(phone, "may-be-running-sheet")
    sheet.get_by_role("button", name="It's not running").click()

    expect(row).to_be_hidden()
    arrived(data, "alert answered")
    assert bodies(data, "alert answered")[-1]["answer"] == "stopped"


def test_a_run_whose_laser_runs_is_not_ended_and_says_why(ann: Phone, phones: Phones, server: Served) -> None:
    ann.press("machine started", {"minutes": 22}, run="r1", load="engrave/1")
    phone = phones.new()
    phone.goto(f"{server.address}plan/runs/r1")
    phone.get_by_text("End the run").click()

    phone.get_by_role("button", name="Finish run").click()

    expect(
        phone.get_by_text("A machine is still running with tray 1. Stay until it has finished, or stop it first.")
    ).to_be_visible()
    assert ann.state()["runs"]["r1"]["state"] == "open"
    pictured(phone, "not-ended")
    phones.complaints = [one for one in phones.complaints if "422" not in one]  # the browser tells of each refused form


def test_a_hold_that_is_over_says_what_it_hangs_on_and_offers_both_answers_alike(
    ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    body = {"pieces": 2, "why": "knot", "waiting_for": "new blank", "until": ago(1)}
    ann.press("pieces held", body, run="r1", tray="1", operation="cut", at=ago(9))
    ann.press("load started", run="r1", load="clean/2")
    opened(phone, server)
    panel = phone.locator(".hold-over")
    expect(panel).to_contain_text("Tray 1 was on hold: knot, new blank. Is it sorted?")
    pictured(phone, "hold-over")

    goes, stays = (
        panel.get_by_role("button", name="Yes, release it").bounding_box(),
        panel.get_by_role("button", name="No, keep holding").bounding_box(),
    )
    done = phone.get_by_role("button", name="Done, all 5 good").bounding_box()
    assert goes and stays and done
    assert (goes["width"], goes["height"]) == (stays["width"], stays["height"])
    assert (
        not phone.locator(".last").get_by_role("button", name="Yes, release it").count()
    )  # where Done is, is nothing of it

    panel.get_by_role("button", name="No, keep holding").click()
    expect(panel).to_be_hidden()
    arrived(data, "alert answered")
    assert ann.state()["runs"]["r1"]["trays"]["1"]["holds"]


def test_the_head_counts_all_lines_of_one_moment_and_names_who_is_late(ann: Phone, phone: Page, server: Served) -> None:
    tomorrow = (datetime.now(UTC) + timedelta(days=1)).replace(microsecond=0).isoformat()
    lines = [
        {"line": "1", "pieces": 2, "for": "Market", "due": ago(60)},
        {"line": "2", "pieces": 3, "for": "Ida", "due": tomorrow},
        {"line": "3", "pieces": 4, "for": "Jo", "due": tomorrow},
    ]
    ann.press("orders changed", {"orders": lines}, run="r1")
    opened(phone, server)

    head = phone.locator("header.run")
    expect(head).to_contain_text("late: Market")
    expect(head).to_contain_text("0 of 7 good for")
    late = phone.locator(".late-lines")
    expect(late).to_contain_text("Market is late: due")
    expect(late.get_by_role("link")).to_have_attribute("href", "/plan")
    pictured(phone, "late")


def test_a_coat_that_is_not_dry_yet_is_looked_at_again_with_the_trays_beside_it(
    ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    product = key_rails()
    oil = next(one for one in product["operations"] if one["key"] == "oil")
    oil["wait"]["least_minutes"] = 1
    ann.press("route revised", {"product": product, "from_tray": "1"}, run="r1", at=ago(55))
    for tray in ("1", "2"):
        ann.press("load done", run="r1", load=f"oil/{tray}", at=ago(50))
    for due in ann.state()["dues"]:
        if due["kind"] == "care end":
            ann.press("reminder answered", {"reminder": due["id"], "done": "in water, in the lidded can"})
    opened(phone, server)
    panel = phone.locator("[role=alert] .panel", has_text="Not dry yet?").first
    expect(panel).to_contain_text("The same coat is on tray")
    pictured(phone, "not-dry-yet")

    panel.get_by_role("button", name="in 12 h").click()

    expect(phone.get_by_text("Not dry yet?")).to_have_count(0)
    arrived(data, "alert answered", number=2)
    rests = [ann.state()["runs"]["r1"]["trays"][tray]["rests"]["oil"]["ready_at"] for tray in ("1", "2")]
    assert all(one > (datetime.now(UTC) + timedelta(hours=11)).isoformat() for one in rests)


def test_after_locking_up_nothing_asks_to_start_again_but_says_what_comes_next(
    ann: Phone, phone: Page, server: Served
) -> None:
    ann.press("person went")
    opened(phone, server)

    expect(phone.get_by_role("heading", name="Finished for today")).to_be_visible()
    expect(phone.get_by_text("Next time: Cut, board 1")).to_be_visible()
    expect(phone.get_by_role("button", name="Start", exact=True)).to_have_count(0)
    expect(phone.get_by_text("How long have you got?")).to_have_count(0)
    pictured(phone, "over-for-today")

    phone.get_by_role("button", name="I'm back").click()
    expect(phone.get_by_text("How long have you got?")).to_be_visible()


def test_the_sheet_of_something_else_closes_when_that_is_started(
    ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    ann.state()
    opened(phone, server)
    phone.get_by_text("Do something else").click()
    phone.locator("details", has_text="Do something else").get_by_role("button", name="Open").first.click()
    sheet = phone.get_by_role("dialog")
    expect(sheet).to_be_visible()

    sheet.locator("button.go").click()

    expect(sheet).to_be_hidden()
    arrived(data, "load started")


def test_a_piece_that_is_spoilt_where_it_stopped_leaves_and_what_is_left_of_the_time_is_proposed(
    ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    ann.press("machine started", {"minutes": 40}, run="r1", load="engrave/1", at=ago(10))
    opened(phone, server)
    phone.locator(".machine", has_text="Laser").click()
    phone.get_by_role("dialog").get_by_role("button", name="Stopped, because").click()
    sheet = phone.get_by_role("dialog", name="Stopped early")
    sheet.get_by_role("button", name="power cut").click()
    second = sheet.get_by_role("button", name="Position 2")
    for _ in range(3):
        second.click()
    expect(second).to_contain_text("spoilt")
    pictured(phone, "stopped-spoilt")
    sheet.locator("button.go").click()
    arrived(data, "load stopped")
    phone.locator(".machine", has_text="Laser").click()
    expect(phone.get_by_role("dialog")).to_contain_text("1 spoilt")
    phone.get_by_role("button", name="Carry on from where it stopped").click()

    expect(phone.get_by_role("group", name="Runs for about").get_by_role("textbox")).to_have_value("30")
    arrived(data, "stop settled")
    assert ann.state()["runs"]["r1"]["trays"]["1"]["counts"]["engrave"]["engrave/1"] == [0, 1]
