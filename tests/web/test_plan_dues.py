"""Order lines with due moments on the Plan pages: what will be late is said early, and what being in time costs."""

import re
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

import pytest
from flask.testing import FlaskClient

from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.planning.planner import Planner
from runboard.house import House
from runboard.plan.next_move import moves
from runboard.plan.schedule.problem.nouns import Plan
from runboard.plan.schedule.search.bounds import Bound
from runboard.run.log.event import parse_moment, write_moment
from runboard.words.dues import late_sentences, limit_sentences
from runboard.words.facts import zone_of
from runboard.words.plan import Names
from tests import scenario
from tests.conftest import START, HandClock
from tests.figured import show
from tests.fitting import fit
from tests.web.test_shop_pages import words


@pytest.fixture(autouse=True)
def shop(house: House) -> None:
    fit(house, planner=Planner(house.workshop, None, lambda seq: None))
    record = scenario.shop()
    record["people"] = record["people"][:1]
    house.workshop.books.save(record, START)


def opened(house: House, name: str, *lines: tuple[int, str, datetime | None]) -> None:
    orders: list[dict[str, Any]] = [
        {"line": str(at), "pieces": pieces, "for": whom, **({"due": due.isoformat()} if due else {})}
        for at, (pieces, whom, due) in enumerate(lines, 1)
    ]
    pieces = sum(one["pieces"] for one in orders)
    open_run(house.workshop, Wish("rail", orders, name=name, start=pieces), "ann")


def planned(house: House) -> Names:
    found = show(house.workshop)
    shop = house.workshop
    return Names(
        found.answer.problem, shop.ledger.state.runs, shop.book, zone_of(shop.book.time_zone), shop.clock.now()
    )


def plan_of(house: House) -> Plan:
    found: Plan = house.workshop.planned.plan
    return found


def test_what_no_plan_can_have_in_time_is_said_on_the_plan_page_and_on_the_run_s(
    client: FlaskClient, house: House, clock: HandClock
) -> None:
    opened(house, "Key rails", (10, "Market", clock.now() + timedelta(hours=2)), (5, "Mo", None))
    planned(house)

    said = words(client.get("/plan")), words(client.get("/plan/runs/r1"))

    wanted = r"10 for Market will be late: due (\w{3} )?\d+:\d\d, ready (\w{3} )?\d+:\d\d in the best plan so far\. No plan has it ready before"
    assert all(re.search(wanted, page) for page in said)
    assert "for Mo will be late" not in said[0]


def test_what_is_in_time_is_not_called_late(client: FlaskClient, house: House, clock: HandClock) -> None:
    opened(house, "Key rails", (10, "Market", clock.now() + timedelta(days=20)), (5, "Mo", None))
    planned(house)

    assert "will be late" not in words(client.get("/plan"))


def test_lines_that_are_due_at_one_moment_are_late_in_one_sentence(house: House, clock: HandClock) -> None:
    due = clock.now() + timedelta(hours=2)
    opened(house, "Key rails", (5, "Market", due), (5, "Mo", due))
    names = planned(house)

    said = late_sentences(names, plan_of(house))

    assert len(said) == 1
    assert said[0].startswith("5 for Market and 5 for Mo will be late: due ")


def test_what_is_due_at_five_is_due_at_five_on_now_too_whatever_second_it_was_planned_at(
    client: FlaskClient, house: House, clock: HandClock
) -> None:
    due = clock.now() + timedelta(hours=2)
    clock.forward(seconds=17)
    opened(house, "Key rails", (5, "Market", due))
    planned(house)

    late = client.get("/state?person=ann").json["plan"]["late"]

    assert [one["due"] for one in late] == [write_moment(due)]


def test_now_is_told_when_each_run_is_done(client: FlaskClient, house: House, clock: HandClock) -> None:
    opened(house, "Key rails", (5, "Market", clock.now() + timedelta(days=20)))
    names = planned(house)

    done = parse_moment(client.get("/state?person=ann").json["plan"]["done"]["r1"])

    finish = names.problem.moment(plan_of(house).finish(names.problem))
    assert abs(done - finish) <= timedelta(seconds=30)


def test_what_is_left_out_of_the_plan_is_said_to_be_too_few(house: House, clock: HandClock) -> None:
    opened(house, "Key rails", (15, "Market", clock.now() + timedelta(days=2)))
    names = planned(house)
    few = replace(names.problem, orders=tuple(replace(one, by_then=99) for one in names.problem.orders))

    said = late_sentences(replace(names, problem=few), plan_of(house))

    assert re.fullmatch(r"15 for Market will be short: due .+, and the plan makes fewer pieces\.", said[0])


# the plan that is later on purpose


def limits(house: House, early: int, with_dues: int) -> list[str]:
    """With bounds so many ticks before the finish."""
    names, plan = planned(house), plan_of(house)
    finish = plan.finish(names.problem)
    return list(limit_sentences(names, plan, Bound(finish - early, "hours", with_dues=finish - with_dues)))


def test_a_plan_that_is_later_to_be_in_time_says_so_and_not_that_no_plan_is_done_earlier(
    house: House, clock: HandClock
) -> None:
    opened(house, "Key rails", (5, "Market", clock.now() + timedelta(days=2)), (25, "Mo", None))
    names = planned(house)
    finish = plan_of(house).finish(names.problem)
    order = replace(names.problem.orders[0], due=finish - 1)
    names = replace(names, problem=replace(names.problem, orders=(order,)))

    bound, gap = limit_sentences(names, plan_of(house), Bound(finish - 20, "hours", with_dues=finish))

    assert bound.startswith("No plan can be done before ")
    assert (
        "is the price of having 5 for Market on time. A plan that has them on time is never done earlier: that is proved."
        in gap
    )


def test_a_bound_under_dues_that_is_not_reached_is_said_beside_the_gap(house: House) -> None:
    opened(house, "Key rails", (5, "Market", None))

    said = limits(house, 20, 10)

    assert len(said) == 3
    assert re.fullmatch(r"A better plan could save at most \d+ min in the shop\.", said[1])
    assert re.fullmatch(r"With no more lateness in all, no plan can be done before .+ \d+:\d\d\.", said[2])


def test_a_finish_that_no_plan_beats_is_proved_whatever_is_due(house: House) -> None:
    opened(house, "Key rails", (5, "Market", None))

    assert limits(house, 0, 0)[1] == "No plan is done earlier: that is proved."


# what a person expects: what is due comes first


@pytest.mark.parametrize("due", [{"r1": 4, "r2": 1}, {"r1": 1, "r2": 4}], ids=["the second first", "the first first"])
def test_of_two_runs_the_one_that_is_due_comes_first(house: House, clock: HandClock, due: dict[str, int]) -> None:
    for run in ("r1", "r2"):
        opened(house, run, (15, run, clock.now() + timedelta(days=due[run])))
    names = planned(house)
    first = min(due, key=due.__getitem__)

    plan, problem = plan_of(house), names.problem
    ends = {run: max(plan.end(problem, block.index) for block in problem.blocks if block.run == run) for run in due}
    begun = min(plan.placed, key=lambda one: one.start)
    answer = house.workshop.planned.answer
    found = moves(answer.state, answer.book, "ann", answer.now)
    shown = next(one for one in found if one.id == answer.offers["ann"].first)

    assert ends[first] == min(ends.values())
    assert problem.blocks[begun.block].run == first
    assert shown.run == first
