"""The longer search for priorities: every plan of it keeps the rules, and the next is better."""

from itertools import islice

import pytest
from hypothesis import given, settings

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.rule.greedy import greedy_plan
from runboard.plan.schedule.rule.rule import NoPlace, Rule
from runboard.plan.schedule.rule.wandering import Wandering
from runboard.plan.schedule.search.improve import improve
from tests.core.instances import problems, the_trial
from tests.examples import examples


def plans_of(problem: Problem, answers: int, seed: int = 1) -> list[Plan]:
    return [plan for _, plan in islice(Wandering(problem, seed).answers(), answers) if plan is not None]


@settings(max_examples=examples(15))
@given(problems())
def test_every_plan_keeps_the_rules(problem: Problem) -> None:
    try:
        found = plans_of(problem, 3)
    except NoPlace:
        return

    assert all(broken(problem, plan) == () for plan in found)


def test_each_plan_is_no_later_than_the_last() -> None:
    problem = the_trial(9, 2)

    finishes = [plan.finish(problem) for plan in plans_of(problem, 12)]

    assert finishes == sorted(finishes, reverse=True)
    assert finishes[-1] <= greedy_plan(problem).finish(problem)


def test_the_same_seed_finds_the_same() -> None:
    problem = the_trial(6)

    assert plans_of(problem, 6, seed=3) == plans_of(problem, 6, seed=3)


def test_a_search_has_the_rule_compiled_before_it_begins(monkeypatch: pytest.MonkeyPatch) -> None:
    were_compiled: list[bool] = []

    class Watched(Rule):
        def __init__(self, problem: Problem) -> None:
            super().__init__(problem)
            were_compiled.append(self.is_compiled)

    problem = the_trial(6)
    plan = greedy_plan(problem)
    monkeypatch.setattr("runboard.plan.schedule.rule.wandering.Rule", Watched)

    improve(problem, plan, 2, lambda *_: None)

    assert were_compiled[0]


def test_a_search_ends_when_its_clock_says_so() -> None:
    problem = the_trial(9)
    seconds = iter(range(1000))

    found = improve(problem, greedy_plan(problem), 5, lambda *_: None, clock=lambda: float(next(seconds)))

    assert broken(problem, found.plan) == ()
    assert next(seconds) < 200
