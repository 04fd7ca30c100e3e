"""What the formulas answer where there is little to say, and that chance is seeded."""

import pytest

from runboard.review.measured.charts import individuals
from runboard.review.measured.learning import fitted
from runboard.review.measured.lines import line_through
from runboard.review.measured.samples import deviation, difference_interval, needed


def test_of_one_observation_nothing_is_said_of_the_spread():
    assert (deviation([3.0]), needed([3.0]), needed([]), individuals([3.0])) == (None, None, None, None)


def test_times_that_never_differ_need_no_more():
    assert needed([3.0, 3.0]) == 0


def test_a_whole_count_is_not_rounded_up_once_more():
    # n = (2 s / (0.1 x))² with s = 1, x = 10: 4 exactly, of which 3 are there.
    assert needed([9.0, 10.0, 11.0], 0.1, 2) == 1


def test_two_points_or_points_one_above_another_make_no_line():
    assert line_through([1, 2], [1, 2]) is None
    assert line_through([1, 1, 1], [1, 2, 3]) is None


def test_a_line_through_every_point_leaves_nothing():
    line = line_through([1, 2, 3], [2, 4, 6])

    assert line is not None
    assert (line.slope, line.residual, line.fits) == (2, 0, 1)


def test_three_loads_have_no_trend_and_scattered_ones_none_that_is_clear():
    scattered = fitted([(1, 60), (2, 90), (3, 55), (4, 80), (5, 62)])

    assert fitted([(1, 90), (2, 80), (3, 70)]) is None
    assert scattered is not None
    assert not scattered.is_clear


def test_the_same_seed_gives_the_same_interval():
    before, after = [62.0, 58, 65, 61, 70], [50.0, 52, 47, 55]

    assert difference_interval(before, after, seed=7) == difference_interval(before, after, seed=7)
    assert difference_interval(before, after, seed=7) != difference_interval(before, after, seed=8)


def test_an_interval_of_a_difference_holds_the_difference():
    found = difference_interval([62.0, 58, 65, 61, 70], [50.0, 52, 47, 55])

    assert found is not None
    low, mid, high = found
    assert low < mid < high
    assert mid == pytest.approx(63.2 - 51)
    assert 7 < low < high < 17


def test_without_two_on_either_side_there_is_no_interval():
    assert difference_interval([1.0], [1.0, 2.0]) is None
