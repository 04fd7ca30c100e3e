"""A change of watcher in the middle of a run: plans that need one are found, and no plan is later for it."""

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import Block, Placed, Plan, PlannedStation, Problem, Stretch, Worker
from runboard.plan.schedule.rule.greedy import greedy_plan
from runboard.plan.schedule.rule.rule import NoPlace
from runboard.plan.schedule.search.improve import improve
from runboard.plan.schedule.search.model import Model
from runboard.plan.schedule.search.solving import Aim, Solved, SolveLimits, Watching
from runboard.plan.schedule.search.staffing import counts_heads, differ, staffed, with_people
from runboard.words.plan_record import operations_record
from tests.core.instances import MONDAY, problems
from tests.examples import examples

BY_CHANCE = settings(max_examples=examples(15), suppress_health_check=list(HealthCheck))
ANN, BEN = 0, 1


def hand_work(index: int, station: int, people: tuple[int, ...], release: int = 0) -> Block:
    by_hand = (Stretch("hand", 0, 30, "hands-on"),)
    return Block(index, "r", f"{index}", "s", f"o{index}", ("1",), 1, station, by_hand, people, release=release)


def needed_twice(walk: int = 0, ben_until: int = 500) -> Problem:
    """The laser runs half an hour; Ann is needed at the bench in its first half and Ben at the saw in its second. The
    laser stands in another room, and nobody can be at two things."""
    load = (Stretch("loading", 0, 2, "hands-on"), Stretch("machine", 2, 60, "watched"))
    blocks = (
        Block(0, "r", "0", "s", "o0", ("1",), 1, 0, load, (BEN,), last=True),
        replace(hand_work(1, 1, (ANN,)), last=True),
        replace(hand_work(2, 2, (BEN,), release=30 + 2 * walk), last=True),
    )
    stations = (
        PlannedStation("laser", "Laser", 0),
        PlannedStation("bench", "Bench", 1),
        PlannedStation("saw", "Saw", 1),
    )
    people = (Worker("ann", "Ann", ((0, 500),)), Worker("ben", "Ben", ((0, ben_until),)))
    walks = ((0, walk), (walk, 0))
    return Problem(MONDAY, stations, people, (), ("house", "shop"), walks, blocks)


def best(problem: Problem, watching: Watching, before: int = 500) -> Solved:
    return Model(problem, Aim(before, watching=watching)).solve(SolveLimits(120, work=2))


@pytest.mark.parametrize(("walk", "change"), [(0, 30), (4, 34)])
def test_where_each_is_needed_elsewhere_they_take_turns_at_the_laser(walk: int, change: int) -> None:
    problem = needed_twice(walk)

    named, by_turns = best(problem, "named"), best(problem, "by turns")

    assert named.is_all
    assert named.plan is not None
    assert named.plan.finish(problem) == 90 + walk
    assert by_turns.plan is not None
    assert broken(problem, by_turns.plan) == ()
    assert by_turns.plan.finish(problem) == max(62, 60 + 2 * walk)
    assert by_turns.plan.placed[0].watchers == ((BEN, 2), (ANN, change))


def test_a_plan_that_counts_heads_only_is_given_its_watchers() -> None:
    problem = needed_twice(4)
    counted = best(problem, "anyone").plan

    assert counted is not None
    assert counted.placed[0].watchers == ()
    found = staffed(problem, counted)
    assert found is not None
    assert broken(problem, found) == ()
    assert found.placed[0].watchers == ((BEN, 2), (ANN, 34))


def test_nobody_takes_over_where_one_can_stay() -> None:
    problem = replace(needed_twice(), blocks=needed_twice().blocks[:2])
    fussy = Plan((Placed(0, 0, hands=BEN, watchers=((BEN, 2), (ANN, 40))), Placed(1, 0, hands=ANN)))

    found = staffed(problem, fussy)

    assert broken(problem, fussy) == ()
    assert found is not None
    assert found.placed[0].watchers == ((BEN, 2),)


def test_a_plan_that_people_cannot_do_gets_nobody() -> None:
    problem = needed_twice(4)
    rushed = Plan((Placed(0, 0, hands=BEN), Placed(1, 0, hands=ANN), Placed(2, 32, hands=BEN)))

    assert staffed(problem, rushed) is None


