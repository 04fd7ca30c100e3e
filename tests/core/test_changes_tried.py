"""Ideas tried on what a run measured: nothing saves nothing, the same luck, what only allows more is never worse."""

from dataclasses import replace
from datetime import date, time, timedelta
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from runboard.plan.change import (
    Capacity,
    Change,
    Helper,
    HoursAdded,
    Instead,
    LoadSize,
    OnePersonMore,
    OneVisit,
    Several,
    Swapped,
    Times,
    TraySize,
)
from runboard.plan.changed import SOMEBODY as SOMEBODY_KEY
from runboard.review.changes.nouns import NOTHING, NOUGHT, Idea, Tried, Worth
from runboard.review.changes.pieces import counts_of, pieces_saved
from runboard.review.changes.replayed import problem_with
from runboard.review.changes.trying import Trial, together, tried
from runboard.review.held.replayable import Replayable, replayable
from runboard.run.fold.overruled import Overruled
from tests.core.pasts import past_of
from tests.core.pressing import Floor
from tests.core.test_held_replay import rails_made

GOES = 12
MINUTE = timedelta(minutes=1)
OFF = Capacity("extraction", 2)  # one cutter draws on it
FASTER = Times("r1", "clean", "", 50)
SLOWER = Times("r1", "clean", "", 200)
HELPER = Helper("r1", "clean", "ann", 120)
SOMEBODY = OnePersonMore("ann")
LONGER = HoursAdded("ann", date(2026, 6, 2), time(6), time(7))
RELAXED = [OFF, FASTER, HELPER, SOMEBODY, LONGER, Times("r1", "hooks", "hand", 80), Several((FASTER, HELPER))]


@cache
def made() -> tuple[Floor, Replayable]:
    floor = rails_made()
    known = replayable(past_of(floor))
    assert known is not None
    return floor, known


@pytest.fixture(scope="module")
def known() -> Replayable:
    return made()[1]


def test_a_helper_for_some_minutes_comes_when_there_is_something_to_help_with(known: Replayable) -> None:
    as_it_was = Trial(known, GOES).as_it_was.problem
    first = min(begun.at for (step, tray), begun in known.order.items() if step == "clean" and tray)

    problem = problem_with(known, as_it_was, Helper("r1", "clean", "ann", 5))

    more = next(person for person in problem.people if person.key.startswith(SOMEBODY_KEY))
    assert more.windows[0][0] == problem.tick(first) > 0


def one(known: Replayable, change: Change, seed: int = 1, cost: float | None = None, **more: object) -> Tried:
    (found,) = tried(known, [Idea("it", change, cost=cost)], GOES, seed, **more)
    return found


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_a_change_of_what_nothing_waits_for_saves_exactly_nothing(known: Replayable, seed: int) -> None:
    found = one(known, OFF, seed)

    assert (found.earlier, found.hands, found.pieces, found.helps) == (NOTHING, NOTHING, 0, False)


@settings(max_examples=6, deadline=None)
@given(change=st.sampled_from([FASTER, SLOWER, HELPER]), seed=st.integers(0, 10**6))
def test_the_same_seed_meets_the_same_luck(change: Change, seed: int) -> None:
    _, known = made()

    assert one(known, change, seed) == one(known, change, seed)


@pytest.mark.parametrize("change", RELAXED, ids=str)
def test_what_only_allows_more_is_never_worse(known: Replayable, change: Change) -> None:
    found = one(known, change)

    assert found.refused is None
    assert found.earlier.high >= found.earlier.mid >= found.earlier.low >= NOUGHT


def test_less_time_by_hand_saves_hands_and_more_costs_them(known: Replayable) -> None:
    less, more = one(known, FASTER), one(known, SLOWER)

    assert less.hands.low <= less.hands.mid <= less.hands.high
    assert timedelta(minutes=20) < less.hands.mid < timedelta(minutes=40)  # of an hour's cleaning
    assert more.hands.mid < NOUGHT
    assert not more.helps


@pytest.mark.parametrize(
    ("change", "code"),
    [
        (Capacity("steam", 2), "try service unknown"),
        (Capacity("clamps", 6), "try the same"),
        (Swapped("r1", "sand"), "try order"),
        (OneVisit("r1", "clean"), "try visit"),
        (LoadSize("r1", "cut", 30), "try load size"),
        (TraySize("r1", 5), "try the same"),
        (Helper("r1", "weld", "ann", 60), "try no operation"),
        (Several((FASTER, Times("r1", "weld", "", 50))), "try no such time"),
    ],
)
def test_what_makes_no_sense_for_that_run_says_why(known: Replayable, change: Change, code: str) -> None:
    found = one(known, change)

    assert found.refused is not None
    assert found.refused[0] == code
    assert (found.earlier, found.hands) == (NOTHING, NOTHING)


