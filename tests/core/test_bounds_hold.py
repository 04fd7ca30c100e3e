"""No bound is above a plan that the checker finds nothing broken in, however that plan was come by."""

from collections.abc import Iterator
from random import Random
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.hours import Chains
from runboard.plan.schedule.problem.nouns import Block, Lag, OrderDue, Plan, PlannedStation, Problem, Stretch, Worker
from runboard.plan.schedule.rule.greedy import greedy_plan
from runboard.plan.schedule.rule.rule import Knobs, NoPlace, Rule
from runboard.plan.schedule.search.bounds import all_bounds, bound
from runboard.plan.schedule.search.evenings import least_evenings
from runboard.plan.schedule.search.model import Model
from runboard.plan.schedule.search.solving import Aim
from tests.core.instances import MONDAY, problems, the_trial
from tests.core.optimum import LIMITS
from tests.core.shorter import in_one_window

_LATE = 6000


def plans_by_chance(problem: Problem, seed: int, goes: int) -> Iterator[Plan]:
    """The plans of the dispatch rule at priorities and knobs that chance gives, and the best that it finds itself."""
    random, rule = Random(seed), Rule(problem)
    for _ in range(goes):
        priority = random.sample(range(len(problem.blocks)), len(problem.blocks))
        knobs = Knobs(random.choice((0, 10**7)), bool(random.getrandbits(1)), random.choice((0, 60)))
        if rule.finish(priority, knobs) >= 0:
            yield rule.plan()
    try:
        yield greedy_plan(problem, goes)
    except NoPlace:
        return


def searched(problem: Problem) -> Iterator[Plan]:
    """What the search finds when no bound is told to it."""
    answer = Model(problem, Aim(_LATE)).solve(LIMITS)
    if answer.plan is not None:
        yield answer.plan


def bounds_of(problem: Problem, finish: int) -> Iterator[tuple[str, int]]:
    """(rule, tick) of every bound there is, none of which knows another."""
    yield from ((one.rule, one.tick) for one in all_bounds(problem))
    yield "evenings", least_evenings(problem, Chains(problem), 0, finish + 1, LIMITS)[0]
    for watching in ("named", "anyone"):
        model = Model(problem, Aim(finish + 1, watching=watching))
        answer = model.solve(LIMITS)
        if model.is_bound:
            yield f"search, {watching}", answer.bound


def above(problem: Problem, plans: Iterator[Plan]) -> list[tuple[str, int]]:
    """The bounds that the best of these plans is before."""
    finishes = [plan.finish(problem) for plan in plans if not broken(problem, plan)]
    if not finishes:
        return []
    return [one for one in bounds_of(problem, min(finishes)) if one[1] > min(finishes)]


@settings(max_examples=30, suppress_health_check=list(HealthCheck))
@given(st.one_of(problems(4), problems(3).map(in_one_window)), st.integers(0, 10**6))
def test_no_bound_is_above_any_checked_plan(problem: Problem, seed: int) -> None:
    plans = [*plans_by_chance(problem, seed, 20), *searched(problem)]

    assert above(problem, iter(plans)) == []


@pytest.mark.parametrize(("trays", "people"), [(3, 1), (3, 2), (6, 2), (12, 3)])
def test_no_bound_without_a_search_is_above_a_plan_of_instance_number_one(trays: int, people: int) -> None:
    problem = the_trial(trays, people)

    finish = min(plan.finish(problem) for plan in plans_by_chance(problem, trays, 20) if not broken(problem, plan))

    assert [one for one in all_bounds(problem) if one.tick > finish] == []


def test_what_was_begun_though_the_extraction_does_not_suffice_proves_nothing() -> None:
    """A wait holds the hose that a machine, begun as well, still draws on: it has happened, so a plan takes it as it is."""
    window = ((0, 600),)
    stations = tuple(PlannedStation(f"station {at}", f"Station {at}", 0, frozenset({at}), window) for at in range(2))
    people = tuple(Worker(f"person {at}", f"Person {at}", window, 0) for at in range(2))
    glued = block(0, 0, Stretch("hand", 0, 1, "hands-on", ()), begun=True, by=0, holds=((0, 1),))
    runs = block(1, 1, Stretch("machine", 0, 2, "watched", ((0, 1),)), begun=True, by=1)
    after = block(2, 0, Stretch("hand", 0, 1, "hands-on", ()), lags=(Lag(0, 20),))
    problem = Problem(
        start=MONDAY,
        stations=stations,
        people=people,
        services=(("extraction", 1),),
        rooms=("shop",),
        walks=((0,),),
        blocks=(glued, runs, after),
        orders=(OrderDue("r", "1", 3, 3),),
        left_out=(),
    )

    plan = greedy_plan(problem, 20)

    assert not broken(problem, plan)
    assert above(problem, iter([plan])) == []


