"""What the planner beside the server makes of Now: which move comes first, what the others cost, what it is too late for."""

import time
from collections.abc import Callable, Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, Route, expect

from runboard.run.event import write_moment
from tests.browser.beside import opened
from tests.phone import Phone
from tests.serving import Running, running


@pytest.fixture
def server(data: Path) -> Iterator[Running]:
    """The shop served with its planner."""
    with running("serve", "--data", str(data), planner=True) as served:
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


def test_after_an_event_the_first_line_changes_to_the_new_move_without_reloading(
    ann: Phone, phone: Page, server: Running
) -> None:
    first = planned(ann)
    opened(phone, server)
    line = phone.locator("section.now h1")
    expect(line).to_contain_text(step_name(first, first["moves"][0]))
    phone.evaluate("window.stillHere = true")

    ann.press("load done", run="r1", load="cut/1")
    ann.press("station out of use", {"why": "belt"}, run="", station="cnc")
    after = planned(ann)

    assert after["moves"][0]["step"] != first["moves"][0]["step"]
    expect(line).to_contain_text(step_name(after, after["moves"][0]))
    assert phone.evaluate("window.stillHere"), "the page was not loaded again"


def test_what_else_could_be_done_says_what_it_would_cost(ann: Phone, phone: Page, server: Running) -> None:
    ann.press("load done", run="r1", load="cut/1")
    ann.press("load done", run="r1", load="clean/1")
    state = planned(ann)
    assert any(move.get("price") for move in state["moves"][1:])
    opened(phone, server)

    phone.get_by_text("Something else instead").click()

    expect(phone.get_by_text("the finish stays as it is").or_(phone.get_by_text("all done")).first).to_be_visible()


def test_it_is_said_what_it_is_too_late_to_load(ann: Phone, phone: Page, server: Running) -> None:
    until = datetime.now(UTC) + timedelta(minutes=40)
    ann.press("time said", {"until": write_moment(until)})
    planned(ann)

    opened(phone, server)

    expect(phone.get_by_text("Too late to load the CNC: it takes 46 min")).to_be_visible()


def with_an_older_plan(route: Route) -> None:
    """The server's state, but with a plan that has stayed behind."""
    found = route.fetch()
    state = found.json() if found.status == 200 else {}
    if "plan" not in state:
        return route.fulfill(response=found)
    state["plan"]["seq"] = 1
    return route.fulfill(response=found, json=state)


def test_a_plan_that_stays_behind_the_log_says_so(ann: Phone, phone: Page, server: Running) -> None:
    planned(ann)
    answer: Callable[[Route], None] = with_an_older_plan
    phone.route("**/state?*", answer)
    opened(phone, server)

    expect(phone.get_by_text("The order here is from a plan of")).to_be_visible()
    phone.unroute_all(behavior="wait")
