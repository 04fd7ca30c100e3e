"""What plans are compared by: late order lines, then people's time with their walks, then the finish."""

from dataclasses import replace

import pytest

from runboard.plan.schedule.problem.nouns import Block, OrderDue, Placed, Plan, PlannedStation, Problem, Stretch, Worker
from runboard.plan.schedule.problem.people import walks_in
from runboard.plan.schedule.problem.worth import WALK, lateness_of, worth
from tests.core.instances import MONDAY

OPEN = ((0, 100), (1000, 1100))


def shop(*orders: OrderDue) -> Problem:
    """Two pieces of work of 10 in each of two rooms, five pieces each, in any order."""
    hands = (Stretch("hand", 0, 10, "hands-on"),)
    blocks = tuple(
        Block(at, f"r{at}", f"load {at}", "step", "work", (str(at),), 5, at % 2, hands, (0,), last=True)
        for at in range(4)
    )
    stations = (PlannedStation("bench", "Bench", 0), PlannedStation("packing", "Packing", 1))
    people = (Worker("ann", "Ann", OPEN),)
    return Problem(MONDAY, stations, people, (), ("shop", "house"), ((0, 1), (1, 0)), blocks, orders)


def begun_at(*ticks: int) -> Plan:
    return Plan(tuple(Placed(at, tick, hands=0) for at, tick in enumerate(ticks)))


def due(run: int, tick: int) -> OrderDue:
    return OrderDue(f"r{run}", "1", 5, 5, tick)


@pytest.mark.parametrize(
    ("plan", "late"),
    [
        (begun_at(0, 20, 40, 80), 0),
        (begun_at(0, 20, 40, 85), 5),
        (begun_at(0, 20, 40, 1000), 20),
    ],
    ids=["in time", "the same evening", "the next evening: the night counts for nothing"],
)
def test_an_order_line_is_late_by_the_hours_in_which_anybody_is_there(plan: Plan, late: int) -> None:
    assert lateness_of(shop(due(3, 90)), plan) == late


def test_a_line_that_is_late_by_no_hours_at_all_is_late_all_the_same() -> None:
    problem = shop(due(3, 1000))
    unattended = replace(problem, people=(Worker("ann", "Ann", ((0, 100), (2000, 2100))),))

    assert lateness_of(unattended, begun_at(0, 20, 40, 991)) == 1


def test_where_the_book_counts_lines_one_line_very_late_is_better_than_two_a_little() -> None:
    problem = shop(due(2, 30), due(3, 30))
    one, two = begun_at(60, 80, 20, 1080), begun_at(80, 60, 40, 22)

    assert lateness_of(problem, begun_at(60, 80, 20, 1080)) > lateness_of(problem, begun_at(60, 80, 25, 36))
    by_lines = replace(problem, late_counts="lines")
    assert lateness_of(by_lines, one) < lateness_of(by_lines, begun_at(60, 80, 25, 36))
    assert two.placed[3].start == 22


def test_a_walk_counts_as_a_minute_more_than_it_takes() -> None:
    problem = shop()
    to_and_fro, once = begun_at(0, 15, 30, 45), begun_at(0, 15, 30, 49)
    gathered = begun_at(0, 20, 10, 30)

    assert (walks_in(problem, to_and_fro), walks_in(problem, gathered)) == (3, 1)
    assert worth(problem, to_and_fro) == (0, 55 + 3 * WALK, 55)
    assert worth(problem, gathered) < worth(problem, to_and_fro) < worth(problem, once)
    later_and_calm = begun_at(0, 48, 10, 58)
    assert worth(problem, later_and_calm) == (0, 68 + WALK, 68)


def test_being_late_comes_before_all_else() -> None:
    problem = shop(due(3, 20))
    in_time, soon = begun_at(12, 60, 24, 0), begun_at(0, 20, 10, 31)

    assert in_time.finish(problem) > soon.finish(problem)
    assert worth(problem, in_time) < worth(problem, soon)
