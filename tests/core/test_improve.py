"""Making a plan better: never worse than the one at hand, never below its bound, and everything told."""

from dataclasses import replace

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import Lag, Problem
from runboard.plan.schedule.problem.worth import worth
from runboard.plan.schedule.rule.greedy import greedy_plan
from runboard.plan.schedule.search.best import Improved
from runboard.plan.schedule.search.improve import improve
from tests.core.instances import the_trial


def few(trays: int = 3) -> Problem:
    return the_trial(trays, 2)


def test_a_short_run_is_proved_the_best() -> None:
    problem = few()
    told: list[tuple[int, int, Improved]] = []

    found = improve(problem, greedy_plan(problem), 30, lambda *said: told.append(said))

    assert broken(problem, found.plan) == ()
    assert found.is_proved
    assert (found.gap, found.bound.tick) == (0, found.plan.finish(problem))
    assert told[-1][2] == found
    assert all(done <= total for done, total, _ in told)


def test_what_is_told_only_gets_better() -> None:
    problem = the_trial(12)
    told: list[Improved] = []

    improve(problem, greedy_plan(problem), 2, lambda _done, _total, latest: told.append(latest))

    values = [worth(problem, one.plan) for one in told]
    bounds = [one.bound.tick for one in told]
    assert values == sorted(values, reverse=True)
    assert bounds == sorted(bounds)
    assert bounds[-1] <= min(one.plan.finish(problem) for one in told)


def test_a_shorter_wait_never_makes_the_best_finish_later() -> None:
    problem = few()
    sooner = replace(problem, blocks=tuple(replace(one, lags=tuple(map(_halved, one.lags))) for one in problem.blocks))

    before, after = (improve(one, greedy_plan(one), 30, lambda *_: None) for one in (problem, sooner))

    assert before.is_proved
    assert after.is_proved
    assert after.bound.tick <= before.bound.tick


def _halved(lag: Lag) -> Lag:
    return replace(lag, least=lag.least // 2)


def test_nothing_left_to_do_is_done_at_once() -> None:
    problem = replace(few(), blocks=(), orders=())

    found = improve(problem, greedy_plan(problem), 5, lambda *_: None)

    assert (found.plan.placed, found.gap, found.is_proved) == ((), 0, True)
