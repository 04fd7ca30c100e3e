"""A change that only allows more, or asks less time, is never shown as later, on small shops made by chance."""

from dataclasses import replace

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import Problem
from runboard.plan.schedule.problem.worth import Worth, ends_of
from runboard.plan.schedule.told.compared import Compared, compared, kept
from runboard.plan.schedule.told.forecast import usual_spread
from tests.core.instances import problems
from tests.core.shorter import KINDS, has_it, shorter, steady
from tests.core.test_optimum_properties import capacity_more, hours_more, somebody_more

BY_CHANCE = settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))


def of_two_runs(problem: Problem) -> Problem:
    """Every other load is another run's; no run waits for another."""
    runs = ["r" if int(one.trays[0]) % 2 == 0 else "s" for one in problem.blocks]
    blocks = (
        replace(one, run=run, lags=tuple(lag for lag in one.lags if runs[lag.before] == run))
        for one, run in zip(problem.blocks, runs, strict=True)
    )
    return replace(problem, blocks=tuple(blocks))


def never_later(found: Compared) -> None:
    before, after = found.before, found.after
    assume(before is not None)
    assert before is not None
    assert after is not None
    assert not broken(before.problem, before.plan)
    assert not broken(after.problem, after.plan)
    assert after.finish <= before.finish
    late = Worth(after.problem).late  # by the hours of one of the two
    assert late(ends_of(after.problem, after.plan)) <= late(ends_of(before.problem, before.plan))
    assert after.bound <= after.finish


@BY_CHANCE
@given(st.one_of(somebody_more(), capacity_more(), hours_more()), st.booleans())
def test_what_allows_more_is_never_shown_as_later(pair: tuple[Problem, Problem], two_runs: bool) -> None:
    now, then = map(of_two_runs, pair) if two_runs else pair

    never_later(compared(now, then, "r", usual_spread, 0))


@BY_CHANCE
@given(problems(4), st.sampled_from(KINDS), st.integers(1, 12), st.booleans())
def test_less_time_is_never_shown_as_later(problem: Problem, kind: str, ticks: int, two_runs: bool) -> None:
    now = steady(of_two_runs(problem) if two_runs else problem, kind)
    assume(has_it(now, kind))
    then = shorter(now, kind, ticks)

    found = compared(now, then, "r", usual_spread, 0)

    never_later(found)
    assert found.before is not None
    assert kept(then, now, found.before.plan) is not None
