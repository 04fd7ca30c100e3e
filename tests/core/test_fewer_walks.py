"""Fewer walks: a plan that keeps the rules, is no later, and sends people from room to room less often."""

from hypothesis import given, settings

from runboard.plan.answer import is_worth_telling
from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import Block, Placed, Plan, Problem, Station, Stretch, Worker
from runboard.plan.schedule.problem.people import walks_in
from runboard.plan.schedule.problem.worth import lateness_of
from runboard.plan.schedule.rule.greedy import NoPlace, greedy_plan
from runboard.plan.schedule.rule.priorities import RULES, Features, ranked
from runboard.plan.schedule.rule.rule import Knobs, Rule
from runboard.plan.schedule.search.fewer_walks import calm, with_fewer_walks
from runboard.plan.schedule.search.improve import improve
from runboard.plan.schedule.search.model import Limits
from tests.core.instances import MONDAY, problems, the_trial

HANDS = (Stretch("hand", 0, 10, "hands-on"),)
FAR_APART = ((0, 4), (4, 0))


def calmer(problem: Problem, plan: Plan, work: float) -> Plan:
    """With so much of the solver's own measure for each try, however slow the computer."""
    return with_fewer_walks(problem, plan, lambda: 1000.0, lambda _: None, Limits(300, work=work))


@settings(max_examples=30, deadline=None)
@given(problems())
def test_a_plan_with_fewer_walks_keeps_the_rules_and_is_no_later(problem: Problem) -> None:
    try:
        plan = greedy_plan(problem, 24)
    except NoPlace:
        return

    found = calmer(problem, plan, 0.1)

    assert broken(problem, found) == ()
    assert lateness_of(problem, found) <= lateness_of(problem, plan)
    assert found.finish(problem) <= plan.finish(problem)
    assert walks_in(problem, found) <= walks_in(problem, plan)
    assert calm(problem, found) <= calm(problem, plan)


def test_nine_trays_need_few_walks() -> None:
    problem = the_trial(9)
    rule = Rule(problem)
    rule.finish(ranked(Features(problem), RULES["nearest the end"]), Knobs())
    plan = rule.plan()

    found = calmer(problem, plan, 0.4)

    assert broken(problem, found) == ()
    assert found.finish(problem) <= plan.finish(problem)
    assert 2 * walks_in(problem, found) <= walks_in(problem, plan)


def test_without_time_the_plan_stays() -> None:
    problem = the_trial(3)
    plan = greedy_plan(problem)

    assert with_fewer_walks(problem, plan, lambda: 0.0, lambda _: None, Limits(1)) is plan


def test_a_plan_that_is_proved_the_best_is_told_of_with_fewer_walks() -> None:
    problem = the_trial(3, 2)
    plan = greedy_plan(problem)
    told: list[Plan] = []

    found = improve(problem, plan, 30, lambda _done, _total, latest: told.append(latest.plan))

    assert found.is_proved
    assert told[-1] == found.plan
    assert calm(problem, found.plan) <= min(calm(problem, one) for one in told)


def two_rooms() -> Problem:
    """Two pieces of work in each of two rooms, in any order."""
    blocks = tuple(
        Block(at, "r", f"load {at}", f"step {at}", f"operation {at}", (str(at),), 1, at % 2, HANDS, (0,))
        for at in range(4)
    )
    stations = (Station("bench", "Bench", 0), Station("packing", "Packing", 1))
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

    found = calmer(problem, begun_at(5, 20, 40, 60), 0.1)

    assert walks_in(problem, found) == 1
    assert found.finish(problem) <= 70
    assert min(one.start for one in found.placed) == 0
