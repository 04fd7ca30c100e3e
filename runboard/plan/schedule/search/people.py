"""People in the constraint model: whose hands, whose eyes on a machine, and who takes over."""

from dataclasses import dataclass
from functools import reduce
from typing import Any

from ortools.sat.python import cp_model

from runboard.plan.schedule.problem.hours import common, hands_in, joined, open_spans, within
from runboard.plan.schedule.problem.nouns import Block, Placed, Span, Stretch
from runboard.plan.schedule.problem.people import Doing
from runboard.plan.schedule.search.apart import Doings, Done
from runboard.plan.schedule.search.frame import Frame, domain
from runboard.plan.schedule.search.setups import Setups

# Nobody takes over a machine that runs for less than ten minutes, nor for less than two at its start or end.
_LONG, _LEAST = 10 * 2, 2 * 2


@dataclass(frozen=True)
class _Change:
    """A change of watcher that may come: the literals of who takes over, after how many ticks of the run (all of them
    where nobody does), and at which tick."""

    second: dict[int, Any]
    after: Any
    at: Any


class People:
    """Who does what, in the model. ``doings`` is what each person may be there for; ``hands`` and ``eyes`` are for each block
    the literals of who works at it and who watches it from its start, None where there is only one."""

    def __init__(self, frame: Frame, setups: Setups) -> None:
        self.of, self.problem, self.setups = frame, frame.problem, setups
        self.there = [at for at, person in enumerate(self.problem.people) if person.windows]
        self.hands: dict[int, dict[int, Any]] = {}
        self.eyes: dict[int, dict[int, Any]] = {}
        self.changes: dict[int, _Change] = {}
        self.doings = Doings(frame)
        self._seen: dict[tuple[int, int, int, int], tuple[Span, ...]] = {}
        for block in self.problem.blocks:
            self._take_hands(block)
            if block.watched is not None and (block.by is not None or not block.begun):
                self._take_eyes(block, block.watched)
        self.doings.keep(len(self.there))

    # hands

    def _take_hands(self, block: Block) -> None:
        setup = self.setups.needs.get(block.index)
        hands = [stretch for stretch in block.stretches if stretch.attendance == "hands-on"]
        if hands or setup is not None:
            self.hands[block.index] = self._one_of(block)
        for stretch in hands:
            done = Done((block.station, "hands-on"), self._begin(block, stretch), stretch.length, None, block.begun)
            self._share(done, self.hands[block.index])
        if setup is not None:
            self._add_setup(block, None if isinstance(setup, int) else setup)

    def _begin(self, block: Block, stretch: Stretch) -> Any:
        """What is begun begins at a tick that is known."""
        return stretch.offset if block.begun else self.of.begins[block.index] + stretch.offset

    def _share(self, done: Done, by: dict[int, Any]) -> None:
        self.doings.of_any.append(done)
        for person, literal in by.items():
            self.doings.by[person].append(Done(done.kind, done.start, done.size, literal, done.begun))

    def _one_of(self, block: Block) -> dict[int, Any]:
        """Who may put their hands to a block: whoever is at it already does."""
        if block.begun and block.by is not None:
            return {block.by: None}
        able = {
            person: self.of.chains.starts_by(block.index, person)
            for person in block.people
            if self.problem.people[person].windows
        }
        return self._chosen_of(block, able, "by")

    def _chosen_of(self, block: Block, able: dict[int, tuple[Span, ...]], name: str) -> dict[int, Any]:
        """A literal for each person, exactly one of which holds, with the block's begin where that one's hours let it be."""
        found: dict[int, Any] = dict.fromkeys(able)
        if len(able) != 1:
            found = {person: self.of.model.new_bool_var(f"b{block.index}{name}{person}") for person in able}
            self.of.model.add_exactly_one(found.values())
        whole = self.of.chains.starts[block.index]
        for person, spans in able.items():
            if spans != whole:
                self._keep_in(self.of.begins[block.index], spans, [] if found[person] is None else [found[person]])
        return found

    def _keep_in(self, start: Any, spans: tuple[Span, ...], literals: list[Any]) -> None:
        """Where all the literals hold, a start lies in these spans."""
        if not spans:
            self.of.model.add_bool_or([literal.negated() for literal in literals])
            return
        kept = self.of.model.add_linear_expression_in_domain(start, domain(spans))
        if literals:
            kept.only_enforce_if(literals)

    def _add_setup(self, block: Block, need: Any) -> None:
        """The setup before a block, by whose hands do the rest, within the same hours; ``need`` None where it always is."""
        start = self.of.begins[block.index] - block.setup
        self.doings.of_any.append(Done((block.station, "hands-on"), start, block.setup, need))
        runs = within(self.problem.stations[block.station].runs, 0, block.setup + block.length)
        for person, theirs in self.hands[block.index].items():
            parts = [(0, block.setup), *((block.setup + offset, length) for offset, length in hands_in(block))]
            spans = reduce(common, (within(self.problem.people[person].windows, *part) for part in parts), runs)
            literals = [each for each in (need, theirs) if each is not None]
            self._keep_in(start, spans, literals)
            self.doings.by[person].append(Done((block.station, "hands-on"), start, block.setup, self._both(literals)))

    def _both(self, literals: list[Any]) -> Any:
        if len(literals) < 2:
            return literals[0] if literals else None
        both = self.of.model.new_bool_var("")
        self.of.model.add_bool_and(literals).only_enforce_if(both)
        self.of.model.add_bool_or([both, *(literal.negated() for literal in literals)])
        return both

    # eyes

    def _take_eyes(self, block: Block, stretch: Stretch) -> None:
        """Who watches a block's run: one person, or two by turns, or nobody named."""
        kind: Doing = (block.station, "watched")
        start = self._begin(block, stretch)
        if len(self.there) > 1:
            if self.of.wish.watching == "anyone":
                self.of.is_plan = False
                self.doings.of_any.append(Done(kind, start, stretch.length, None, block.begun))
                return
            self.of.is_bound = False  # somebody else could have taken over, or once more
            if self.of.wish.watching == "by turns" and stretch.length >= _LONG:
                self.doings.of_any.append(Done(kind, start, stretch.length, None, block.begun))
                self._by_turns(block, stretch)
                return
        self.eyes[block.index] = by = self._throughout(block, stretch)
        self.doings.of_any.append(Done(kind, start, stretch.length, None, block.begun))
        for person, literal in by.items():
            self.doings.by[person].append(
                Done(kind, start, stretch.length, literal, block.begun and person == block.by)
            )

    def _throughout(self, block: Block, stretch: Stretch) -> dict[int, Any]:
        whole = self.of.chains.starts[block.index]
        able = {}
        for person in self.there:
            asked = person, stretch.offset, stretch.length, id(whole)
            if asked not in self._seen:
                windows = self.problem.people[person].windows
                self._seen[asked] = common(within(windows, stretch.offset, stretch.length), whole)
            if self._seen[asked]:
                able[person] = self._seen[asked]
        if block.begun and block.by is not None:
            able[block.by] = whole
        return self._chosen_of(block, able, "seen")

    def _by_turns(self, block: Block, stretch: Stretch) -> None:
        """Two parts of the run, the second of which may be none: whoever takes over is there before the other goes."""
        kind: Doing = (block.station, "watched")
        begins = self._begin(block, stretch)
        change = self._change(block, stretch, begins)
        at_it = [block.by] if block.begun and block.by is not None else []
        first = {person: self.of.model.new_bool_var("") for person in sorted({*self.there, *at_it})}
        self.of.model.add_exactly_one(first.values())
        for person in first.keys() & change.second.keys():
            self.of.model.add_bool_or([first[person].negated(), change.second[person].negated()])
        self.eyes[block.index], self.changes[block.index] = first, change
        for person, literal in first.items():
            self._there(person, Done(kind, begins, change.after, literal, person in at_it, change.at))
        left = self.of.model.new_int_var(0, stretch.length - _LEAST, "")
        self.of.model.add(left + change.after == stretch.length)
        for person, literal in change.second.items():
            self._there(person, Done(kind, change.at, left, literal, False, begins + stretch.length))

    def _change(self, block: Block, stretch: Stretch, begins: Any) -> _Change:
        model, length = self.of.model, stretch.length
        spans = cp_model.Domain.from_intervals([[_LEAST, length - _LEAST], [length, length]])
        after = model.new_int_var_from_domain(spans, f"b{block.index}after")
        at = model.new_int_var(0, self.of.wish.before, f"b{block.index}change")
        model.add(at == begins + after)
        second = {person: model.new_bool_var(f"b{block.index}then{person}") for person in self.there}
        model.add_at_most_one(second.values())
        model.add(after == length).only_enforce_if([literal.negated() for literal in second.values()])
        for literal in second.values():
            model.add(after <= length - _LEAST).only_enforce_if(literal)
        return _Change(second, after, at)

    def _there(self, person: int, done: Done) -> None:
        """Kept within somebody's hours, but for what is begun."""
        self.doings.by[person].append(done)
        away = () if done.begun else self._away(person)
        self.of.keep_apart([self.doings.row(done)], [self.of.interval(opens, closes - opens) for opens, closes in away])

    def _away(self, person: int) -> tuple[Span, ...]:
        """When others are there and one person is not; and for as long as what is begun runs, maybe beyond all hours."""
        windows = joined(self.problem.people[person].windows)
        spans = open_spans(self.problem)
        ends = [0, *(tick for window in windows for tick in window), spans[-1][1]]
        gaps = tuple((ends[at], ends[at + 1]) for at in range(0, len(ends), 2) if ends[at] < ends[at + 1])
        begun = max((block.length for block in self.problem.blocks if block.begun), default=0)
        return common(gaps, joined([(0, begun), *spans]))

    # plans in and out

    def hints(self, placed: Placed) -> list[tuple[Any, int]]:
        """What a plan says of who does a block, and of who watches it where this model can say that."""
        by = self.hands.get(placed.block, {})
        return [*_told(by, placed.hands), *self._hints_of_eyes(placed)]

    def _hints_of_eyes(self, placed: Placed) -> list[tuple[Any, int]]:
        by, change = self.eyes.get(placed.block, {}), self.changes.get(placed.block)
        if not by or not placed.watchers or len(placed.watchers) > (1 if change is None else 2):
            return []
        (first, start), *rest = placed.watchers
        stretch = self.problem.blocks[placed.block].watched
        if change is None or stretch is None:
            return _told(by, first)
        second, at = rest[0] if rest else (None, start + stretch.length)
        if rest and not _LEAST <= at - start <= stretch.length - _LEAST:
            return []
        return [*_told(by, first), *_told(change.second, second), (change.after, at - start), (change.at, at)]

    def values(
        self, block: Block, begins: int, setup: int, values: Any
    ) -> tuple[int | None, tuple[tuple[int, int], ...]]:
        """Who does a block, and who watches it from when, in a solution."""
        hands = _chosen(self.hands.get(block.index, {}), values) if block.hands or setup else None
        first = _chosen(self.eyes.get(block.index, {}), values)
        if first is None or block.watched is None:
            return hands, ()
        change = self.changes.get(block.index)
        second = _chosen(change.second, values) if change is not None else None
        later = ((second, int(values.value(change.at))),) if change is not None and second is not None else ()
        return hands, ((first, begins + block.watched.offset), *later)


def _told(by: dict[int, Any], person: int | None) -> list[tuple[Any, int]]:
    return [(literal, int(somebody == person)) for somebody, literal in by.items() if literal is not None]


def _chosen(by: dict[int, Any], values: Any) -> int | None:
    """Who of these does it in a solution."""
    return next((person for person, var in by.items() if var is None or values.value(var)), None)