def test_what_people_cannot_quite_do_is_moved_by_some_minutes() -> None:
    problem = needed_twice(4)
    rushed = Plan((Placed(0, 0, hands=BEN), Placed(1, 0, hands=ANN), Placed(2, 32, hands=BEN)))

    found, _ = with_people(problem, rushed, Aim(94), SolveLimits(120, work=2))

    assert found is not None
    assert broken(problem, found) == ()
    assert found.placed[0].watchers == ((BEN, 2), (ANN, 34))


def test_whoever_leaves_hands_the_laser_over_before_their_hours_end() -> None:
    problem = replace(needed_twice(ben_until=40), blocks=needed_twice().blocks[:2])

    found = best(problem, "by turns").plan

    assert found is not None
    assert broken(problem, found) == ()
    assert found.finish(problem) == 62
    (first, _), (second, change) = found.placed[0].watchers
    assert (first, second) == (BEN, ANN)
    assert 30 <= change <= 40


@pytest.mark.parametrize("watchers", [((BEN, 2),), ((BEN, 2), (ANN, 40)), ((BEN, 2), (ANN, 20), (BEN, 40))])
@pytest.mark.parametrize("watching", ["named", "by turns", "anyone"])
def test_what_is_hinted_of_a_plan_can_be_so(watching: Watching, watchers: tuple[tuple[int, int], ...]) -> None:
    problem = replace(needed_twice(), blocks=needed_twice().blocks[:1])
    plan = Plan((Placed(0, 0, hands=BEN, watchers=watchers),))
    model = Model(problem, Aim(500, watching=watching))

    for var, value in model.people.hints(plan.placed[0]):
        model.model.add(var == value)

    assert model.solve(SolveLimits(120, work=2)).plan is not None


def test_a_change_of_watcher_makes_two_parts_of_the_run() -> None:
    problem = needed_twice(4)
    found = best(problem, "by turns").plan

    assert found is not None
    parts = operations_record(problem, found, "r")[0]["parts"]
    machine = [
        (part["start"][11:19], part["end"][11:19], part["people"]) for part in parts if part["kind"] == "machine"
    ]
    assert machine == [("18:01:00", "18:17:00", ["ben"]), ("18:17:00", "18:31:00", ["ann"])]


def test_the_search_finds_and_proves_a_plan_that_needs_a_change_of_watcher() -> None:
    problem = needed_twice(4)

    found = improve(problem, greedy_plan(problem), 4, lambda *_: None)

    assert found.is_proved
    assert broken(problem, found.plan) == ()
    assert found.plan.placed[0].watchers == ((BEN, 2), (ANN, 34))


def test_a_search_of_its_own_is_worth_it_where_people_differ() -> None:
    problem = needed_twice()
    alike = replace(problem, blocks=tuple(replace(one, people=(ANN, BEN)) for one in problem.blocks))
    leaves = replace(alike, people=(alike.people[ANN], replace(alike.people[BEN], windows=((0, 40),))))

    assert [differ(one) for one in (problem, alike, leaves)] == [True, False, True]
    assert counts_heads(alike)
    assert not counts_heads(replace(alike, people=alike.people[:1]))


@BY_CHANCE
@given(problems(most_loads=4))
def test_taking_turns_never_makes_the_best_finish_later(problem: Problem) -> None:
    named, by_turns, anyone = (best(problem, one, 3000) for one in ("named", "by turns", "anyone"))

    if named.is_all and by_turns.is_all and named.plan is not None:
        assert by_turns.plan is not None
        assert by_turns.bound <= named.bound
        assert anyone.bound <= by_turns.bound


@BY_CHANCE
@given(problems())
def test_a_plan_with_turns_breaks_no_rule(problem: Problem) -> None:
    model = Model(problem, Aim(6000, watching="by turns"))
    found = model.solve(SolveLimits(120, work=2))

    if found.plan is not None and model.is_plan:
        assert broken(problem, found.plan) == ()


@BY_CHANCE
@given(problems())
def test_people_chosen_anew_change_less_often_and_break_nothing(problem: Problem) -> None:
    try:
        plan = greedy_plan(problem)
    except NoPlace:
        return
    found = staffed(problem, plan)
    is_seen_afar = any(
        problem.stations[other].room != one.room
        for one in problem.stations
        for other in one.watched_from
        if other < len(problem.stations)
    )

    if not is_seen_afar:
        assert found is not None
        assert broken(problem, found) == ()
        assert sum(len(one.watchers) for one in found.placed) <= sum(len(one.watchers) for one in plan.placed)
