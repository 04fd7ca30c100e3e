"""The rule counts the walks of what it has just planned as a plan's own walks are counted."""

from hypothesis import HealthCheck, given, settings

from runboard.plan.schedule.problem.nouns import Problem
from runboard.plan.schedule.problem.people import walks_in
from runboard.plan.schedule.rule.greedy import RULES, Features, ranked
from runboard.plan.schedule.rule.rule import Rule, warm
from tests.core.instances import problems


@settings(max_examples=60, suppress_health_check=list(HealthCheck))
@given(problems())
def test_walks_of_a_go_are_those_of_its_plan(problem: Problem) -> None:
    warm()
    rule = Rule(problem)

    for key in RULES.values():
        if rule.finish(ranked(Features(problem), key)) >= 0:
            assert rule.walks() == walks_in(problem, rule.plan())
