"""One person and several machines: figures of the handbooks, by formula and as the planner's proved optimum.

Tompkins et al., *Facilities Planning*, 4th edition, solution 2.41: loading 5, looking over 1, machine 20 min; $12 and $30 an
hour (https://www.coursepaper.com/solution-manual/978-0470444047-chapter-2-part-2/). Notes on man-machine charts after
Niebel: loading 1.0, walking 0.1, machine 2.0 min (https://pl.scribd.com/document/56816649/Man-Mach).
"""

from dataclasses import replace
from datetime import timedelta

import pytest

from runboard.plan.pace import PersonMachine
from runboard.plan.schedule.told.pacing import machines_served
from runboard.review.pace import cheapest, cycle, ideal_machines, machine_idle, person_idle, unit_cost
from tests.lines import person_and_machines
from tests.outside.proving import optimum
from tests.outside.said import calculated, published


def minutes(concurrent: float, independent: float, machine: float) -> PersonMachine[timedelta]:
    return PersonMachine(*(timedelta(minutes=one) for one in (concurrent, independent, machine)))


TOMPKINS = minutes(5, 1, 20)
NIEBEL = minutes(1.0, 0.1, 2.0)


SOLUTION_2_41 = (
    "Tompkins et al., Facilities Planning, 4th edition, solution 2.41: "
    "https://www.coursepaper.com/solution-manual/978-0470444047-chapter-2-part-2/"
)
MAN_MACHINE = "notes on man-machine charts after Niebel: https://pl.scribd.com/document/56816649/Man-Mach"


@published(SOLUTION_2_41, {"cost of five": 16.20, "cheapest": 4, "cycle of five": 30}, within=1e-9)
def test_what_a_piece_costs_is_as_printed(figure: str) -> float:
    return {
        "cost of five": unit_cost(TOMPKINS, 5, 12, 30),
        "cheapest": cheapest(TOMPKINS, 12, 30),
        "cycle of five": cycle(TOMPKINS, 5) / timedelta(minutes=1),
    }[figure]


@published(MAN_MACHINE, {"n": 2.7}, within=0.05)
def test_the_ideal_number_of_machines_is_as_printed(_: str) -> float:
    return ideal_machines(NIEBEL)


@calculated(f"inputs of {SOLUTION_2_41}", {"ideal": 4.17, "whole": 4}, within=0.005)
def test_the_ideal_number_of_machines_calculated_here(figure: str) -> float:
    return {"ideal": ideal_machines(TOMPKINS), "whole": TOMPKINS.whole}[figure]


@calculated(f"inputs of {SOLUTION_2_41}", {1: 17.50, 2: 15.00, 3: 14.17, 4: 13.75, 6: 19.20, 7: 22.20}, within=0.005)
def test_the_rest_of_the_costs_calculated_here(machines: int) -> float:
    return unit_cost(TOMPKINS, machines, 12, 30)


@calculated(f"inputs of {MAN_MACHINE}", {1: 1.500, 2: 1.250, 3: 1.2833}, within=0.00005)
def test_the_costs_of_the_notes_calculated_here(machines: int) -> float:
    assert (NIEBEL.whole, cheapest(NIEBEL, 10, 20)) == (2, 2)
    return unit_cost(NIEBEL, machines, 10, 20)


def test_synchronous_servicing_has_nobody_walk() -> None:
    # Worker and machine relationships, unit 5: n = (l + m) / l, and the cost (l + m)(K1 + n K2) / n while nobody waits
    # (https://www.scribd.com/document/607169370/Unit-5-Worker-Machine-Relationships).
    without, walking = minutes(2, 0, 6), minutes(2, 1, 6)

    assert ideal_machines(without) == 8 / 2
    assert walking.whole == 2
    assert unit_cost(walking, 2, 12, 18) == pytest.approx((2 + 6) / 60 * (12 + 2 * 18) / 2)


def test_a_machine_that_needs_somebody_all_the_time_has_one_person() -> None:
    assert ideal_machines(minutes(5, 0, 0)) == 1


# Through the planner: (concurrent, independent, machine), a whole number of ticks.
CHARTS = {
    "neither waits at three": (2, 1, 7),
    "synchronous, at four": (2, 0, 6),
}


@pytest.mark.parametrize("machines", range(1, 6))
@pytest.mark.parametrize("name", CHARTS)
def test_the_best_plan_gives_a_round_every_cycle(name: str, machines: int) -> None:
    chart: PersonMachine[float] = PersonMachine(*CHARTS[name])

    assert a_round_more(CHARTS[name], machines, 2) == cycle(chart, machines)


@pytest.mark.parametrize(("machines", "rounds"), [(1, 2), (4, 2), (5, 5)])
def test_the_best_plan_of_the_printed_chart_gives_a_round_every_cycle(machines: int, rounds: int) -> None:
    # With five, whose person is never idle, the first rounds still run on what the machines had to spare.
    assert a_round_more((5, 1, 20), machines, rounds) == cycle(TOMPKINS, machines) / timedelta(minutes=1)


def a_round_more(chart: tuple[int, int, int], machines: int, rounds: int) -> int:
    """By how much the proved optimum is later with one round more."""
    some, more = (optimum(person_and_machines(*chart, machines, many)) for many in (rounds, rounds + 1))
    return more - some


@pytest.mark.parametrize("name", CHARTS)
def test_at_the_whole_ideal_neither_waits_and_beside_it_one_does(name: str) -> None:
    chart: PersonMachine[float] = PersonMachine(*CHARTS[name])
    ideal = chart.whole

    assert ideal_machines(chart) == ideal
    assert (person_idle(chart, ideal), machine_idle(chart, ideal)) == (0, 0)
    assert (person_idle(chart, ideal - 1) > 0, machine_idle(chart, ideal - 1)) == (True, 0)
    assert (person_idle(chart, ideal + 1), machine_idle(chart, ideal + 1) > 0) == (0, True)


def test_of_a_problem_each_machine_is_charted_by_hands_alone() -> None:
    problem = person_and_machines(5, 1, 20, machines=2, rounds=3)
    begun = replace(problem.blocks[0], begun=True)

    found = machines_served(replace(problem, blocks=(begun, *problem.blocks[1:])))

    assert list(found) == [0, 1], "what is looked over beside them has no machine"
    assert found[1].concurrent == 5
    assert found[1].machine == 20
    assert found[1].whole == 5
