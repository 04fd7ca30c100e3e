"""The schedule as a constraint model for OR-Tools CP-SAT.

One start a block, with the hours in its domain; a station is held from a block's start to the end of what unloads it; a
person is one row of optional intervals. Walking needs no order of rooms: where the doings of one room are stretched by the
walk on both sides, those of the other may not touch them. What the model leaves out or keeps too strictly is said by
``is_bound`` and ``is_plan``: a bound is believed only of the one, a plan is checked all the same.

OR-Tools is imported as this module is, so only a child process imports it.
"""

from collections import defaultdict
from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise
from typing import Any

from ortools.sat.python import cp_model

from runboard.plan.schedule.problem.alike import Alike, alike
from runboard.plan.schedule.problem.domains import Chains, starts_of
from runboard.plan.schedule.problem.nouns import Block, Placed, Plan, Problem
from runboard.plan.schedule.problem.presence import common
from runboard.plan.schedule.search.cpsat_dues import Dues
from runboard.plan.schedule.search.cpsat_people import People
from runboard.plan.schedule.search.cpsat_setups import Setups
from runboard.plan.schedule.search.cpsat_watching import Done
from runboard.plan.schedule.search.wish import Answer, Early, Limits, Stop, Wish

__all__ = ["Answer", "Early", "Limits", "Model", "Stop", "Wish", "begun_fit"]

Ends = Any  # a linear expression of the solver


