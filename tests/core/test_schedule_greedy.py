"""The dispatch rule keeps every rule of the shop, places all that can be placed, and is the same compiled as plain."""

import os
import subprocess
import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import TICK, Block, Lag, OrderDue, Problem
from runboard.plan.schedule.problem.people import walks_in
from runboard.plan.schedule.problem.worth import worth
from runboard.plan.schedule.rule.greedy import RULES, Features, greedy, greedy_plan, ranked
from runboard.plan.schedule.rule.kernel.compiled import as_arrays, compiled
from runboard.plan.schedule.rule.kernel.records import Shop
from runboard.plan.schedule.rule.kernel.shop import shop_of
from runboard.plan.schedule.rule.rule import Knobs, NoPlace, Replicate, Rule
from runboard.plan.schedule.search.cold import cold
from tests.core.instances import problems, the_trial
from tests.core.pressing import Floor
from tests.core.test_schedule_check import ANN, BENCH, LASER, SANDER, hand, machine, shop
from tests.examples import examples

KNOBS = st.builds(Knobs, st.sampled_from([0, 10_000, 10**7]), st.booleans(), st.sampled_from([0, 20]))


@pytest.fixture(scope="module")
def machine_code() -> Iterator[Replicate]:
    yield compiled()


@given(problems(), st.randoms(use_true_random=False), KNOBS)
@settings(max_examples=examples(80))
def test_any_priorities_make_a_plan_that_keeps_every_rule(problem: Problem, random, knobs: Knobs):
    rule = Rule(problem)
    rule.finish([random.randint(0, 9000) for _ in problem.blocks], knobs)

    try:
        plan = rule.plan()
    except NoPlace:
        assume(False)

    assert broken(problem, plan) == ()
    assert plan.finish(problem) == rule.last_finish
    assert rule.walks() == walks_in(problem, plan)
    assert rule.sum_of_ends() == sum(rule.all_ends())


@given(problems())
@settings(max_examples=examples(50))
def test_what_has_no_latest_end_finds_its_place_by_the_rule_or_by_the_search(problem: Problem):
    without = [replace(one, lags=tuple(replace(lag, latest=None) for lag in one.lags)) for one in problem.blocks]
    problem = replace(problem, blocks=tuple(without))
    assume(not any(held_at_once_beyond_capacity(problem, one) for one in problem.blocks))

    try:
        assert broken(problem, greedy_plan(problem, goes=6)) == ()
    except NoPlace:  # what holds a service may leave the rule none, and any plan at all
        found = cold(problem, 5).plan
        assert found is None or broken(problem, found) == ()


def held_at_once_beyond_capacity(problem: Problem, block: Block) -> bool:
    """Whether what a block waits for holds more of a service together than there is: it could begin only at the very tick at
    which the last of it ends, which no rule waits for."""
    held: Counter[int] = Counter()
    for before in {lag.before for lag in block.lags}:
        held.update(dict(problem.blocks[before].holds))
    return any(many > problem.services[service][1] for service, many in held.items())


@given(problems(), st.randoms(use_true_random=False), KNOBS)
@settings(max_examples=60, suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture])
def test_compiled_and_plain_are_equal_to_the_last_record(
    machine_code: Replicate, problem: Problem, random, knobs: Knobs
):
    plain, fast = Rule(problem), Rule(problem, machine_code)
    assert (plain.is_compiled, fast.is_compiled) == (False, True)
    priority = [random.randint(0, 9000) for _ in problem.blocks]

    assert fast.finish(priority, knobs) == plain.finish(priority, knobs)
    assert same(fast.shop, plain.shop)


@pytest.mark.parametrize(("trays", "people"), [(9, 1), (9, 2), (9, 3), (18, 2)])
def test_instance_number_one_is_the_same_compiled(machine_code: Replicate, trays: int, people: int):
    problem = the_trial(trays, people)
    plain, fast = Rule(problem), Rule(problem, machine_code)

    for key in RULES.values():
        priority = ranked(Features(problem), key)
        assert fast.finish(priority) == plain.finish(priority)
        assert same(fast.shop, plain.shop)
        assert broken(problem, plain.plan()) == ()


@pytest.mark.parametrize(("trays", "people", "open_minutes"), [(9, 1, 863), (9, 2, 800), (18, 2, 1240)])
def test_a_handful_of_rules_makes_a_fair_plan(trays: int, people: int, open_minutes: int):
    """In minutes in which anybody is there, with one for each walk."""
    problem = the_trial(trays, people)

    assert worth(problem, greedy_plan(problem))[1] / 2 <= open_minutes


def test_the_same_problem_gives_the_same_plan():
    assert greedy(the_trial(9), goes=30) == greedy(the_trial(9), goes=30)


def test_lateness_comes_before_the_finish():
    problem = shop(hand(0, last=True), replace(hand(1, last=True), run="s"))
    order = OrderDue("s", "1", 5, 5, 10)

    plan = greedy_plan(replace(problem, orders=(order,)))

    assert plan.end(problem, 1) == 10


def test_what_follows_within_a_time_is_begun_only_where_all_of_it_fits():
    tied = (hand(0, length=20, people=(ANN,)), hand(1, LASER, 20, people=(ANN,), lags=(Lag(0, 0, 40),)))
    problem = shop(*tied, hand(2, SANDER, 170, people=(ANN,)))

    plan = greedy_plan(problem)

    assert broken(problem, plan) == ()


