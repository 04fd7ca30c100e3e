"""The schedule as a constraint model for OR-Tools CP-SAT.

One start a block, with the hours in its domain; a station is held from a block's start to the end of what unloads it; a
person is one row of optional intervals. Walking needs no order of rooms: where the doings of one room are stretched by the
walk on both sides, those of the other may not touch them. What has happened has happened: begun blocks are not in each
other's way. What the model leaves out or keeps too strictly is said by ``is_bound`` and ``is_plan``: a bound is believed
only of the one, a plan is checked all the same.

OR-Tools is imported as this module is, so only a child process imports it.
"""

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from itertools import accumulate, pairwise
from typing import Any, Literal

from ortools.sat.python import cp_model

from runboard.plan.schedule.problem.alike import Alike, alike
from runboard.plan.schedule.problem.hours import Chains, common, open_spans
from runboard.plan.schedule.problem.nouns import FAR, Block, Order, Placed, Plan, Problem, Span
from runboard.plan.schedule.problem.worth import Worth, dated, ends_of
from runboard.plan.schedule.search.model_people import People

# By one person from start to end; with one change of watcher; or by whoever is free: nobody is named, so such a plan is one
# only once it is staffed, but its bound holds.
Watching = Literal["named", "by turns", "anyone"]

# Loads of one station whose every order is in the model; of more than so many, each that might need a setup has one.
MOST_IN_A_ROW = 26
# What the solver counts in a second on a usual computer.
WORK_A_SECOND = 0.3

Ends = Any  # a linear expression of the solver


@dataclass(frozen=True)
class Wish:
    """What a model is to look for: a finish before ``before``, and not before ``at_least``, which is known already.
    ``between`` narrows when blocks may begin. ``late`` is by how much order lines may be late, as ``Worth.late`` counts it;
    None: nobody asks. ``least`` is what is to be least: the finish, how late order lines are, or nothing: any plan will do."""

    before: int
    at_least: int = 0
    between: dict[int, Span] = field(default_factory=dict)
    watching: Watching = "named"
    late: int | None = None
    least: Literal["finish", "late", "nothing"] = "finish"


@dataclass(frozen=True)
class Limits:
    """How long a solve may take. ``work`` is the solver's own measure, which is the same on every computer; ``is_counted``:
    the seconds are those that it comes to on a usual one. ``in_order``: what can begin first is begun first, as a
    dispatcher would: sooner at any plan of many blocks. ``around``: what is hinted is changed a part at a time, which one
    worker else never does, and nothing is proved but what is seen at once."""

    seconds: float
    workers: int = 1
    seed: int = 1
    work: float | None = None
    is_counted: bool = False
    in_order: bool = False
    around: bool = False


@dataclass(frozen=True)
class Answer:
    """What a solve came to: a plan, a bound on what was asked for, whether everything was tried; and the seconds it took."""

    plan: Plan | None
    bound: int
    is_all: bool
    seconds: float


class Stop:
    """Ends a solve from another thread: ``ask`` returns at once, and the solve that was given this ends within some
    hundredths of a second with what it has. Once asked, no solve begins: other loops look at ``asked`` between their goes.
    ``ask`` may be called again and again, before a solve, in it and after it; a search takes a new one for each problem.
    """

    def __init__(self) -> None:
        self.asked = False
        self.ends: Callable[[], object] | None = None

    def ask(self) -> None:
        """End what goes on, and begin nothing more."""
        self.asked = True
        ends = self.ends
        if ends is not None:
            ends()