class Model:
    """The model of a problem. ``begins`` are the blocks' own first ticks, ``starts`` those with the setup before them."""

    def __init__(self, problem: Problem, wish: Wish, chains: Chains | None = None, same: Alike | None = None) -> None:
        self.problem, self.wish = problem, wish
        self.chains = chains or Chains(problem)
        self.alike = same or alike(problem)
        self.model = cp_model.CpModel()
        self.is_bound = self.is_plan = True
        self.begins = [self._begin(block) for block in problem.blocks]
        self.setups = Setups(self)
        self.starts = [self._start(at) for at in range(len(problem.blocks))]
        self.finish = self.model.new_int_var(min(wish.at_least, wish.before), wish.before - 1, "finish")
        self._keep_finish()
        self._keep_waits()
        self.holds = self._keep_stations()
        self.setups.keep(self.holds)
        self._keep_services()
        self._keep_air()
        self._keep_order()
        self.people = People(self)
        self.is_bound = self.is_bound and begun_fit(problem)
        self.dues = Dues(self) if wish.dues or wish.late is not None else None
        self.model.minimize(self._aim())

    # one block

    def end(self, at: int) -> Ends:
        """When a block ends."""
        return self.begins[at] + self.problem.blocks[at].length

    def _begin(self, block: Block) -> Any:
        spans = starts_of(self.problem, block)
        latest = self.wish.before - self.chains.tails[block.index] - block.length
        spans = common(spans, ((self.chains.begins[block.index], max(latest, 0)),)) if not block.begun else spans
        if block.index in self.wish.between:
            spans = common(spans, (self.wish.between[block.index],))
        if len(spans) == 1 and spans[0][1] - spans[0][0] == 1:
            return self.model.new_constant(spans[0][0])
        domain = cp_model.Domain.from_intervals([[opens, closes - 1] for opens, closes in spans])
        return self.model.new_int_var_from_domain(domain, f"b{block.index}")

    def _start(self, at: int) -> Any:
        """A block's start: with its setup before it, if it has one."""
        need = self.setups.present(at)
        if need is None or isinstance(need, int):
            return self.begins[at] - self.setups.ticks(at)
        start = self.model.new_int_var(0, self.wish.before, f"s{at}")  # intervals want one variable, not two
        self.model.add(start == self.begins[at] - self.setups.ticks(at))
        return start

    def interval(self, start: Ends, size: int, present: Any = None) -> Any:
        """An interval of fixed size, there always or where a literal holds."""
        if present is None:
            return self.model.new_fixed_size_interval_var(start, size, "")
        return self.model.new_optional_fixed_size_interval_var(start, size, present, "")

    def row(self, done: Done, early: int = 0, late: int = 0) -> Any:
        """What somebody is there for as an interval, stretched on both sides."""
        start, size = done.start - early, done.size + early + late
        if done.end is None:
            return self.interval(start, size, done.present)
        return self.model.new_optional_interval_var(start, size, done.end + late, done.present, "")

    def _aim(self) -> Any:
        if self.wish.dues and self.dues is not None:
            return self.dues.sum
        return self.finish if self.wish.early is None else self._left(self.wish.early)

    def _left(self, early: Early) -> Any:
        """The weight of what is still to begin at each of some ticks, added up."""
        terms = []
        for at, weight in early.weights.items():
            for late, tick in ((self.model.new_bool_var(""), tick) for tick in early.ticks):
                self.model.add(self.begins[at] < tick).only_enforce_if(late.negated())
                terms.append(weight * late)
        return sum(terms)

    # what must be kept

    def _keep_finish(self) -> None:
        for at, followers in enumerate(self.problem.followers):
            if not followers:
                self.model.add(self.finish >= self.end(at))

    def _keep_waits(self) -> None:
        for block in self.problem.blocks:
            if block.begun:
                continue
            if block.setup:
                self.model.add(self.starts[block.index] >= block.release)
            for lag in block.lags:
                self.model.add(self.starts[block.index] >= self.end(lag.before) + lag.least)
                if lag.latest is not None:
                    self.model.add(self.starts[block.index] <= self.begins[lag.before] + lag.latest)
            if block.unloads is not None:
                self.model.add(self.starts[block.index] >= self.end(block.unloads))

    def _keep_stations(self) -> dict[int, tuple[Ends, Ends, int]]:
        """For each load, by its first block: when its station is held from and until, and its last block."""
        held: dict[int, tuple[Ends, Ends, int]] = {}
        rows: dict[int, list[Any]] = defaultdict(list)
        for block in self.problem.blocks:
            if block.unloads is not None:
                continue
            last = block.index
            while last in self.problem.unloaded_by:
                last = self.problem.unloaded_by[last]
            start, end = self.starts[block.index], self.end(last)
            held[block.index] = (start, end, last)
            if last == block.index and not block.setup:
                rows[block.station].append(self.interval(start, block.length))
            else:
                size = self.model.new_int_var(0, self.wish.before, "")
                rows[block.station].append(self.model.new_interval_var(start, size, end, ""))
        for row in rows.values():
            if len(row) > 1:
                self.model.add_no_overlap(row)
        return held

    def _keep_services(self) -> None:
        drawn: dict[int, list[tuple[Any, int]]] = defaultdict(list)
        for block in self.problem.blocks:
            for one in block.stretches:
                for service, many in one.draws:
                    start = self.begins[block.index] + one.offset
                    drawn[service].append((self.interval(start, one.length), many))
        for block in self.problem.blocks:
            waiting = self.problem.waiting[block.index]
            for service, many in block.holds if waiting else ():
                until = self.model.new_int_var(0, self.wish.before, "")
                self.model.add_max_equality(until, [self.end(block.index), *(self.starts[at] for at in waiting)])
                size = self.model.new_int_var(0, self.wish.before, "")
                drawn[service].append((self.model.new_interval_var(self.end(block.index), size, until, ""), many))
        for service, rows in drawn.items():
            self.keep_within([row for row, _ in rows], [many for _, many in rows], self.problem.services[service][1])

    def keep_within(self, rows: list[Any], demands: list[int], capacity: int) -> None:
        """No more than ``capacity`` at a time: one after the other where two are too many."""
        if sum(demands) <= capacity:
            return
        if sum(sorted(demands)[:2]) > capacity:
            self.model.add_no_overlap(rows)
        else:
            self.model.add_cumulative(rows, demands, capacity)

    def _keep_air(self) -> None:
        """No dust where a finish is wet, no heat where its solvent is in the air."""
        for at, station in enumerate(self.problem.stations):
            against = [block for block in self.problem.blocks if block.station == at and block.length]
            wet = {
                block.index: block.length + off
                for block in self.problem.blocks
                if self.problem.stations[block.station].room == station.room
                and (off := block.keeps_off(heats=station.heats, dusty=station.dusty)) is not None
                and block.length + off
            }
            own = {one.index for one in against}
            alone = [block for block in wet if self.problem.blocks[block].begun or block in own]
            self._keep_off({block: long for block, long in wet.items() if block not in alone}, against)
            for block in alone:  # a block is not in its own way, nor are two in each other's that were begun
                begun = self.problem.blocks[block].begun
                others = [one for one in against if one.index != block and not (one.begun and begun)]
                self._keep_off({block: wet[block]}, others)

    def _keep_off(self, wet: dict[int, int], against: list[Block]) -> None:
        self.keep_apart(
            [self.interval(self.begins[block], long) for block, long in wet.items()],
            [self.interval(self.begins[one.index], one.length) for one in against],
        )

    def keep_apart(self, some: list[Any], others: list[Any]) -> None:
        """None of the first overlaps any of the second. The first may overlap among themselves; the second are such
        as never do: loads of one station, one person's hands."""
        if some and others:
            demands = [1] * len(some) + [len(some)] * len(others)
            self.model.add_cumulative([*some, *others], demands, len(some))

    def _keep_order(self) -> None:
        """Alike blocks in their order: it costs nothing, and without it a proof tries every renaming."""
        for at in self.alike.ordered:
            group = self.alike.groups[at]
            for one, other in pairwise(group):
                if one in self.holds:
                    self.model.add(self.starts[other] >= self.holds[one][1])
                else:
                    self.model.add(self.starts[other] >= self.starts[one])

    # solving

    def hint(self, plan: Plan) -> None:
        """Begin the search at a plan."""
        self.model.clear_hints()  # type: ignore[no-untyped-call]
        given = set()
        for placed in plan.placed:
            for var, value in self._hints(placed):
                if var.index not in given and var.index >= 0:
                    given.add(var.index)
                    self.model.add_hint(var, value)
        for var, value in [(self.finish, plan.finish(self.problem)), *(self.dues.hints(plan) if self.dues else [])]:
            self.model.add_hint(var, value)

    def _hints(self, placed: Placed) -> list[tuple[Any, int]]:
        found = [(self.begins[placed.block], placed.begins())]
        found += self.setups.hints(placed)
        return [*found, *self.people.hints(placed)]

    def solve(self, limits: Limits, seen: Callable[[Plan], object] | None = None, stop: Stop | None = None) -> Answer:
        """The best plan within the limits; ``seen`` is called with each better one, in this thread. ``stop.ask()``, from
        any other thread, ends it within 0.2 s with the best plan and bound so far, as if its seconds were over; where that
        was asked before, the answer is no plan and the bound that the wish knew."""
        if stop is not None and stop.asked:
            return Answer(None, 0 if self.wish.dues else self.wish.at_least, False, 0.0)
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = limits.workers
        solver.parameters.random_seed = limits.seed
        solver.parameters.max_time_in_seconds = limits.seconds
        if limits.work is not None:
            solver.parameters.max_deterministic_time = limits.work
        if stop is not None:
            stop.ends(solver.stop_search)
            # What was asked for before the solver was ready to hear is heard with its first bound.
            solver.best_bound_callback = lambda _: solver.stop_search() if stop.asked else None
        status = solver.solve(self.model, _Seen(self, seen) if seen else None)
        if stop is not None:
            stop.ends(None)
        if status == cp_model.INFEASIBLE:
            return Answer(None, self.wish.before, True, solver.wall_time)
        plan = self.plan(solver) if status in (cp_model.OPTIMAL, cp_model.FEASIBLE) else None
        known = 0 if self.wish.dues else self.wish.at_least
        least = max(known, int(solver.best_objective_bound + 0.5) if status != cp_model.UNKNOWN else 0)
        return Answer(plan, least, status == cp_model.OPTIMAL, solver.wall_time)

    def plan(self, values: Any) -> Plan:
        """The plan that a solution is."""
        placed = []
        for block in self.problem.blocks:
            begins = values.value(self.begins[block.index])
            setup = self.setups.value(block.index, values)
            hands, watchers = self.people.values(block, begins, values)
            placed.append(Placed(block.index, begins - setup, setup, hands, watchers))
        return Plan(tuple(placed), "search")


