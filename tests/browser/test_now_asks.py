"""What Now asks and offers beside the big button: a long span, a wait cut short, and all of it without the server."""

import re
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

from playwright.sync_api import Page, Route, expect

from tests.browser.beside import arrived, bodies, fetches, opened
from tests.browser.conftest import STATIC, Phones
from tests.browser.inside import OWN
from tests.phone import Phone
from tests.serving import Here, Served

DRAWN_AGAIN = f"(async () => {OWN}['door/screen.js'].redraw())()"
# What a page does without at first: names and files.
_OFFERED = (STATIC / "now" / "now.js").read_text("utf-8").split("const PARTS = {")[1].split("};")[0]
LATER = re.findall(r'^  "?([\w ]+)"?: ', _OFFERED, re.MULTILINE)
HAS_COME_TO_REST = """() => performance.getEntriesByType("resource")
  .some((one) => one.responseEnd && one.name.endsWith("/composed/now.later.js"))"""


def hands_at_it_for(minutes: float) -> Callable[[Route], None]:
    """The server's state, but as if Ann had been at it for so long."""

    def answer(route: Route) -> None:
        found = route.fetch()
        state = found.json() if found.status == 200 else {}
        if "hands_since" not in state.get("people", {}).get("ann", {}):
            return route.fulfill(response=found)
        state["people"]["ann"]["hands_since"] = (datetime.now(UTC) - timedelta(minutes=minutes)).isoformat()
        return route.fulfill(response=found, json=state)

    return answer


