"""Walks in the constraint model: each person's time as stays in rooms, as few of them as there can be."""

from collections import defaultdict
from typing import Any

from runboard.plan.schedule.problem.nouns import Problem
from runboard.plan.schedule.search.apart import Done
from runboard.plan.schedule.search.model import Model
from runboard.plan.schedule.search.solving import Aim

# Blocks up to which a plan is planned anew.
WHOLE = 130


class WalksModel(Model):
    """The model of a problem in which, instead of the finish, the walks are to be least: nobody has more than ``stays`` in one
    room. With ``most``: no more walks than those, and everything as early as it can be. Its answers bound nothing else.

    Each room has some stays that may be or not, one after the other; all that is done in a room is done within one of them,
    and a person's stays never overlap. How long the walk between two takes is kept by the model itself. That a doing names
    its stay is what makes a proof short: of rooms that the time is cut into, without names, none was found.
    """

    def __init__(self, problem: Problem, wish: Aim, stays: int, most: int | None = None) -> None:
        super().__init__(problem, wish)
        self.most_stays = stays
        walks = [self._walks(person, done) for person, done in self.people.doings.by.items() if done]
        if most is None:
            self.model.minimize(sum(walks))
        else:
            self.model.add(sum(walks) <= most)
            self.model.minimize(sum(self.begins))

    def _walks(self, person: int, done: list[Done]) -> Any:
        """The walks of one person: one less than their stays."""
        spans: dict[int, list[tuple[Any, Any, Any]]] = defaultdict(list)
        for work in done:
            if not self._is_seen_from_afar(work):
                ends = work.start + work.size if work.end is None else work.end
                spans[self._room(work)].append((work.start, ends, work.present))
        if self.problem.people[person].room >= 0:
            spans[self.problem.people[person].room].append((0, 0, None))
        rows: list[Any] = []
        walks: Any = -1
        for room in sorted(spans):
            there, stays = self._stays(spans[room])
            rows += stays
            walks += sum(there)
        self.model.add_no_overlap(rows)
        return walks

    def _room(self, done: Done) -> int:
        return self.problem.stations[done.kind[0]].room

    def _is_seen_from_afar(self, done: Done) -> bool:
        """Whether something is watched that may be watched from another room too: it keeps nobody in its own."""
        stations, (at, kind) = self.problem.stations, done.kind
        others = [other for other in stations[at].watched_from if other < len(stations)]
        return kind == "watched" and any(stations[other].room != self._room(done) for other in others)

    def _stays(self, spans: list[tuple[Any, Any, Any]]) -> tuple[list[Any], list[Any]]:
        """The stays of one person in one room: literals of those that are, the first ones, and their intervals. Each span
        (from, to, whether it is) lies in one of them."""
        raw, before = self.model, self.wish.before
        many = range(max(1, min(self.most_stays, len(spans))))
        opens = [raw.new_int_var(0, before, "") for _ in many]
        closes = [raw.new_int_var(0, before, "") for _ in many]
        there = [raw.new_bool_var("") for _ in many]
        rows = []
        for at in many:
            size = raw.new_int_var(0, before, "")
            rows.append(raw.new_optional_interval_var(opens[at], size, closes[at], there[at], ""))
            if at:
                raw.add_implication(there[at], there[at - 1])
                raw.add(opens[at] >= closes[at - 1])
        for start, end, present in spans:
            chosen = [raw.new_bool_var("") for _ in many]
            raw.add(sum(chosen) == (1 if present is None else present))
            for at, literal in enumerate(chosen):
                raw.add_implication(literal, there[at])
                raw.add(start >= opens[at]).only_enforce_if(literal)
                raw.add(end <= closes[at]).only_enforce_if(literal)
        return there, rows
