"""People in the constraint model: hands, eyes on a machine, and the walks between rooms."""

from collections import defaultdict
from dataclasses import dataclass
from functools import reduce
from itertools import combinations
from typing import TYPE_CHECKING, Any

from ortools.sat.python import cp_model

from runboard.plan.schedule.conflicts import Doing, cliques
from runboard.plan.schedule.domains import hands_of, starts_of, within
from runboard.plan.schedule.presence import Presence, common
from runboard.plan.schedule.problem import Block, Placed, Span, Stretch

if TYPE_CHECKING:
    from runboard.plan.schedule.cpsat import Model


@dataclass(frozen=True)
class _Doing:
    """Something a person is there for: ``present`` is None where it always is, ``by`` who does it if that is known."""

    kind: Doing
    start: Any
    size: int
    present: Any = None
    begun: bool = False


class People:
    """Who does what, in the model."""

    def __init__(self, model: "Model") -> None:
        self.model, self.problem = model, model.problem
        self.there = [at for at, person in enumerate(self.problem.people) if person.windows]
        self.hands: dict[int, dict[int, Any]] = {}
        self.eyes: dict[int, dict[int, Any]] = {}
        self._done: dict[int, list[_Doing]] = {at: [] for at in range(len(self.problem.people))}
        self._all: list[_Doing] = []
        for block in self.problem.blocks:
            self._take(block)
        self._keep_apart()
        self._keep_walks()
        self._keep_heads()

    # who

    def _take(self, block: Block) -> None:
        hands = [one for one in block.stretches if one.attendance == "hands-on"]
        setup = self.model.setups.present(block.index)
        if hands or setup is not None:
            able = (block.by,) if block.begun and block.by is not None else block.people
            self.hands[block.index] = self._one_of(
                block, tuple(one for one in able if self.problem.people[one].windows)
            )
        for one in hands:
            self._add(block, one, self.hands[block.index])
        if setup is not None:
            self._add_setup(block, setup)
        if block.watched is not None:
            self._watch(block, block.watched)

    def _one_of(self, block: Block, able: tuple[int, ...]) -> dict[int, Any]:
        """A literal for each who may: None where there is only one."""
        if len(able) == 1:
            return {able[0]: None}
        found = {one: self.model.model.new_bool_var(f"b{block.index}by{one}") for one in able}
        self.model.model.add_exactly_one(found.values())
        whole = starts_of(self.problem, block)
        for one, literal in found.items():
            theirs = starts_of(self.problem, block, one)
            if theirs != whole and not block.begun:
                self._only_in(self.model.begins[block.index], theirs, [literal])
        return found

    def _only_in(self, start: Any, spans: tuple[Span, ...], literals: list[Any]) -> None:
        if not spans:
            self.model.model.add_bool_or([one.negated() for one in literals])
            return
        domain = cp_model.Domain.from_intervals([[opens, closes - 1] for opens, closes in spans])
        kept = self.model.model.add_linear_expression_in_domain(start, domain)
        if literals:
            kept.only_enforce_if(literals)

    def _add(self, block: Block, stretch: Stretch, by: dict[int, Any]) -> None:
        kind: Doing = (block.station, "watched" if stretch.attendance == "watched" else "hands-on")
        start = self.model.begins[block.index] + stretch.offset
        self._all.append(_Doing(kind, start, stretch.length, None, block.begun))
        for one, literal in by.items():
            self._done[one].append(_Doing(kind, start, stretch.length, literal, block.begun))

    def _add_setup(self, block: Block, need: Any) -> None:
        """The setup before a block, by whose hands do the rest, within the same hours."""
        start = self.model.begins[block.index] - block.setup
        literal = None if isinstance(need, int) else need
        self._all.append(_Doing((block.station, "hands-on"), start, block.setup, literal))
        station = self.problem.stations[block.station]
        for one, theirs in self.hands[block.index].items():
            windows = within(self.problem.people[one].windows, 0, block.setup)
            literals = [each for each in (literal, theirs) if each is not None]
            spans = common(windows, within(station.runs, 0, block.setup + block.length))
            spans = reduce(common, self._with_setup(block, one), spans)
            self._only_in(start, spans, literals)
            self._done[one].append(_Doing((block.station, "hands-on"), start, block.setup, self._both(literals)))

    def _with_setup(self, block: Block, person: int) -> list[tuple[Span, ...]]:
        windows = self.problem.people[person].windows
        return [within(windows, block.setup + offset, length) for offset, length in hands_of(block)]

    def _both(self, literals: list[Any]) -> Any:
        if len(literals) < 2:
            return literals[0] if literals else None
        both = self.model.model.new_bool_var("")
        self.model.model.add_bool_and(literals).only_enforce_if(both)
        self.model.model.add_bool_or([both, *(one.negated() for one in literals)])
        return both

    def _watch(self, block: Block, stretch: Stretch) -> None:
        if block.begun and block.by is None:
            return
        if self.model.wish.watching == "anyone" and len(self.there) > 1:
            self._add(block, stretch, {})
            self.model.is_plan = False
            return
        able = {}
        for one in self.there:
            spans = within(self.problem.people[one].windows, stretch.offset, stretch.length)
            if common(spans, starts_of(self.problem, block)):
                able[one] = spans
        if block.begun and block.by is not None:
            able[block.by] = ((0, 1),)
        self.eyes[block.index] = self._eyes(block, able)
        if len(self.there) > 1:
            self.model.is_bound = False  # somebody else could have taken over half-way
        self._add(block, stretch, self.eyes[block.index])

    def _eyes(self, block: Block, able: dict[int, tuple[Span, ...]]) -> dict[int, Any]:
        begin = self.model.begins[block.index]
        if len(able) == 1:
            one, spans = next(iter(able.items()))
            self._only_in(begin, spans, [])
            return {one: None}
        found = {one: self.model.model.new_bool_var(f"b{block.index}seen{one}") for one in able}
        self.model.model.add_exactly_one(found.values())
        whole = starts_of(self.problem, block)
        for one, spans in able.items():
            if common(whole, spans) != whole:
                self._only_in(begin, spans, [found[one]])
        return found

    # what one person cannot do at once

    def _keep_apart(self) -> None:
        if any(self._sees_afar(at) for at in range(len(self.problem.stations))):
            # Where a machine is watched from another room, walks are taken too strictly or not at all.
            self.model.is_bound = self.model.is_plan = False
        for clique in cliques(self.problem):
            for done in self._done.values():
                rows = [self._row(one) for one in done if one.kind in clique]
                if len(rows) > 1:
                    self.model.model.add_no_overlap(rows)
            if len(self.there) > 1:
                self._keep_within(clique)

    def _sees_afar(self, at: int) -> bool:
        """Whether there is work from which a machine is watched in another room."""
        station = self.problem.stations[at]
        kinds = {one.kind for one in self._all}
        others = {other for other, _ in kinds if other in station.watched_from}
        return (at, "watched") in kinds and any(self.problem.stations[one].room != station.room for one in others)

    def _keep_within(self, clique: frozenset[Doing]) -> None:
        """All together: no more at a time than there are people, which says in one row what each person's says alone."""
        # What is begun may be done by somebody beyond their hours.
        rows = [self._row(one) for one in self._all if one.kind in clique and not one.begun]
        demands = [1] * len(rows)
        before = self.model.wish.before
        steps = Presence.of(person.windows for person in self.problem.people).steps
        for (start, many), (end, _) in zip(steps, [*steps[1:], (before, 0)], strict=True):
            if 0 < many < len(self.there) and start < before:
                rows.append(self.model.interval(start, min(end, before) - start))
                demands.append(len(self.there) - many)
        self.model.keep_within(rows, demands, len(self.there))

    def _row(self, one: _Doing, early: int = 0, late: int = 0) -> Any:
        return self.model.interval(one.start - early, one.size + early + late, one.present)

    # walking

    def _keep_walks(self) -> None:
        for done in self._done.values():
            rooms: dict[int, list[_Doing]] = defaultdict(list)
            for one in done:
                rooms[self.problem.stations[one.kind[0]].room].append(one)
            for here, there in combinations(rooms, 2):
                few, many = sorted(
                    (here, there), key=lambda room: len(rooms[room])
                )  # searched far faster this way round
                self._keep_walk(rooms[many], rooms[few], self.problem.walks[many][few], self.problem.walks[few][many])

    def _keep_walk(self, some: list[_Doing], others: list[_Doing], back: int, forth: int) -> None:
        """The doings of one room, stretched by the way there and back, touch none of the other."""
        if not back and not forth:
            return
        some = [one for one in some if not self._seen_from_afar(one, others)]
        others = [one for one in others if not self._seen_from_afar(one, some)]
        for kind in {one.kind if one.kind[1] == "watched" else None for one in others}:
            same = [one for one in others if kind in (one.kind, None) and (kind or one.kind[1] == "hands-on")]
            self.model.keep_apart([self._row(one, forth, back) for one in some], [self._row(one) for one in same])

    def _seen_from_afar(self, one: _Doing, others: list[_Doing]) -> bool:
        """Whether a machine is watched from a station of the other room: no walk is between the two."""
        seen_from = self.problem.stations[one.kind[0]].watched_from
        return one.kind[1] == "watched" and any(other.kind[0] in seen_from for other in others)

    def _keep_heads(self) -> None:
        """The first walk, from the room that somebody is in now."""
        for person, done in self._done.items():
            room = self.problem.people[person].room
            for one in done if room >= 0 else ():
                walk = self.problem.walks[room][self.problem.stations[one.kind[0]].room]
                if walk and not one.begun:
                    kept = self.model.model.add(one.start >= walk)
                    if one.present is not None:
                        kept.only_enforce_if(one.present)

    # plans in and out

    def hints(self, placed: Placed) -> list[tuple[Any, int]]:
        """What a plan says of who does a block."""
        found = [(var, int(one == placed.hands)) for one, var in self.hands.get(placed.block, {}).items()]
        seen_by = placed.watchers[0][0] if placed.watchers else None
        found += [(var, int(one == seen_by)) for one, var in self.eyes.get(placed.block, {}).items()]
        return [(var, value) for var, value in found if var is not None]

    def values(self, block: Block, begins: int, values: Any) -> tuple[int | None, tuple[tuple[int, int], ...]]:
        """Who does a block, and who watches it from when, in a solution."""
        is_wanted = block.hands > 0 or self.model.setups.value(block.index, values) > 0
        hands = self._chosen(self.hands.get(block.index, {}), values) if is_wanted else None
        seen_by = self._chosen(self.eyes.get(block.index, {}), values)
        if seen_by is None or block.watched is None:
            return hands, ()
        return hands, ((seen_by, begins + block.watched.offset),)

    def _chosen(self, by: dict[int, Any], values: Any) -> int | None:
        return next((one for one, var in by.items() if var is None or values.value(var)), None)
