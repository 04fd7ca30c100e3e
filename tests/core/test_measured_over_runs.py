"""An element over runs: its chart and how its estimate went."""

from datetime import UTC, date, datetime, timedelta

import pytest

from runboard.plan.estimates import Estimates, Measured, estimates_from
from runboard.review.measured.over_runs import element_chart, history_of_estimate
from runboard.run.fold.overruled import Overruled
from tests.core.pressing import Floor
from tests.core.test_estimates import floor_with_a_cut_board, worked

MINUTE = timedelta(minutes=1)
KEY = ("rail", "clean", "hand")


def at(day: int, hour: int = 18) -> datetime:
    return datetime(2026, 6, day, hour, tzinfo=UTC)


def measured(minutes: float, run: str, day: int, hour: int = 18, wood: str = "ash") -> Measured:
    return Measured(minutes * MINUTE, (run, date(2026, 6, day)), wood, at(day, hour))


def asked(*times: Measured, overruled: tuple[Overruled, ...] = ()):
    floor = floor_with_a_cut_board()
    step = floor.run.route.step("clean")
    assert step is not None
    return Estimates({KEY: times}, {KEY: overruled}), floor.run, step, "hand"


def word(minutes: float, day: int) -> Overruled:
    return Overruled(minutes * MINUTE, "a new brush", "ann", at(day, 12), f"event-{day}")


def test_the_chart_has_every_likely_time_in_order_with_its_run():
    times = (measured(1.2, "r2", 9), measured(1, "r1", 2), measured(1.1, "r1", 2, 19), measured(40, "r1", 3))

    found = element_chart(*asked(*times))

    assert found is not None
    assert found.chart.points == pytest.approx((1, 1.1, 1.2))
    assert [run for run, _ in found.sessions] == ["r1", "r1", "r2"]
    assert (found.chart.centre, found.chart.ranges) == (pytest.approx(1.1), pytest.approx((0.1, 0.1)))


def test_what_lies_beyond_a_limit_is_out_and_no_limit_lies_below_nought():
    steady = [measured(1 + 0.01 * (day % 2), "r1", day) for day in range(1, 20)]

    found = element_chart(*asked(*steady, measured(3, "r2", 25)))
    wild = element_chart(*asked(measured(0.3, "r1", 1), measured(3, "r1", 2)))

    assert found is not None
    assert found.chart.out == (19,)
    assert wild is not None
    assert wild.chart.lower == 0


def test_a_single_time_has_no_chart():
    assert element_chart(*asked(measured(1, "r1", 2))) is None


def test_another_wood_is_no_point():
    assert element_chart(*asked(measured(1, "r1", 2), measured(1, "r1", 3, wood="oak"))) is None


def test_an_estimate_went_run_by_run_and_ends_with_what_is_believed_now():
    estimates, run, step, kind = asked(measured(2, "r1", 2), measured(2, "r1", 3), measured(2, "r2", 9))

    found = history_of_estimate(estimates, run, step, kind, "UTC")

    assert [(one.run, one.at.day, one.n, one.source) for one in found] == [
        ("r1", 3, 2, "measured 2"),
        ("r2", 9, 1, "measured 3"),
    ]
    assert MINUTE < found[0].length < found[1].length
    assert found[-1].length == estimates.of(run, step, kind).length


def test_a_word_begins_the_history_anew_with_its_reason():
    overruled = (word(4, 5),)
    estimates, run, step, kind = asked(measured(2, "r1", 2), measured(3, "r2", 9), overruled=overruled)

    found = history_of_estimate(estimates, run, step, kind, "UTC")

    assert [(one.run, one.source, one.length) for one in found[1:2]] == [("", "said", 4 * MINUTE)]
    assert [one.overruled for one in found] == [None, *overruled, *overruled]
    assert 3 * MINUTE < found[2].length < 4 * MINUTE
    assert found[-1].length == estimates.of(run, step, kind).length


def test_each_word_holds_until_the_next():
    words = (word(4, 5), word(1, 7))

    found = history_of_estimate(*asked(measured(3, "r2", 6), overruled=words), "UTC")

    assert [(one.run, one.source) for one in found] == [("", "said"), ("r2", "measured 1"), ("", "said")]


def test_of_what_nobody_measured_there_is_no_history():
    assert history_of_estimate(*asked(), "UTC") == ()


def test_a_log_tells_it_as_it_was_worked():
    floor: Floor = floor_with_a_cut_board()
    worked(floor, "clean/1", 8)
    body = {"of": "rail", "step": "clean", "kind": "hand", "minutes": 3, "why": "a new brush"}
    floor.press("time overruled", body)
    worked(floor, "clean/2", 10)
    step = floor.run.route.step("clean")
    assert step is not None

    found = history_of_estimate(estimates_from(floor.state, floor.book), floor.run, step, "hand", "UTC")

    assert [(one.run, one.n, one.source) for one in found] == [
        ("r1", 1, "measured 1"),
        ("", 0, "said"),
        ("r1", 1, "measured 1"),
    ]
