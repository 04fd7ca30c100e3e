"""The last plan on what is left now: kept where it can stand, never where it breaks a rule."""

from dataclasses import replace
from datetime import datetime, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from runboard.plan.carrying_over import as_it_stands, changed, same_order
from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import TICK, Plan, Problem
from runboard.plan.schedule.rule.greedy import greedy, greedy_plan
from runboard.plan.schedule.rule.rule import NoPlace
from runboard.plan.schedule.search.model import Model
from runboard.plan.schedule.search.solving import Aim, SolveLimits
from tests.core.instances import FRIDAY, opened, problems
from tests.core.test_taking_over import ANN, BEN, needed_twice

NOON = FRIDAY - timedelta(hours=6)  # nobody is there before six in the evening


def at(trays: int, moment: datetime) -> Problem:
    """The first instance at some moment, untouched since noon."""
    floor = opened(trays, start=NOON)
    return problem_for(floor.state, floor.book, moment)


def moments(problem: Problem, plan: Plan) -> list[datetime]:
    return [problem.moment(one.start) for one in plan.placed]


@pytest.fixture(scope="module")
def friday() -> tuple[Problem, Plan]:
    problem = at(1, NOON)
    return problem, greedy_plan(problem)


def test_a_plan_stands_while_only_time_passes_before_its_first_thing(friday: tuple[Problem, Plan]):
    before, plan = friday
    now = at(1, FRIDAY - timedelta(seconds=50.5))

    stands = as_it_stands(now, before, plan)

    assert stands is not None
    assert all(abs(new - was) < TICK for new, was in zip(moments(now, stands), moments(before, plan), strict=True))
    assert [one.hands for one in stands.placed] == [one.hands for one in plan.placed]


def test_where_the_next_thing_is_overdue_the_sitting_is_put_off_and_the_rest_stays(friday: tuple[Problem, Plan]):
    before, plan = friday
    now = at(1, FRIDAY + timedelta(minutes=4))

    stands = as_it_stands(now, before, plan)

    assert stands is not None
    assert broken(now, stands) == ()
    put_off = {new - was for new, was in zip(moments(now, stands), moments(before, plan), strict=True)}
    assert put_off == {timedelta(0), timedelta(minutes=4)}
    assert now.moment(stands.finish(now)) == before.moment(plan.finish(before))


def test_a_plan_with_something_new_does_not_stand_and_gives_its_order(friday: tuple[Problem, Plan]):
    before, plan = friday
    more = at(2, NOON)
    made = greedy(before)

    assert as_it_stands(more, before, plan) is None
    order = same_order(more, before, made.priority)
    assert len(order) == len(more.blocks)
    known = {(block.run, block.load, block.step): made.priority[block.index] for block in before.blocks}
    kept = [
        order[one.index] == known[one.run, one.load, one.step]
        for one in more.blocks
        if (one.run, one.load, one.step) in known
    ]
    assert sum(kept) > len(kept) / 2


def test_a_plan_that_breaks_a_rule_now_does_not_stand(friday: tuple[Problem, Plan]):
    before, plan = friday
    nobody = replace(before, people=tuple(replace(one, windows=()) for one in before.people))

    assert as_it_stands(nobody, before, plan) is None


@settings(max_examples=60)
@given(problems(), st.integers(0, 60))
def test_whatever_stands_keeps_every_rule(problem: Problem, ticks: int):
    try:
        plan = greedy_plan(problem, 8)
    except NoPlace:
        return
    assert as_it_stands(problem, problem, plan) == (None if broken(problem, plan) else plan)
    passed = replace(problem, start=problem.start + ticks * TICK)

    stands = as_it_stands(passed, problem, plan)

    assert stands is None or broken(passed, stands) == ()


def loaded(passed: int, by: int) -> Problem:
    """The shop in which Ann takes over the laser at tick 34: so many ticks after Ben began it, with what else began."""
    before = needed_twice(4)
    load, hooks, saw = before.blocks
    gone = max(0, passed - 2)
    machine = replace(load.stretches[1], offset=0, length=60 - gone)
    stretches = (machine,) if passed else load.stretches
    blocks = (
        replace(load, stretches=stretches, begun=True, by=by),
        replace(hooks, stretches=(replace(hooks.stretches[0], length=30 - min(29, passed)),), begun=True, by=ANN),
        replace(saw, release=max(0, saw.release - passed)),
    )
    return replace(before, start=before.start + passed * TICK, blocks=blocks)


@pytest.mark.parametrize(
    ("passed", "by", "watchers"),
    [(0, BEN, ((BEN, 2), (ANN, 34))), (12, BEN, ((BEN, 0), (ANN, 22))), (36, ANN, ((ANN, 0),))],
)
def test_a_watch_that_is_to_be_taken_over_still_is_after_the_press_that_began_it(
    passed: int, by: int, watchers: tuple[tuple[int, int], ...]
):
    before = needed_twice(4)
    plan = Model(before, Aim(500, watching="by turns")).solve(SolveLimits(120, work=2)).plan
    assert plan is not None and plan.placed[0].watchers == ((BEN, 2), (ANN, 34))
    now = loaded(passed, by)

    stands = as_it_stands(now, before, plan)

    assert stands is not None
    assert stands.placed[0].watchers == watchers


def test_what_has_changed_is_what_is_new_or_begun_or_left_of_trays_of_which_something_is_gone(
    friday: tuple[Problem, Plan],
):
    before, _ = friday
    more = at(2, NOON)
    fewer = tuple(replace(block, index=number) for number, block in enumerate(before.blocks[1:]))

    assert changed(before, before) == ()
    new = {more.blocks[index].trays for index in changed(more, before)}
    assert ("2",) in new and ("1",) not in new
    assert changed(replace(before, blocks=fewer), before) == tuple(range(len(fewer)))
    begun = (replace(before.blocks[0], begun=True), *before.blocks[1:])
    assert changed(replace(before, blocks=begun), before) == (0,)
