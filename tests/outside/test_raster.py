"""Times of an engraving that is swept line by line, against their closed form. Calculated: no published example was found."""

import numpy as np
import pytest

from runboard.plan.engraving.answer import worked_out
from runboard.plan.engraving.question import Engraving
from runboard.plan.engraving.sweep import Sweep
from runboard.shop.book import Book


def test_100_by_50_mm_at_100_mm_a_second_takes_550_seconds_and_the_steps() -> None:
    """Calculated: 500 lines of 100/100 + 2·100/2000 s, run-up 100²/(2·2000) mm; a step of 0.1 mm is 2·√(0.1/2000) s."""
    sweep = Sweep(speed=100, accel=2000, spacing=0.1, rapid=100)

    assert sweep.overscan == 2.5
    assert sweep.lines(50) == 500
    assert 500 * (100 / sweep.speed) == 500
    assert sweep.seconds(np.full(500, 100.0), np.zeros(500)) == pytest.approx(550)
    found = worked_out(Book(), Engraving(mark_width=100, mark_height=50, speed=100, accel=2000, spacing=0.1), None)
    assert found.methods[0].seconds == pytest.approx(550 + 500 * 2 * (0.1 / 2000) ** 0.5)


def test_few_small_shapes_on_a_bed_take_64_19_and_10_minutes() -> None:
    """Calculated: nine marks of 20 × 25 mm over 400 × 250 mm, v = 300, d = 0.1, a = 3000, without the way from mark to mark."""
    nine = Engraving(
        columns=3, rows=3, mark_width=20, mark_height=25, pitch_x=190, pitch_y=112.5, speed=300, accel=3000, spacing=0.1
    )

    found = worked_out(Book(), nine, None)

    whole, rows, pieces = found.methods
    turn = 2 * 300 / 3000 + 2 * (0.1 / 3000) ** 0.5
    assert whole.seconds / 60 == pytest.approx(64.4, abs=0.05)
    assert found.without_splitting / 60 == pytest.approx(19.3, abs=0.05)
    assert 9 * 250 * (20 / 300 + turn) / 60 == pytest.approx(10.4, abs=0.05)
    assert pieces.seconds / 60 == pytest.approx(10.4, abs=0.2)  # with the way from mark to mark
    assert rows.seconds <= pieces.seconds + 1e-9
    assert found.best == "rows"


@pytest.mark.parametrize(
    ("distance", "speed", "accel", "seconds"),
    [(100, 50, 500, 2.1), (100, 100, 500, 1.2), (10, 100, 500, 0.282843), (20, 100, 500, 0.4), (300, 50, 1000, 6.05)],
)
def test_a_move_from_rest_to_rest_takes_what_mechanics_say(
    distance: float, speed: float, accel: float, seconds: float
) -> None:
    """Calculated by the closed form of any mechanics text: d/v + v/a, else 2·√(d/a)."""
    assert float(Sweep(1, accel, 0.1, speed).moved(distance)) == pytest.approx(seconds, abs=1e-6)


def test_a_head_that_is_followed_in_small_steps_of_time_takes_as_long() -> None:
    sweep = Sweep(speed=120, accel=1500, spacing=0.5, rapid=150, more=3)
    widths = np.array([40.0, 40.0, 55.0])

    found = sweep.seconds(widths, np.full(3, 0.5))

    followed = sum(_followed(width + 2 * sweep.overscan, 120, 1500) + _followed(0.5, 150, 1500) for width in widths)
    assert found == pytest.approx(followed, rel=2e-3)


def _followed(distance: float, most: float, accel: float) -> float:
    """Seconds from rest to rest, tick by tick: faster while there is room to brake, then slower."""
    at = speed = seconds = 0.0
    tick = min(2e-5, (distance / accel) ** 0.5 / 2000)
    while at < distance * (1 - 1e-6):
        faster = min(most, speed + accel * tick)
        has_room = faster**2 / (2 * accel) + faster * tick <= distance - at
        after = faster if has_room else max(0.0, speed - accel * tick) or speed
        at += (speed + after) / 2 * tick
        speed, seconds = after, seconds + tick
    return seconds
