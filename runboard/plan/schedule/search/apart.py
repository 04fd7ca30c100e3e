"""What one person cannot do at once, in the constraint model: doings that keep them, and the walks between rooms."""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import combinations, pairwise
from typing import Any

from runboard.plan.schedule.problem.hours import everybody
from runboard.plan.schedule.problem.people import Doing, cliques
from runboard.plan.schedule.search.frame import Frame


@dataclass(frozen=True)
class Done:
    """Something a person is there for: ``present`` is None where it always is. ``end`` is a variable where ``size`` is.
    ``begun`` is what they are at already."""

    kind: Doing
    start: Any
    size: Any
    present: Any = None
    begun: bool = False
    end: Any = None


class Doings:
    """``by`` is what each person may be there for, ``of_any`` what somebody is there for, whoever it is."""

    def __init__(self, frame: Frame) -> None:
        self.of, self.problem = frame, frame.problem
        self.by: dict[int, list[Done]] = {at: [] for at in range(len(self.problem.people))}
        self.of_any: list[Done] = []
        self._made: dict[tuple[int, int, int], Any] = {}

    def keep(self, people: int) -> None:
        """One thing at a time for each, with the walks between; ``people`` are how many have hours at all."""
        self._keep_cliques(people)
        self._keep_walks()
        self._keep_first_walks()

    def _keep_cliques(self, people: int) -> None:
        if any(self._sees_afar(at) for at in range(len(self.problem.stations))):
            # Where a machine is watched from another room, walks are taken too strictly or not at all.
            self.of.is_bound = self.of.is_plan = False
        for clique in cliques(self.problem):
            for done in self.by.values():
                self.of.one_by_one(self._rows([work for work in done if work.kind in clique]))
            if people > 1:
                self._keep_within(clique, people)

    def _rows(self, done: Iterable[Done]) -> list[Any]:
        """Doings as intervals; those that were begun so made one, though they touch or overlap."""
        begun: list[Done] = []
        later: list[Done] = []
        for work in done:
            (begun if work.begun and work.end is None else later).append(work)
        if len(begun) < 2:
            return [self.row(done) for done in [*begun, *later]]
        rows = [self.row(done) for done in later]
        spans = [(done.start, done.start + done.size, done.present) for done in begun]
        for opens, closes in pairwise(sorted({tick for start, end, _ in spans for tick in (start, end)})):
            over = [present for start, end, present in spans if start <= opens < end]
            if over:
                rows.append(self.of.interval(opens, closes - opens, self._any_of(over)))
        return rows

    def _any_of(self, literals: list[Any]) -> Any:
        if any(literal is None for literal in literals):  # an expression cannot be compared with None
            return None
        if len(literals) == 1:
            return literals[0]
        any_of = self.of.model.new_bool_var("")
        self.of.model.add_max_equality(any_of, literals)
        return any_of

    def row(self, done: Done, early: int = 0, late: int = 0) -> Any:
        """What somebody is there for as an interval, stretched on both sides: made once."""
        key = id(done), early, late
        if key not in self._made:
            self._made[key] = self._made_of(done, early, late)
        return self._made[key]

    def _made_of(self, done: Done, early: int, late: int) -> Any:
        start, size = done.start - early, done.size + early + late
        if done.end is None:
            return self.of.interval(start, size, done.present)
        return self.of.model.new_optional_interval_var(start, size, done.end + late, done.present, "")

    def _sees_afar(self, at: int) -> bool:
        """Whether there is work from which a machine is watched in another room."""
        station = self.problem.stations[at]
        kinds = {done.kind for done in self.of_any}
        others = {other for other, _ in kinds if other in station.watched_from}
        return (at, "watched") in kinds and any(self.problem.stations[other].room != station.room for other in others)

    def _keep_within(self, clique: frozenset[Doing], people: int) -> None:
        """All together: no more at a time than there are people, which says in one row what each person's says alone."""
        # What is begun may be done by somebody beyond their hours.
        rows = [self.row(done) for done in self.of_any if done.kind in clique and not done.begun]
        demands = [1] * len(rows)
        steps, before = everybody(self.problem).steps, self.of.wish.before
        for (start, many), (end, _) in zip(steps, [*steps[1:], (before, 0)], strict=True):
            if 0 < many < people and start < before:
                rows.append(self.of.interval(start, min(end, before) - start))
                demands.append(people - many)
        self.of.keep_within(rows, demands, people)

    # walking

    def _keep_walks(self) -> None:
        for done in self.by.values():
            rooms: dict[int, list[Done]] = defaultdict(list)
            for work in done:
                rooms[self.problem.stations[work.kind[0]].room].append(work)
            for pair in combinations(rooms, 2):
                few, many = sorted(pair, key=lambda room: len(rooms[room]))  # searched far faster this way round
                self._keep_walk(rooms[many], rooms[few], self.problem.walks[many][few], self.problem.walks[few][many])

    def _keep_walk(self, some: list[Done], others: list[Done], back: int, forth: int) -> None:
        """The doings of one room, stretched by the way there and back, touch none of the other."""
        if not back and not forth:
            return
        some = [done for done in some if not self._seen_from_afar(done, others)]
        others = [done for done in others if not self._seen_from_afar(done, some)]
        later = [done for done in others if not done.begun]
        is_begun = len(later) < len(others)
        for here, there in (
            [([done for done in some if not done.begun], others), ([done for done in some if done.begun], later)]
            if is_begun
            else [(some, others)]
        ):
            for same in self._one_at_a_time(there):
                self.of.keep_apart([self.row(done, forth, back) for done in here], self._rows(same))

    def _one_at_a_time(self, done: list[Done]) -> Iterator[list[Done]]:
        """Hands; and each machine that is watched."""
        for kind in {work.kind if work.kind[1] == "watched" else None for work in done}:
            yield [work for work in done if (work.kind[1] == "hands-on" if kind is None else work.kind == kind)]

    def _seen_from_afar(self, done: Done, others: list[Done]) -> bool:
        """Whether a machine is watched from a station of the other room: no walk is between the two."""
        seen_from = self.problem.stations[done.kind[0]].watched_from
        return done.kind[1] == "watched" and any(other.kind[0] in seen_from for other in others)

    def _keep_first_walks(self) -> None:
        """From the room that somebody is in now."""
        for person, done in self.by.items():
            room = self.problem.people[person].room
            for work in done if room >= 0 else ():
                walk = self.problem.walks[room][self.problem.stations[work.kind[0]].room]
                if walk and not work.begun:
                    kept = self.of.model.add(work.start >= walk)
                    if work.present is not None:
                        kept.only_enforce_if(work.present)
