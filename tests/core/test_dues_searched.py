"""Order lines with due moments of their own: least late first, then done soonest, and what is said of both is true.

Every figure here is calculated here: all orders of the jobs are tried.
"""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import permutations

import pytest
from hypothesis import HealthCheck, given, settings

from runboard.plan.schedule.problem import worth
from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import Lag, OrderDue, Placed, Plan, Problem
from runboard.plan.schedule.problem.worth import Worth, lateness_of, soonest_ends, there_at
from runboard.plan.schedule.rule.greedy import greedy_plan
from runboard.plan.schedule.rule.rule import NoPlace
from runboard.plan.schedule.search.best import Improved
from runboard.plan.schedule.search.bounds import bound
from runboard.plan.schedule.search.improve import improve
from runboard.plan.schedule.search.model import Model
from runboard.plan.schedule.search.solving import Aim, Solved, SolveLimits
from tests.core.instances import problems
from tests.core.test_schedule_check import ANN, BEN, BENCH, SANDER, hand, shop

# (ticks at the bench, due) of each job: a long one is due first; no order has all of them in time.
JOBS = ((60, 55), (10, 58), (10, 60), (15, 65), (20, 130))


def one_bench(jobs: Sequence[tuple[int, int]]) -> Problem:
    """A run of one piece for each job, all by Ann at one bench."""
    blocks = [
        replace(hand(at, BENCH, ticks, people=(ANN,), last=True), run=f"r{at}") for at, (ticks, _) in enumerate(jobs)
    ]
    orders = tuple(OrderDue(f"r{at}", "1", 5, 5, due) for at, (_, due) in enumerate(jobs))
    return replace(shop(*blocks), orders=orders)


def tardiness(jobs: Iterable[tuple[int, int]]) -> list[int]:
    """By how much each job is late, one after the other in the given order."""
    end, found = 0, []
    for ticks, due in jobs:
        end += ticks
        found.append(max(0, end - due))
    return found


def improved(problem: Problem, plan: Plan | None = None, seconds: float = 1) -> Improved:
    return improve(problem, plan or greedy_plan(problem, 30), seconds, lambda *_: None)


def least_late(problem: Problem, before: int) -> Solved:
    return Model(problem, Aim(before, least="late")).solve(SolveLimits(120, work=2))


# one machine


def test_one_machine_s_total_tardiness_is_the_least_of_all_orders() -> None:
    problem = one_bench(JOBS)
    least = min(sum(tardiness(order)) for order in permutations(JOBS))

    found = least_late(problem, 200)

    assert found.plan is not None
    assert least == 40
    assert (lateness_of(problem, found.plan), found.bound, found.is_all) == (least, least, True)


def test_the_earliest_due_first_is_the_least_late_at_the_worst_but_not_in_sum() -> None:
    earliest_due = sorted(JOBS, key=lambda job: job[1])

    worst = {order: max(tardiness(order)) for order in permutations(JOBS)}

    assert worst[tuple(earliest_due)] == min(worst.values())  # Jackson 1955
    assert sum(tardiness(earliest_due)) > 40


def test_the_search_is_less_late_than_the_plan_at_hand_and_says_no_less_than_is_so() -> None:
    problem = one_bench(JOBS)
    late = earliest_due_first(problem)
    assert lateness_of(problem, late) == 67

    found = improved(problem, late)

    assert broken(problem, found.plan) == ()
    assert (lateness_of(problem, found.plan), found.plan.finish(problem)) == (40, 115)
    assert found.is_proved, "all orders take as long"


def earliest_due_first(problem: Problem) -> Plan:
    """All at one bench, the earliest due first."""
    start, placed = 0, []
    for at, (ticks, _) in sorted(enumerate(JOBS), key=lambda one: one[1][1]):
        placed.append(Placed(at, start, 0, ANN))
        start += ticks
    return Plan(tuple(sorted(placed, key=lambda one: one.block)))


# in time, though all of it is done later for it


def later_for_it() -> Problem:
    """What is due in 12 is 10 at the bench; what takes longest is 10 at the bench too, then 100 at the sander: done in 110 if
    it comes first, in 120 if what is due does."""
    due = replace(hand(0, BENCH, 10, people=(ANN,), last=True), run="due")
    long = (hand(1, BENCH, 10, people=(ANN,)), hand(2, SANDER, 100, people=(BEN,), lags=(Lag(1),), last=True))
    return replace(shop(due, *long), orders=(OrderDue("due", "1", 5, 5, 12),))


def soonest(problem: Problem) -> Plan:
    return Plan((Placed(0, 10, 0, ANN), Placed(1, 0, 0, ANN), Placed(2, 10, 0, BEN)))


def test_what_is_due_comes_first_though_all_is_done_later_and_that_is_not_called_the_soonest_finish() -> None:
    problem = later_for_it()
    assert broken(problem, soonest(problem)) == ()
    assert (soonest(problem).finish(problem), lateness_of(problem, soonest(problem))) == (110, 8)

    found = improved(problem, soonest(problem))

    assert (found.plan.finish(problem), lateness_of(problem, found.plan)) == (120, 0)
    assert (found.bound.tick, found.bound.with_dues) == (110, 120)
    assert not found.is_proved
    assert found.gap == 5


