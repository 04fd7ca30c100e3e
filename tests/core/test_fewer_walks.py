"""Fewer walks: a plan that keeps the rules, is no later, and sends people from room to room less often."""

from hypothesis import given, settings

from runboard.plan.schedule.check import broken
from runboard.plan.schedule.cpsat import Limits
from runboard.plan.schedule.fewer_walks import calm, walks_in, with_fewer_walks
from runboard.plan.schedule.greedy import NoPlace, greedy_plan
from runboard.plan.schedule.improve import improve
from runboard.plan.schedule.lateness import lateness_of
from runboard.plan.schedule.priorities import RULES, Features, ranked
from runboard.plan.schedule.problem import Plan, Problem
from runboard.plan.schedule.rule import Knobs, Rule
from tests.core.instances import problems, the_trial


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
