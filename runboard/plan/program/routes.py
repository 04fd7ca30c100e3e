"""A short way through groups, each visited once, some before others: found by routing, proved by a circuit where that can be.

Few groups are tried through (dynamic programming over sets: Held & Karp, 1962). Else OR-Tools: its routing
improves the route of the nearest first, CP-SAT's circuit improves that one and proves a bound, and where that is no proof, routing has the
rest of the time. Both are imported only here, where it is asked: they are large.
"""

from typing import Any

import numpy as np

from runboard.plan.program.moves import Array
from runboard.plan.program.shifting import shifted
from runboard.plan.program.visits import Task

# So many groups are tried through, and so many are the most that a circuit is made of.
FEW, PROVABLE = 9, 120
# How hard guided local search is pushed out of where it has been: with 0.1, its usual one, it stays there.
_PUSH = 0.5
# Rounds of shifting, times the square of the groups: about a third of a second.
_SHIFTS = 120_000


def put_in_order(task: Task, seconds: float) -> tuple[list[int], int]:
    """(the groups in the best order that is found, a bound in ticks below which no order comes)."""
    many = len(task.before)
    if many <= 1:
        return [*range(many)], task.cost([*range(many)])
    closed = _closed(task.before)
    if many <= FEW:
        order = tried_through(task, closed)
        return order, task.cost(order)
    order, bound = nearest_first(task, closed), bound_by_ways_in(task)
    if many > PROVABLE:
        return routed(task, closed, order, seconds), bound
    order = routed(task, closed, order, seconds * 0.2)
    if _free_pairs(closed):
        order = shifted(task.ticks, closed, order, _SHIFTS // (many * many))
        seconds *= 0.6
    order, bound = proved(task, closed, order, seconds * 0.6)
    if task.cost(order) > bound:
        order = routed(task, closed, order, seconds * 0.2)
    return order, bound


def _closed(before: Array) -> Array:
    """With what follows: before one that is before another is before that one."""
    found = before.copy()
    for at in range(len(found)):  # the first of any pair stands first
        found[:at, :] |= found[:at, at : at + 1] & found[at : at + 1, :]
    return found


def bound_by_ways_in(task: Task) -> int:
    """Ticks: each group is come to by its shortest way at least, and left by it."""
    many = len(task.before)
    ways = task.ticks.astype(float)
    np.fill_diagonal(ways, np.inf)
    into = np.delete(ways, many + 1, axis=0)[:, [*range(many), many + 1]].min(axis=0).sum()
    out = np.delete(ways, many, axis=1)[: many + 1].min(axis=1).sum()
    return int(max(into, out)) if many else 0


def tried_through(task: Task, before: Array) -> list[int]:
    """The best of all orders, of a few groups."""
    many = len(before)
    needs = [sum(1 << int(one) for one in np.flatnonzero(before[:, at])) for at in range(many)]
    ticks = task.ticks.tolist()
    best: dict[tuple[int, int], tuple[int, int]] = {
        (1 << at, at): (ticks[many][at], -1) for at in range(many) if not needs[at]
    }
    for been in range(1, 1 << many):
        for last in range(many):
            if (been, last) not in best:
                continue
            cost = best[been, last][0]
            for after in range(many):
                if been >> after & 1 or needs[after] & ~been:
                    continue
                key, sum_ = (been | 1 << after, after), cost + ticks[last][after]
                if key not in best or sum_ < best[key][0]:
                    best[key] = (sum_, last)
    been = (1 << many) - 1
    last = min((at for at in range(many) if (been, at) in best), key=lambda at: best[been, at][0] + ticks[at][many + 1])
    order = []
    while last >= 0:
        order.append(last)
        been, last = been & ~(1 << last), best[been, last][1]
    return order[::-1]


def nearest_first(task: Task, before: Array) -> list[int]:
    """The nearest that may be next, one by one; the order as it is where that is shorter."""
    many = len(before)
    waits = before.sum(axis=0)
    left, at, order = np.ones(many, bool), many, []
    for _ in range(many):
        at = int(np.argmin(np.where(left & (waits == 0), task.ticks[at, :many], np.iinfo(np.int64).max)))
        left[at] = False
        waits = waits - before[at]
        order.append(at)
    as_it_is = [*range(many)]
    return min(order, as_it_is, key=task.cost)


def _pairs(before: Array) -> list[tuple[int, int]]:
    """Pairs of which the others follow."""
    through = before.astype(np.float32) @ before.astype(np.float32) > 0
    return [(int(one), int(other)) for one, other in zip(*np.nonzero(before & ~through), strict=True)]


def _free_pairs(before: Array) -> list[tuple[int, int]]:
    """Those pairs without what stands before or after every other: a circuit's arcs alone keep that where it is."""
    is_fixed = before.sum(axis=0) + before.sum(axis=1) == len(before) - 1
    return [(one, other) for one, other in _pairs(before) if not (is_fixed[one] or is_fixed[other])]


def routed(task: Task, before: Array, begin: list[int], seconds: float) -> list[int]:
    """A better order than ``begin``, by guided local search; ``begin`` where there is none."""
    from ortools.constraint_solver import pywrapcp, routing_enums_pb2

    many = len(before)
    manager: Any = pywrapcp.RoutingIndexManager(many + 2, 1, [many], [many + 1])
    routing: Any = pywrapcp.RoutingModel(manager)
    routing.SetArcCostEvaluatorOfAllVehicles(routing.RegisterTransitMatrix(task.ticks.tolist()))
    pairs = _pairs(before)
    if pairs:
        routing.AddConstantDimension(1, many + 2, True, "rank")
        rank = routing.GetDimensionOrDie("rank")
        for one, other in pairs:
            routing.solver().Add(
                rank.CumulVar(manager.NodeToIndex(one)) <= rank.CumulVar(manager.NodeToIndex(other)) - 1
            )
    asked: Any = pywrapcp.DefaultRoutingSearchParameters()
    asked.local_search_metaheuristic = routing_enums_pb2.LocalSearchMetaheuristic.GUIDED_LOCAL_SEARCH
    asked.guided_local_search_lambda_coefficient = _PUSH
    asked.time_limit.FromMilliseconds(max(1, int(seconds * 1000)))
    routing.CloseModelWithParameters(asked)
    given = routing.ReadAssignmentFromRoutes([[int(at) for at in begin]], True)
    found = routing.SolveFromAssignmentWithParameters(given, asked) if given else None
    if not found:
        return begin
    order, index = [], found.Value(routing.NextVar(routing.Start(0)))
    while not routing.IsEnd(index):
        order.append(manager.IndexToNode(index))
        index = found.Value(routing.NextVar(index))
    return min(order, begin, key=task.cost)


def proved(task: Task, before: Array, begin: list[int], seconds: float) -> tuple[list[int], int]:
    """(the order, a bound in ticks) after so many seconds at most; less where the order is proved to be the best."""
    from ortools.sat.python import cp_model

    many = len(before)
    model: Any = cp_model.CpModel()
    through = before.astype(np.float32) @ before.astype(np.float32) > 0
    can = ~(before.T | through)
    np.fill_diagonal(can, False)
    arcs: dict[tuple[int, int], Any] = {
        (int(one), int(other)): model.new_bool_var("") for one, other in zip(*np.nonzero(can), strict=True)
    }
    arcs |= {(many, at): model.new_bool_var("") for at in range(many) if not before[:, at].any()}
    arcs |= {(at, many + 1): model.new_bool_var("") for at in range(many) if not before[at].any()}
    model.add_circuit([(one, other, arc) for (one, other), arc in arcs.items()] + [(many + 1, many, True)])
    hinted = set(zip([many, *begin], [*begin, many + 1], strict=True))
    for key, arc in arcs.items():
        model.add_hint(arc, key in hinted)
    pairs = _free_pairs(before)
    if pairs:
        rank = [model.new_int_var(int(before[:, at].sum()), many - 1 - int(before[at].sum()), "") for at in range(many)]
        for (one, other), arc in arcs.items():
            if one < many and other < many:
                model.add(rank[other] == rank[one] + 1).only_enforce_if(arc)
        for one, other in pairs:
            model.add(rank[one] + 1 <= rank[other])
        for place, at in enumerate(begin):
            model.add_hint(rank[at], place)
    model.minimize(sum(int(task.ticks[key]) * arc for key, arc in arcs.items()))
    solver: Any = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = seconds
    # One worker with cuts proves forty places in a third of a second; two or eight that share two cores do not in six.
    solver.parameters.num_workers, solver.parameters.linearization_level = 1, 2
    solver.parameters.symmetry_level = solver.parameters.cp_model_probing_level = 0
    status = solver.solve(model)
    bound = max(bound_by_ways_in(task), int(np.ceil(solver.best_objective_bound - 1e-6)))
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return begin, min(bound, task.cost(begin))
    after = {one: other for (one, other), arc in arcs.items() if solver.boolean_value(arc)}
    order, at = [], after[many]
    while at != many + 1:
        order.append(at)
        at = after[at]
    return min(order, begin, key=task.cost), bound
