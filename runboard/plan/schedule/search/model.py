"""The schedule as a constraint model for OR-Tools CP-SAT.

One start a block, with the hours in its domain; a station is held from a block's start to the end of what unloads it; a
person is one row of optional intervals. Walking needs no order of rooms: where the doings of one room are stretched by the
walk on both sides, those of the other may not touch them. What has happened has happened: begun blocks are not in each
other's way. What the model leaves out or keeps too strictly is said by ``is_bound`` and ``is_plan``: a bound is believed
only of the one, a plan is checked all the same.

OR-Tools is imported as this module is, so only a child process imports it.
"""

from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence
from itertools import accumulate, pairwise
from typing import Any

from ortools.sat.python import cp_model

from runboard.plan.schedule.problem.alike import Alike, alike
from runboard.plan.schedule.problem.hours import Chains
from runboard.plan.schedule.problem.nouns import Block, Placed, Plan, Problem
from runboard.plan.schedule.search.dues import LateLines
from runboard.plan.schedule.search.frame import Ends, Frame
from runboard.plan.schedule.search.people import People
from runboard.plan.schedule.search.setups import Setups
from runboard.plan.schedule.search.solving import Aim, Solved, SolveLimits, Stop, solved, took


class Model(Frame):
    """The model of a problem."""

    def __init__(self, problem: Problem, wish: Aim, chains: Chains | None = None, same: Alike | None = None) -> None:
        super().__init__(problem, wish, chains or Chains(problem), same or alike(problem))
        self.setups = Setups(self)
        self.starts = [self._start(at) for at in range(len(problem.blocks))]
        self.finish = self.model.new_int_var(min(wish.at_least, wish.before), wish.before - 1, "finish")
        self._keep_finish()
        self._keep_waits()
        self.held = self._keep_stations()
        self.setups.keep()
        self._keep_services()
        self._keep_air()
        self._keep_order()
        self.people = People(self, self.setups)
        self.dues = LateLines(self) if wish.least == "late" or wish.late is not None else None
        if wish.least == "late" and self.dues is not None:
            self.model.minimize(self.dues.sum)
        elif wish.least == "finish":
            self.model.minimize(self.finish)
        else:
            self.model.add_decision_strategy(self.begins, cp_model.CHOOSE_LOWEST_MIN, cp_model.SELECT_MIN_VALUE)

    def _start(self, at: int) -> Any:
        """A block's start: with its setup before it, if it has one."""
        need = self.setups.needs.get(at)
        if need is None or isinstance(need, int):
            return self.begins[at] - self.setups.ticks(at)
        start = self.model.new_int_var(0, self.wish.before, f"s{at}")  # intervals want one variable, not two
        self.model.add(start == self.begins[at] - self.setups.ticks(at))
        return start

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

    def _keep_stations(self) -> dict[int, tuple[Ends, Ends]]:
        """For each load, by its first block: when its station is held from and until."""
        held: dict[int, tuple[Ends, Ends]] = {}
        rows: dict[int, list[tuple[Any, bool]]] = defaultdict(list)
        for block in self.problem.blocks:
            if block.unloads is not None:
                continue
            last = block.index
            while last in self.problem.unloaded_by:
                last = self.problem.unloaded_by[last]
            start, end = held[block.index] = self.starts[block.index], self.end(last)
            is_fixed = last == block.index and not block.setup
            row = self.interval(start, block.length) if is_fixed else self.until(start, end)
            rows[block.station].append((row, block.begun))
        for row in rows.values():
            others, begun = (
                [interval for interval, is_begun in row if not is_begun],
                [interval for interval, is_begun in row if is_begun],
            )
            for at_it in [[interval] for interval in begun] or [[]]:
                self.one_by_one([*others, *at_it])
        return held

    def _keep_services(self) -> None:
        """What work draws on, and what is held after it. More than there is can only be in use if that was begun so: then
        all of it is."""
        for service, (_, capacity) in enumerate(self.problem.services):
            drawn = sorted(self._drawn(service), key=lambda draw: not draw[2])
            begun = [many for _, many, is_begun in drawn if is_begun]
            if sum(begun) > capacity:
                self.is_plan = False
                left = [capacity, *(max(0, capacity - taken) for taken in accumulate(begun))]
                drawn = [
                    (row, min(many, free), True) for (row, many, _), free in zip(drawn, left, strict=False)
                ] + drawn[len(begun) :]
            self.keep_within([row for row, _, _ in drawn], [many for _, many, _ in drawn], capacity)

    def _drawn(self, service: int) -> Iterator[tuple[Any, int, bool]]:
        """(interval, how many, whether it is begun) of each draw on a service."""
        for block in self.problem.blocks:
            for stretch in block.stretches:
                for which, many in stretch.draws:
                    if which == service:
                        yield (
                            self.interval(self.begins[block.index] + stretch.offset, stretch.length),
                            many,
                            block.begun,
                        )
            waiting = self.problem.waiting[block.index]
            for which, many in block.holds if waiting else ():
                if which == service:
                    yield self._held_until(block.index, waiting), many, block.begun

    def _held_until(self, at: int, waiting: Sequence[int]) -> Any:
        """From a block's end to the start of the last that waits for it."""
        ends = self.model.new_int_var(0, self.wish.before, "")
        for follower in waiting:
            self.model.add(ends >= self.starts[follower])
        return self.until(self.end(at), ends)

    def _keep_air(self) -> None:
        """No dust where a finish is wet, no heat where its solvent is in the air."""
        for room in range(len(self.problem.rooms)):
            here = [block for block in self.problem.blocks if self.problem.stations[block.station].room == room]
            for station in sorted({block.station for block in here}):
                against = [block for block in here if block.station == station and block.length]
                place = self.problem.stations[station]
                wet = [(coat, coat.keeps_off(heats=place.heats, dusty=place.dusty)) for coat in here]
                some = [(coat, coat.length + more) for coat, more in wet if more is not None and coat.length + more]
                self._keep_off(some, against)

    def _keep_off(self, coats: list[tuple[Block, int]], against: list[Block]) -> None:
        """A block is not in its own way, nor are two in each other's that were begun."""
        alone = [(coat, ticks) for coat, ticks in coats if coat.begun or coat in against]
        for some in ([coat for coat in coats if coat not in alone], *([coat] for coat in alone)):
            self.keep_apart(
                [self.interval(self.begins[coat.index], ticks) for coat, ticks in some],
                [
                    self.interval(self.begins[block.index], block.length)
                    for block in against
                    if all(block is not coat and not (block.begun and coat.begun) for coat, _ in some)
                ],
            )

    def _keep_order(self) -> None:
        """Alike blocks in their order: it costs nothing, and without it a proof tries every renaming."""
        for at in self.alike.ordered:
            for one, other in pairwise(self.alike.groups[at]):
                _, after = self.held.get(one, (0, self.starts[one]))
                self.model.add(self.starts[other] >= after)

    # solving

    def hint(self, plan: Plan) -> None:
        """Begin the search at a plan."""
        self.model.clear_hints()  # type: ignore[no-untyped-call]
        hints = [(self.finish, plan.finish(self.problem)), *(self.dues.hints(plan) if self.dues else [])]
        for placed in plan.placed:
            hints.append((self.begins[placed.block], placed.begins()))
            hints += [*self.setups.hints(placed), *self.people.hints(placed)]
        for var, value in {var.index: (var, value) for var, value in reversed(hints) if var.index >= 0}.values():
            self.model.add_hint(var, value)

    def solve(
        self, limits: SolveLimits, seen: Callable[[Plan], object] | None = None, stop: Stop | None = None
    ) -> Solved:
        """The best plan within the limits; ``seen`` is called with each better one, in this thread. ``stop.ask()``, from
        any other thread, ends it within 0.2 s with the best plan and bound so far, as if its seconds were over; where that
        was asked before, the answer is no plan and the bound that the wish knew."""
        known = self.wish.at_least if self.wish.least == "finish" else 0
        if stop is not None and stop.asked:
            return Solved(None, known, False, 0.0)
        solver, status = solved(self.model, limits, stop, _Seen(self, seen) if seen else None)
        if status == cp_model.INFEASIBLE:
            return Solved(None, self.wish.before, True, took(solver, limits))
        plan = self.plan(solver) if status in (cp_model.OPTIMAL, cp_model.FEASIBLE) else None
        least = int(solver.best_objective_bound + 0.5) if status != cp_model.UNKNOWN else 0
        return Solved(plan, max(known, least), status == cp_model.OPTIMAL, took(solver, limits))

    def plan(self, values: Any) -> Plan:
        """The plan that a solution is."""
        placed = []
        for block in self.problem.blocks:
            begins = values.value(self.begins[block.index])
            setup = self.setups.value(block.index, values)
            hands, watchers = self.people.values(block, begins, setup, values)
            placed.append(Placed(block.index, begins - setup, setup, hands, watchers))
        return Plan(tuple(placed), "search")


class _Seen(cp_model.CpSolverSolutionCallback):
    """Hears of each better plan while the solver works."""

    def __init__(self, model: Model, seen: Callable[[Plan], object]) -> None:
        super().__init__()
        self._model, self._seen = model, seen

    def on_solution_callback(self) -> None:
        self._seen(self._model.plan(self))