def test_a_span_over_twice_its_estimate_is_asked_about_once_and_blocks_nothing(
    ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    ann.press("load started", run="r1", load="clean/1")
    began = ann.state()["runs"]["r1"]["loads"]["clean/1"]["began"]["ann"]
    phone.route("**/state?*", hands_at_it_for(100))
    opened(phone, server)
    expect(phone.get_by_role("heading", level=1)).to_contain_text("Clean")
    fetches(phone, "span", "asks", "overlay")

    phone.get_by_role("button", name="Done, all 5 good").click()
    asked = phone.get_by_text("took 1 h 40. Were you working the whole time?")
    expect(asked).to_be_visible()
    expect(phone.locator(".last button.go")).to_be_enabled()
    phone.get_by_role("button", name="About …").click()
    minutes = phone.get_by_role("textbox", name="About", exact=True)
    minutes.fill("12")
    phone.evaluate(DRAWN_AGAIN)  # and leaves what is typed alone
    minutes.press("Tab")
    phone.get_by_role("button", name="About 12 min").click()

    expect(asked).to_be_hidden()
    expect(phone.get_by_text("sent", exact=True)).to_be_visible()
    phone.unroute_all(behavior="wait")
    arrived(data, "span answered")
    assert bodies(data, "span answered") == [{"span": began, "answer": "about", "minutes": 12}]


def test_a_span_near_its_estimate_is_not_asked_about(ann: Phone, phone: Page, server: Served) -> None:
    ann.press("load started", run="r1", load="clean/1")
    phone.route("**/state?*", hands_at_it_for(9))
    opened(phone, server)
    fetches(phone, "span", "asks", "overlay")

    phone.get_by_role("button", name="Done, all 5 good").click()

    expect(phone.locator("footer")).to_contain_text("Done: Clean")
    expect(phone.get_by_text("Were you working the whole time?")).to_have_count(0)
    phone.unroute_all(behavior="wait")


def test_going_on_before_a_wait_is_over_says_what_it_means_and_is_noted_as_early(
    ann: Phone, phone: Page, server: Served
) -> None:
    ann.press("load started", run="r1", load="oil/1")
    ann.press("load done", run="r1", load="oil/1")
    opened(phone, server)

    phone.locator("summary", has_text="Oil: drying").click()
    phone.get_by_role("button", name="Carry on now, before it's dry").click()
    expect(phone.get_by_role("dialog")).to_contain_text("Dry to the touch is not cured.")
    phone.get_by_role("button", name="Start early anyway: Hooks, tray 1").click()

    expect(phone.get_by_role("heading", level=1)).to_contain_text("Hooks")
    expect(phone.get_by_text("sent", exact=True)).to_be_visible()
    run = ann.state()["runs"]["r1"]
    assert run["loads"]["hooks/1"]["people"] == ["ann"]
    assert run["trays"]["1"]["rests"]["oil"]["early"] is True


def lays_a_cracked_piece_aside(ann: Phone) -> None:
    """Ann cleans tray 1 up, and has counted one piece of it as scrap."""
    ann.press("load started", run="r1", load="clean/1")
    said = {"good": 4, "scrap": [{"pieces": 1, "why": "crack", "positions": [3]}]}
    ann.press("pieces counted", said, run="r1", tray="1", operation="clean", load="clean/1")


def test_a_count_at_the_end_keeps_the_reasons_that_were_said_before(
    ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    lays_a_cracked_piece_aside(ann)
    opened(phone, server)
    phone.get_by_text("Some bad, or finished earlier").click()
    phone.get_by_role("button", name="Done, some bad").click()
    sheet = phone.get_by_role("dialog")
    expect(sheet.get_by_role("button", name="Done, 4 good, 1 scrap", exact=True)).to_be_enabled()

    sheet.get_by_role("button", name="More: Scrap").click()
    sheet.get_by_role("button", name="knot").click()
    sheet.get_by_role("button", name="Done, 3 good, 2 scrap", exact=True).click()

    arrived(data, "load done")
    (done,) = bodies(data, "load done")
    reasons = [{"pieces": 1, "why": "crack", "positions": [3]}, {"pieces": 1, "why": "knot"}]
    assert done["counts"] == {"1": {"good": 3, "scrap": reasons}}


def test_a_count_put_right_presets_no_reason_and_keeps_what_was_said(
    ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    lays_a_cracked_piece_aside(ann)
    opened(phone, server)
    phone.goto(f"{server.address}trays")
    tray = phone.get_by_role("article").filter(has=phone.get_by_role("heading", name="tray 1", exact=True))
    tray.locator("summary", has_text="count, hold, history").click()
    tray.get_by_role("button", name="Correct a count").click()
    sheet = phone.get_by_role("dialog")
    expect(sheet.get_by_role("button", name="Save 4 good, 1 scrap")).to_be_enabled()

    sheet.get_by_role("button", name="More: Scrap").click()
    expect(sheet.get_by_role("button", name="Choose why first")).to_be_disabled()
    sheet.get_by_role("button", name="knot").click()
    sheet.get_by_role("button", name="Save 3 good, 2 scrap").click()

    arrived(data, "pieces counted", number=2)
    reasons = [{"pieces": 1, "why": "crack", "positions": [3]}, {"pieces": 1, "why": "knot"}]
    assert bodies(data, "pieces counted")[1] == {"good": 3, "scrap": reasons}


def test_a_machine_that_was_to_be_back_by_now_is_asked_about(
    ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    out = {"why": "belt", "until": (datetime.now(UTC) + timedelta(seconds=1)).isoformat()}
    ann.press("station out of use", out, run="", station="sander")
    opened(phone, server)
    asked = phone.get_by_role("alert").locator("section", has_text="Is the Sander back in use?")
    expect(asked).to_contain_text("belt")

    asked.get_by_role("button", name="in two days").click()
    expect(asked).to_be_hidden()
    expect(phone.get_by_text("sent", exact=True)).to_be_visible()
    later, _ = reversed(bodies(data, "station out of use"))
    assert later["why"] == "belt"
    assert timedelta(days=1) < datetime.fromisoformat(later["until"]) - datetime.now(UTC) < timedelta(days=3)

    ann.press("station out of use", out, run="", station="sander")
    asked.get_by_role("button", name="Back in use").click()

    expect(asked).to_be_hidden()
    arrived(data, "station back in use")
    assert "out" not in ann.state()["stations"]["sander"]


def test_sheets_open_without_the_server_a_few_seconds_after_now_was_opened(
    ann: Phone, phones: Phones, server: Served
) -> None:
    ann.press("load started", run="r1", load="clean/1")
    phone = opened(phones.new(), server)
    phone.wait_for_function(HAS_COME_TO_REST)  # by itself
    fetches(phone, *LATER)

    phone.context.set_offline(True)
    phone.get_by_role("button", name="Something is wrong").click()
    expect(phone.get_by_role("dialog")).to_contain_text("A bad piece")
    phone.get_by_role("button", name="A bad piece").click()
    phone.get_by_role("button", name="tear-out", exact=True).click()
    phone.get_by_role("button", name="1 scrap: tear-out").click()

    expect(phone.get_by_role("button", name="Done, 4 good, 1 scrap")).to_be_visible()
    phone.get_by_role("button", name="Called away").click()
    expect(phone.get_by_role("heading", level=1)).to_contain_text("You were called away")
    phones.forgive_silence_of_the_server()


def test_while_engraving_is_prepared_each_position_has_its_text(ann: Phone, phone: Page, server: Served) -> None:
    ann.press("load done", run="r1", load="sand:180/1")
    placed = [{"position": at, "line": "1", "text": text} for at, text in ((1, "12"), (2, "87"))]
    ann.press("load started", {"places": {"1": placed}}, run="r1", load="engrave/1")
    opened(phone, server)

    texts = phone.locator("section.now").get_by_role("list", name="Text at each position")

    expect(texts.get_by_role("listitem")).to_have_text(["position 1 12", "position 2 87"])
    phone.goto(f"{server.address}trays")
    whole = phone.get_by_role("list", name="Text at each position")
    expect(whole.get_by_role("listitem")).to_have_text(["position 1 12", "position 2 87"])


def test_a_bad_piece_wants_its_reason_and_presets_none(ann: Phone, phone: Page, server: Served, data: Path) -> None:
    ann.press("load started", run="r1", load="clean/1")
    opened(phone, server)
    expect(phone.get_by_role("heading", level=1)).to_contain_text("Clean")

    phone.get_by_role("button", name="Something is wrong").click()
    phone.get_by_role("button", name="A bad piece").click()
    sheet = phone.get_by_role("dialog", name=re.compile("^Bad piece"))
    reasons = sheet.get_by_role("group", name="Why")
    expect(sheet.get_by_role("button", name="Choose why first")).to_be_disabled()
    expect(reasons.locator("[aria-pressed=true]")).to_have_count(0)
    reasons.get_by_role("button", name="crack").click()
    sheet.get_by_role("button", name="1 scrap: crack").click()

    arrived(data, "pieces counted")
    assert [one["why"] for one in bodies(data, "pieces counted")[0]["scrap"]] == ["crack"]


def test_the_usual_end_of_the_day_is_one_button(phone: Page, server: Here, data: Path, shop_with_a_run: Path) -> None:
    now = server.clock.now().astimezone(ZoneInfo("Europe/Berlin"))
    server.forward(hours=(36 - now.hour) % 24, minutes=-now.minute)  # about noon: Ann is usually there until 22:00
    phone.goto(server.address)
    phone.get_by_role("button", name="Ann", exact=True).click()

    phone.get_by_role("button", name="Until 22:00, as usual").click()

    arrived(data, "person came", number=3)  # after those of Ann and Ben this morning
    came = bodies(data, "person came")[-1]
    assert datetime.fromisoformat(came["until"]).astimezone(ZoneInfo("Europe/Berlin")).hour == 22
