"""What the planner beside the server makes of Now: which move comes first, what the others cost, what it is too late for."""

import re
import time
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Locator, Page, Route, expect

from runboard.run.log.event import write_moment
from tests.browser.beside import fetches, opened
from tests.browser.conftest import Phones
from tests.phone import Phone
from tests.serving import Served, serving


@pytest.fixture
def server(data: Path) -> Iterator[Served]:
    """The shop served with its planner."""
    with serving(data, planner=True) as served:
        yield served


def planned(ann: Phone, seconds: float = 30) -> dict[str, Any]:
    """The state once its plan is of the log as it is."""
    until = time.monotonic() + seconds
    while time.monotonic() < until:
        state = ann.state()
        if state.get("plan", {}).get("seq") == state["seq"]:
            return state
        time.sleep(0.1)
    raise AssertionError("nothing was planned")


def step_name(state: dict[str, Any], move: dict[str, Any]) -> str:
    steps = state["runs"][move["run"]]["routes"][-1]["steps"]
    return str(next(step["name"] for step in steps if step["key"] == move["step"]))


def reason(page: Page) -> Locator:
    """The line below the big button; without a reason it is empty, or not there."""
    return page.locator(".first-column > .soft")


def test_after_an_event_the_first_line_changes_to_the_new_move_without_reloading(
    ann: Phone, phone: Page, server: Served
) -> None:
    first = planned(ann)
    opened(phone, server)
    line = phone.locator("section.now h1")
    expect(line).to_contain_text(step_name(first, first["moves"][0]))
    expect(reason(phone)).to_contain_text("Then the CNC runs until")
    phone.evaluate("window.stillHere = true")

    ann.press("load done", run="r1", load="cut/1")
    ann.press("station out of use", {"why": "belt"}, run="", station="cnc")
    after = planned(ann)

    assert after["moves"][0]["step"] != first["moves"][0]["step"]
    expect(line).to_contain_text(step_name(after, after["moves"][0]))
    expect(reason(phone)).to_have_text("Sand 120 is waiting for it")
    assert phone.evaluate("window.stillHere"), "the page was not loaded again"


# Whichever the plan finds; a move that is later and one that only walks more are as good an answer to this.
A_PRICE = re.compile(r"finish time unchanged|all done|more walks?")


def test_what_else_could_be_done_says_what_it_would_cost(ann: Phone, phone: Page, server: Served) -> None:
    ann.press("load done", run="r1", load="cut/1")
    ann.press("load done", run="r1", load="clean/1")
    state = planned(ann)
    assert any(move.get("price") for move in state["moves"][1:])
    opened(phone, server)

    phone.get_by_text("Do something else").click()

    expect(phone.get_by_text(A_PRICE).first).to_be_visible()


def test_it_is_said_what_it_is_too_late_to_load(ann: Phone, phone: Page, server: Served) -> None:
    until = datetime.now(UTC) + timedelta(minutes=40)
    ann.press("time said", {"until": write_moment(until)})
    planned(ann)

    opened(phone, server)

    expect(phone.get_by_text("Too late to load the CNC: it needs 46 min")).to_be_visible()


def test_the_reason_does_not_push_the_big_button(ann: Phone, phones: Phones, server: Served) -> None:
    ann.press("load done", run="r1", load="cut/1")
    ann.press("station out of use", {"why": "belt"}, run="", station="cnc")
    planned(ann)
    page = opened(phones.new(viewport={"width": 360, "height": 640}), server)
    button = page.locator(".last .go")
    expect(reason(page)).to_have_text("Sand 120 is waiting for it")
    there = button.bounding_box()

    reason(page).evaluate("one => { one.style.display = 'none' }")

    assert there is not None and there == button.bounding_box()


def test_without_the_server_no_reason_of_the_last_plan_stands_under_what_comes_after_it(
    ann: Phone, phones: Phones, server: Served
) -> None:
    phones.forgive_silence_of_the_server()
    ann.press("load done", run="r1", load="cut/1")
    ann.press("station out of use", {"why": "belt"}, run="", station="cnc")
    planned(ann)
    page = opened(phones.new(), server)
    line = page.locator("section.now h1")
    expect(reason(page)).to_have_text("Sand 120 is waiting for it")
    fetches(page, "sheets", "others", "overlay")  # what a press without the server wants
    page.context.set_offline(True)

    page.get_by_role("button", name="Called away").click()
    page.get_by_role("button", name="I'm back").click()
    expect(line).to_have_text("Clean, tray 1")
    expect(reason(page)).to_have_text("")

    page.get_by_role("button", name="Start", exact=True).click()
    page.get_by_role("button", name="Done").click()
    expect(line).not_to_have_text("Clean, tray 1")
    expect(reason(page)).to_have_count(0)
    page.context.set_offline(False)


def with_plan(page: Page, **more: Any) -> None:
    """The server's state, with this of its plan."""

    def answer(route: Route) -> None:
        found = route.fetch()
        state = found.json() if found.status == 200 else {}
        if "plan" not in state:
            return route.fulfill(response=found)
        state["plan"].update(more)
        return route.fulfill(response=found, json=state)

    page.route("**/state?*", answer)


def test_the_lead_is_told_why_no_plan_is_possible_and_others_that_there_is_none(
    ann: Phone, phone: Page, server: Served
) -> None:
    planned(ann)
    facts = {"step": "Hooks", "minutes": 150, "longest": 45}
    with_plan(phone, clash={"code": "no window long enough", "facts": facts})
    opened(phone, server)
    said = phone.locator(".unplanned")
    expect(said).to_contain_text("Hooks: it takes 2 h 30 without a break")

    with_plan(phone, none=True)
    phone.get_by_role("button", name="Ben", exact=True).click()
    expect(said).to_have_text("Can't plan right now. This order is a rough guess.")
    phone.get_by_role("button", name="Ann", exact=True).click()
    expect(said).to_contain_text("No plan fits into people’s hours")

    assert said.get_by_role("link", name="Open Plan").get_attribute("href") == "/plan"
    with_plan(phone, looking=True)
    phone.get_by_role("button", name="Ben", exact=True).click()
    expect(said).to_have_text("Looking for a plan. Until then this order is a rough guess.")
    phone.unroute_all(behavior="wait")


def test_a_plan_that_stays_behind_the_log_says_so(ann: Phone, phone: Page, server: Served) -> None:
    planned(ann)
    with_plan(phone, seq=1)
    opened(phone, server)

    expect(phone.get_by_text("This order is from the plan of")).to_be_visible()
    expect(reason(phone).filter(has_text=re.compile(r"\S"))).to_have_count(0)
    phone.unroute_all(behavior="wait")
