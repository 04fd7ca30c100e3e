"""Times of moves with limited acceleration, and speeds at corners, calculated here.

A move from rest to rest: t = d/v + v/a where d ≥ v²/a, else 2·√(d/a) (any text of mechanics). A corner that may be left by δ: the circle that
touches both sides at the angle θ between them and leaves the point by δ has r = δ·sin(θ/2)/(1 − sin(θ/2)), and v² = a·r
bounds what bends the path. The geometry is derived here; that it is used for corner speeds is told in an essay of S. K. Jeon (2009 to 2011; from memory).
"""

from math import cos, radians, sin, sqrt

import pytest

from runboard.plan.program.motion import of_all_axes, timed
from runboard.plan.program.motion_kernel import corner_w
from runboard.shop.machines import Motion
from tests.core.moves_by_hand import feed, moves
from tests.outside.said import calculated

MECHANICS = "a move from rest to rest by one acceleration (any text of mechanics)"
CORNERS = "the circle that touches both sides of a corner"


def machine(accel: float, corner: float = 0.01) -> Motion:
    return of_all_axes(Motion(), rapid=60_000, accel=accel, corner=corner)


@calculated(
    MECHANICS,
    {
        (100, 50, 500): 2.1,
        (100, 100, 500): 1.2,
        (10, 100, 500): 0.2828427,
        (20, 100, 500): 0.4,
        (300, 50, 1000): 6.05,
    },
    within=1e-6,
)
def test_a_move_from_rest_to_rest(distance: float, speed: float, accel: float) -> float:
    return timed(moves(feed(distance, 0, 0, speed=speed)), machine(accel)).total


@calculated(CORNERS, {60: 3.1623, 90: 4.9135, 120: 8.0400, 135: 11.0168}, within=1e-4)
def test_the_speed_at_a_corner(angle: float) -> float:
    """mm/s, at a = 1000 mm/s² and δ = 0.01 mm."""
    return sqrt(corner_w(1000, 0.01, sin(radians(angle) / 2)))


@pytest.mark.parametrize("angle", [60, 90, 120, 135])
def test_two_moves_with_a_corner_take_the_time_of_its_speed(angle: float) -> None:
    half = radians(angle) / 2  # the sides lie on either side of the x axis, along which the speed changes
    one = (10 * cos(half), 10 * sin(half))
    corner = sqrt(corner_w(1000, 0.01, sin(half)))

    found = timed(moves(feed(0, 0, 0, speed=500), feed(one[0], -one[1], 0, speed=500), start=(*one, 0)), machine(1000))

    # up to the peak and down to the corner: v = √(a·d + w/2), t = (2v − v_corner)/a, by what the axes allow along a side
    along = 1000 / max(cos(half), sin(half))
    assert found.total == pytest.approx(2 * (2 * sqrt(along * 10 + corner**2 / 2) - corner) / along)