class Model:
    """The model of a problem. ``begins`` are the blocks' own first ticks, ``starts`` those with the setup before them."""

    def __init__(self, problem: Problem, wish: Wish, chains: Chains | None = None, same: Alike | None = None) -> None:
        self.problem, self.wish = problem, wish
        self.chains = chains or Chains(problem)
        self.alike = same or alike(problem)
        self.model = cp_model.CpModel()
        self.is_bound = self.is_plan = True
        self.begins = [self._begin(block) for block in problem.blocks]
        self.setups = _Setups(self)
        self.starts = [self._start(at) for at in range(len(problem.blocks))]
        self.finish = self.model.new_int_var(min(wish.at_least, wish.before), wish.before - 1, "finish")
        self._keep_finish()
        self._keep_waits()
        self.held = self._keep_stations()
        self.setups.keep()
        self._keep_services()
        self._keep_air()
        self._keep_order()
        self.people = People(self)
        self.dues = _Dues(self) if wish.least == "late" or wish.late is not None else None
        if wish.least == "late" and self.dues is not None:
            self.model.minimize(self.dues.sum)
        elif wish.least == "finish":
            self.model.minimize(self.finish)
        else:
            self.model.add_decision_strategy(self.begins, cp_model.CHOOSE_LOWEST_MIN, cp_model.SELECT_MIN_VALUE)

    # one block

    def end(self, at: int) -> Ends:
        """When a block ends."""
        return self.begins[at] + self.problem.blocks[at].length

    def _begin(self, block: Block) -> Any:
        spans = self.chains.starts[block.index]
        if not block.begun:
            latest = self.wish.before - self.chains.tails[block.index] - block.length
            spans = common(spans, ((self.chains.begins[block.index], max(latest, 0)),))
        if block.index in self.wish.between:
            spans = common(spans, (self.wish.between[block.index],))
        if len(spans) == 1 and spans[0][1] - spans[0][0] == 1:
            return self.model.new_constant(spans[0][0])
        return self.model.new_int_var_from_domain(domain(spans), f"b{block.index}")

    def _start(self, at: int) -> Any:
        """A block's start: with its setup before it, if it has one."""
        need = self.setups.needs.get(at)
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

    def until(self, start: Ends, end: Ends) -> Any:
        """An interval whose size is the solver's."""
        return self.model.new_interval_var(start, self.model.new_int_var(0, self.wish.before, ""), end, "")

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
            others, begun = [one for one, is_begun in row if not is_begun], [one for one, is_begun in row if is_begun]
            for at_it in [[one] for one in begun] or [[]]:
                self.one_by_one([*others, *at_it])
        return held

    def one_by_one(self, rows: list[Any]) -> None:
        """No two at once."""
        if len(rows) > 1:
            self.model.add_no_overlap(rows)

    def _keep_services(self) -> None:
        """What work draws on, and what is held after it. More than there is can only be in use if that was begun so: then
        all of it is."""
        for service, (_, capacity) in enumerate(self.problem.services):
            drawn = sorted(self._drawn(service), key=lambda one: not one[2])
            begun = [many for _, many, is_begun in drawn if is_begun]
            if sum(begun) > capacity:
                self.is_plan = False
                left = [capacity, *(max(0, capacity - one) for one in accumulate(begun))]
                drawn = [
                    (row, min(many, free), True) for (row, many, _), free in zip(drawn, left, strict=False)
                ] + drawn[len(begun) :]
            self.keep_within([row for row, _, _ in drawn], [many for _, many, _ in drawn], capacity)

    def _drawn(self, service: int) -> Iterator[tuple[Any, int, bool]]:
        """(interval, how many, whether it is begun) of each draw on a service."""
        for block in self.problem.blocks:
            for one in block.stretches:
                for which, many in one.draws:
                    if which == service:
                        yield self.interval(self.begins[block.index] + one.offset, one.length), many, block.begun
            waiting = self.problem.waiting[block.index]
            for which, many in block.holds if waiting else ():
                if which == service:
                    yield self._held_until(block.index, waiting), many, block.begun

    def _held_until(self, at: int, waiting: Sequence[int]) -> Any:
        """From a block's end to the start of the last that waits for it."""
        ends = self.model.new_int_var(0, self.wish.before, "")
        for one in waiting:
            self.model.add(ends >= self.starts[one])
        return self.until(self.end(at), ends)

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
        for room in range(len(self.problem.rooms)):
            here = [block for block in self.problem.blocks if self.problem.stations[block.station].room == room]
            for station in sorted({block.station for block in here}):
                against = [block for block in here if block.station == station and block.length]
                one = self.problem.stations[station]
                wet = [(coat, coat.keeps_off(heats=one.heats, dusty=one.dusty)) for coat in here]
                some = [(coat, coat.length + more) for coat, more in wet if more is not None and coat.length + more]
                self._keep_off(some, against)

    def _keep_off(self, coats: list[tuple[Block, int]], against: list[Block]) -> None:
        """A block is not in its own way, nor are two in each other's that were begun."""
        alone = [(coat, ticks) for coat, ticks in coats if coat.begun or coat in against]
        for some in ([one for one in coats if one not in alone], *([one] for one in alone)):
            self.keep_apart(
                [self.interval(self.begins[coat.index], ticks) for coat, ticks in some],
                [
                    self.interval(self.begins[one.index], one.length)
                    for one in against
                    if all(one is not coat and not (one.begun and coat.begun) for coat, _ in some)
                ],
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

    def solve(self, limits: Limits, seen: Callable[[Plan], object] | None = None, stop: Stop | None = None) -> Answer:
        """The best plan within the limits; ``seen`` is called with each better one, in this thread. ``stop.ask()``, from
        any other thread, ends it within 0.2 s with the best plan and bound so far, as if its seconds were over; where that
        was asked before, the answer is no plan and the bound that the wish knew."""
        known = self.wish.at_least if self.wish.least == "finish" else 0
        if stop is not None and stop.asked:
            return Answer(None, known, False, 0.0)
        solver, status = solved(self.model, limits, stop, _Seen(self, seen) if seen else None)
        if status == cp_model.INFEASIBLE:
            return Answer(None, self.wish.before, True, took(solver, limits))
        plan = self.plan(solver) if status in (cp_model.OPTIMAL, cp_model.FEASIBLE) else None
        least = int(solver.best_objective_bound + 0.5) if status != cp_model.UNKNOWN else 0
        return Answer(plan, max(known, least), status == cp_model.OPTIMAL, took(solver, limits))

    def plan(self, values: Any) -> Plan:
        """The plan that a solution is."""
        placed = []
        for block in self.problem.blocks:
            begins = values.value(self.begins[block.index])
            setup = self.setups.value(block.index, values)
            hands, watchers = self.people.values(block, begins, setup, values)
            placed.append(Placed(block.index, begins - setup, setup, hands, watchers))
        return Plan(tuple(placed), "search")


def solved(
    model: cp_model.CpModel, limits: Limits, stop: Stop | None, seen: "_Seen | None" = None
) -> tuple[cp_model.CpSolver, Any]:
    """The solver after its work, and what it says of that."""
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = limits.workers
    solver.parameters.random_seed = limits.seed
    if limits.is_counted:
        solver.parameters.max_deterministic_time = limits.seconds * WORK_A_SECOND
    else:
        solver.parameters.max_time_in_seconds = limits.seconds
    if limits.work is not None:
        solver.parameters.max_deterministic_time = limits.work
    if limits.in_order:
        solver.parameters.search_branching = cp_model.FIXED_SEARCH
    solver.parameters.use_lns_only = limits.around
    if stop is None:
        return solver, solver.solve(model, seen)
    stop.ends = solver.stop_search
    # What was asked for before the solver was ready to hear is heard with its first bound.
    solver.best_bound_callback = lambda _: solver.stop_search() if stop.asked else None
    status = solver.solve(model, seen)
    stop.ends = None
    return solver, status


def took(solver: cp_model.CpSolver, limits: Limits) -> float:
    """The seconds that a solve took, by the measure of its limits."""
    return solver.deterministic_time / WORK_A_SECOND if limits.is_counted else solver.wall_time


def domain(spans: Iterable[Span]) -> cp_model.Domain:
    """Half-open spans as the solver has them."""
    return cp_model.Domain.from_intervals([[opens, closes - 1] for opens, closes in spans])


class _Seen(cp_model.CpSolverSolutionCallback):
    """Hears of each better plan while the solver works."""

    def __init__(self, model: Model, seen: Callable[[Plan], object]) -> None:
        super().__init__()
        self._model, self._seen = model, seen

    def on_solution_callback(self) -> None:
        self._seen(self._model.plan(self))


class _Setups:
    """For each block whether it ``needs`` its setup, that is, stands where its station stood on another family: no entry
    for never, 1 for always, or a literal."""

    def __init__(self, model: Model) -> None:
        self.of, self.problem = model, model.problem
        self.needs: dict[int, Any] = {}
        self._rows: list[list[Block]] = []
        self._firsts: list[list[Block]] = []
        for station in range(len(self.problem.stations)):
            here = [one for one in self.problem.blocks if one.station == station and one.unloads is None and one.family]
            able = [block for block in here if block.setup and not block.begun]
            if able:
                self._look_at(station, here, able)

    def _look_at(self, station: int, here: list[Block], able: list[Block]) -> None:
        families = {block.family for block in here}
        if len(families) > 1 and len(here) > MOST_IN_A_ROW:
            self.needs |= {block.index: 1 for block in able}
            self.of.is_bound = False
        elif len(families) > 1 or not (
            self.problem.stations[station].stands_on in families or any(block.begun for block in here)
        ):
            (self._rows if len(families) > 1 else self._firsts).append(here)
            self.needs |= {block.index: self.of.model.new_bool_var(f"setup{block.index}") for block in able}

    def ticks(self, at: int) -> Any:
        """What a block's setup takes."""
        return self.problem.blocks[at].setup * self.needs.get(at, 0)

    def keep(self) -> None:
        """Say when each is needed, now that it is known when loads hold their stations."""
        for here in self._firsts:
            self._one_is_first(here)
        for here in self._rows:
            self._in_a_row(here)

    def _one_is_first(self, here: list[Block]) -> None:
        model = self.of.model
        first = model.new_int_var(0, self.of.wish.before, "")
        literals = [self.needs.get(block.index, model.new_bool_var("")) for block in here]
        model.add_exactly_one(literals)
        for block, literal in zip(here, literals, strict=True):
            model.add(first <= self.of.starts[block.index])
            model.add(self.of.starts[block.index] <= first).only_enforce_if(literal)

    def _in_a_row(self, here: list[Block]) -> None:
        """Each load after another or first; where the one before it is of another family, it is set up for."""
        model, held = self.of.model, self.of.held
        stands_on = self.problem.stations[here[0].station].stands_on
        changes: dict[int, list[Any]] = {block.index: [] for block in here}
        arcs = []
        for nth, block in enumerate(here, 1):
            first, last = model.new_bool_var(""), model.new_bool_var("")
            arcs += [(0, nth, first), (nth, 0, last)]
            if stands_on != block.family:
                changes[block.index].append(first)
            for other_nth, other in enumerate(here, 1):
                if other.index == block.index:
                    continue
                follows = model.new_bool_var("")
                arcs.append((nth, other_nth, follows))
                if not (block.begun and other.begun):
                    model.add(held[other.index][0] >= held[block.index][1]).only_enforce_if(follows)
                if other.family != block.family:
                    changes[other.index].append(follows)
        model.add_circuit(arcs)
        for at, found in changes.items():
            if at in self.needs:
                model.add(self.needs[at] == sum(found))

    def hints(self, placed: Placed) -> list[tuple[Any, int]]:
        """What a plan says of a block's setup."""
        need = self.needs.get(placed.block)
        return [] if need is None or isinstance(need, int) else [(need, int(placed.setup > 0))]

    def value(self, at: int, values: Any) -> int:
        """The ticks of setup in a solution."""
        need = self.needs.get(at, 0)
        return self.problem.blocks[at].setup * (need if isinstance(need, int) else values.value(need))


class _Dues:
    """By how much each order line is late, at least, in open ticks; ``sum`` is what is to be least, or kept within the wish.

    Where all last blocks of a run are alike and keep their order, the one that completes an order line is known. Else some of
    them are chosen that make pieces enough, and are there when the last of those is.
    """

    def __init__(self, model: Model) -> None:
        self.of, self.problem, self.worth = model, model.problem, Worth(model.problem)
        self.lates = [(due, *self._late(order, due)) for order, due in dated(self.problem)]
        self.sum = sum(self._counted(late, in_time) for _, late, in_time in self.lates)
        if model.wish.late is not None and self.lates:
            model.model.add(self.sum <= model.wish.late)

    def _counted(self, late: Any, in_time: Any) -> Any:
        return late + FAR * (1 - in_time) if self.problem.late_counts == "lines" else late

    def hints(self, plan: Plan) -> Iterator[tuple[Any, int]]:
        """How late each is in a plan."""
        margins = self.worth.margins(ends_of(self.problem, plan))
        for (due, late, in_time), margin in zip(self.lates, margins, strict=True):
            yield in_time, int(margin <= 0)
            yield late, self.worth.late_by(due, due + margin) if margin > 0 else 0

    def _late(self, order: Order, due: int) -> tuple[Any, Any]:
        """The open ticks by which it is late, and whether it is in time: by when it is there follows from them."""
        model, hours, before = self.of.model, self.worth.hours, self.of.wish.before
        until = model.new_int_var(0, before, "")
        in_time = model.new_bool_var("")
        late = model.new_int_var(0, max(1, hours.between(due, before) - min(0, due)), "late")
        model.add(until <= due).only_enforce_if(in_time)
        ways = [in_time]
        spans = common(open_spans(self.problem), ((max(due, 0), before),)) if due < before else ()
        for opens in sorted({max(due, 0), *(opens for opens, _ in spans)}):
            gone = hours.between(due, opens) - min(0, due)
            ways.append(model.new_bool_var(""))
            model.add(until <= opens + late - gone).only_enforce_if(ways[-1])
            model.add(late >= max(1, gone)).only_enforce_if(ways[-1])
        model.add_exactly_one(ways)
        self._keep(order, until)
        return late, in_time

    def _keep(self, order: Order, until: Any) -> None:
        """The pieces of an order line are there by then."""
        last = [self.problem.blocks[at] for at, pieces in self.problem.last.get(order.run, ()) if pieces]
        groups = {self.of.alike.group_of[one.index] for one in last}
        if sum(one.pieces for one in last) < order.by_then:
            self.of.model.add(self.of.finish <= until)
        elif len(groups) == 1 and groups <= self.of.alike.ordered:
            completes = last[-(-order.by_then // last[0].pieces) - 1]
            self.of.model.add(self.of.end(completes.index) <= until)
        else:
            self._choose(order, {one.index: self._is_there(one.index, until) for one in last})

    def _is_there(self, at: int, until: Any) -> Any:
        there = self.of.model.new_bool_var("")
        self.of.model.add(self.of.end(at) <= until).only_enforce_if(there)
        return there

    def _choose(self, order: Order, there: dict[int, Any]) -> None:
        """Pieces enough; of alike blocks that keep their order the first."""
        self.of.model.add(sum(self.problem.blocks[at].pieces * one for at, one in there.items()) >= order.by_then)
        for group in {self.of.alike.group_of[at] for at in there} & self.of.alike.ordered:
            for one, other in pairwise(self.of.alike.groups[group]):
                self.of.model.add_implication(there[other], there[one])
