"""A long plan's pages: they read what was made of the plan, say what is not there yet, and show the chart part by part."""

import re

import pytest
from flask.testing import FlaskClient

from runboard.floor.changing.runs import new_event
from runboard.floor.planning.plans import plan_at_once
from runboard.floor.pressing.taps import record_events
from runboard.house import House
from runboard.plan.schedule.problem import hours, people
from runboard.plan.schedule.rule import rule
from runboard.web.plan import chart as plan_chart
from tests.conftest import HandClock
from tests.core.test_long_plans import Counted
from tests.figured import show
from tests.web.test_plan_schedule import NoWork, opened, work
from tests.web.test_shop_pages import words

__all__ = ["work"]

PAGES = ("/plan", "/plan?from=1", "/plan/search", "/plan/runs/r1", "/plan/try")


def test_however_often_pages_are_asked_for_they_work_nothing_out(
    client: FlaskClient, house: House, work: NoWork, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened(house, due="2030-01-01T10:00:00+00:00")
    show(house.workshop)
    counted = [Counted(people._hands), Counted(hours.starts_of), Counted(rule.Rule.finish)]
    monkeypatch.setattr(people, "_hands", counted[0])
    monkeypatch.setattr(hours, "starts_of", counted[1])
    monkeypatch.setattr(rule.Rule, "finish", counted[2])

    for _ in range(3):
        assert [client.get(page).status_code for page in PAGES] == [200] * len(PAGES)

    assert [one.times for one in counted] == [0, 0, 0]


def test_until_the_figures_are_there_the_pages_say_so_and_look_again(
    client: FlaskClient, house: House, work: NoWork
) -> None:
    opened(house)
    house.workshop.planned = plan_at_once(house.workshop)

    for page in ("/plan", "/plan/runs/r1", "/plan/search"):
        assert "Working it out …" in words(client.get(page))
    assert 'hx-get="/plan" hx-trigger="every 2s"' in client.get("/plan").text

    show(house.workshop)

    assert "hx-trigger" not in client.get("/plan").text
    assert "Working it out" not in words(client.get("/plan"))


def titles(page: str) -> list[str]:
    return re.findall(r'<details class="sitting"[^>]*><summary>([^<]+)<', page)


def test_a_long_chart_is_shown_part_by_part(
    client: FlaskClient, house: House, work: NoWork, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened(house)
    show(house.workshop)
    whole = client.get("/plan").text
    monkeypatch.setattr(plan_chart, "MOST_BARS", 1)
    show(house.workshop)

    found, path, pages = list[str](), "/plan", 0
    while path:
        page = client.get(path).text
        found += titles(page)
        pages += 1
        after = re.search(r'href="(/plan\?from=\d+)#chart">Show the rest, from \w+ on: \w+', page)
        path = after[1] if after else ""

    assert pages == len(titles(whole)) > 1
    assert found == titles(whole)
    assert 'href="/plan#chart">Show from the beginning' in page
    assert "from the beginning" not in whole


@pytest.mark.parametrize("asked", ["999", "-1", "x", "٣", "9" * 5000])
def test_a_part_of_the_chart_that_there_is_not_is_no_error(
    client: FlaskClient, house: House, work: NoWork, asked: str
) -> None:
    opened(house)
    show(house.workshop)

    assert client.get("/plan", query_string={"from": asked}).status_code == 200


def test_a_run_that_the_shown_plan_does_not_know_yet_is_being_reckoned(
    client: FlaskClient, house: House, work: NoWork
) -> None:
    opened(house)
    show(house.workshop)
    opened(house)

    said = words(client.get("/plan/runs/r2"))

    assert "All done." not in said
    assert "Working it out …" in said


def test_reloads_of_the_same_plan_draw_it_once_and_what_is_another_is_drawn_anew(
    client: FlaskClient, house: House, work: NoWork, clock: HandClock, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened(house)
    show(house.workshop)
    drawn = Counted(plan_chart.Drawn)
    monkeypatch.setattr(plan_chart, "Drawn", drawn)
    first = client.get("/plan").text
    once = drawn.times

    assert [client.get("/plan").text for _ in range(12)] == [first] * 12
    assert drawn.times == once > 0

    clock.forward(minutes=1)
    client.get("/plan")
    assert drawn.times > once
    record_events(
        house.workshop, [new_event(house.workshop, "note written", {"text": "!"}, run="r1", person="ann", device="s")]
    )
    assert "updating with the latest entries" in words(client.get("/plan"))
    client.set_cookie("person", "ann")
    assert drawn.times > 2 * once
    client.get("/plan")
    assert drawn.times > 3 * once
