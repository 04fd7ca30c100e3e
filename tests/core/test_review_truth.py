"""The review tells the truth, where the truth is known: in made-up shops (``tests/simulated``)."""

from collections.abc import Iterator
from datetime import timedelta
from functools import cache
from math import log

import pytest

from runboard.plan.change import Times
from runboard.plan.schedule.rule.rule import warm
from runboard.review.changes.nouns import Adopted, Idea, SeenRun, Span3, Verdict
from runboard.review.changes.trying import tried
from runboard.review.changes.verdict import judged
from runboard.review.happened.happened import happened
from runboard.review.held.held import held
from runboard.review.held.replay import replay
from runboard.review.held.replayable import replayable
from runboard.review.measured.time_study import time_study
from runboard.shop.product import ZERO
from tests.examples import examples
from tests.simulated.history import History, history, history_of
from tests.simulated.ideas import five_ideas
from tests.simulated.looking_back import estimates_of, past_of
from tests.simulated.shops import BY_SESSION, MEANT, shop, shops
from tests.simulated.truth import clear_pairs, is_right, moved, quicker, reliefs
from tests.simulated.world import World, moment

SHOPS = examples(6)
# 90 of 100 normal values lie so many deviations around their mean.
NINETY = 1.645
MINUTE = 60.0
# So many goes of luck tell the truth of a shop; by hand many, and larger shops.
MANY = examples(0)
SHORT = [*shops(MANY)] if MANY else [shop(seed, trays=(4, 6)) for seed in (2, 3, 7)]
GOES = 30 if MANY else 8


@pytest.fixture(scope="module", autouse=True)
def rule_by_hand():
    """A hundred shops are replayed by the compiled rule."""
    if MANY:
        warm()


@cache
def ten_runs(seed: int, session: float) -> History:
    return history(shop(seed, trays=(3, 5), session=session), seed, runs=10)


def deviations(runs: int, session: float) -> Iterator[float]:
    """For each time element by how many of its own deviations its estimate is off the true mean."""
    for seed in range(SHOPS):
        past = ten_runs(seed, session)
        estimates, run = estimates_of(past, runs), past.state.runs["r1"]
        for work in past.world.works:
            step = run.route.step(work.key)
            assert step is not None
            for kind, true in work.times.items():
                known = estimates.of(run, step, kind)
                yield log(true.mean * MINUTE / known.length.total_seconds()) / known.scatter.element


@pytest.mark.parametrize("session", [0.1, BY_SESSION])
@pytest.mark.parametrize("runs", [1, 3, 10])
def test_ninety_of_a_hundred_intervals_of_estimates_hold_the_true_time(runs: int, session: float):
    found = [abs(off) < NINETY for off in deviations(runs, session)]

    share, luck = sum(found) / len(found), 2 * (0.9 * 0.1 / len(found)) ** 0.5
    assert 0.85 - luck <= share <= 0.96 + luck


@pytest.mark.parametrize("seed", range(examples(len(MEANT))))
def test_the_hands_and_pieces_of_what_happened_are_those_that_really_were(seed: int):
    past = history(shop(seed), seed)

    found, course = happened(past_of(past)), past.courses[0]

    assert found.hands.total_seconds() / MINUTE == pytest.approx(course.hands, abs=0.1)
    assert (found.good, found.finished) == (course.good, moment(course.finished))


def test_replays_with_nothing_changed_end_when_their_runs_really_ended():
    off = []
    for world in SHORT:
        past = past_of(history(world, 1))
        again = replay(replayable(past))
        took = past.run.closed_at - past.run.opened_at
        if abs(again.problem.moment(again.finish) - past.run.closed_at) > took / 20:
            off.append(world.name)

    # One that ended minutes before closing time may end on the next morning.
    assert len(off) <= len(SHORT) / 20, off


def test_what_the_review_says_held_a_run_is_what_really_holds_its_shop():
    wrong = {}
    for world in SHORT:
        said = held(past_of(history(world, 1))).most
        found = moved(world, reliefs(world), range(GOES))
        if not is_right(said, found):
            wrong[world.name] = (said, found)

    assert len(wrong) <= len(SHORT) / 20, wrong


def test_the_review_ranks_five_ideas_as_they_really_are():
    agreed, pairs = 0, 0
    for world in SHORT:
        ideas = five_ideas(world)
        known = replayable(past_of(history(world, 1)))
        said = {each.idea.id: each for each in tried(known, [Idea(key, change) for key, (change, _) in ideas.items()])}
        found = moved(world, {key: changed for key, (_, changed) in ideas.items()}, range(GOES))
        for more, less in clear_pairs(found):
            pairs += 1
            agreed += said[more].earlier.mid > said[less].earlier.mid

    # Kendall's tau of those that really differ: of twenty pairs at most one the other way round.
    assert pairs > len(SHORT)
    assert agreed / pairs >= 0.95


def verdict_of(world: World, per_cent: int, seed: int) -> tuple[Verdict, float]:
    """What is said of a change after the run before and the run after it, and how many minutes of hands it really saves."""
    operation = next(work for work in world.works if "hand" in work.times and "setup" not in work.times)
    past = history_of([world, quicker(world, operation.key, per_cent, ("hand",))], seed)
    before, after = (SeenRun(time_study(each), world.pieces) for each in (past_of(past, "r1"), past_of(past, "r2")))
    change, promised = Times("r1", operation.key, "hand", per_cent), Span3(ZERO, ZERO, ZERO)
    adopted = Adopted("a", "r1", "rail", change, "", promised, promised, None, "route", "ann", past.now)
    return judged(adopted, before, after), world.pieces * operation.times["hand"].mean * (1 - per_cent / 100)


def test_a_change_that_changed_nothing_is_said_to_have_saved_something_as_seldom_as_said():
    worlds = [shop(seed, trays=(4, 8), session=BY_SESSION) for seed in range(examples(12))]

    said = [verdict_of(world, 100, seed)[0].code for seed, world in enumerate(worlds)]

    assert sum(code != "no difference" for code in said) <= 1 + len(worlds) / 20


def test_the_interval_of_what_a_change_saved_holds_what_it_really_saves():
    worlds = [shop(seed, trays=(4, 8), session=BY_SESSION) for seed in range(examples(12))]

    told = [verdict_of(world, 60, seed) for seed, world in enumerate(worlds)]

    hits = [verdict.saved.low <= really * timedelta(minutes=1) <= verdict.saved.high for verdict, really in told]
    assert sum(hits) >= 0.9 * len(hits) - 1
