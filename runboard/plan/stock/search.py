"""One piece more than the blocks found, or the proof that there is none: an exact search, where a gap to the bound stays.

Every layout can be pushed into its corner until each piece's corner lies on the raster (``bounds.raster``). Two pieces there lie on
one another only where a raster point is under both; so a layout is a choice of places of which each raster point is under one at
most. Beside that each line across the board holds no more than the board is wide, which follows, and tells the solver more.

Its effort is counted, not timed: the same question gets the same answer on every machine.
"""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from math import gcd
from typing import Any

from runboard.plan.stock.bounds import most, most_sums, raster, reach
from runboard.plan.stock.nest import Nest, Spot

# Places for one piece, above which no search is begun, since its model alone takes seconds.
_MOST_PLACES, _MOST_SUMS = 1600, 5000


@dataclass(frozen=True)
class Found:
    """A layout, and the number of pieces that no layout exceeds; ``searched`` where the search lowered it."""

    spots: tuple[Spot, ...]
    bound: int
    searched: bool = False

    @property
    def is_proved(self) -> bool:
        return len(self.spots) == self.bound


def searched(nest: Nest, spots: tuple[Spot, ...], effort: float) -> Found:
    """A layout of as many pieces or more. ``effort`` is in the solver's own deterministic seconds, about as long as real ones
    on one core of 2020."""
    at_most, is_lower = most(nest), False
    sums = max(most_sums(room, nest.long, nest.wide) for room in (nest.x, nest.y)) if spots else 0
    while effort > 0 and len(spots) < at_most and sums <= _MOST_SUMS:
        places = _places(nest)
        if len(places) > _MOST_PLACES:
            break
        better, is_none, spent = _look(nest, places, len(spots) + 1, effort)
        effort -= spent
        if is_none:
            at_most, is_lower = len(spots), True
        elif not better:
            break
        spots = better or spots
    return Found(spots, at_most, is_lower)


def _places(nest: Nest) -> list[Spot]:
    """Every place on the raster where one piece can lie; the first ones only, where there are too many."""
    found: list[Spot] = []
    xs, ys = raster(nest.x, nest.long, nest.wide), raster(nest.y, nest.long, nest.wide)
    for turned in (False, True):
        long, wide = (nest.wide, nest.long) if turned else (nest.long, nest.wide)
        for x in xs:
            found += [Spot(x, y, turned) for y in ys if x + long <= nest.x and y + wide <= nest.y]
            if len(found) > _MOST_PLACES:
                return found
    return found


def _look(nest: Nest, places: Sequence[Spot], pieces: int, effort: float) -> tuple[tuple[Spot, ...], bool, float]:
    """(a layout of so many pieces, whether there is none, the effort spent)."""
    from ortools.sat.python import cp_model

    model = cp_model.CpModel()
    laid = [model.new_bool_var("") for _ in places]
    points, columns, rows = _under(nest, places)
    for some in points:
        model.add_at_most_one(laid[at] for at in some)
    unit = gcd(nest.long, nest.wide)
    for lines, side, room in ((columns, _height, nest.y), (rows, _width, nest.x)):
        most_there = reach(room, nest.long, nest.wide) // unit
        for some in lines:
            model.add(sum(side(nest, places[at]) // unit * laid[at] for at in some) <= most_there)
    model.add(sum(laid) >= pieces)
    solver = cp_model.CpSolver()
    _set(solver.parameters, effort)
    status = solver.solve(model)
    found = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
    spots = tuple(place for place, var in zip(places, laid, strict=True) if solver.value(var)) if found else ()
    return spots, status == cp_model.INFEASIBLE, max(1e-3, solver.response_proto.deterministic_time)


def _set(parameters: Any, effort: float) -> None:
    parameters.num_workers = 1
    parameters.random_seed = 1
    parameters.max_deterministic_time = effort


def _width(nest: Nest, spot: Spot) -> int:
    return nest.wide if spot.turned else nest.long


def _height(nest: Nest, spot: Spot) -> int:
    return nest.long if spot.turned else nest.wide


def _under(nest: Nest, places: Sequence[Spot]) -> tuple[list[list[int]], list[list[int]], list[list[int]]]:
    """The places that cover each raster point, each line up the board, and each line along it."""
    points: dict[tuple[int, int], list[int]] = defaultdict(list)
    columns: dict[int, list[int]] = defaultdict(list)
    rows: dict[int, list[int]] = defaultdict(list)
    xs, ys = raster(nest.x, nest.long, nest.wide), raster(nest.y, nest.long, nest.wide)
    for at, spot in enumerate(places):
        across = [x for x in xs if spot.x <= x < spot.x + _width(nest, spot)]
        up = [y for y in ys if spot.y <= y < spot.y + _height(nest, spot)]
        for x in across:
            columns[x].append(at)
            for y in up:
                points[x, y].append(at)
        for y in up:
            rows[y].append(at)
    return [*points.values()], [*columns.values()], [*rows.values()]
