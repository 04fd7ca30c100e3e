"""Feed arithmetic, f = v / (n z) and v = π D n, against worked problems; their inches are the sources' own.

No table of chip loads is asserted: makers' tables disagree by a factor of five for one cutter, so what is good is the shop's own.
"""

from runboard.plan.feeds.arithmetic import chip_load, feed_of, rpm_at_speed, rpm_of, surface_speed
from tests.outside.said import calculated, published

INCH = 25.4


@published("https://desktopcncforge.com/cnc-chipload-calculation/", {(18_000, 2, 0.005): 180}, within=1e-6)
def test_the_feed_in_inches_a_minute(rpm: float, flutes: int, chip: float) -> float:
    return feed_of(rpm, flutes, chip * INCH) / INCH


@published("hobby guide 'Chipload Explained'", {(100, 18_000, 2): 0.00278}, within=5e-6)
def test_the_chip_load_in_inches(feed: float, rpm: float, flutes: int) -> float:
    return chip_load(feed * INCH, rpm, flutes) / INCH


@published("hobby guide 'Chipload Explained'", {(16_000, 2, 0.002): 64}, within=1e-6)
def test_the_feed_of_a_slower_spindle(rpm: float, flutes: int, chip: float) -> float:
    return feed_of(rpm, flutes, chip * INCH) / INCH


@published("https://cncshop.eu/pages/calculating-feeds-and-speeds", {(18_000, 2, 0.1): 3600}, within=1e-6)
def test_the_feed_in_millimetres_a_minute(rpm: float, flutes: int, chip: float) -> float:
    return feed_of(rpm, flutes, chip)


@published("https://figured.fyi/chip-load-calculator", {(60, 18_000, 2): 0.00167}, within=5e-6)
def test_the_chip_load_of_a_slower_feed(feed: float, rpm: float, flutes: int) -> float:
    return chip_load(feed * INCH, rpm, flutes) / INCH


@calculated("v = π D n", {(0.25, 18_000): 1178.1}, within=0.05)
def test_surface_speed_in_feet_a_minute(inches: float, rpm: float) -> float:
    return surface_speed(inches * INCH, rpm) / (12 * INCH)


@calculated("v = π D n", {(6.35, 18_000): 359.08}, within=0.005)
def test_surface_speed_in_metres_a_minute(diameter: float, rpm: float) -> float:
    return surface_speed(diameter, rpm) / 1000


@calculated("n = v / (π D), n = v / (z f)", {"speed": 18_000, "feed": 18_000}, within=1e-6)
def test_turns_from_the_others(asked: str) -> float:
    return rpm_at_speed(surface_speed(6.35, 18_000), 6.35) if asked == "speed" else rpm_of(3600, 2, 0.1)
