"""Walks in the constraint model: each person's time as stays in rooms, as few of them as there can be.

Each room has some stays that may be or not, one after the other; all that is done in a room is done within one of them, and
a person's stays never overlap. How long the walk between two takes is kept by the model itself. That a doing names its stay
is what makes a proof short: of rooms that the time is cut into, without names, none was found.
"""

from collections import defaultdict
from dataclasses import dataclass
from typing import Any

from runboard.plan.schedule.problem.nouns import Problem
from runboard.plan.schedule.search.cpsat import Model
from runboard.plan.schedule.search.cpsat_watching import Done
from runboard.plan.schedule.search.wish import Wish


@dataclass(frozen=True)
class FewWalks:
    """Instead of the least finish: the fewest walks. ``before`` and ``after`` are the rooms in which each person is before
    and after all this, -1 for any; nobody has more than ``stays`` in one room. With ``most``: no more walks than those, and
    everything as early as it can be."""

    before: tuple[int, ...]
    after: tuple[int, ...]
    stays: int
    most: int | None = None


class WalksModel(Model):
    """The model of a problem in which walks are counted. Its answers bound nothing but them."""

    def __init__(self, problem: Problem, wish: Wish, few: FewWalks) -> None:
        super().__init__(problem, wish)
        self.few = few
        walks = [self._walks(person, done) for person, done in self.people.done.items() if done]
        if few.most is None:
            self.model.minimize(sum(walks))
        else:
            self.model.add(sum(walks) <= few.most)
            self.model.minimize(sum(self.begins))

    def _walks(self, person: int, done: list[Done]) -> Any:
        """The walks of one person: one less than their stays."""
        rooms: dict[int, list[Done]] = defaultdict(list)
        for one in done:
            if not self._is_seen_from_afar(one):
                rooms[self._room(one)].append(one)
        ends = [(room, tick) for room, tick in self._ends(person) if room >= 0]
        rows: list[Any] = []
        walks: Any = -1
        for room in sorted({*rooms, *(room for room, _ in ends)}):
            ticks = [tick for at, tick in ends if at == room]
            stays = _Stays(self, self.few.stays, rooms[room], ticks)
            rows += stays.rows
            walks += sum(stays.there)
        self.model.add_no_overlap(rows)
        return walks

    def _ends(self, person: int) -> tuple[tuple[int, int], tuple[int, int]]:
        return (self.few.before[person], 0), (self.few.after[person], self.wish.before)

    def _room(self, one: Done) -> int:
        return self.problem.stations[one.kind[0]].room

    def _is_seen_from_afar(self, one: Done) -> bool:
        """Whether something is watched that may be watched from another room too: it keeps nobody in its own."""
        stations, (at, kind) = self.problem.stations, one.kind
        others = [other for other in stations[at].watched_from if other < len(stations)]
        return kind == "watched" and any(stations[other].room != self._room(one) for other in others)


class _Stays:
    """The stays of one person in one room: ``there`` are the literals of those that are, the first ones."""

    def __init__(self, model: Model, many: int, done: list[Done], ticks: list[int]) -> None:
        self.raw, self.until = model.model, model.wish.before
        many = max(1, min(many, len(done) + len(ticks)))
        self.opens = [self.raw.new_int_var(0, self.until, "") for _ in range(many)]
        self.closes = [self.raw.new_int_var(0, self.until, "") for _ in range(many)]
        self.there = [self.raw.new_bool_var("") for _ in range(many)]
        self.rows = [self._row(at) for at in range(many)]
        for at in range(1, many):
            self.raw.add_implication(self.there[at], self.there[at - 1])
            self.raw.add(self.opens[at] >= self.closes[at - 1])
        for one in done:
            self._within(one.start, one.start + one.size if one.end is None else one.end, one.present)
        for tick in ticks:
            self._within(tick, tick, None)

    def _row(self, at: int) -> Any:
        size = self.raw.new_int_var(0, self.until, "")
        return self.raw.new_optional_interval_var(self.opens[at], size, self.closes[at], self.there[at], "")

    def _within(self, start: Any, end: Any, present: Any) -> None:
        """A span lies in one of the stays, where it is."""
        chosen = [self.raw.new_bool_var("") for _ in self.there]
        self.raw.add(sum(chosen) == (1 if present is None else present))
        for at, literal in enumerate(chosen):
            self.raw.add_implication(literal, self.there[at])
            self.raw.add(start >= self.opens[at]).only_enforce_if(literal)
            self.raw.add(end <= self.closes[at]).only_enforce_if(literal)
