"""The review tells the truth, where the truth is known: in made-up shops (``tests/simulated``)."""

from collections.abc import Iterator
from functools import cache
from math import log

import pytest

from runboard.review.happened.happened import happened
from runboard.review.held.replay import replay
from runboard.review.held.replayable import replayable
from tests.examples import examples
from tests.simulated.history import History, history
from tests.simulated.looking_back import estimates_of, past_of
from tests.simulated.shops import BY_SESSION, MEANT, shop
from tests.simulated.world import moment

SHOPS = examples(12)
# 90 of 100 normal values lie so many deviations around their mean.
NINETY = 1.645
MINUTE = 60.0


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


@pytest.mark.parametrize("runs", [1, 3, 10])
def test_ninety_of_a_hundred_intervals_of_estimates_hold_the_true_time(runs: int):
    found = [abs(off) < NINETY for off in deviations(runs, BY_SESSION)]

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
    for seed in range(examples(len(MEANT))):
        past = past_of(history(shop(seed), seed))
        again = replay(replayable(past))
        took = past.run.closed_at - past.run.opened_at
        if abs(again.problem.moment(again.finish) - past.run.closed_at) > took / 20:
            off.append(seed)

    # One that ended minutes before closing time may end on the next morning.
    assert len(off) <= SHOPS / 20, off
