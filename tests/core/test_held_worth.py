"""What an hour of each thing is worth: what it moves the finish by, exactly nothing off the constraint, and the same by each seed."""

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from itertools import pairwise

import pytest

from runboard.plan.schedule.problem.nouns import Lag, Problem
from runboard.plan.schedule.rule.greedy import by_start
from runboard.plan.schedule.rule.rule import Knobs, Rule
from runboard.plan.schedule.told.forecast import days_of
from runboard.review.held.held import Worth, held, held_of
from runboard.review.held.known import Scatters
from runboard.review.held.relief import eased, things
from runboard.review.held.replay import Replay, problem_of
from runboard.review.held.replayable import replayable
from runboard.review.held.stretches import held_stretches
from runboard.shop.product import ZERO
from tests.core.pasts import past_of
from tests.core.pressing import Floor
from tests.core.test_happened_days import pressed
from tests.core.test_held_chain import racked
from tests.core.test_held_replay import rails_made
from tests.core.test_held_replay import work as worked
from tests.core.test_optimum_properties import two_benches, work
from tests.scenario import key_rails

EVENINGS = tuple((at * 2880, at * 2880 + 240) for at in range(8))


def replayed(problem: Problem) -> Replay:
    """A problem as the rule replays it, tray by tray; its times scatter as usual."""
    priority = by_start([int(block.trays[0]) for block in problem.blocks])
    rule = Rule(problem)
    finish = rule.finish(priority)
    assert finish >= 0
    plan = rule.plan()
    return Replay(problem, tuple(priority), Knobs(), plan, finish, tuple(days_of(problem, plan)), Scatters({}))


def values(problem: Problem) -> dict[tuple[str, str], timedelta]:
    return {value.what: value.earlier for value in Worth(replayed(problem), goes=8).values()}


def evenings(places: int) -> Problem:
    """Six trays on evenings of two hours; each dries from one evening to the next."""
    problem = racked(places, trays=6, windows=EVENINGS)
    blocks = (
        replace(block, lags=tuple(replace(lag, least=2000) for lag in block.lags)) if block.lags else block
        for block in problem.blocks
    )
    return replace(problem, blocks=tuple(blocks))


def test_a_rack_with_too_few_places_is_what_held_it_and_one_more_place_is_worth_something() -> None:
    worth = Worth(replayed(evenings(places=3)), goes=8)

    assert worth.most() == ("service", "rack")
    assert worth.never_in_the_way(("service", "rack")) > timedelta(hours=20)
    assert values(evenings(places=5))["service", "rack"] > ZERO


def test_places_that_are_plenty_are_worth_exactly_nothing() -> None:
    assert values(evenings(places=6))["service", "rack"] == ZERO
    assert Worth(replayed(evenings(places=6)), goes=8).most() != ("service", "rack")


def test_what_is_off_the_constraint_is_worth_exactly_nothing() -> None:
    """Ann's work takes three times as long as Ben's beside it."""
    found = values(two_benches(work(0, 0, 300), work(1, 1, 100, by=1)))

    assert found["hands", "ben"] == ZERO
    assert found["hands", "ann"] == pytest.approx(timedelta(hours=1), abs=timedelta(minutes=15))


def test_a_wait_that_ends_when_nobody_is_there_is_worth_nothing_until_it_wins_the_evening() -> None:
    """Dry in the night, packed in the next evening: an hour less of drying is no hour of anybody's."""
    problem = two_benches(work(0, 0, 30), work(1, 1, 20, Lag(0, 1440)), windows=EVENINGS)

    worth = Worth(replayed(problem), goes=8)

    assert worth.moved(("wait", "0")) == 0


def test_nothing_changed_saves_exactly_nothing() -> None:
    worth = Worth(replayed(evenings(places=3)), goes=8)

    for what in things(worth.replay):
        if what[0] not in ("service", "hours"):
            assert worth._earlier(eased(worth.replay, worth.lengths, what, 1.0)) == 0, what


def test_no_relief_is_ever_told_as_a_loss() -> None:
    assert all(earlier >= ZERO for places in (2, 3, 4) for earlier in values(evenings(places)).values())


def test_the_same_seed_agrees() -> None:
    known = replayable(past_of(rails_made()))
    assert known is not None

    first, second = (held_of(known, goes=8, seed=3) for _ in range(2))

    assert first is not None and first == second


def test_what_held_it_is_told_from_the_start_to_the_finish_of_the_replay() -> None:
    found = held(past_of(rails_made()))

    assert found is not None
    assert found.stretches[-1].ended_at == found.replayed
    assert all(one.ended_at == other.began_at for one, other in pairwise(found.stretches))
    assert all(stretch.open <= stretch.ended_at - stretch.began_at for stretch in found.stretches)
    assert found.finished is None


