"""How many identical rectangles can lie in a rectangle at most.

Two bounds that hold for every layout, straight or turned by a right angle (for others nothing is claimed):

- area: no more than the board has area for. The board counts only as far as lengths and widths of pieces laid beside one another
  reach (each layout can be pushed into its corner, where edges lie at such sums).
- Barnes: cut the pieces into bars one unit wide. Bars of length k in a board of X × Y leave at least
  min((X mod k)(Y mod k), (k − X mod k)(k − Y mod k)) of it empty; the larger of that for k = length and k = width is waste.
  F. W. Barnes, 'Packing the maximum number of m × n tiles in a large p × q rectangle', Discrete Mathematics 26 (1979).

Where pieces are not turned, the grid is the most: of points spaced by a piece's sides each piece holds exactly one, and a board
can be laid over them so that it holds no more than the grid has pieces.
"""

from bisect import bisect_right
from math import gcd

from runboard.plan.stock.nest import Nest


def most(nest: Nest) -> int:
    """No layout has more pieces."""
    if not nest.fits:
        return 0
    if not nest.turned or nest.long == nest.wide:
        return (nest.x // nest.long) * (nest.y // nest.wide)
    return min(area_bound(nest), barnes_bound(nest))


def area_bound(nest: Nest) -> int:
    """The board's area over a piece's, rounded down, where the board ends at the last sum of sides that it holds."""
    x, y = reach(nest.x, nest.long, nest.wide), reach(nest.y, nest.long, nest.wide)
    return (x * y) // (nest.long * nest.wide)


def barnes_bound(nest: Nest) -> int:
    """The same less the waste that bars leave; see above."""
    unit = gcd(nest.long, nest.wide)
    long, wide = nest.long // unit, nest.wide // unit
    x = reach(nest.x, nest.long, nest.wide) // unit
    y = reach(nest.y, nest.long, nest.wide) // unit
    waste = max(_left_by_bars(x, y, long), _left_by_bars(x, y, wide))
    return (x * y - waste) // (long * wide)


def _left_by_bars(x: int, y: int, bar: int) -> int:
    over_x, over_y = x % bar, y % bar
    return min(over_x * over_y, (bar - over_x) * (bar - over_y))


def reach(room: int, long: int, wide: int) -> int:
    """The largest sum of lengths and widths that is no more than ``room``."""
    return max(
        (longs * long + (room - longs * long) // wide * wide for longs in range(room // long + 1)),
        default=0,
    )


def sums(room: int, long: int, wide: int) -> list[int]:
    """Every sum of lengths and widths up to ``room``, in order, 0 first."""
    return sorted({at + more for at in range(0, room + 1, long) for more in range(0, room - at + 1, wide)})


def most_sums(room: int, long: int, wide: int) -> int:
    """No more sums than these, counted without making them."""
    return (room // long + 1) * (room // wide + 2) // 2


def raster(room: int, long: int, wide: int) -> list[int]:
    """The sums that suffice for the edges of a layout of as many pieces as any (Terno, Lindemann and Scheithauer 1987): each
    is the largest that leaves as much room beyond it."""
    known = sums(room, long, wide)
    return sorted({known[bisect_right(known, room - at) - 1] for at in known})
