"""Did it work: before and after on what a change touched, with an interval."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import numpy
import pytest
from scipy.stats import bootstrap

from runboard.plan.change import Capacity, Change, Helper, Instead, LoadSize, OneVisit, Several, Times, TraySize
from runboard.review.changes.nouns import NOTHING, Adopted, SeenRun, Span3
from runboard.review.changes.verdict import judged, touched_in
from runboard.review.measured.study import ElementStudy, TimeStudy

MINUTE = timedelta(minutes=1)
AN_HOUR = Span3(50 * MINUTE, 60 * MINUTE, 75 * MINUTE)
SLOW = [3.1, 2.9, 3.3, 3.0, 2.7, 3.2, 3.1, 2.8]
QUICK = [2.1, 1.9, 2.3, 2.0, 2.2, 1.8, 2.1, 2.0]
FASTER = Times("r1", "hooks", "hand", 66)


def element(step: str, kind: str, minutes: Sequence[float], times: float, guess: float = 2) -> ElementStudy:
    operation = step.partition(":")[0]
    found = ElementStudy(step, step, operation, kind, guess * MINUTE, guess * MINUTE, guess * MINUTE, "guess")
    return replace(found, lengths=tuple(each * MINUTE for each in minutes), guessed_total=guess * times * MINUTE)


def a_run(*elements: ElementStudy, pieces: int = 60, waited: float | None = None) -> SeenRun:
    return SeenRun(TimeStudy(elements, 1.0), pieces, None if waited is None else waited * MINUTE)


def adopted(change: Change | None) -> Adopted:
    at = datetime(2026, 6, 1, tzinfo=UTC)
    return Adopted("a", "r1", "rail", change, "", AN_HOUR, AN_HOUR, None, "route", "ann", at)


def hooks(minutes: Sequence[float], pieces: int = 60) -> SeenRun:
    return a_run(element("hooks", "hand", minutes, pieces), pieces=pieces)


def test_a_change_that_worked_says_how_much_with_an_interval() -> None:
    found = judged(adopted(FASTER), hooks(SLOW), hooks(QUICK))

    assert found.saved is not None
    assert (found.code, found.of, found.likely, found.before, found.after) == ("saved", "hands", "kept", 8, 8)
    mean = (sum(SLOW) - sum(QUICK)) / 8 * 60
    assert found.saved.mid / MINUTE == pytest.approx(mean)
    assert found.saved.low < found.saved.mid < found.saved.high


def test_the_interval_is_that_of_a_bootstrap_of_scipy() -> None:
    found = judged(adopted(FASTER), hooks(SLOW), hooks(QUICK))

    def difference(one: numpy.ndarray, other: numpy.ndarray, axis: int) -> numpy.ndarray:
        return (one.mean(axis=axis) - other.mean(axis=axis)) * 60

    theirs = bootstrap((SLOW, QUICK), difference, method="percentile", n_resamples=9999, rng=1).confidence_interval
    assert found.saved is not None
    assert found.saved.low / MINUTE == pytest.approx(theirs.low, abs=0.8)
    assert found.saved.high / MINUTE == pytest.approx(theirs.high, abs=0.8)


def test_that_the_run_after_was_another_evening_widens_the_interval() -> None:
    def in_sessions(minutes: Sequence[float], sessions: float) -> SeenRun:
        return a_run(replace(element("hooks", "hand", minutes, 60), by_session=0.25, sessions=sessions))

    one, nine = (judged(adopted(FASTER), in_sessions(SLOW, many), in_sessions(QUICK, many)) for many in (1, 9))

    alone = judged(adopted(FASTER), hooks(SLOW), hooks(QUICK))
    assert one.saved is not None and nine.saved is not None and alone.saved is not None
    assert one.saved.mid == alone.saved.mid
    assert one.saved.low < nine.saved.low < alone.saved.low
    assert (one.code, nine.code) == ("no difference", "saved")


def test_the_same_seed_draws_the_same_and_the_same_times_save_nothing() -> None:
    one, other = (judged(adopted(FASTER), hooks(SLOW), hooks(SLOW), seed=3) for _ in range(2))

    assert one == other
    assert one.code == "no difference"
    assert one.saved is not None
    assert one.saved.mid == timedelta(0)


def test_what_takes_longer_since_is_worse_and_likely_dropped() -> None:
    found = judged(adopted(FASTER), hooks(QUICK), hooks(SLOW))

    assert (found.code, found.likely) == ("worse", "dropped")


@pytest.mark.parametrize(("before", "after"), [(SLOW, QUICK[:2]), (SLOW[:2], QUICK), ([], [])])
def test_of_too_few_observations_nothing_is_said(before: list[float], after: list[float]) -> None:
    found = judged(adopted(FASTER), hooks(before), hooks(after))

    assert (found.code, found.saved) == ("too little", None)


def test_a_larger_run_is_compared_for_as_many_pieces() -> None:
    same, larger = (judged(adopted(FASTER), hooks(SLOW, 60), hooks(QUICK, pieces)) for pieces in (60, 120))

    assert larger.saved == same.saved
    assert larger.pieces == 60


def test_fewer_setups_for_as_many_pieces_are_saved_though_each_takes_as_long() -> None:
    before = a_run(element("sand", "setup", [4, 4, 4, 4], 12, 4))
    after = a_run(element("sand", "setup", [4, 4, 4, 4], 6, 4))

    found = judged(adopted(TraySize("r1", 10)), before, after)

    assert found.saved is not None
    assert found.saved.mid == 24 * MINUTE


def test_an_operation_that_one_visit_leaves_no_more_is_all_saved_but_its_work() -> None:
    before = a_run(
        element("clean", "hand", [1] * 4, 60, 1),
        element("hooks", "hand", [2] * 4, 60),
        element("hooks", "setup", [5] * 4, 12, 5),
    )
    after = a_run(element("clean", "hand", [3] * 4, 60, 3))

    found = judged(adopted(OneVisit("r1", "clean")), before, after)

    assert found.saved is not None
    assert found.saved.mid == 60 * MINUTE


def test_more_of_a_service_is_judged_by_what_waited_for_it() -> None:
    change = adopted(Capacity("rack", 12))

    better = judged(change, a_run(waited=100), a_run(waited=30, pieces=120))

    assert better.saved == Span3(85 * MINUTE, 85 * MINUTE, 85 * MINUTE)
    assert (better.code, better.of) == ("saved", "waiting")
    assert judged(change, a_run(waited=100), a_run()).code == "too little"
    assert judged(change, a_run(waited=100), a_run(waited=100)).code == "no difference"


@pytest.mark.parametrize("change", [Helper("r1", "hooks", "ann", 60), None])
def test_what_touches_nothing_that_is_measured_says_so(change: Change | None) -> None:
    found = judged(adopted(change), hooks(SLOW), hooks(QUICK))

    assert (found.code, found.of) == ("too little", "")


@pytest.mark.parametrize(
    ("change", "touched"),
    [
        (Times("r1", "sand", "hand", 80), [("sand:120", "hand"), ("sand:180", "hand")]),
        (Times("r1", "sand:120", "hand", 80), [("sand:120", "hand")]),
        (Instead("r1", "cut", "tool", "", 80), [("cut", "machine"), ("cut", "loading")]),
        (Instead("r1", "cut", "tool", "", 100, 0.9), []),
        (LoadSize("r1", "cut", 4), [("cut", "machine"), ("cut", "loading")]),
        (Several((Capacity("rack", 2), Times("r1", "cut", "machine", 50))), [("cut", "machine")]),
    ],
)
def test_a_change_touches_its_own_elements(change: Change, touched: list[tuple[str, str]]) -> None:
    elements = (
        element("cut", "machine", [], 1),
        element("cut", "loading", [], 1),
        element("sand:120", "hand", [], 1),
        element("sand:180", "hand", [], 1),
    )

    assert touched_in(change, [TimeStudy(elements, 1.0)]) == touched


def test_a_saving_of_the_machine_is_beside_what_it_promised_of_the_finish() -> None:
    before, after = (a_run(element("cut", "machine", [each] * 4, 4, 38)) for each in (50, 40))

    found = judged(replace(adopted(Times("r1", "cut", "machine", 80)), hands=NOTHING), before, after)

    assert (found.of, found.promised, found.code) == ("machine", AN_HOUR, "saved")
