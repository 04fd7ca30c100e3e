"""Whatever was pressed in whatever order: the study counts what the estimates counted, and nothing is left out silently."""

from collections import Counter
from random import Random

import pytest

from runboard.floor.looking.review import past_of
from runboard.floor.workshop import Workshop
from runboard.plan.estimates import is_of_wood, measured_in
from runboard.plan.observed import is_likely, observations
from runboard.review.measured.seen import WHY_LEFT_OUT
from runboard.review.measured.study import TimeStudy
from runboard.review.measured.time_study import time_study
from runboard.review.past import Past
from runboard.run.log.corrections import voided
from tests.core.taps import Taps
from tests.core.test_state_machine import RULES

Studied = list[tuple[Workshop, Past, TimeStudy]]


@pytest.fixture(scope="module")
def studied() -> Studied:
    """Every run of three shops, each after an evening of presses by three phones, one of them now and then offline."""
    shops = [an_evening(seed) for seed in (2, 3, 11)]
    pasts = [(shop, past_of(shop, key)) for shop in shops for key in shop.ledger.state.runs]
    return [(shop, past, time_study(past)) for shop, past in pasts]


def an_evening(seed: int) -> Workshop:
    random, machine = Random(seed), Taps()
    machine.opens()
    for _ in range(60):
        name, arguments = random.choice(RULES)
        drawn = {"random": random, "which": random.randrange(3), "other": random.randrange(3)}
        drawn |= {"presses": random.randint(2, 9), "minutes": random.choice((1, 5, 15, 40)), "on": True}
        getattr(machine, name)(**{argument: drawn[argument] for argument in arguments})
    return machine.shop


def test_the_study_counts_what_the_run_taught(studied: Studied) -> None:
    for _, past, study in studied:
        taught = measured_in(past.run, past.book.time_zone)
        for one in study.elements:
            step = past.run.route.step(one.step)
            assert step is not None
            guess = past.estimates.guess(past.run, step, one.kind)
            times = taught.get((past.run.product, one.step, one.kind), ())
            fitting = [each for each in times if is_of_wood(past.run, each.wood) and is_likely(guess, each.length)]
            assert sorted(one.lengths) == sorted(each.length for each in fitting)
    assert any(one.n for _, _, study in studied for one in study.elements)


def test_every_observation_is_counted_or_left_out_with_its_why(studied: Studied) -> None:
    whys: set[str] = set()
    for _, past, study in studied:
        whys |= {why for one in study.elements for why in one.why_left_out}
        told = Counter({(one.step, one.kind): one.n + len(one.left_out) for one in study.elements})
        assert Counter((each.step.key, each.kind) for each in observations(past.run)) <= told
    assert {"interrupted", "overlapping", "going on", "no length", "no end", "undone", "amended"} <= whys
    assert whys <= set(WHY_LEFT_OUT)


def test_every_beginning_that_was_taken_back_is_left_out_as_such(studied: Studied) -> None:
    shops = {id(shop): shop for shop, _, _ in studied}.values()
    gone = [shop.ledger.arrived[key] for shop in shops for key in voided(shop.ledger.arrived)]
    begun = [event.load for event in gone if event.kind in ("load started", "machine started", "unloading started")]

    found = [
        left.element.load
        for _, _, study in studied
        for one in study.elements
        for left in one.left_out
        if left.why == "undone"
    ]

    assert sorted(found) == sorted(begun) != []


def test_shares_and_sums_are_what_they_can_be(studied: Studied) -> None:
    for _, _, study in studied:
        assert study.share is None or 0 <= study.share <= 1
        assert len(study.presses) <= 3
        for one in study.elements:
            assert one.taken_total is None or one.taken_total.total_seconds() >= 0
            assert one.guessed_of_taken <= one.guessed_total
            assert (one.median is None) == (not one.lengths)
