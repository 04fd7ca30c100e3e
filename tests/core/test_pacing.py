"""How often a piece is needed and how often a station, or people, can give one; machines by hands alone; trays in work."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, given, settings

from runboard.plan.schedule.problem.hours import open_ticks
from runboard.plan.schedule.problem.nouns import OrderDue, Plan, Problem, Worker
from runboard.plan.schedule.rule.greedy import greedy_plan
from runboard.plan.schedule.rule.rule import NoPlace
from runboard.plan.schedule.told.pacing import RunPace, machines_served, run_paces, trays_in_work
from runboard.review.pace import average_in_work, ideal_machines
from tests.core.instances import problems, the_trial

MINUTE = 2  # ticks
PIECES = 45


@pytest.fixture(scope="module")
def trial() -> Problem:
    return the_trial(9)


def pace(problem: Problem, *orders: OrderDue) -> RunPace:
    problem = replace(problem, orders=orders or problem.orders)
    (found,) = run_paces(problem, greedy_plan(problem, 4))
    return found


def due(problem: Problem, pieces: int, tick: int) -> OrderDue:
    return OrderDue(problem.blocks[0].run, "1", pieces, pieces, tick)


def names(problem: Problem, found: RunPace) -> list[str]:
    return [problem.stations[one.stations[0]].key for one in found.by_station]


def test_a_piece_is_needed_every_takt_of_the_hours_there_are(trial: Problem) -> None:
    week = 7 * 24 * 60 * MINUTE

    found = pace(trial, due(trial, 30, week))

    assert found.by_station[0].takt == Fraction(open_ticks(trial, week), 30)
    assert (found.wanted, found.until, found.is_due) == (30, week, True)


def test_the_order_line_that_asks_most_sets_the_takt(trial: Problem) -> None:
    day, run = 24 * 60 * MINUTE, trial.blocks[0].run
    soon, late = OrderDue(run, "1", 20, 20, 2 * day), OrderDue(run, "2", 25, PIECES, 30 * day)

    assert pace(trial, soon, late).until == 2 * day
    assert pace(trial, replace(soon, by_then=1), replace(late, due=3 * day)).until == 3 * day
    assert pace(trial, replace(soon, by_then=0), late).until == 30 * day, "those of the first are there already"


def test_the_slowest_station_is_the_one_with_most_work_on_a_piece(trial: Problem) -> None:
    found = pace(trial)

    assert names(trial, found)[0] == "laser"
    assert found.by_station[0].each == 5 * MINUTE
    assert found.by_station[1].each == Fraction(24, 5) * MINUTE, "the sander's 24 min a tray of five"
    assert not found.is_due


def test_quiet_hours_make_a_piece_needed_more_often_of_a_station(trial: Problem) -> None:
    sander = next(at for at, one in enumerate(trial.stations) if one.key == "sander")
    quiet = replace(trial.stations[sander], runs=tuple((at, at + 20 * MINUTE) for at in range(0, 40_000, 2880)))
    stations = tuple(quiet if at == sander else one for at, one in enumerate(trial.stations))
    order = due(trial, PIECES, 20_000)

    (found,) = run_paces(replace(trial, stations=stations, orders=(order,)), greedy_plan(trial, 4))

    assert (names(trial, found)[0], found.by_station[0].is_too_slow) == ("sander", True)
    assert not pace(trial, order).by_station[0].is_too_slow


def test_one_person_is_slower_than_any_station_and_four_are_not(trial: Problem) -> None:
    alone = pace(trial)
    ann = trial.people[0]
    four = tuple(Worker(f"person {at}", f"Person {at}", ann.windows, ann.room) for at in range(4))
    order = due(trial, PIECES, 20_000)

    (many,) = run_paces(replace(trial, people=four, orders=(order,)), greedy_plan(trial, 4))

    assert alone.is_held_by_people
    assert alone.people.each > 12 * MINUTE, "12 min of hands, and staying at the machines"
    assert "laser" in {trial.stations[at].key for at in alone.people.stations}
    assert many.people.takt == 4 * Fraction(open_ticks(trial, 20_000), PIECES)
    assert not many.is_held_by_people


def test_what_another_run_takes_is_not_there_for_this_one(trial: Problem) -> None:
    others = tuple(
        replace(one, run="other") if one.trays[0] in {"4", "5", "6", "7", "8", "9"} else one for one in trial.blocks
    )
    shared = replace(trial, blocks=others, orders=(due(trial, 15, 20_000),))

    mine, theirs = run_paces(shared, greedy_plan(trial, 4))

    laser = next(one for one in mine.by_station if trial.stations[one.stations[0]].key == "laser")
    assert laser.takt == Fraction(open_ticks(trial, 20_000) - 6 * 25 * MINUTE, 15), "six trays at 25 min"
    assert (theirs.run, theirs.is_due) == ("other", False)


def test_what_was_due_already_leaves_no_time_at_all(trial: Problem) -> None:
    found = pace(trial, due(trial, PIECES, -10))

    assert found.by_station[0].takt == found.people.takt == 0
    assert found.by_station[0].is_too_slow


def test_late_by_waits_though_no_pace_is_too_slow(trial: Problem) -> None:
    found = pace(trial, due(trial, 1, 120 * MINUTE))

    assert found.is_late_all_the_same, "one piece in two hours is no pace; but oil dries for twelve"
    assert not pace(trial, due(trial, PIECES, 100_000)).is_late_all_the_same
    assert not pace(trial).is_late_all_the_same


def test_a_run_whose_last_step_is_not_planned_has_no_pace(trial: Problem) -> None:
    problem = replace(trial, blocks=tuple(replace(one, last=False) for one in trial.blocks))

    assert run_paces(problem, greedy_plan(trial, 4)) == []
    assert run_paces(replace(trial, blocks=()), Plan(())) == []


def test_machines_are_charted_by_loading_and_unloading(trial: Problem) -> None:
    found = {trial.stations[at].key: one for at, one in machines_served(trial).items()}

    assert set(found) == {"cnc", "laser"}
    assert found["laser"].concurrent == 3 * MINUTE
    assert found["laser"].machine == 22 * MINUTE
    assert ideal_machines(found["laser"]) == pytest.approx(25 / 3)
    assert (found["laser"].whole, found["cnc"].whole) == (8, 7)


def test_a_tray_that_is_begun_is_in_work_from_now_on(trial: Problem) -> None:
    plan = greedy_plan(trial, 4)
    run = trial.blocks[0].run

    fresh = trays_in_work(trial, plan)
    begun = trays_in_work(trial, plan, {(run, str(tray)) for tray in range(1, 10)})

    assert fresh is not None
    assert begun is not None
    assert (fresh.trays, begun.trays, fresh.hours) == (9, 9, begun.hours)
    assert begun.average > fresh.average


@given(problem=problems())
@settings(max_examples=60, suppress_health_check=list(HealthCheck))
def test_any_plan_keeps_littles_law(problem: Problem) -> None:
    try:
        plan = greedy_plan(problem, 4)
    except NoPlace:
        return

    found = trays_in_work(problem, plan)

    if found is not None:
        assert found.average == average_in_work(found.rate, found.time_through)
        assert 0 <= found.average <= found.trays
    for one in run_paces(problem, plan):
        assert one.by_station
        assert all(station.each > 0 and station.takt >= 0 for station in one.by_station)