def test_a_machine_that_is_kept_for_what_follows_it_is_no_deadlock():
    runs = [machine(0), hand(1, 0, 3, unloads=0), machine(2), hand(3, 0, 3, unloads=2)]
    both = hand(4, BENCH, 5, lags=(Lag(1, 0, 120), Lag(3, 0, 120)))
    problem = shop(*runs, both)

    assert broken(problem, greedy_plan(problem)) == ()


def test_where_priorities_tie_trays_go_in_ascending_order():
    trays = ("10", "9", "2", "11")
    problem = shop(*(replace(hand(at, people=(ANN,)), trays=(tray,)) for at, tray in enumerate(trays)))
    rule = Rule(problem)

    rule.finish([0] * 4)

    assert sorted(trays, key=lambda tray: rule.end(trays.index(tray))) == ["2", "9", "10", "11"]


def test_what_is_in_clamps_leaves_place_for_those_without_whom_nobody_takes_it_off():
    first = replace(hand(0, BENCH, 9, people=(ANN,)), holds=((0, 1),))
    second = replace(hand(1, LASER, 9, release=30, people=(ANN,)), holds=((0, 1),))
    after = hand(2, SANDER, 5, lags=(Lag(1),), people=(ANN,))
    both = hand(3, SANDER, 5, lags=(Lag(0), Lag(2)), people=(ANN,))
    problem = replace(shop(first, second, after, both), services=(("clamps", 1),))
    rule = Rule(problem)

    assert rule.finish([0, 1, 2, 3]) > 0, "the first would hold the clamp until the second is done, which needs it"
    assert broken(problem, rule.plan()) == ()


def test_what_fits_nowhere_is_named():
    with pytest.raises(NoPlace) as none:
        greedy_plan(shop(hand(0), hand(1, LASER, lags=(Lag(0, 50, 20),))))

    assert none.value.blocks == (0, 1)


def test_finishes_are_kept_for_the_end_where_dust_is_still_to_come():
    wet = hand(0, BENCH, 10, wet=150, people=(ANN,))
    sanding = hand(2, SANDER, 20, lags=(Lag(1),), people=(ANN,))
    problem = shop(wet, hand(1, LASER, 60, people=(1,)), sanding)

    plan = greedy_plan(problem)

    assert broken(problem, plan) == ()
    assert plan.end(problem, 2) <= 200


def test_from_the_middle_of_a_run_what_is_begun_stays_where_it_is():
    floor = Floor()
    floor.open_run(trays=6)
    floor.press("load done", run="r1", load="cut/1")
    floor.press("load started", run="r1", load="cut/2")
    floor.press("machine started", {"minutes": 30}, run="r1", load="cut/2")
    floor.press("load started", run="r1", load="clean/1", person="ben")
    floor.wait(2)
    problem = problem_for(floor.state, floor.book, floor.now)

    plan = greedy_plan(problem)

    begun = [block.index for block in problem.blocks if block.begun]
    assert len(begun) == 2
    assert broken(problem, plan) == ()
    assert {plan.placed[one].start for one in begun} == {0}


def test_where_oil_and_dust_share_a_room_the_sanding_is_not_kept_waiting_for_days():
    floor = Floor()
    floor.open_run(trays=6)
    problem = problem_for(floor.state, floor.book, floor.now)

    plan = greedy_plan(problem)

    assert broken(problem, plan) == ()
    assert plan.finish(problem) * TICK < timedelta(hours=30)


def same(arrays: Shop, objects: Shop) -> bool:
    """Whether all records are equal, down to those that a go left behind it."""
    return all((one == other).all() for one, other in zip(arrays[1:], as_arrays(objects)[0][1:], strict=True))


class NotFromTheEnd(list[object]):
    """A list as the compiled rule sees it: records behind one another, before which nothing is to be looked at."""

    def __getitem__(self, at):
        assert at >= 0
        return super().__getitem__(at)

    def __setitem__(self, at, value):
        assert at >= 0
        super().__setitem__(at, value)


def watched(values: object) -> object:
    return NotFromTheEnd(watched(one) for one in values) if isinstance(values, list) else values


@given(problems(), st.randoms(use_true_random=False), KNOBS)
@settings(max_examples=60)
def test_the_rule_stays_in_its_lists(problem: Problem, random, knobs: Knobs):
    rule = Rule(problem)
    rule.shop = rule.given = Shop(*(watched(one) for one in shop_of(problem)))
    lengths = [len(one) for one in rule.shop[1:]]

    rule.finish([random.randint(0, 9000) for _ in problem.blocks], knobs)

    assert [len(one) for one in rule.shop[1:]] == lengths


def test_compiled_with_its_bounds_checked_the_rule_stays_in_its_arrays():
    """In a process of its own: whether bounds are checked is settled before anything is compiled. It need not be fast
    code, which takes longer to make than this takes."""
    only = "test_compiled_and_plain_are_equal_to_the_last_record"
    child = subprocess.run(
        [sys.executable, "-m", "pytest", "-n0", "-q", "-p", "no:cacheprovider", "-k", only, __file__],
        env={**os.environ, "NUMBA_BOUNDSCHECK": "1", "NUMBA_OPT": "0"},
        capture_output=True,
        text=True,
        check=False,
    )

    assert child.returncode == 0, child.stdout