def test_somebody_more_is_there_when_the_one_whose_hours_they_have_was(known: Replayable) -> None:
    trial = Trial(known, GOES)
    alone = trial.saved_of(SOMEBODY)
    beside = trial.saved_of(Several((SOMEBODY, OFF)))

    assert (alone.finish == beside.finish).all()


def test_a_helper_is_there_so_long_and_only_while_the_one_whose_hours_they_have_is(known: Replayable) -> None:
    was = Trial(known, GOES).as_it_was.problem

    people = {person.key: person.windows for person in problem_with(known, was, HELPER).people}

    there = people[SOMEBODY_KEY]
    assert sum(closes - opens for opens, closes in there) == 240
    assert all(any(opens <= one and other <= closes for opens, closes in people["ann"]) for one, other in there)


def test_other_loads_save_what_is_theirs_and_not_what_luck_is(known: Replayable) -> None:
    fewer_setups = one(known, TraySize("r1", 15))

    assert NOUGHT < fewer_setups.hands.low <= fewer_setups.hands.high < timedelta(minutes=20)


# together


def test_the_pair_saves_no_less_than_either_and_the_order_begins_with_the_best(known: Replayable) -> None:
    found = tried(known, [Idea("clean", FASTER), Idea("hooks", Times("r1", "hooks", "", 50)), Idea("off", OFF)], GOES)

    both = together(known, found, GOES)

    assert both.pair is not None
    assert set(both.pair) == {"clean", "hooks"}
    assert both.hands is not None
    assert both.hands.mid > max(one.hands.mid for one in found)
    assert set(both.order) == {"clean", "hooks"}
    assert len(both.steps) == 2


def test_the_same_idea_twice_is_bought_once(known: Replayable) -> None:
    found = tried(known, [Idea("one", FASTER), Idea("two", FASTER)], GOES)

    assert len(together(known, found, GOES).order) == 1


def test_of_two_changes_of_the_same_thing_only_one_is_bought(known: Replayable) -> None:
    ideas = [
        Idea("half", FASTER),
        Idea("less", Times("r1", "clean", "hand", 40)),
        Idea("hooks", Times("r1", "hooks", "", 50)),
    ]

    both = together(known, tried(known, ideas, GOES), GOES)

    assert both.pair == ("less", "hooks")
    assert both.order == ("less", "hooks")


def test_without_an_idea_that_helps_there_is_no_pair(known: Replayable) -> None:
    both = together(known, tried(known, [Idea("off", OFF)], GOES), GOES)

    assert (both.pair, both.order) == (None, ())


# pieces and money


def test_a_better_good_rate_saves_the_pieces_that_were_lost() -> None:
    floor, _ = made()
    change = Instead("r1", "clean", "tool", "", 100, 0.99)

    assert pieces_saved(change, {"clean": (100, 8)}) == pytest.approx(7)
    assert pieces_saved(change, counts_of(floor.run)) == pytest.approx(-0.15)
    assert pieces_saved(FASTER, {"clean": (100, 8)}) == 0


def test_a_change_has_paid_after_as_many_runs_as_its_cost_takes(known: Replayable) -> None:
    found = one(known, FASTER, cost=100, worth=Worth(hour_rate=40, runs_a_month=2))

    hours = found.hands.mid / timedelta(hours=1)
    assert found.payback_runs == pytest.approx(100 / (40 * hours))
    assert found.payback_months == pytest.approx(found.payback_runs / 2)


@pytest.mark.parametrize("worth", [Worth(), Worth(runs_a_month=2)])
def test_without_the_worth_of_an_hour_nobody_says_when_it_has_paid(known: Replayable, worth: Worth) -> None:
    assert one(known, FASTER, cost=100, worth=worth).payback_runs is None


def test_what_saves_nothing_never_pays(known: Replayable) -> None:
    assert one(known, OFF, cost=100, worth=Worth(hour_rate=40)).payback_runs is None


def test_what_is_said_of_the_times_after_a_run_moves_no_idea_of_it() -> None:
    floor, _ = made()
    past = past_of(floor)
    over = replace(past, run=replace(past.run, state="finished", closed_at=floor.now))
    said = Overruled(9 * MINUTE, "a jig", "ann", floor.now + MINUTE, "later")
    later = replace(over, estimates=replace(past.estimates, overruled={("rail", "clean", "hand"): (said,)}, _known={}))

    before, again = replayable(over), replayable(later)

    assert before is not None and again is not None
    assert (again.lengths, again.spread) == (before.lengths, before.spread)