def begun_fit(problem: Problem) -> bool:
    """Whether what is begun keeps the rules among itself. It need not: what has happened has happened; but then the model
    has no plan, and a bound that comes of it says nothing."""
    begun = [block for block in problem.blocks if block.begun]
    if len(begun) < 2:
        return True
    if len(begun) == len(problem.blocks):
        return False
    if not _services_suffice(problem, begun):
        return False
    alone = tuple(replace(block, index=at, lags=(), unloads=None) for at, block in enumerate(begun))
    before = 1 + max(block.length for block in begun)
    answer = Model(replace(problem, blocks=alone, orders=()), Wish(before)).solve(Limits(1))
    return answer.plan is not None


def _services_suffice(problem: Problem, begun: list[Block]) -> bool:
    """Whether what is begun, and what waits after it, draw on no more of a service together than there is."""
    drawn = [
        (service, one.offset, one.offset + one.length, many)
        for block in begun
        for one in block.stretches
        for service, many in one.draws
    ]
    for block in begun:
        waits = [lag.least for one in problem.blocks for lag in one.lags if lag.before == block.index]
        drawn += [(held, block.length, block.length + max(1, *waits), many) for held, many in block.holds if waits]
    for service, (_, capacity) in enumerate(problem.services):
        here = [one for one in drawn if one[0] == service]
        if any(sum(many for _, start, end, many in here if start <= tick < end) > capacity for _, tick, _, _ in here):
            return False
    return True


class _Seen(cp_model.CpSolverSolutionCallback):
    """Hears of each better plan while the solver works."""

    def __init__(self, model: Model, seen: Callable[[Plan], object]) -> None:
        super().__init__()
        self._model, self._seen = model, seen

    def on_solution_callback(self) -> None:
        self._seen(self._model.plan(self))