def test_moments_of_a_stretch_are_put_to_what_they_lie_beside_and_nights_are_told() -> None:
    problem = evenings(places=3)

    found = held_stretches(problem, replayed(problem).plan)

    assert ("service", "rack") in {stretch.what for stretch in found}
    assert all(stretch.open >= timedelta(minutes=10) or stretch.what == ("hours", "") for stretch in found)


# whatever a log holds


def finished(floor: Floor) -> Floor:
    floor.press("run abandoned", run="r1")
    return floor


def lost_a_board() -> Floor:
    floor = Floor()
    floor.open_run(trays=6)
    floor.press("board lost", {"board": "cut/2"}, run="r1")
    floor.press("load done", run="r1", load="cut/1")
    worked(floor, "clean/1", 10)
    return floor


def scrapped() -> Floor:
    floor = rails_made()
    floor.press("load started", run="r1", load="sand:120/1")
    scrap = [{"pieces": 5, "why": "chipped"}]
    floor.press("load done", {"counts": {"1": {"good": 0, "scrap": scrap}}}, run="r1", load="sand:120/1")
    return floor


def moved() -> Floor:
    floor = rails_made()
    move = {"to": "1a", "pieces": 2, "to_operation": "sand:120", "why": "split"}
    floor.press("pieces moved", move, run="r1", tray="1", operation="sand:120")
    worked(floor, "sand:120/1a", 6)
    return floor


def from_paper() -> Floor:
    floor = Floor()
    floor.open_run(trays=1)
    for load in ("cut/1", "clean/1", "sand:120/1", "sand:180/1"):
        floor.press("load done", run="r1", load=load, basis="paper")
    return floor


def untouched() -> Floor:
    floor = Floor()
    floor.open_run(trays=3)
    return floor


@pytest.mark.parametrize("made", [lost_a_board, scrapped, moved, from_paper, untouched, rails_made])
def test_whatever_a_log_holds_there_is_an_answer(made: Callable[[], Floor]) -> None:
    for floor in (made(), finished(made())):
        known = replayable(past_of(floor))
        found = known and held_of(known, goes=3)

        assert found
        assert (found.finished is None) == (floor.run.state == "open")


@pytest.mark.parametrize("seed", range(4))
def test_whatever_is_pressed_by_chance_there_is_an_answer_and_all_of_the_run_is_in_it(seed: int) -> None:
    known = replayable(pressed(seed))
    found = known and held_of(known, goes=1)

    assert known and found
    assert not problem_of(known).left_out
    assert all(value.earlier >= ZERO for value in found.values)


def test_a_wait_that_really_lasted_longer_than_it_may_leaves_nothing_out() -> None:
    product = key_rails()
    product["operations"][1]["wait"] = {"why": "settle", "least_minutes": 1, "latest_minutes": 2, "holds": {}}
    floor = Floor()
    floor.open_run(trays=1, product=product)
    floor.press("load done", run="r1", load="cut/1")
    worked(floor, "clean/1", 30)

    known = replayable(past_of(floor))

    assert known is not None
    assert not problem_of(known).left_out


def test_whom_nobody_knows_any_more_worked_all_the_same() -> None:
    floor = rails_made()
    nobody = replace(floor.book, people=(), stations=())

    found = held(past_of(floor, book=nobody))

    assert found is not None
    assert ("hands", "ann") in {value.what for value in found.values}


# an hour


def test_an_hour_is_worth_no_night_in_which_nobody_is_there() -> None:
    """The second work misses the first evening by minutes, and so waits for the next one."""
    problem = two_benches(work(0, 0, 200), work(1, 1, 60, Lag(0, 0)), windows=EVENINGS)

    worth = Worth(replayed(problem), goes=8)
    found = {value.what: value for value in worth.values()}["hands", "ann"]

    assert worth.moved(("hands", "ann")) > 2000
    assert timedelta(minutes=15) < found.earlier <= timedelta(minutes=80)


def test_of_what_there_is_less_than_an_hour_all_is_taken_and_no_more() -> None:
    found = {value.what: value for value in Worth(replayed(two_benches(work(0, 0, 24))), goes=8).values()}

    hands = found["hands", "ann"]
    assert timedelta(minutes=10) < hands.of <= timedelta(minutes=12)
    assert ZERO < hands.earlier <= timedelta(minutes=14)


@pytest.mark.parametrize("places", [2, 3, 4])
def test_an_hour_of_a_place_is_worth_about_an_hour_of_the_shop_at_most(places: int) -> None:
    assert all(earlier <= timedelta(minutes=75) for earlier in values(evenings(places)).values())
