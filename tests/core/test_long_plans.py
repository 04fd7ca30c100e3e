"""What a plan of thousands of blocks may cost, counted: nothing is looked at again for each block."""

from typing import Any

import pytest

from runboard.plan.schedule import attending, domains
from runboard.plan.schedule.greedy import greedy_plan
from runboard.plan.schedule.holding import chain
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
    counted = Counted(attending._hands)
    monkeypatch.setattr(attending, "_hands", counted)

    links = chain(problem, plan)

    assert len(links) > 10
    assert counted.times == len(problem.blocks)


def test_when_blocks_may_start_is_asked_once_for_all_that_are_alike(monkeypatch: pytest.MonkeyPatch) -> None:
    problem = the_trial(18)
    counted = Counted(domains.starts_of)
    monkeypatch.setattr(domains, "starts_of", counted)

    chains = domains.Chains(problem)

    assert chains.starts == [counted.function(problem, block) for block in problem.blocks]
    assert counted.times < len(problem.blocks) / 3
