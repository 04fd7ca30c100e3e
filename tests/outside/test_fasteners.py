"""Wood screws against their standards, handbooks and makers' tables: sizes, pilot holes, what holds them.

The gauge's rule is ASME B18.6.1's; pilot holes are a maker's chart, and makers differ: in the shop they are data that anybody may
change. Inches and pounds are the sources' own.
"""

from fractions import Fraction

from runboard.plan.fits.screws import allowable, diameter_of_gauge, gravity_squared, pilot_share, root_of, ultimate
from runboard.shop.common_screws import common_screws, pitch_of_metric, threads_an_inch
from runboard.shop.units import parse_length
from tests.outside.said import calculated, from_memory, published

INCH = 25.4
TOOLSIZE = "ASME B18.6.1, D = 0.060 + 0.013 N in, as https://toolsize.io/screws quotes it"
WOOD_CHART = "https://toolsize.io/screws, pilot holes in hardwood: a maker's kind of chart, sources vary"
LIMITS = "https://russian.locktechsz.com/blog/guide-to-selecting-wood-screws-by-size-and-use-296171.html"
ENGINEERS = "https://www.engineeringtoolbox.com/wood-screws-allowable-withdrawal-load-d_1815.html"
TEXTBOOK = "https://issuhub.com/view/index?id=4884&pageIndex=189, table 6.2"
HANDBOOK = "USDA Forest Products Laboratory, Wood Handbook, chapter 8"

GAUGES = {4: 0.112, 5: 0.125, 6: 0.138, 7: 0.151, 8: 0.164, 9: 0.177, 10: 0.190, 12: 0.216, 14: 0.242}
MOST_AND_LEAST = {
    4: (0.116, 0.105), 6: (0.142, 0.131), 8: (0.168, 0.157), 10: (0.194, 0.183), 12: (0.220, 0.209), 14: (0.246, 0.235),
}  # fmt: skip


@published(TOOLSIZE, GAUGES, within=1e-9)
def test_the_gauge_says_the_diameter(gauge: int) -> float:
    return diameter_of_gauge(gauge) / INCH


@published(LIMITS, dict.fromkeys(MOST_AND_LEAST, 0.004), within=1e-9)
def test_the_largest_thread_is_the_gauges_and_its_tolerance(gauge: int) -> float:
    return MOST_AND_LEAST[gauge][0] - diameter_of_gauge(gauge) / INCH


@published(LIMITS, dict.fromkeys(MOST_AND_LEAST, -0.007), within=1e-9)
def test_the_smallest_thread_is_the_gauges_and_its_tolerance(gauge: int) -> float:
    return MOST_AND_LEAST[gauge][1] - diameter_of_gauge(gauge) / INCH


@published(WOOD_CHART, {4: "5/64", 6: "7/64", 8: "1/8", 10: "9/64", 12: "11/64", 14: "13/64"})
def test_a_screw_begins_with_the_charts_pilot_in_hardwood(gauge: int) -> str:
    (screw,) = (each for each in common_screws().values() if each["gauge"] == gauge)
    return str(Fraction(parse_length(screw["pilot_hard"], "mm") / INCH).limit_denominator(64))


@published("https://www.blacksmithbolt.com/store/pg/9-Screw-Dimensions.aspx", {"hard": 1.0, "soft": 0.85})
def test_the_pilots_share_of_the_root(hardness: str) -> float:
    return pilot_share(hardness == "hard")


@from_memory(
    "handbooks, whose ranges differ",
    {(4, 0.075, 0.083): True, (6, 0.094, 0.100): True, (8, 0.113, 0.122): True, (10, 0.131, 0.138): True},
)
def test_a_root_that_nobody_measured_lies_in_the_handbooks_range(gauge: int, least: float, most: float) -> bool:
    return least <= root_of(diameter_of_gauge(gauge)) / INCH <= most


@from_memory("ASME B18.6.1", {4: 22, 6: 18, 8: 15, 10: 13, 12: 11, 14: 10})
def test_threads_an_inch(gauge: int) -> int:
    return threads_an_inch(gauge)


@from_memory("ISO 1478", {2.2: 0.8, 2.9: 1.1, 3.5: 1.3, 4.2: 1.4, 4.8: 1.6, 5.5: 1.8, 6.3: 1.8})
def test_the_pitch_of_a_tapping_screw(diameter: float) -> float:
    return pitch_of_metric(diameter)


@published(ENGINEERS, {(0.45, 10): 109.65}, within=5e-3)
def test_what_an_inch_of_thread_may_be_loaded_with(gravity: float, gauge: int) -> float:
    return allowable(gravity, diameter_of_gauge(gauge), INCH) / 4.4482216152605


@calculated("W = 2850 G² D", {(0.68, 8): 216.1}, within=0.05)
def test_the_same_in_white_oak(gravity: float, gauge: int) -> float:
    return allowable(gravity, diameter_of_gauge(gauge), INCH) / 4.4482216152605


@published(TEXTBOOK, {0.51: 0.260, 0.59: 0.348, 0.44: 0.194}, within=5e-4)
def test_the_square_of_a_specific_gravity(gravity: float) -> float:
    return gravity_squared(gravity)


@from_memory(f"{HANDBOOK}, equation 8-10: p = 108.25 G² D L (N, mm)", {(0.6, 3.5, 10.0): 1363.95}, within=0.5)
def test_what_pulls_a_screw_out(gravity: float, diameter: float, length: float) -> float:
    return ultimate(gravity, diameter, length)


@from_memory(f"{HANDBOOK}, equation 8-10, beside the allowable one", {(0.5, 4.2, 20.0): 0.18}, within=2e-3)
def test_the_allowable_is_less_than_a_fifth_of_what_pulls_it_out(
    gravity: float, diameter: float, length: float
) -> float:
    return allowable(gravity, diameter, length) / ultimate(gravity, diameter, length)
