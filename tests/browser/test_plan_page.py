"""The Plan page on the demo's data with its planner: when it will be done, the chart down and across, and the search."""

import re
import shutil
from collections.abc import Iterator
from datetime import UTC, datetime
from itertools import combinations
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, ViewportSize, expect

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
    expect(charts.first).to_be_visible()
    wide = charts.first.bounding_box()
    assert wide is not None
    assert wide["width"] > box["width"]
    assert wide["x"] + wide["width"] <= TABLET["width"]


# Each word of the charts that are seen with its box, the bars and the rows, all in pixels of the page.
SEEN = """() => [...document.querySelectorAll("svg.chart")].filter((svg) => svg.getClientRects().length).map((svg) => {
  const boxes = (some) => [...svg.querySelectorAll(some)].map((one) => {
    const {x, y, width, height} = one.getBoundingClientRect();
    return {kind: one.getAttribute("class") ?? "", text: one.textContent, x, y, width, height};
  });
  return {words: boxes("text"), bars: boxes("rect.work, rect.setup, rect.watch, rect.held"), rows: boxes("rect.row")};
})"""
Seen = dict[str, Any]


def lies_in(word: Seen, box: Seen, by: float = 1.5) -> bool:
    across = box["x"] - by <= word["x"] and word["x"] + word["width"] <= box["x"] + box["width"] + by
    return bool(across and box["y"] - by <= word["y"] and word["y"] + word["height"] <= box["y"] + box["height"] + by)


def lie_on_each_other(one: Seen, other: Seen, by: float = 1.5) -> bool:
    across = one["x"] + by < other["x"] + other["width"] and other["x"] + by < one["x"] + one["width"]
    return bool(across and one["y"] + by < other["y"] + other["height"] and other["y"] + by < one["y"] + one["height"])


@pytest.mark.parametrize("size", [PHONE, TABLET], ids=["phone", "tablet"])
def test_every_word_of_the_picture_lies_in_its_bar_and_on_no_other(
    phones: Phones, planned_demo: Served, size: ViewportSize
) -> None:
    page = at_plan(phones, planned_demo)
    page.set_viewport_size(size)
    page.evaluate("() => document.querySelectorAll('details').forEach((one) => { one.open = true })")

    charts = page.evaluate(SEEN)

    assert sum(len(chart["bars"]) for chart in charts) > 10
    for chart in charts:
        on_bars = [word for word in chart["words"] if word["kind"].startswith("on-")]
        astray = [word for word in on_bars if not any(lies_in(word, bar) for bar in chart["bars"])]
        beside = [word for word in chart["words"] if word["kind"].startswith("beside")]
        astray += [word for word in beside if not any(lies_in(word, row) for row in chart["rows"])]
        crossing = [(word, bar) for word in beside for bar in chart["bars"] if lie_on_each_other(word, bar)]
        crossing += [pair for pair in combinations(chart["words"], 2) if lie_on_each_other(*pair)]
        assert (astray, crossing) == ([], [])


def test_the_picture_is_reached_with_little_scrolling(phones: Phones, planned_demo: Served) -> None:
    page = at_plan(phones, planned_demo)
    page.set_viewport_size(TABLET)
    chart = page.locator("svg.chart.tablet").first

    box = chart.bounding_box()

    assert box is not None
    assert box["y"] + box["height"] <= TABLET["height"]
    page.set_viewport_size(PHONE)
    before = page.locator("svg.chart.phone").first.bounding_box()
    assert before is not None
    assert before["y"] < PHONE["height"]


def test_on_paper_every_day_is_open_and_work_stays_filled(phones: Phones, planned_demo: Served) -> None:
    page = at_plan(phones, planned_demo)
    page.emulate_media(media="print")

    tablets = page.locator("svg.chart.tablet").filter(visible=True)

    assert tablets.count() >= page.locator("details.sitting").count()
    assert page.locator("svg.chart.phone").filter(visible=True).count() == 0
    fill = page.locator("svg.chart.tablet rect.work").first.evaluate("one => getComputedStyle(one).fill")
    assert fill == "rgb(29, 27, 24)"


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

    expect(page.get_by_role("heading", name="Times used for planning")).to_be_visible()
    expect(page.get_by_text(re.compile(r"^measured (once|twice|\d+ times)$")).first).to_be_visible()
    looking = Looking(page, planned_demo.address)
    looking.unfold()
    looking.at("plan run planned")
    assert looking.wrong == []
