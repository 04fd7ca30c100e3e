"""A change that only allows more, or asks less time, is never shown as later, on small shops made by chance."""

from dataclasses import replace

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import OrderDue, Placed, Plan, Problem
from runboard.plan.schedule.problem.worth import Worth, ends_of
from runboard.plan.schedule.told.compared import Calmer, Compared, calmer_than, compared, kept
from runboard.plan.schedule.told.forecast import usual_spread
from tests.core.instances import problems
from tests.core.shorter import KINDS, has_it, shorter, steady
from tests.core.test_optimum_properties import capacity_more, hours_more, somebody_more, two_benches, work
from tests.examples import examples

BY_CHANCE = settings(max_examples=examples(12), suppress_health_check=list(HealthCheck))


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


def in_two_rooms() -> tuple[Problem, Plan]:
    """Three works by one person, of which the second is in another room, one after the other."""
    problem = two_benches(work(0, 0, 20), work(1, 1, 20), replace(work(2, 0, 20), last=True))
    table = replace(problem.stations[1], room=1)
    problem = replace(problem, stations=(problem.stations[0], table), rooms=("shop", "shed"), walks=((0, 4), (4, 0)))
    return problem, Plan(tuple(Placed(at, start, hands=0) for at, start in enumerate((0, 24, 48))))


def test_a_plan_with_fewer_walks_that_is_done_later_is_calmer() -> None:
    problem, plan = in_two_rooms()
    calm = Plan(tuple(Placed(at, start, hands=0) for at, start in enumerate((0, 124, 20))))

    assert not broken(problem, plan)
    assert not broken(problem, calm)
    assert calmer_than(problem, plan, calm) == Calmer(walks=1, minutes=(144 - 68) // 2)
    assert calmer_than(problem, plan, None) is None
    assert calmer_than(problem, calm, plan) is None, "it walks more"
    assert calmer_than(problem, plan, plan) is None


def test_a_plan_with_an_order_line_later_is_no_calmer_one() -> None:
    problem, plan = in_two_rooms()
    problem = replace(problem, orders=(OrderDue("r", "1", 5, 5, 70),))
    calm = Plan(tuple(Placed(at, start, hands=0) for at, start in enumerate((80, 124, 100))))

    assert calmer_than(replace(problem, orders=()), plan, calm) is not None
    assert calmer_than(problem, plan, calm) is None
