"""How the plan may turn out is said from the first page on: from few goes until the rule is compiled, then from many."""

import re
from dataclasses import replace
from datetime import UTC, datetime
from types import SimpleNamespace
from typing import cast

import pytest
from flask.testing import FlaskClient

from runboard.floor.planning.figures import publish
from runboard.floor.planning.plans import Figured, Planned
from runboard.house import House
from runboard.plan.schedule.rule import rule
from runboard.plan.schedule.told.forecast import GOES, Forecast
from runboard.words import plan_record
from runboard.words.facts import zone_of
from runboard.words.plan import Names
from tests.core.instances import the_trial
from tests.figured import show
from tests.web.test_plan_schedule import NoWork, opened, plan_page, planned, work
from tests.web.test_shop_pages import words

__all__ = ["work"]


def test_before_the_rule_is_compiled_the_page_says_from_how_few_goes(
    client: FlaskClient, house: House, work: NoWork
) -> None:
    opened(house)

    said = plan_page(client, house)

    assert "almost certainly " in said.lower()
    found = re.search(r"From only (\d+) simulated runs", said)
    assert found is not None
    assert 20 <= int(found[1]) < GOES


def test_once_it_is_compiled_the_same_plan_is_reckoned_from_all_of_them(
    client: FlaskClient, house: House, work: NoWork, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened(house)
    planned(house)
    few = words(client.get("/plan"))

    assert rule.warm()
    show(house.workshop, house.workshop.planned)

    many = words(client.get("/plan"))
    assert "From only" in few
    assert "From only" not in many
    assert "almost certainly " in many.lower()


def test_the_finish_that_is_said_lies_in_the_range_that_is_said(
    client: FlaskClient, house: House, work: NoWork
) -> None:
    """The rule that replays a plan by chance may never end where the plan does."""
    opened(house)
    planned(house)
    figured = cast(Figured, house.workshop.figured)
    finish, outlook = figured.figures.whole.finish, cast(Forecast, figured.figures.runs["r1"].outlook)
    later = replace(outlook, finish={share: finish + 120 + share for share in outlook.finish})
    share = replace(figured.figures.runs["r1"], outlook=later)
    figures = replace(figured.figures, whole=replace(figured.figures.whole, outlook=later), runs={"r1": share})
    publish(house.workshop, replace(figured, figures=figures))
    names = names_for_problem(house)

    for page in ("/plan", "/plan/runs/r1"):
        said = words(client.get(page))
        assert f"about {names.tick(finish + 170)}" in said
        assert f"Planned end: {names.tick(finish)}." in said
    beside_its_bound = words(client.get("/plan/search"))
    assert f"Planned end: {names.tick(finish)}." in beside_its_bound
    assert "Done" not in beside_its_bound


def test_a_plan_that_ends_in_its_range_is_said_once(client: FlaskClient, house: House, work: NoWork) -> None:
    opened(house)

    assert "Planned end:" not in plan_page(client, house)


def names_for_problem(house: House) -> Names:
    shop = house.workshop
    problem = cast(Planned, shop.planned).answer.problem
    return Names(problem, shop.ledger.state.runs, shop.book, zone_of(shop.book.time_zone), shop.clock.now())


def test_an_evening_that_ends_at_midnight_is_the_one_before_it() -> None:
    problem = the_trial(9)
    midnight = problem.tick(datetime(2026, 6, 7, tzinfo=UTC))
    told = Forecast(
        100, {50: midnight}, {("r1", "1"): 0.5, ("r2", "1"): 0.1}, ((midnight, 0.5), (midnight + 2880, 1.0))
    )

    record = plan_record._forecast(problem, "r1", told, SimpleNamespace(zone=UTC))  # type: ignore[arg-type]

    assert record == {
        "p50": "2026-06-07T00:00:00.000Z",
        "chance_by_due": {"1": 0.5},
        "chance_by_evening": {"2026-06-06": 0.5, "2026-06-07": 1.0},
    }
