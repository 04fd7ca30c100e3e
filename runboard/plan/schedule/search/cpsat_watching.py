"""Eyes on machines in the constraint model: who watches each from its start, and who takes over when."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from ortools.sat.python import cp_model

from runboard.plan.schedule.problem.conflicts import Doing
from runboard.plan.schedule.problem.domains import starts_of, within
from runboard.plan.schedule.problem.nouns import Block, Placed, Problem, Span, Stretch
from runboard.plan.schedule.problem.presence import common, joined, open_spans

if TYPE_CHECKING:
    from runboard.plan.schedule.search.cpsat import Model

# Nobody takes over a machine that runs for less than ten minutes, nor for less than two at its start or end.
_LONG, _LEAST = 10 * 2, 2 * 2


@dataclass(frozen=True)
class Done:
    """Something a person is there for: ``present`` is None where it always is. ``end`` is a variable where ``size`` is."""

    kind: Doing
    start: Any
    size: Any
    present: Any = None
    begun: bool = False
    end: Any = None


@dataclass(frozen=True)
class _Change:
    """A change of watcher that may come: the literals of who takes over, after how many ticks of the run (all of them
    where nobody does), and at which tick."""

    second: dict[int, Any]
    after: Any
    at: Any


# Who does it, None for one of all of them.
Share = tuple[int | None, Done]


class Eyes:
    """Who watches what, in the model: ``by`` are the literals of who does from the start, for each block."""

    def __init__(self, model: "Model", there: list[int]) -> None:
        self.model, self.problem, self.there = model, model.problem, there
        self.by: dict[int, dict[int, Any]] = {}
        self.changes: dict[int, _Change] = {}
        self._away = {one: away(self.problem, one) for one in there}

    def take(self, block: Block, stretch: Stretch) -> Iterator[Share]:
        """What of the watching of a block falls to whom."""
        if block.begun and block.by is None:
            return
        kind: Doing = (block.station, "watched")
        start = self.model.begins[block.index] + stretch.offset
        yield None, Done(kind, start, stretch.length, None, block.begun)
        if len(self.there) > 1 and self.model.wish.watching == "anyone":
            self.model.is_plan = False
            return
        if len(self.there) > 1:
            self.model.is_bound = False  # somebody else could have taken over, or once more
        if len(self.there) > 1 and self.model.wish.watching == "by turns" and stretch.length >= _LONG:
            yield from self._by_turns(block, stretch)
            return
        self.by[block.index] = self._throughout(block, stretch)
        for one, literal in self.by[block.index].items():
            yield one, Done(kind, start, stretch.length, literal, block.begun and one == block.by)

    # by one person from start to end

    def _throughout(self, block: Block, stretch: Stretch) -> dict[int, Any]:
        able = {}
        for one in self.there:
            spans = within(self.problem.people[one].windows, stretch.offset, stretch.length)
            if common(spans, starts_of(self.problem, block)):
                able[one] = spans
        if block.begun and block.by is not None:
            able[block.by] = ((0, 1),)
        begin = self.model.begins[block.index]
        if len(able) == 1:
            one, spans = next(iter(able.items()))
            keep_in(self.model, begin, spans, [])
            return {one: None}
        found = self._literals(block, able)
        self.model.model.add_exactly_one(found.values())
        whole = starts_of(self.problem, block)
        for one, spans in able.items():
            if common(whole, spans) != whole:
                keep_in(self.model, begin, spans, [found[one]])
        return found

    def _literals(self, block: Block, people: Iterable[int]) -> dict[int, Any]:
        return {one: self.model.model.new_bool_var(f"b{block.index}seen{one}") for one in people}

    # with one change of watcher, where that helps

    def _by_turns(self, block: Block, stretch: Stretch) -> Iterator[Share]:
        """Two parts of the run, the second of which may be none: whoever takes over is there before the other goes."""
        kind: Doing = (block.station, "watched")
        begins = self.model.begins[block.index] + stretch.offset
        change = self._change(block, stretch, begins)
        at_it = [block.by] if block.begun and block.by is not None else []
        first = self._literals(block, sorted({*self.there, *at_it}))
        self.model.model.add_exactly_one(first.values())
        for one in first.keys() & change.second.keys():
            self.model.model.add_bool_or([first[one].negated(), change.second[one].negated()])
        self.by[block.index], self.changes[block.index] = first, change
        for one, literal in first.items():
            yield one, self._there(one, Done(kind, begins, change.after, literal, one in at_it, change.at))
        left = self.model.model.new_int_var(0, stretch.length - _LEAST, "")
        self.model.model.add(left + change.after == stretch.length)
        for one, literal in change.second.items():
            yield one, self._there(one, Done(kind, change.at, left, literal, False, begins + stretch.length))

    def _change(self, block: Block, stretch: Stretch, begins: Any) -> _Change:
        model, length = self.model.model, stretch.length
        spans = cp_model.Domain.from_intervals([[_LEAST, length - _LEAST], [length, length]])
        after = model.new_int_var_from_domain(spans, f"b{block.index}after")
        at = model.new_int_var(0, self.model.wish.before, f"b{block.index}change")
        model.add(at == begins + after)
        second = {one: model.new_bool_var(f"b{block.index}then{one}") for one in self.there}
        model.add_at_most_one(second.values())
        model.add(after == length).only_enforce_if([one.negated() for one in second.values()])
        for one in second.values():
            model.add(after <= length - _LEAST).only_enforce_if(one)
        return _Change(second, after, at)

    def _there(self, person: int, done: Done) -> Done:
        """Kept within somebody's hours, but for what is begun."""
        away = () if done.begun else self._away[person]
        row = self.model.row(done)
        self.model.keep_apart([row], [self.model.interval(opens, closes - opens) for opens, closes in away])
        return done

    # plans in and out

    def hints(self, placed: Placed) -> list[tuple[Any, int]]:
        """What a plan says of who watches a block: nothing where this model cannot say it."""
        by, change = self.by.get(placed.block, {}), self.changes.get(placed.block)
        if not by or not placed.watchers or len(placed.watchers) > (1 if change is None else 2):
            return []
        (first, start), *rest = placed.watchers
        found = [(literal, int(one == first)) for one, literal in by.items() if literal is not None]
        if change is None:
            return found
        stretch = self.problem.blocks[placed.block].watched
        length = stretch.length if stretch else 0
        second, at = rest[0] if rest else (None, start + length)
        if rest and not _LEAST <= at - start <= length - _LEAST:
            return []
        found += [(literal, int(one == second)) for one, literal in change.second.items()]
        return [*found, (change.after, at - start), (change.at, at)]

    def values(self, block: Block, begins: int, values: Any) -> tuple[tuple[int, int], ...]:
        """Who watches a block, and from when, in a solution."""
        first = chosen(self.by.get(block.index, {}), values)
        if first is None or block.watched is None:
            return ()
        change = self.changes.get(block.index)
        second = chosen(change.second, values) if change is not None else None
        later = ((second, int(values.value(change.at))),) if change is not None and second is not None else ()
        return ((first, begins + block.watched.offset), *later)


def chosen(by: dict[int, Any], values: Any) -> int | None:
    """Who of these does it in a solution."""
    return next((one for one, var in by.items() if var is None or values.value(var)), None)


def keep_in(model: "Model", start: Any, spans: tuple[Span, ...], literals: list[Any]) -> None:
    """Where all the literals hold, a start lies in these spans."""
    if not spans:
        model.model.add_bool_or([one.negated() for one in literals])
        return
    domain = cp_model.Domain.from_intervals([[opens, closes - 1] for opens, closes in spans])
    kept = model.model.add_linear_expression_in_domain(start, domain)
    if literals:
        kept.only_enforce_if(literals)


def away(problem: Problem, person: int) -> tuple[Span, ...]:
    """When others are there and one person is not; and for as long as what is begun runs, which may be beyond all hours."""
    windows = joined(problem.people[person].windows)
    there = open_spans(problem)
    ends = [0, *(tick for window in windows for tick in window), there[-1][1]]
    gaps = tuple((ends[at], ends[at + 1]) for at in range(0, len(ends), 2) if ends[at] < ends[at + 1])
    begun = max((block.length for block in problem.blocks if block.begun), default=0)
    return common(gaps, joined([(0, begun), *there]))
