"""Fewer walks: a plan that keeps the rules, is no later, and sends people from room to room less often."""

from dataclasses import replace

import pytest
from hypothesis import given, settings

from runboard.plan.answer import is_worth_telling
from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import Block, Placed, Plan, PlannedStation, Problem, Stretch, Worker
from runboard.plan.schedule.problem.people import walks_in
from runboard.plan.schedule.problem.worth import lateness_of, worth
from runboard.plan.schedule.rule.greedy import RULES, Features, greedy_plan, ranked
from runboard.plan.schedule.rule.rule import Knobs, NoPlace, Rule
from runboard.plan.schedule.search.best import Improved
from runboard.plan.schedule.search.improve import improve
from runboard.plan.schedule.search.model import Model
from runboard.plan.schedule.search.solving import Solved, SolveLimits
from runboard.plan.schedule.search.walks import WalksModel
from tests.core.instances import MONDAY, problems, the_trial
from tests.examples import examples

HANDS = (Stretch("hand", 0, 10, "hands-on"),)
FAR_APART = ((0, 4), (4, 0))


def improved(problem: Problem, plan: Plan, seconds: float = 2) -> Improved:
    return improve(problem, plan, seconds, lambda *_: None)


@settings(max_examples=examples(8))
@given(problems())
def test_an_improved_plan_keeps_the_rules_and_a_walk_saved_is_worth_a_minute_at_most(problem: Problem) -> None:
    try:
        plan = greedy_plan(problem, 24)
    except NoPlace:
        return

    found = improved(problem, plan, 0.3)

    assert broken(problem, found.plan) == ()
    assert worth(problem, found.plan) <= worth(problem, plan)
    assert lateness_of(problem, found.plan) <= lateness_of(problem, plan)


def test_nine_trays_need_few_walks() -> None:
    problem = the_trial(9)
    rule = Rule(problem)
    rule.finish(ranked(Features(problem), RULES["nearest the end"]), Knobs())
    plan = rule.plan()

    found = improved(problem, plan, 8)

    assert broken(problem, found.plan) == ()
    assert found.plan.finish(problem) <= plan.finish(problem)
    assert 2 * walks_in(problem, found.plan) <= walks_in(problem, plan)


def test_without_time_the_plan_stays() -> None:
    problem = the_trial(3)
    plan = greedy_plan(problem)

    assert worth(problem, improved(problem, plan, 0).plan) == worth(problem, plan)


def test_a_calmer_plan_has_clearly_fewer_walks_and_is_done_later() -> None:
    problem = the_trial(12)

    found = improved(problem, greedy_plan(problem), 6)

    assert found.calmer is not None
    assert broken(problem, found.calmer) == ()
    assert walks_in(problem, found.calmer) <= walks_in(problem, found.plan) - 2
    assert worth(problem, found.plan) < worth(problem, found.calmer)


def test_a_long_plan_is_changed_a_part_at_a_time_as_the_model_allows_it(monkeypatch: pytest.MonkeyPatch) -> None:
    problem = the_trial(18, 2)
    asked: list[tuple[Model, SolveLimits]] = []

    def solve(model: Model, limits: SolveLimits, *_: object) -> Solved:
        asked.append((model, limits))
        return Solved(None, 0, False, limits.seconds)

    monkeypatch.setattr(Model, "solve", solve)
    found = improved(problem, greedy_plan(problem), 5)

    around = [model for model, limits in asked if limits.around]
    assert around
    assert all(model.wish.before > found.plan.finish(problem) for model in around)
    assert any(isinstance(model, WalksModel) for model in around)


def two_rooms() -> Problem:
    """Two pieces of work in each of two rooms, in any order."""
    blocks = tuple(
        Block(at, "r", f"load {at}", f"step {at}", f"operation {at}", (str(at),), 1, at % 2, HANDS, (0,))
        for at in range(4)
    )
    stations = (PlannedStation("bench", "Bench", 0), PlannedStation("packing", "Packing", 1))
    return Problem(MONDAY, stations, (Worker("ann", "Ann", ((0, 1000),)),), (), ("shop", "house"), FAR_APART, blocks)


def begun_at(*ticks: int) -> Plan:
    return Plan(tuple(Placed(at, tick, hands=0) for at, tick in enumerate(ticks)))


def test_fewer_walks_alone_are_told_of_only_as_the_last_word_of_a_search() -> None:
    problem = two_rooms()
    to_and_fro, once = begun_at(0, 20, 40, 60), begun_at(0, 40, 20, 60)

    assert broken(problem, to_and_fro) == broken(problem, once) == ()
    assert (walks_in(problem, to_and_fro), walks_in(problem, once)) == (3, 1)
    assert is_worth_telling(problem, once, to_and_fro, is_last=True)
    assert not is_worth_telling(problem, once, to_and_fro)
    assert not is_worth_telling(problem, to_and_fro, once, is_last=True)
    assert not is_worth_telling(problem, begun_at(0, 40, 20, 61), to_and_fro, is_last=True)


def test_what_waits_without_need_is_begun_at_once() -> None:
    problem = two_rooms()

    found = improved(problem, begun_at(5, 20, 40, 60)).plan

    assert walks_in(problem, found) == 1
    assert found.finish(problem) <= 70
    assert min(one.start for one in found.placed) == 0


def test_nobody_stands_idle_beside_work_that_is_ready_though_all_is_done_no_sooner() -> None:
    """Ann's own work takes longest; what Ben may do as well waits for nothing."""
    problem = two_rooms()
    alone = replace(problem.blocks[0], stretches=(Stretch("hand", 0, 100, "hands-on"),))
    other = replace(problem.blocks[2], index=1, load="load 1", station=1, people=(0, 1))
    people = (replace(problem.people[0], room=0), Worker("ben", "Ben", ((0, 1000),), 0))
    stations = (problem.stations[0], PlannedStation("second", "Second bench", 0))
    problem = replace(problem, people=people, stations=stations, blocks=(alone, other))
    idle = Plan((Placed(0, 0, hands=0), Placed(1, 60, hands=1)))
    assert broken(problem, idle) == ()

    found = improved(problem, idle)

    assert found.plan.finish(problem) == 100
    assert found.plan.placed[1].start == 0
