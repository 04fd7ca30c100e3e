"""What the formulas answer where there is little to say."""

from runboard.review.measured.charts import individuals
from runboard.review.measured.learning import fitted
from runboard.review.measured.lines import line_through
from runboard.review.measured.samples import deviation, needed


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
