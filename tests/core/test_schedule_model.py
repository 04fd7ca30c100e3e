"""The constraint model and the bounds against the checker, on small shops made by chance and on instance number one."""

from threading import Event, Thread

from hypothesis import HealthCheck, given, settings

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.hours import Chains, Presence, open_ticks
from runboard.plan.schedule.problem.nouns import FAR, Problem
from runboard.plan.schedule.rule.greedy import greedy_plan
from runboard.plan.schedule.rule.rule import NoPlace
from runboard.plan.schedule.search.bounds import all_bounds, bound
from runboard.plan.schedule.search.evenings import least_evenings
from runboard.plan.schedule.search.model import Model
from runboard.plan.schedule.search.solving import Aim, Solved, SolveLimits, Stop
from tests.core.instances import problems, the_trial
from tests.examples import examples

BY_CHANCE = settings(max_examples=examples(20), suppress_health_check=list(HealthCheck))


def solved(problem: Problem, before: int, **wish: object) -> tuple[Model, Solved]:
    model = Model(problem, Aim(before, **wish))  # type: ignore[arg-type]
    return model, model.solve(SolveLimits(120, work=2))


@BY_CHANCE
@given(problems())
def test_a_plan_of_the_model_breaks_no_rule(problem: Problem) -> None:
    model, found = solved(problem, 6000)

    if found.plan is not None and model.is_plan:
        assert broken(problem, found.plan) == ()


@BY_CHANCE
@given(problems())
def test_no_bound_is_above_a_checked_plan(problem: Problem) -> None:
    try:
        plan = greedy_plan(problem)
    except NoPlace:
        return
    if broken(problem, plan):
        return
    finish = plan.finish(problem)

    assert all(one.tick <= finish for one in all_bounds(problem))
    assert least_evenings(problem, Chains(problem), bound(problem).tick, finish + 1, SolveLimits(2))[0] <= finish
    for watching in ("named", "anyone"):
        model, found = solved(problem, finish + 1, watching=watching)
        assert not model.is_bound or found.bound <= finish


def test_instance_number_one_is_bounded_by_the_laser_that_must_be_watched() -> None:
    problem = the_trial(18)

    found = bound(problem)

    assert (found.rule, found.facts["station"]) == ("watched", "Laser")
    assert open_ticks(problem, found.tick) // 2 == 1455


def test_presence_counts_the_hours_of_everybody() -> None:
    there = Presence.of([((0, 10), (20, 30)), ((5, 25),)])

    assert there.passed(10) == 15
    assert there.between(10, 20) == 10
    assert there.after(0, 15) == 10
    assert there.after(10, 11) == 21
    assert there.after(0, 1000) == FAR


def test_a_solve_ends_when_another_thread_asks_and_none_begins_after_that() -> None:
    problem, stop, found = the_trial(18), Stop(), Event()
    model, limits = Model(problem, Aim(20_000)), SolveLimits(3600)
    answers: list[Solved] = []

    solving = Thread(target=lambda: answers.append(model.solve(limits, lambda _: found.set(), stop)), daemon=True)
    solving.start()
    found.wait(60)
    stop.ask()
    solving.join(60)
    answers.append(model.solve(limits, stop=stop))

    assert not solving.is_alive()
    assert answers[0].plan is not None
    assert broken(problem, answers[0].plan) == ()
    assert [one.is_all for one in answers] == [False, False]
    assert answers[1].plan is None


def test_seconds_that_are_counted_are_the_same_however_busy_the_computer_is() -> None:
    problem, limits = the_trial(3), SolveLimits(2, is_counted=True)

    first, second = (Model(problem, Aim(20_000)).solve(limits) for _ in range(2))

    assert first == second
    assert 0 < first.seconds < 60
