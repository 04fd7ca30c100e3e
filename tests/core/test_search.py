"""What the kept child does on a job: a better plan, any plan where there is none, and an end when it is asked to stop."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.worth import worth
from runboard.plan.schedule.rule.greedy import greedy_plan
from runboard.plan.search import Found, search
from tests.core.instances import the_trial
from tests.core.test_cold import sanded_and_waiting


class Never:
    """Nobody stops it."""

    @contextmanager
    def calls(self, ask: Callable[[], object]) -> Iterator[None]:
        yield


class AtOnce:
    """It is to stop before it begins."""

    @contextmanager
    def calls(self, ask: Callable[[], object]) -> Iterator[None]:
        ask()
        yield


def heard() -> tuple[list[Found], Callable[..., None]]:
    found: list[Found] = []

    def told(done: int, total: int, latest: Any = None) -> None:
        if latest is not None:
            found.append(latest)

    return found, told


def test_a_plan_at_hand_is_made_better_and_never_worse() -> None:
    problem = the_trial(1)
    plan = greedy_plan(problem, 1)
    latest, told = heard()

    found = search(problem, plan, 0.5, (), (), told, Never())

    assert found.plan is not None and found.bound is not None
    assert broken(problem, found.plan) == ()
    assert worth(problem, found.plan) <= worth(problem, plan)
    assert found.bound.tick <= found.plan.finish(problem)
    assert latest


def test_without_a_plan_the_first_that_is_found_is_told_of_before_it_is_made_better() -> None:
    problem = sanded_and_waiting()
    latest, told = heard()

    found = search(problem, None, 20.0, (), (), told, Never())

    assert found.plan is not None and latest[0].plan is not None
    assert (latest[0].bound, broken(problem, latest[0].plan)) == (None, ())
    assert worth(problem, found.plan) <= worth(problem, latest[0].plan)


def test_where_nothing_fits_it_is_proved_and_said_what_clashes() -> None:
    problem = sanded_and_waiting(oil_within=50, burn_within=50)

    found = search(problem, None, 20.0, (), (), heard()[1], Never())

    assert found == Found(None, None, True, (1, 2))


def test_stopped_before_it_begins_it_answers_with_what_it_was_given() -> None:
    problem = the_trial(9)
    plan = greedy_plan(problem, 1)

    found = search(problem, plan, 60.0, (), (), heard()[1], AtOnce())
    without = search(problem, None, 60.0, (), (), heard()[1], AtOnce())

    assert found.plan is not None
    assert worth(problem, found.plan) <= worth(problem, plan)
    assert (without.plan, without.is_impossible) == (None, False)
