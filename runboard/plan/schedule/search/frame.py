"""What every part of the constraint model speaks of: when blocks begin and start, and the few shapes of rule that they are
kept by."""

from collections.abc import Iterable
from typing import Any

from ortools.sat.python import cp_model

from runboard.plan.schedule.problem.alike import Alike
from runboard.plan.schedule.problem.hours import Chains, common
from runboard.plan.schedule.problem.nouns import Block, Problem, Span
from runboard.plan.schedule.search.solving import Aim

Ends = Any  # a linear expression of the solver


class Frame:
    """``begins`` are the blocks' own first ticks, ``starts`` those with the setup before them, ``held`` for each load, by its
    first block, from when until when its station is. The last two, and ``finish``, are filled in by the model as
    they are known."""

    def __init__(self, problem: Problem, wish: Aim, chains: Chains, alike: Alike) -> None:
        self.problem, self.wish, self.chains, self.alike = problem, wish, chains, alike
        self.model = cp_model.CpModel()
        self.is_bound = self.is_plan = True
        self.begins = [self._begin(block) for block in problem.blocks]
        self.starts: list[Any] = []
        self.held: dict[int, tuple[Ends, Ends]] = {}
        self.finish: Any = None

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

    def interval(self, start: Ends, size: int, present: Any = None) -> Any:
        """An interval of fixed size, there always or where a literal holds."""
        if present is None:
            return self.model.new_fixed_size_interval_var(start, size, "")
        return self.model.new_optional_fixed_size_interval_var(start, size, present, "")

    def until(self, start: Ends, end: Ends) -> Any:
        """An interval whose size is the solver's."""
        return self.model.new_interval_var(start, self.model.new_int_var(0, self.wish.before, ""), end, "")

    def one_by_one(self, rows: list[Any]) -> None:
        """No two at once."""
        if len(rows) > 1:
            self.model.add_no_overlap(rows)

    def keep_within(self, rows: list[Any], demands: list[int], capacity: int) -> None:
        """No more than ``capacity`` at a time: one after the other where two are too many."""
        if sum(demands) <= capacity:
            return
        if sum(sorted(demands)[:2]) > capacity:
            self.model.add_no_overlap(rows)
        else:
            self.model.add_cumulative(rows, demands, capacity)

    def keep_apart(self, some: list[Any], others: list[Any]) -> None:
        """None of the first overlaps any of the second. The first may overlap among themselves; the second are such
        as never do: loads of one station, one person's hands."""
        if some and others:
            demands = [1] * len(some) + [len(some)] * len(others)
            self.model.add_cumulative([*some, *others], demands, len(some))


def domain(spans: Iterable[Span]) -> cp_model.Domain:
    """Half-open spans as the solver has them."""
    return cp_model.Domain.from_intervals([[opens, closes - 1] for opens, closes in spans])
