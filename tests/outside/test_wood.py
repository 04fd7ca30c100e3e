"""Wood and moisture against the Wood Handbook of the USDA Forest Products Laboratory (public domain)."""

from runboard.plan.fits.moisture import change_of_width, emc
from runboard.plan.fits.woods import wood_named
from runboard.shop.units import MM_A_INCH
from tests.outside.said import calculated, from_memory, published

TABLE_4_2 = "Wood Handbook 2021 (FPL-GTR-282), table 4-2 and equation 4-5, as quoted"
TABLE_13_5 = "GTR-190, table 13-5, https://issuhub.com/view/index/5801?pageIndex=307"
GRAVITIES = "Wood Handbook, table 5-3, http://synthmind.com/Tree_Species_Strength_Properties.htm"
INCH = float(MM_A_INCH)


@published(
    TABLE_4_2,
    {
        (21.1, 5): 1.3, (21.1, 30): 6.2, (21.1, 50): 9.2, (21.1, 75): 14.4, (21.1, 95): 23.9, (21.1, 85): 17.9,
        (37.8, 50): 8.7, (37.8, 90): 19.5,
    },
    within=0.06,  # the table is rounded to a tenth, and 17.95 is printed as 17.9
)  # fmt: skip
def test_the_moisture_that_wood_comes_to(celsius: float, humidity: float) -> float:
    return emc(celsius, humidity / 100) * 100


@calculated(f"{TABLE_4_2}: the equation", {(20, 50): 9.27, (20, 65): 12.00}, within=0.005)
def test_the_same_between_the_tables_rows(celsius: float, humidity: float) -> float:
    return emc(celsius, humidity / 100) * 100


@published(
    TABLE_13_5,
    {
        "white ash": (0.00169, 0.00274), "American beech": (0.00190, 0.00431), "yellow birch": (0.00256, 0.00338),
        "black cherry": (0.00126, 0.00248), "basswood": (0.00230, 0.00330), "sugar maple": (0.00165, 0.00353),
        "red maple": (0.00137, 0.00289), "red oak": (0.00158, 0.00369), "white oak": (0.00180, 0.00365),
        "black walnut": (0.00190, 0.00274),
    },
)  # fmt: skip
def test_by_how_much_a_wood_moves(name: str) -> tuple[float | None, float | None]:
    wood = wood_named(name)
    return (wood.radial, wood.tangential) if wood else (None, None)


@published(
    "https://flooringartists.com/dimensional-change: mesquite, 5 in, 6 to 9 %",
    {(0.00129, 5, 6, 9): 0.01935},
    within=1e-9,
)
def test_the_floor_that_swells(coefficient: float, inches: float, before: float, after: float) -> float:
    return change_of_width(coefficient, inches, before / 100, after / 100)


@calculated(
    "ΔD = D C (M - M'), table 13-5",
    {
        ("red oak", 12, 12, 6): -0.2657,
        ("sugar maple", 6, 9, 6): -0.0635,
        ("white ash", 160 / INCH, 8, 12): 1.7536 / INCH,
    },
    within=5e-5,
)
def test_a_flat_sawn_board_that_dries_or_swells(name: str, inches: float, before: float, after: float) -> float:
    wood = wood_named(name)
    assert wood is not None
    assert wood.tangential is not None
    return change_of_width(wood.tangential, inches * INCH, before / 100, after / 100) / INCH


def gravity(name: str) -> float | None:
    """The specific gravity that the table of woods has."""
    wood = wood_named(name)
    return wood.gravity if wood else None


@published(
    GRAVITIES,
    {
        "white ash": 0.60, "American beech": 0.64, "black cherry": 0.50, "yellow birch": 0.62, "basswood": 0.37,
        "red maple": 0.54,
    },
)  # fmt: skip
def test_specific_gravity_at_twelve_per_cent(name: str) -> float | None:
    return gravity(name)


@published(
    "https://issuhub.com/view/index?id=4884&pageIndex=189, table 6.2",
    {"Douglas-fir": 0.51, "southern pine": 0.59, "hemlock": 0.44},
)
def test_specific_gravity_of_softwoods(name: str) -> float | None:
    return gravity(name)


@from_memory(
    "Wood Handbook, table 5-3",
    {"sugar maple": 0.63, "white oak": 0.68, "red oak": 0.63, "black walnut": 0.55, "yellow-poplar": 0.42},
)
def test_specific_gravity_of_others(name: str) -> float | None:
    return gravity(name)
