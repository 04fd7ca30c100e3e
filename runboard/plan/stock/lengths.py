"""Lengths out of boards: which to cut from which, so that the least is bought and the least is left (the cutting-stock problem).

Patterns (what one board is cut into) are made as a linear program asks for them, by the values that it puts on the lengths
(Gilmore and Gomory, 'A linear programming approach to the cutting-stock problem', 1961, from memory); then whole boards are chosen
among them. The program's value is a bound: no cutting costs less.
"""

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import gcd
from typing import Any

Cuts = tuple[int, ...]  # how many of each length, in their order

_MISSING = 10**12  # what a piece that no board is there for counts, more than any board
_ROUNDS = 400
_EFFORT = 0.15  # of choosing whole boards, in the solver's deterministic seconds
_MOST_LOOKS = 20_000  # at partial patterns, when one is sought


@dataclass(frozen=True)
class Source:
    """Boards alike of which at most ``most`` are there, None where more can be bought; ``room`` in whole units, the gap put on.
    ``cost`` of one, a whole number."""

    key: str
    room: int
    cost: int
    most: int | None
    bought: bool


@dataclass(frozen=True)
class Cutting:
    """``boards``: (source, cuts, how many). ``missing`` has the pieces of each length that no board is there for. ``cost`` of all boards
    together, ``bound`` what no cutting is below."""

    boards: tuple[tuple[Source, Cuts, int], ...]
    missing: Cuts
    cost: int
    bound: float
    is_proved: bool


def cut_to_length(sizes: Sequence[int], wanted: Sequence[int], sources: Sequence[Source]) -> Cutting:
    """Every length (gap put on, in the sources' units) as often as wanted, or missing."""
    columns: dict[tuple[int, Cuts], None] = dict.fromkeys(_first_columns(sizes, wanted, sources))
    bound = 0.0
    for _ in range(_ROUNDS):
        values, limits, bound = _relaxed([*columns], wanted, sources)
        better = [
            (at, cuts)
            for at, source in enumerate(sources)
            if (cuts := _best_cuts(sizes, wanted, values, source.room))
            and sum(value * count for value, count in zip(values, cuts, strict=True))
            > source.cost - limits[at] + 1e-6 * source.cost + 1e-6
            and (at, cuts) not in columns
        ]
        if not better:
            break
        columns.update(dict.fromkeys(better))
    counts = _chosen([*columns], wanted, sources, bound)
    return _told(sizes, wanted, sources, counts, bound)


