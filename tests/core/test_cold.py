"""A plan from nothing, where the dispatch rule finds no place; or the proof that there is none, with what clashes."""

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import Block, Lag, Plan, PlannedStation, Problem, Stretch, Worker
from runboard.plan.schedule.rule.greedy import greedy_plan
from runboard.plan.schedule.rule.rule import NoPlace
from runboard.plan.schedule.search.cold import Cold, cold
from runboard.plan.schedule.search.solving import Stop
from tests.core.instances import MONDAY, problems, the_trial
from tests.examples import examples

SANDER, FINISHING, LASER = range(3)
DAY = 24 * 60 * 2
EVENINGS = tuple((day * DAY, day * DAY + 480) for day in range(20))
SECONDS = 120.0  # the solver needs one or two; a busy computer may take its time


def work(index: int, station: int, ticks: int, *lags: Lag, kind: str = "hands-on", **more: Any) -> Block:
    key = str(index)
    people = (0,) if kind == "hands-on" else ()
    stretches = (Stretch("hand" if people else "machine", 0, ticks, kind),)
    return Block(index, "r", key, key, key, (key,), 5, station, stretches, people, lags=lags, **more)


def room(*blocks: Block) -> Problem:
    """Ann's one room: a sander, a finishing table, a laser that runs alone."""
    stations = (
        PlannedStation("sander", "Sander", 0, dusty=True),
        PlannedStation("finishing", "Finishing", 0),
        PlannedStation("laser", "Laser", 0, heats=True),
    )
    return Problem(MONDAY, stations, (Worker("ann", "Ann", EVENINGS),), (), ("shop",), ((0,),), blocks)


def sanded_and_waiting(oil_within: int = 120, burn_within: int = 120) -> Problem:
    """What Ann is sanding must be oiled and its number burnt within an hour of that. Oil keeps the laser off for 75 minutes,
    dust must stay away from it, and another load waits for the laser."""
    return room(
        work(0, SANDER, 20, begun=True, by=0),
        work(1, FINISHING, 12, Lag(0, 0, oil_within), wet=150, airs=150),
        work(2, LASER, 40, Lag(0, 0, burn_within), kind="none"),
        work(3, LASER, 44, kind="none", last=True),
        work(4, SANDER, 30, last=True),
    )


def test_where_the_rule_finds_no_place_there_is_a_plan_all_the_same() -> None:
    problem = sanded_and_waiting()

    found = cold(problem, SECONDS)

    assert found.plan is not None
    assert broken(problem, found.plan) == ()
    assert found.plan.placed[2].start + 40 <= found.plan.placed[1].start <= 120


def test_that_there_is_none_is_said_only_where_it_is_proved_and_with_what_clashes() -> None:
    problem = sanded_and_waiting(oil_within=50, burn_within=50)

    assert cold(problem, SECONDS) == Cold(None, True, (1, 2))


def test_what_fits_nowhere_clashes_with_nothing_but_itself() -> None:
    problem = sanded_and_waiting(oil_within=10)

    assert cold(problem, SECONDS) == Cold(None, True, (1,))


def test_without_time_or_once_stopped_nobody_knows() -> None:
    stop = Stop()
    stop.ask()

    assert cold(the_trial(9), 0) == Cold(None)
    assert cold(the_trial(9), SECONDS, stop) == Cold(None)
    assert cold(room(), SECONDS) == Cold(Plan(()))


@pytest.mark.parametrize(("trays", "people"), [(9, 1), (9, 2), (18, 2)])
def test_instance_number_one_has_a_plan_from_nothing(trays: int, people: int) -> None:
    problem = the_trial(trays, people)

    found = cold(problem, SECONDS).plan

    assert found is not None
    assert broken(problem, found) == ()


@settings(max_examples=examples(20), suppress_health_check=list(HealthCheck))
@given(problems(8))
def test_none_is_said_to_be_only_where_the_rule_finds_none_either(problem: Problem) -> None:
    begun = {one.index for one in problem.blocks if one.begun and one.by is not None}
    problem = replace(
        problem, blocks=tuple(replace(one, by=0) if one.index in begun else one for one in problem.blocks)
    )
    found = cold(problem, 2)

    assert found.plan is None or broken(problem, found.plan) == ()
    if found.is_proved:
        try:
            plan = greedy_plan(problem, 20)
        except NoPlace:
            return
        assert broken(problem, plan) != ()
