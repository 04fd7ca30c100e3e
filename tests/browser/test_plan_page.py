"""The Plan page on the demo's data with its planner: when it will be done, the chart down and across, and the search."""

import re
import shutil
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from runboard.demo.make import make_demo
from tests.browser.conftest import PHONE, TABLET, Phones
from tests.browser.looking import Looking
from tests.serving import Served, serving_demo

RUN = "r5"
ENOUGH = 60_000  # milliseconds until a busy machine has planned


@pytest.fixture(scope="module")
def planned_demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """The demo, served with its planner."""
    folder: Path = tmp_path_factory.mktemp("planned") / "shop"
    make_demo(folder, datetime.now(UTC))
    with serving_demo(folder, planner=True) as server:
        yield server
    shutil.rmtree(folder, ignore_errors=True)


def at_plan(phones: Phones, server: Served) -> Page:
    """The Plan page once there is a plan."""
    page = phones.new()
    page.goto(f"{server.address}plan")
    done = page.get_by_text(re.compile("^Done "))
    for _ in range(ENOUGH // 500):
        if done.count():
            return page
        page.wait_for_timeout(500)
        page.reload()
    raise AssertionError(page.inner_text("main"))


def test_the_page_is_in_order_with_its_chart_and_lists_open(phones: Phones, planned_demo: Served) -> None:
    page = at_plan(phones, planned_demo)
    looking = Looking(page, planned_demo.address)

    looking.picture("plan planned")
    looking.unfold()
    looking.at("plan planned unfolded")

    assert looking.wrong == []


def test_time_runs_down_on_a_phone_and_across_on_a_tablet(phones: Phones, planned_demo: Served) -> None:
    page = at_plan(phones, planned_demo)
    charts = page.get_by_role("img", name=re.compile("who does what"))

    page.set_viewport_size(PHONE)
    expect(charts).to_have_count(1)
    box = charts.bounding_box()
    assert box is not None
    assert box["width"] <= PHONE["width"]
    page.set_viewport_size(TABLET)
    expect(charts).to_have_count(1)
    wide = charts.bounding_box()
    assert wide is not None
    assert wide["width"] > box["width"]
    assert wide["x"] + wide["width"] <= TABLET["width"]


def test_what_the_chart_shows_is_read_as_a_list(phones: Phones, planned_demo: Served) -> None:
    page = at_plan(phones, planned_demo)

    page.get_by_text("The same as a list").first.click()

    rows = page.locator("ol.chart-list").first.get_by_role("listitem")
    assert rows.count() > 3
    assert re.match(r"\d+:\d\d–\d+:\d\d (Robin|Kim)", rows.first.inner_text())


def test_from_the_plan_to_the_search_that_is_stopped(phones: Phones, planned_demo: Served) -> None:
    page = at_plan(phones, planned_demo)

    page.get_by_role("link", name="See if it could be faster").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Could it be faster?")
    expect(page.get_by_text(re.compile("No plan can be done before|Looking for a better plan")).first).to_be_visible(
        timeout=ENOUGH
    )
    looking = Looking(page, planned_demo.address)
    looking.unfold()
    looking.at("plan search planned")

    stop = page.get_by_role("button", name="Stop")
    if stop.count():
        stop.click()
    expect(page.get_by_role("button", name="Look further")).to_be_visible(timeout=ENOUGH)
    assert looking.wrong == []


def test_a_run_says_where_its_times_come_from(phones: Phones, planned_demo: Served) -> None:
    page = at_plan(phones, planned_demo)

    page.get_by_role("link", name="Key rails, fourth batch").first.click()
    expect(page.get_by_text(re.compile("^Done "))).to_be_visible()
    page.get_by_text("Route", exact=True).click()

    expect(page.get_by_role("heading", name="Times it is planned with")).to_be_visible()
    expect(page.get_by_text(re.compile(r"^measured (once|twice|\d+ times)$")).first).to_be_visible()
    looking = Looking(page, planned_demo.address)
    looking.unfold()
    looking.at("plan run planned")
    assert looking.wrong == []
