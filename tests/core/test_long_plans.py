"""What a plan of thousands of blocks may cost, counted: nothing is looked at again for each block."""

from dataclasses import replace
from typing import Any

import pytest

from runboard.plan.schedule.problem import hours, people, worth
from runboard.plan.schedule.problem.worth import Worth, there_at
from runboard.plan.schedule.rule.greedy import greedy_plan
from runboard.plan.schedule.told.holding import chain
from tests.core.instances import the_trial


class Counted:
    """A function that counts how often it is asked."""

    def __init__(self, function: Any) -> None:
        self.function, self.times = function, 0

    def __call__(self, *given: Any, **named: Any) -> Any:
        self.times += 1
        return self.function(*given, **named)


def test_the_longest_chain_looks_at_each_block_s_hands_once(monkeypatch: pytest.MonkeyPatch) -> None:
    problem = the_trial(9)
    plan = greedy_plan(problem)
    counted = Counted(people._hands)
    monkeypatch.setattr(people, "_hands", counted)

    links = chain(problem, plan)

    assert len(links) > 10
    assert counted.times == len(problem.blocks)


def test_when_blocks_may_start_is_asked_once_for_all_that_are_alike(monkeypatch: pytest.MonkeyPatch) -> None:
    problem = the_trial(18)
    counted = Counted(hours.starts_of)
    monkeypatch.setattr(hours, "starts_of", counted)

    chains = hours.Chains(problem)

    assert chains.starts == [counted.function(problem, block) for block in problem.blocks]
    assert counted.times < len(problem.blocks) / 3


def test_the_ends_of_a_run_are_sorted_once_for_all_its_order_lines(monkeypatch: pytest.MonkeyPatch) -> None:
    problem = the_trial(9)
    lines = tuple(replace(problem.orders[0], line=str(pieces), by_then=pieces, due=1) for pieces in range(1, 40))
    problem = replace(problem, orders=lines)
    ends = [at * 7 % 100 for at in range(len(problem.blocks))]
    expected = [there_at(problem, ends, order) for order in lines]
    counted = Counted(sorted)
    monkeypatch.setattr(worth, "sorted", counted, raising=False)

    late = Worth(problem).margins(ends)

    assert late == [(max(ends) if there is None else there) - 1 for there in expected]
    assert counted.times == 1
