"""Little's law, L = λW (Little 1961, *Operations Research* 9, 383-387): worked examples, and exactly on plans."""

from fractions import Fraction

import pytest

from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.rule.greedy import greedy_plan
from runboard.plan.schedule.told.pacing import trays_in_work
from runboard.review.pace import average_in_work
from tests.core.instances import the_trial
from tests.lines import line
from tests.outside.said import published
from tests.outside.test_line_balance import AFTER, SECONDS, STATIONS, problem


@published(
    "https://mathcelebrity.com/search.php?q=WIP%3D3000+and+CT%3D5 (600 a unit of time), ...%2CTH%3D6 (500 each); "
    "mfgcalcs.com (130 a day, four days each)",
    {(600, 5): 3000, (6, 500): 3000, (130, 4): 520},
)
def test_what_is_in_work_is_the_rate_times_the_time_through(rate: float, time_through: float) -> float:
    return average_in_work(rate, time_through)


@pytest.mark.parametrize("people", [1, 2])
def test_a_plan_of_a_run_keeps_littles_law_exactly(people: int) -> None:
    a_run = the_trial(9, people)
    plan = greedy_plan(a_run, 4)

    found = trays_in_work(a_run, plan)

    assert found is not None
    assert found.average == average_in_work(found.rate, found.time_through)
    assert found.average == counted(a_run, plan)
    assert 0 < found.average <= 9


def counted(a_run: Problem, plan: Plan) -> Fraction:
    """Trays in work, counted tick by tick while somebody is there."""
    spans: dict[str, list[int]] = {}
    for placed in plan.placed:
        for tray in a_run.blocks[placed.block].trays:
            spans.setdefault(tray, []).extend((placed.start, plan.end(a_run, placed.block)))
    windows = [window for person in a_run.people for window in person.windows]
    there = [tick for tick in range(plan.finish(a_run)) if any(opens <= tick < closes for opens, closes in windows)]
    return Fraction(sum(min(one) <= tick < max(one) for tick in there for one in spans.values()), len(there))


def test_nobody_is_there_so_there_is_no_average() -> None:
    empty_shop = problem(SECONDS, 2)

    assert trays_in_work(empty_shop, greedy_plan(empty_shop, 4)) is None
    assert trays_in_work(line({}, AFTER, STATIONS, 0), Plan(())) is None
