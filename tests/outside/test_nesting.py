"""Identical rectangles on a sheet, and lengths cut from stock, against published numbers: a layout never has more than the most
that is known, never lies over itself, and what is called a bound holds.

The instances were proved again where these values were gathered: the most is reached, and one more is ruled out.
"""

import pytest

from runboard.plan.stock.blocks import laid
from runboard.plan.stock.bounds import area_bound, barnes_bound, most
from runboard.plan.stock.lengths import Source, cut_to_length
from runboard.plan.stock.need import needed
from runboard.plan.stock.nest import Nest, Spot
from runboard.plan.stock.search import Found, searched
from runboard.shop.book import Book
from runboard.shop.product import Product
from runboard.shop.stocked import Piece, Stock
from tests.outside.said import calculated, from_memory, published

Sides = tuple[int, int, int, int]  # of the sheet, of the piece

BIRGIN = "Birgin, Lobato and Morabito, 'An effective recursive partitioning approach for the packing of identical rectangles in a rectangle' (2010)"
HARD: dict[Sides, int] = {(42, 39, 9, 4): 45, (43, 26, 7, 3): 53}
OTHERS: dict[Sides, int] = {(30, 22, 7, 4): 23, (40, 25, 7, 3): 47, (52, 33, 9, 4): 47, (57, 44, 12, 5): 41}
PALLETS: dict[Sides, int] = {
    (1200, 800, 600, 400): 4,
    (1200, 800, 400, 300): 8,
    (1200, 800, 300, 200): 16,
    (1200, 800, 365, 245): 9,
    (1200, 800, 208, 165): 27,
}
ALL = {**HARD, **OTHERS, **PALLETS}


def lies_over(nest: Nest, spots: tuple[Spot, ...]) -> list[tuple[Spot, Spot]]:
    """Every pair of pieces that lie on one another, by their corners alone; a piece outside lies over itself."""
    boxes = []
    for spot in spots:
        wide, high = (nest.wide, nest.long) if spot.turned else (nest.long, nest.wide)
        boxes.append((spot, spot.x, spot.y, spot.x + wide, spot.y + high))
    found = [(a[0], a[0]) for a in boxes if a[1] < 0 or a[2] < 0 or a[3] > nest.x or a[4] > nest.y]
    for at, a in enumerate(boxes):
        found += [(a[0], b[0]) for b in boxes[:at] if a[1] < b[3] and b[1] < a[3] and a[2] < b[4] and b[2] < a[4]]
    return found


def found_for(*sides: int, effort: float = 8.0) -> Found:
    nest = Nest(*sides)
    found = searched(nest, laid(nest), effort)
    assert lies_over(nest, found.spots) == []
    assert len(set(found.spots)) == len(found.spots) <= found.bound
    return found


def the_most(*sides: int) -> int:
    found = found_for(*sides)
    assert found.is_proved
    return len(found.spots)


@published(f"{BIRGIN}, instances N4 and N1, quoted by others; N1 is one that five blocks leave at 52", HARD)
def test_hard_instances_are_reached_and_proved(*sides: int) -> int:
    return the_most(*sides)


@from_memory("the literature of pallet loading", OTHERS)
def test_instances_of_pallet_loading_are_reached_and_proved(*sides: int) -> int:
    return the_most(*sides)


@calculated("boxes on a pallet of 1200 × 800: reached, and one more ruled out by exhaustive search", PALLETS)
def test_pallets_are_reached_and_proved(*sides: int) -> int:
    return the_most(*sides)


@pytest.mark.parametrize(("sides", "value"), ALL.items(), ids=str)
def test_what_is_laid_at_once_is_never_more_and_seldom_much_less(sides: Sides, value: int) -> None:
    nest = Nest(*sides)
    spots = laid(nest)

    assert lies_over(nest, spots) == []
    assert value - 1 <= len(spots) <= value <= most(nest)


@pytest.mark.parametrize("sides", ALL, ids=str)
def test_a_search_of_little_effort_says_an_honest_bound(sides: Sides) -> None:
    found = found_for(*sides, effort=0.05)

    assert len(found.spots) <= ALL[sides] <= found.bound


@calculated(
    "the bound of Barnes (1979): waste of at least max over k of min((L mod k)(W mod k), (k − L mod k)(k − W mod k))",
    {(42, 31, 9, 4): 35},
)
def test_bars_bound_what_area_does_not(*sides: int) -> int:
    assert area_bound(Nest(*sides)) == 36
    assert the_most(*sides) == 35
    return barnes_bound(Nest(*sides))


# Rolls of 100: 97 of 45, 610 of 36, 395 of 31, 211 of 14.
SIZES, WANTED = (45, 36, 31, 14), (97, 610, 395, 211)


@published(
    "https://miro.gams.com/gallery/app_direct/cutstock/, the classic example of cutting stock: 453 rolls of 100",
    {100: 453},
)
def test_the_classic_example_of_cutting_stock(roll: int) -> int:
    found = cut_to_length(SIZES, WANTED, [Source("roll", roll, roll, None, True)])
    assert found.is_proved
    cut = [sum(cuts[at] * times for _, cuts, times in found.boards) for at in range(len(SIZES))]
    assert cut == list(WANTED)
    assert all(sum(size * n for size, n in zip(SIZES, cuts, strict=True)) <= roll for _, cuts, _ in found.boards)
    return sum(times for _, _, times in found.boards)


@calculated("the same example: what the pieces are long, in rolls", {100: 415.24})
def test_the_material_of_the_classic_example_is_no_bound_that_is_reached(roll: int) -> float:
    found = cut_to_length(SIZES, WANTED, [Source("roll", roll, roll, None, True)])
    material = sum(size * count for size, count in zip(SIZES, WANTED, strict=True)) / roll
    assert material < found.bound / roll <= 453
    return material


# A board foot is 1 in × 12 in × 12 in; sizes in inches.
@published(
    "the board foot of 144 cubic inches (USDA Wood Handbook; NIST Handbook 44), quoted by others",
    {(1, 12, 12): 1, (1, 8, 96): 5.3333, (1, 6, 96): 4, (2, 4, 192): 10.667},
    within=5e-4,
)
def test_board_feet(thickness: float, width: float, length: float) -> float:
    board = Stock("board", "Board", length * 25.4, width * 25.4, thickness * 25.4)
    piece = Piece(length * 25.4, width * 25.4, thickness * 25.4)
    return needed(Book(stocks=(board,)), Product("piece", "Piece", (), piece=piece), 1).board_feet