def test_a_plan_that_must_be_later_to_be_in_time_is_kept_by_the_search_for_a_sooner_finish() -> None:
    problem = later_for_it()

    in_time = Model(problem, Aim(120, late=0)).solve(SolveLimits(120, work=2))
    whenever = Model(problem, Aim(120)).solve(SolveLimits(120, work=2))

    assert (in_time.plan, in_time.is_all) == (None, True)
    assert whenever.plan is not None
    assert whenever.plan.finish(problem) == 110


def test_where_nothing_is_due_before_the_finish_a_proof_is_one_for_every_plan() -> None:
    problem = replace(later_for_it(), orders=(OrderDue("due", "1", 5, 5, 400),))

    found = improved(problem)

    assert (found.plan.finish(problem), found.bound.with_dues, found.is_proved) == (110, 0, True)


# pieces of a run


def a_tray_each(due: Sequence[tuple[int, int]], trays: int = 4, odd: bool = False) -> Problem:
    """Trays of five, 20 ticks each, by Ann; order lines as (pieces by then, due). ``odd``: the last is ten pieces, and so no
    tray like the others."""
    blocks = [hand(at, BENCH, 20, people=(ANN,), last=True) for at in range(trays)]
    if odd:
        blocks[-1] = replace(blocks[-1], pieces=10)
    lines = tuple(OrderDue("r", str(at), many, many, tick) for at, (many, tick) in enumerate(due))
    return replace(shop(*blocks), orders=lines)


@pytest.mark.parametrize(
    ("problem", "late"),
    [
        (a_tray_each([(5, 20), (20, 80)]), 0),
        (a_tray_each([(6, 20)]), 20),
        (a_tray_each([(10, 35), (20, 70)]), 15),
        (a_tray_each([(21, 70)]), 10),
        (a_tray_each([(10, 20)], odd=True), 0),
        (a_tray_each([(15, 30), (16, 50)], odd=True), 20),
        (a_tray_each([(0, -30)]), 0),
        (a_tray_each([(5, -30)]), 50),
    ],
    ids=["in time", "one more piece than a tray", "two lines", "more than are made", "the large tray first",
         "a large tray and two lines", "there already", "due before now"],
)  # fmt: skip
def test_an_order_line_is_there_with_the_tray_that_makes_its_pieces_enough(problem: Problem, late: int) -> None:
    found = least_late(problem, 200)

    assert found.plan is not None
    assert lateness_of(problem, found.plan) == late
    assert found.bound == late
    assert broken(problem, found.plan) == ()


def test_what_is_due_first_comes_first_where_all_are_in_time_and_all_is_done_as_soon() -> None:
    jobs = ((20, 400), (20, 300), (20, 100))

    plan = greedy_plan(one_bench(jobs), 30)

    assert [placed.start for placed in plan.placed] == [40, 20, 0]


def test_of_two_order_lines_of_a_run_the_first_due_holds_the_other_up() -> None:
    """Ten pieces by 45 and twenty by 85: the trays one after the other, though another job is as long."""
    other = replace(hand(4, BENCH, 20, people=(ANN,), last=True), run="s")
    problem = a_tray_each([(10, 45), (20, 85)])
    problem = replace(problem, blocks=(*problem.blocks, other))

    found = improved(problem)

    assert lateness_of(problem, found.plan) == 0
    assert found.plan.placed[4].start == 80
    assert found.is_proved


@settings(max_examples=25, suppress_health_check=list(HealthCheck))
@given(problems(4))
def test_no_plan_is_less_late_than_is_said_to_be_the_least(problem: Problem) -> None:
    last = [block for block in problem.blocks if block.last]
    pieces = sum(block.pieces for block in last)
    orders = (OrderDue("r", "1", 1, 1, 40), OrderDue("r", "2", pieces, pieces, 90))
    problem = replace(problem, orders=orders)
    try:
        plan = greedy_plan(problem, 12)
    except NoPlace:
        return
    model = Model(problem, Aim(plan.finish(problem) + 200, watching="anyone", least="late"))

    found = model.solve(SolveLimits(120, work=1))

    assert Worth(problem).late(soonest_ends(problem)) <= lateness_of(problem, plan)
    for order in orders:
        earliest, there = (there_at(problem, ends, order) for ends in (soonest_ends(problem), ends_of(problem, plan)))
        assert earliest is not None and there is not None
        assert earliest <= there
    assert not model.is_bound or found.bound <= worth.lateness_of(problem, plan)


def ends_of(problem: Problem, plan: Plan) -> list[int]:
    return [plan.end(problem, at) for at in range(len(problem.blocks))]


def test_no_bound_is_above_a_plan_that_is_late() -> None:
    problem = later_for_it()

    found = improved(problem, soonest(problem))

    assert bound(problem).tick <= found.bound.tick <= soonest(problem).finish(problem)