_DAY = 24 * 60 * 2


def drying(trays: int, places: int, each: int = 1) -> Problem:
    """Trays that are oiled in 6 minutes, dry for 12 hours on a rack of so many places, and are then fitted in 9: four hours
    each evening."""
    evenings = tuple((day * _DAY, day * _DAY + 480) for day in range(trays + 1))
    blocks: list[Block] = []
    for at in range(0, 2 * trays, 2):
        oil, fit = (Stretch("hand", 0, ticks, "hands-on") for ticks in (12, 18))
        same = {"people": (0,), "run": "r", "trays": (str(at),)}
        blocks.append(block(at, 0, oil, operation="oil", step="oil", holds=((0, each),), **same))
        fitted = block(at + 1, 1, fit, operation="fit", step="fit", lags=(Lag(at, 1440),), last=True, **same)
        blocks.append(fitted)
    stations = (PlannedStation("finishing", "Finishing", 0), PlannedStation("fitting", "Fitting", 0))
    ann = (Worker("ann", "Ann", evenings),)
    return Problem(MONDAY, stations, ann, (("rack", places),), ("shop",), ((0,),), tuple(blocks))


@pytest.mark.parametrize(
    ("trays", "places", "each", "nights"), [(12, 4, 1, 3), (13, 4, 1, 4), (12, 8, 2, 3), (9, 9, 1, 1)]
)
def test_no_more_dry_over_a_night_than_the_rack_has_places_for(trays: int, places: int, each: int, nights: int) -> None:
    problem = drying(trays, places, each)
    found, _ = least_evenings(problem, Chains(problem), 0, trays * _DAY, LIMITS)
    fitted = (trays - (nights - 1) * (places // each)) * 18

    plan = Model(problem, Aim(trays * _DAY, found)).solve(LIMITS).plan

    assert plan is not None
    assert broken(problem, plan) == ()
    assert plan.finish(problem) == found == nights * _DAY + fitted
    assert nights == 1 or bound(problem).tick <= found - (nights - 1) * _DAY + 480


def test_who_is_at_two_things_already_goes_on_with_both_and_the_model_has_a_plan() -> None:
    """Ann's hands are at the bench, the laser runs that she watches in another room, and the clamps hold one more than
    there are."""
    window = ((0, 600),)
    stations = tuple(PlannedStation(f"station {at}", f"Station {at}", at, frozenset({at}), window) for at in range(2))
    blocks = (
        block(0, 0, Stretch("hand", 0, 20, "hands-on", ()), begun=True, by=0, holds=((0, 2),), people=(0,)),
        block(1, 1, Stretch("machine", 0, 30, "watched", ((0, 1),)), begun=True, by=0, people=(0,)),
        block(2, 0, Stretch("hand", 0, 5, "hands-on", ()), lags=(Lag(0, 10),), people=(0,)),
        block(3, 1, Stretch("hand", 0, 5, "hands-on", ()), lags=(Lag(1),), last=True, people=(0,)),
    )
    ann = (Worker("ann", "Ann", window, 0),)
    problem = Problem(MONDAY, stations, ann, (("clamps", 1),), ("shop", "house"), ((0, 4), (4, 0)), blocks)
    model = Model(problem, Aim(600))

    answer = model.solve(LIMITS)

    assert answer.plan is not None
    assert broken(problem, answer.plan) == ()
    assert (answer.is_all, model.is_bound, answer.plan.finish(problem)) == (True, True, 44)


def block(index: int, station: int, stretch: Stretch, **more: Any) -> Block:
    """A load of one piece, which everybody is able to do."""
    fields: dict[str, Any] = {
        "run": "r",
        "load": f"load {index}",
        "step": f"step {index}",
        "operation": f"operation {index}",
        "trays": (str(index),),
        "people": (0, 1),
    }
    return Block(index=index, pieces=1, station=station, stretches=(stretch,), **{**fields, **more})
