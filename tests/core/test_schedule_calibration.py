"""Lengths drawn by chance have the published moments, and what the forecast calls nine in ten comes true nine times in ten."""

import math
from dataclasses import replace
from datetime import timedelta
from random import Random
from statistics import fmean, median, stdev

import pytest

from runboard.plan.estimates import GUESS_SPREAD, HANDS, KnownTime, Measured, updated
from runboard.plan.schedule.problem.nouns import TICK, Block, OrderDue, Plan, Problem, Worker
from runboard.plan.schedule.rule import rule as rules
from runboard.plan.schedule.rule.rule import Rule
from runboard.plan.schedule.told import forecast as forecasts
from runboard.plan.schedule.told.forecast import Forecast, Scatter, day_ends, days_of, drawn_lengths, forecast
from tests.core.instances import MONDAY
from tests.core.test_schedule_check import hand, shop

EVENINGS = tuple((day * 2880, day * 2880 + 480) for day in range(9))


@pytest.fixture
def warm() -> None:
    """The rule compiled for one test."""
    assert rules.warm()


def alone(*blocks: Block, windows: tuple[tuple[int, int], ...] = EVENINGS) -> Problem:
    """One person's work at a bench, one thing after another."""
    return replace(shop(*blocks), people=(Worker("ann", "Ann", windows, 0),))


def by_ann(index: int, length: int, step: str = "sand", last: bool = False, pieces: int = 5) -> Block:
    return replace(hand(index, length=length, people=(0,), last=last), step=step, pieces=pieces)


def in_order(problem: Problem) -> Plan:
    rule = Rule(problem)
    assert rule.finish([block.index for block in problem.blocks]) >= 0
    return rule.plan()


def test_a_length_s_mean_is_the_estimate_and_its_middle_lies_below_as_published():
    wide = Scatter(element=0.2, session=0.15, load=0.3)
    drawn = drawn_lengths(alone(by_ann(0, 100_000)), 20_000, lambda block, kind: wide)[:, 0].tolist()

    spread = wide.total
    assert spread == pytest.approx(math.sqrt(0.2**2 + 0.15**2 + 0.3**2))
    assert fmean(drawn) == pytest.approx(100_000, rel=0.01)
    assert median(drawn) * math.exp(spread**2 / 2) == pytest.approx(100_000, rel=0.01)
    assert stdev(drawn) == pytest.approx(100_000 * math.sqrt(math.exp(spread**2) - 1), rel=0.02)


def test_loads_of_an_element_and_of_a_session_share_their_luck():
    problem = alone(*(by_ann(at, 100_000) for at in range(3)), by_ann(3, 100_000, "oil"))
    wide = Scatter(element=0.2, session=0.15, load=0.3)

    drawn = drawn_lengths(problem, 8_000, lambda block, kind: wide, days=("mon", "mon", "tue", "mon"))

    logs = [[math.log(length) for length in column] for column in drawn[:, :4].T.tolist()]
    assert covariance(logs[0], logs[1]) == pytest.approx(0.2**2 + 0.15**2, abs=0.005)
    assert covariance(logs[0], logs[2]) == pytest.approx(0.2**2, abs=0.005)
    assert covariance(logs[0], logs[3]) == pytest.approx(0, abs=0.005)


def covariance(some: list[float], others: list[float]) -> float:
    one, other = fmean(some), fmean(others)
    return fmean((a - one) * (b - other) for a, b in zip(some, others, strict=True))


def lucky(luck: Random, spread: float) -> float:
    """A factor that is 1 on average."""
    return math.exp(luck.gauss(0, spread) - spread**2 / 2)


def test_nine_ranges_in_ten_hold_what_really_happens(warm: None):
    """Shops made by chance: how far off each guess is, what was measured in some evenings, and how the run then goes."""
    outside = [outcome(Random(shop_)) for shop_ in range(300)]

    early, late = outside.count(-1) / len(outside), outside.count(1) / len(outside)
    assert 0.05 <= early + late <= 0.15
    assert 0.02 <= early <= 0.08
    assert 0.02 <= late <= 0.08


