"""People in the constraint model: hands, eyes on a machine, and the walks between rooms."""

from collections import defaultdict
from functools import reduce
from itertools import combinations
from typing import TYPE_CHECKING, Any

from runboard.plan.schedule.problem.conflicts import Doing, cliques
from runboard.plan.schedule.problem.domains import hands_of, starts_of, within
from runboard.plan.schedule.problem.nouns import Block, Placed, Span, Stretch
from runboard.plan.schedule.problem.presence import Presence, common
from runboard.plan.schedule.search.cpsat_watching import Done, Eyes, chosen, keep_in

if TYPE_CHECKING:
    from runboard.plan.schedule.search.cpsat import Model


class People:
    """Who does what, in the model."""

    def __init__(self, model: "Model") -> None:
        self.model, self.problem = model, model.problem
        self.there = [at for at, person in enumerate(self.problem.people) if person.windows]
        self.hands: dict[int, dict[int, Any]] = {}
        self.eyes = Eyes(model, self.there)
        self.done: dict[int, list[Done]] = {at: [] for at in range(len(self.problem.people))}
        self._all: list[Done] = []
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
            for who, done in self.eyes.take(block, block.watched):
                (self._all if who is None else self.done[who]).append(done)

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
                keep_in(self.model, self.model.begins[block.index], theirs, [literal])
        return found

    def _add(self, block: Block, stretch: Stretch, by: dict[int, Any]) -> None:
        kind: Doing = (block.station, "watched" if stretch.attendance == "watched" else "hands-on")
        start = self.model.begins[block.index] + stretch.offset
        self._all.append(Done(kind, start, stretch.length, None, block.begun))
        for one, literal in by.items():
            self.done[one].append(Done(kind, start, stretch.length, literal, block.begun))

    def _add_setup(self, block: Block, need: Any) -> None:
        """The setup before a block, by whose hands do the rest, within the same hours."""
        start = self.model.begins[block.index] - block.setup
        literal = None if isinstance(need, int) else need
        self._all.append(Done((block.station, "hands-on"), start, block.setup, literal))
        station = self.problem.stations[block.station]
        for one, theirs in self.hands[block.index].items():
            windows = within(self.problem.people[one].windows, 0, block.setup)
            literals = [each for each in (literal, theirs) if each is not None]
            spans = common(windows, within(station.runs, 0, block.setup + block.length))
            spans = reduce(common, self._with_setup(block, one), spans)
            keep_in(self.model, start, spans, literals)
            self.done[one].append(Done((block.station, "hands-on"), start, block.setup, self._both(literals)))

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

    # what one person cannot do at once

    def _keep_apart(self) -> None:
        if any(self._sees_afar(at) for at in range(len(self.problem.stations))):
            # Where a machine is watched from another room, walks are taken too strictly or not at all.
            self.model.is_bound = self.model.is_plan = False
        for clique in cliques(self.problem):
            for done in self.done.values():
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

    def _row(self, one: Done, early: int = 0, late: int = 0) -> Any:
        return self.model.row(one, early, late)

    # walking

    def _keep_walks(self) -> None:
        for done in self.done.values():
            rooms: dict[int, list[Done]] = defaultdict(list)
            for one in done:
                rooms[self.problem.stations[one.kind[0]].room].append(one)
            for here, there in combinations(rooms, 2):
                few, many = sorted(
                    (here, there), key=lambda room: len(rooms[room])
                )  # searched far faster this way round
                self._keep_walk(rooms[many], rooms[few], self.problem.walks[many][few], self.problem.walks[few][many])

    def _keep_walk(self, some: list[Done], others: list[Done], back: int, forth: int) -> None:
        """The doings of one room, stretched by the way there and back, touch none of the other."""
        if not back and not forth:
            return
        some = [one for one in some if not self._seen_from_afar(one, others)]
        others = [one for one in others if not self._seen_from_afar(one, some)]
        for kind in {one.kind if one.kind[1] == "watched" else None for one in others}:
            same = [one for one in others if kind in (one.kind, None) and (kind or one.kind[1] == "hands-on")]
            self.model.keep_apart([self._row(one, forth, back) for one in some], [self._row(one) for one in same])

    def _seen_from_afar(self, one: Done, others: list[Done]) -> bool:
        """Whether a machine is watched from a station of the other room: no walk is between the two."""
        seen_from = self.problem.stations[one.kind[0]].watched_from
        return one.kind[1] == "watched" and any(other.kind[0] in seen_from for other in others)

    def _keep_heads(self) -> None:
        """The first walk, from the room that somebody is in now."""
        for person, done in self.done.items():
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
        return [*((var, value) for var, value in found if var is not None), *self.eyes.hints(placed)]

    def values(self, block: Block, begins: int, values: Any) -> tuple[int | None, tuple[tuple[int, int], ...]]:
        """Who does a block, and who watches it from when, in a solution."""
        is_wanted = block.hands > 0 or self.model.setups.value(block.index, values) > 0
        hands = chosen(self.hands.get(block.index, {}), values) if is_wanted else None
        return hands, self.eyes.values(block, begins, values)