def _first_columns(sizes: Sequence[int], wanted: Sequence[int], sources: Sequence[Source]) -> list[tuple[int, Cuts]]:
    """For each source the boards that one would cut by the longest first, until all is cut; and each length alone."""
    found = []
    for at, source in enumerate(sources):
        left = list(wanted)
        for number, size in enumerate(sizes):
            if size <= source.room:
                found.append(
                    (at, tuple(min(wanted[number], source.room // size) * (n == number) for n in range(len(sizes))))
                )
        while any(count for count, size in zip(left, sizes, strict=True) if size <= source.room):
            cuts, room = [0] * len(sizes), source.room
            for number in sorted(range(len(sizes)), key=lambda number: -sizes[number]):
                cuts[number] = min(left[number], room // sizes[number])
                room -= cuts[number] * sizes[number]
            found.append((at, tuple(cuts)))
            times = min(count // cut for count, cut in zip(left, cuts, strict=True) if cut)
            left = [count - cut * times for count, cut in zip(left, cuts, strict=True)]
    return found


def _relaxed(
    columns: Sequence[tuple[int, Cuts]], wanted: Sequence[int], sources: Sequence[Source]
) -> tuple[list[float], list[float], float]:
    """(value of each length, of one more board of each source, the cost) where parts of boards may be taken."""
    from ortools.linear_solver import pywraplp

    solver = pywraplp.Solver.CreateSolver("GLOP")
    taken = [solver.NumVar(0, solver.infinity(), "") for _ in columns]
    short = [solver.NumVar(0, solver.infinity(), "") for _ in wanted]
    rows = [
        solver.Add(
            sum(cuts[at] * var for var, (_, cuts) in zip(taken, columns, strict=True) if cuts[at]) + short[at] >= count
        )
        for at, count in enumerate(wanted)
    ]
    limits: dict[int, Any] = {
        at: solver.Add(sum([var for var, (of, _) in zip(taken, columns, strict=True) if of == at], 0.0) <= source.most)
        for at, source in enumerate(sources)
        if source.most is not None and any(of == at for of, _ in columns)
    }
    solver.Minimize(
        sum(sources[at].cost * var for var, (at, _) in zip(taken, columns, strict=True)) + _MISSING * sum(short)
    )
    solver.Solve()
    values = [max(0.0, row.dual_value()) for row in rows]
    return (
        values,
        [-limits[at].dual_value() if at in limits else 0.0 for at in range(len(sources))],
        solver.Objective().Value(),
    )


def _best_cuts(sizes: Sequence[int], wanted: Sequence[int], values: Sequence[float], room: int) -> Cuts:
    """The pattern of the highest value that a board holds: the densest lengths first, bounded by what the room could hold of the
    next. Exact within so many looks."""
    order = [at for at in sorted(range(len(sizes)), key=lambda at: -values[at] / sizes[at]) if values[at] > 0]
    best_value, best, looks = 0.0, [0] * len(sizes), 0
    cuts = [0] * len(sizes)

    def look(step: int, left: int, value: float) -> None:
        nonlocal best_value, best, looks
        looks += 1
        if value > best_value + 1e-9:
            best_value, best = value, cuts.copy()
        if step == len(order) or looks > _MOST_LOOKS:
            return
        at = order[step]
        if value + left * values[at] / sizes[at] <= best_value + 1e-9:
            return
        for count in range(min(wanted[at], left // sizes[at]), -1, -1):
            cuts[at] = count
            look(step + 1, left - count * sizes[at], value + count * values[at])
        cuts[at] = 0

    look(0, room, 0.0)
    return tuple(best) if best_value > 0 else ()


def _chosen(
    columns: Sequence[tuple[int, Cuts]], wanted: Sequence[int], sources: Sequence[Source], bound: float
) -> list[tuple[int, Cuts, int]]:
    """Whole boards of these patterns, the cheapest that have all of it."""
    from ortools.sat.python import cp_model

    model, most = cp_model.CpModel(), sum(wanted)
    taken = [model.new_int_var(0, most, "") for _ in columns]
    short = [model.new_int_var(0, count, "") for count in wanted]
    for at, count in enumerate(wanted):
        model.add(
            sum(cuts[at] * var for var, (_, cuts) in zip(taken, columns, strict=True) if cuts[at]) + short[at] >= count
        )
    for at, source in enumerate(sources):
        if source.most is not None:
            model.add(sum(var for var, (of, _) in zip(taken, columns, strict=True) if of == at) <= source.most)
    dearest = max(source.cost for source in sources) * most + 1
    cost = sum(sources[at].cost * var for var, (at, _) in zip(taken, columns, strict=True)) + dearest * sum(short)
    if bound < _MISSING:  # one that is reached ends the search
        step = _step(sources)
        model.add(cost >= math.ceil(bound / step - 1e-6) * step)
    model.minimize(cost)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    solver.parameters.max_deterministic_time = _EFFORT
    solver.solve(model)
    return [(at, cuts, solver.value(var)) for var, (at, cuts) in zip(taken, columns, strict=True) if solver.value(var)]


def _told(
    sizes: Sequence[int],
    wanted: Sequence[int],
    sources: Sequence[Source],
    counts: Sequence[tuple[int, Cuts, int]],
    bound: float,
) -> Cutting:
    """The boards with no more pieces than are wanted: what is over is left on the board."""
    over = [sum(cuts[at] * times for _, cuts, times in counts) - count for at, count in enumerate(wanted)]
    found: Counter[tuple[int, Cuts]] = Counter()
    for at, cuts, times in counts:
        for _ in range(times):
            kept = list(cuts)
            for number, count in enumerate(kept):
                less = min(count, max(0, over[number]))
                kept[number] -= less
                over[number] -= less
            if any(kept):
                found[at, tuple(kept)] += 1
    boards = tuple(
        (sources[at], cuts, times) for (at, cuts), times in sorted(found.items(), key=lambda one: (one[0][0], -one[1]))
    )
    missing = tuple(max(0, -each) for each in over)
    cost = sum(source.cost * times for source, _, times in boards)
    bound = bound if any(missing) else max(bound, _of_whole_boards(sizes, wanted, sources, bound))
    is_proved = not any(missing) and cost - bound < 1e-6 * cost + 1e-6
    return Cutting(boards, missing, cost, bound, is_proved)


def _of_whole_boards(sizes: Sequence[int], wanted: Sequence[int], sources: Sequence[Source], bound: float) -> float:
    """The least that whole boards cost which are together as long as the pieces, and no cheaper than where parts of boards were
    allowed. Any cutting is one of these."""
    from ortools.sat.python import cp_model

    model, pieces, step = cp_model.CpModel(), sum(wanted), _step(sources)
    boards = [
        model.new_int_var(0, pieces if source.most is None else min(source.most, pieces), "") for source in sources
    ]
    long = sum(source.room * var for source, var in zip(sources, boards, strict=True))
    model.add(long >= sum(size * count for size, count in zip(sizes, wanted, strict=True)))
    cost = sum(source.cost // step * var for source, var in zip(sources, boards, strict=True))
    model.add(cost >= math.ceil(bound / step - 1e-6))
    model.minimize(cost)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.max_deterministic_time = _EFFORT
    solver.solve(model)
    return solver.best_objective_bound * step


def _step(sources: Sequence[Source]) -> int:
    """What every cost is a multiple of."""
    return gcd(*(source.cost for source in sources)) or 1


def used_of(boards: Sequence[tuple[Source, Cuts, int]]) -> Mapping[str, tuple[int, int]]:
    """(how many used, how many of them bought) of each kind of board."""
    found: dict[str, tuple[int, int]] = {}
    for source, _, times in boards:
        used, bought = found.get(source.key, (0, 0))
        found[source.key] = used + times, bought + times * source.bought
    return found