def outcome(luck: Random) -> int:
    """-1 where a run was done before its range of nine in ten, 1 where it was done after it, else 0."""
    guess = timedelta(minutes=20)
    real_means = {step: guess * lucky(luck, GUESS_SPREAD) for step in ("sand", "oil", "fit")}
    known = {step: learned(luck, guess, real_means[step], at) for at, step in enumerate(real_means)}
    # One long window: what ends a plan early or late is the work, not the hours.
    steps = [step for step in real_means for _ in range(4)]
    blocks = [by_ann(at, known[step].length // TICK, step) for at, step in enumerate(steps)]
    problem = alone(*blocks, windows=((0, 50_000),))
    plan = in_order(problem)

    told = forecast(problem, plan, 200, lambda block, kind: known[block.step].scatter, luck.randrange(10**9))

    evening = {step: lucky(luck, HANDS.session) for step in real_means}
    really = sum(real_means[step] / TICK * evening[step] * lucky(luck, HANDS.load) for step in steps)
    return -1 if really < told.finish[5] else int(really > told.finish[95])


def learned(luck: Random, guess: timedelta, mean: timedelta, evenings: int) -> KnownTime:
    """What is known after so many evenings of three times each."""
    times = [
        Measured(mean * of_evening * lucky(luck, HANDS.load), ("r", MONDAY.date() + timedelta(evening)), "")
        for evening in range(evenings)
        for of_evening in [lucky(luck, HANDS.session)] * 3
    ]
    return updated(guess, times, HANDS)


def test_the_forecast_is_the_same_compiled_and_plain():
    problem = alone(*(by_ann(at, 60, "sand" if at < 9 else "oil", at > 9) for at in range(12)))
    plan = in_order(problem)
    wide = Scatter(0.2, 0.2, 0.2)
    plain = forecast(problem, plan, 60, lambda block, kind: wide)

    assert rules.warm()

    assert forecast(problem, plan, 60, lambda block, kind: wide) == plain
    assert len(set(plain.finish.values())) > 3


def made_by_hand(monkeypatch: pytest.MonkeyPatch) -> Forecast:
    """Two loads of 5 and 3 pieces, one after the other. In twenty goes the first takes 10, 20, … 200 ticks, the second
    always 100. Hours are 0–200 on the first evening and 2880–3080 on the next."""
    problem = alone(by_ann(0, 100, pieces=5, last=True), by_ann(1, 100, pieces=3, last=True), windows=EVENINGS[:2])
    problem = replace(
        problem,
        people=(Worker("ann", "Ann", ((0, 200), (2880, 3080)), 0),),
        orders=(OrderDue("r", "1", 4, 4, 60), OrderDue("r", "2", 4, 8, 200), OrderDue("r", "3", 1, 9, 90_000)),
    )
    lengths = [[10 * go, 100, 0, 0] for go in range(1, 21)]
    monkeypatch.setattr(forecasts, "drawn_lengths", lambda *_: lengths)
    return forecast(problem, in_order(problem))


def test_quantiles_and_chances_are_those_counted_by_hand(monkeypatch: pytest.MonkeyPatch):
    told = made_by_hand(monkeypatch)

    # The second load is estimated to fit where at least 100 ticks are left: after the first ten goes, at 110 … 200, else
    # the next evening, at 2980. So the finishes are 110, 120, … 200, and ten times 2980.
    assert told.goes == 20
    assert told.finish == {5: 110, 25: 150, 50: 200, 75: 2980, 95: 2980}
    assert told.by_evening == ((200, 0.5), (3080, 1.0))
    # Four pieces are there with the first load: by tick 60 in six goes. All eight are there with the second; nine never.
    assert told.by_due == {("r", "1"): 0.3, ("r", "2"): 0.5, ("r", "3"): 0.0}


def test_an_evening_ends_where_hours_end_for_the_night_and_names_the_days_of_a_plan():
    problem = alone(by_ann(0, 60), by_ann(1, 60), windows=((0, 60), (120, 180), (2880, 3000)))
    plan = in_order(problem)

    assert day_ends(problem) == [180, 3000]
    assert days_of(problem, plan) == [problem.moment(180).isoformat()] * 2
    late = replace(plan, placed=(plan.placed[0], replace(plan.placed[1], start=2880)))
    assert days_of(problem, late) == [problem.moment(tick).isoformat() for tick in (180, 3000)]
