"""A plan whose starts stand, with somebody at every machine that must be watched: who watches what, and who takes over when.

With every start known, each stretch to be watched is cut where somebody may come or must go; which of two such things one
person cannot both do is then a matter of arithmetic, and the rest a small choice for each sitting on its own.
OR-Tools is imported as this module is, so only a child process imports it.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Any

from ortools.sat.python import cp_model

from runboard.plan.schedule.problem.conflicts import exclude
from runboard.plan.schedule.problem.nouns import Block, Placed, Plan, Problem, Span
from runboard.plan.schedule.problem.presence import joined

# What a change of watcher, other hands than the plan's, and eyes that are not those of whoever loaded count for.
_CHANGE, _HANDS, _EYES = 20, 3, 1
# The solver's own measure, for each sitting: the same on every computer.
_WORK = 0.5


@dataclass(frozen=True)
class _Task:
    """What one person does from ``start`` to ``end``: hands at a block, or eyes on it for one slice of its run."""

    block: Block
    start: int
    end: int
    watches: bool


def staffed(problem: Problem, plan: Plan) -> Plan | None:
    """The plan with every start as it is, hands and watchers chosen anew: as few changes of watcher as can be, then as few
    other hands. None where those who are there cannot do it so. The caller checks it."""
    tasks = [*_hands(problem, plan), *_slices(problem, plan)]
    placed = list(plan.placed)
    for sitting in _sittings(problem, tasks):
        found = _Sitting(problem, plan, [one for one in tasks if sitting[0] <= one.start < sitting[1]]).solved()
        if found is None:
            return None
        for one in found:
            placed[one.block] = one
    return Plan(tuple(placed), plan.source)


# what there is to do


def _hands(problem: Problem, plan: Plan) -> Iterator[_Task]:
    for block, placed in zip(problem.blocks, plan.placed, strict=True):
        spans = [(placed.start, placed.begins())] if placed.setup else []
        for one in block.stretches:
            if one.attendance == "hands-on":
                spans.append((placed.begins() + one.offset, placed.begins() + one.offset + one.length))
        yield from (_Task(block, start, end, False) for start, end in joined(spans))


def _watched(problem: Problem, plan: Plan) -> Iterator[_Task]:
    for block, placed in zip(problem.blocks, plan.placed, strict=True):
        if block.watched is not None and not (block.begun and block.by is None):
            start = placed.begins() + block.watched.offset
            yield _Task(block, start, start + block.watched.length, True)


def _slices(problem: Problem, plan: Plan) -> Iterator[_Task]:
    """Each watched stretch, cut wherever somebody may come to it or must leave it."""
    watched = list(_watched(problem, plan))
    turns = _turns(problem, [*_hands(problem, plan), *watched])
    for one in watched:
        within = {tick for tick in turns[_room(problem, one)] if one.start < tick < one.end}
        yield from (
            replace(one, start=start, end=end) for start, end in pairwise([one.start, *sorted(within), one.end])
        )


def _turns(problem: Problem, tasks: list[_Task]) -> list[set[int]]:
    """For each room: when something ends or begins anywhere, with the walk from it or to it, and when hours do."""
    found = [{tick for person in problem.people for window in person.windows for tick in window} for _ in problem.rooms]
    for one in tasks:
        at = _room(problem, one)
        for room, turns in enumerate(found):
            turns |= {one.start, one.end, one.start - problem.walks[room][at], one.end + problem.walks[at][room]}
    return found


def _sittings(problem: Problem, tasks: list[_Task]) -> tuple[Span, ...]:
    """Stretches of time so far from each other that nobody is late from one to the next."""
    farthest = max((walk for row in problem.walks for walk in row), default=0)
    return joined((one.start, one.end + farthest) for one in tasks)


def _room(problem: Problem, task: _Task) -> int:
    return problem.stations[task.block.station].room


# who does it


class _Sitting:
    """The choice of people for what lies in one stretch of time."""

    def __init__(self, problem: Problem, plan: Plan, tasks: list[_Task]) -> None:
        self.problem, self.plan = problem, plan
        self.model = cp_model.CpModel()
        self.tasks = sorted(tasks, key=lambda one: (one.start, one.end, one.block.index, one.watches))
        self.hands: dict[int, dict[int, Any]] = {}
        self.does = [self._by(task) for task in self.tasks]
        self._keep_apart()
        self.model.minimize(sum(self._changes()) + sum(self._others()))

    def _by(self, task: _Task) -> dict[int, Any]:
        """A literal for each who may do it; all hands of a block are one person's."""
        known = None if task.watches else self.hands.get(task.block.index)
        by = known if known is not None else {}
        if known is None:
            able = range(len(self.problem.people)) if task.watches else self._able(task.block)
            by = {person: self.model.new_bool_var("") for person in able}
            self.model.add_exactly_one(by.values())
            if not task.watches:
                self.hands[task.block.index] = by
        for person, literal in by.items():
            if not self._is_there(person, task):
                self.model.add(literal == 0)
        return by

    def _able(self, block: Block) -> tuple[int, ...]:
        return (block.by,) if block.begun and block.by is not None else block.people

    def _is_there(self, person: int, task: _Task) -> bool:
        """Whether somebody's hours, and the walk to their first doing, let them: whoever is at it is there."""
        if task.block.begun and person == task.block.by:
            return True
        someone = self.problem.people[person]
        if someone.room >= 0 and task.start < self.problem.walks[someone.room][_room(self.problem, task)]:
            return False
        return any(opens <= task.start and task.end <= closes for opens, closes in someone.windows)

    def _keep_apart(self) -> None:
        farthest = max((walk for row in self.problem.walks for walk in row), default=0)
        for at, one in enumerate(self.tasks):
            for other in range(at + 1, len(self.tasks)):
                if self.tasks[other].start - farthest < one.end and self._clash(one, self.tasks[other]):
                    self._never_both(self.does[at], self.does[other])

    def _never_both(self, some: dict[int, Any], others: dict[int, Any]) -> None:
        for person in some.keys() & others.keys():
            self.model.add_bool_or([some[person].negated(), others[person].negated()])

    def _clash(self, one: _Task, other: _Task) -> bool:
        """Whether one person cannot do both, the first beginning no later: at once, or for want of time to walk."""
        if one.block is other.block and one.watches == other.watches:
            return False
        if one.block.begun and other.block.begun:
            return False
        if other.start < one.end:
            return exclude(self.problem, self._doing(one), self._doing(other))
        walk = self.problem.walks[_room(self.problem, one)][_room(self.problem, other)]
        return other.start - one.end < walk and not self._in_sight(one, other)

    def _doing(self, task: _Task) -> Any:
        return task.block.station, "watched" if task.watches else "hands-on"

    def _in_sight(self, one: _Task, other: _Task) -> bool:
        """Whether a machine is watched from where the other is: then there may be no walk between."""
        seen = [
            (self.problem.stations[here.block.station].watched_from, there.block.station)
            for here, there in ((one, other), (other, one))
            if here.watches
        ]
        return any(station in watched_from for watched_from, station in seen)

    # what is better

    def _slices(self) -> list[list[int]]:
        """The slices of each watched stretch, in order."""
        found: dict[int, list[int]] = {}
        for at, task in enumerate(self.tasks):
            if task.watches:
                found.setdefault(task.block.index, []).append(at)
        return list(found.values())

    def _changes(self) -> Iterator[Any]:
        for slices in self._slices():
            for one, other in pairwise(slices):
                for person, literal in self.does[other].items():
                    comes = self.model.new_bool_var("")
                    self.model.add_bool_or([literal.negated(), self.does[one][person], comes])
                    yield _CHANGE * comes

    def _others(self) -> Iterator[Any]:
        for block, by in self.hands.items():
            given = self.plan.placed[block].hands
            yield from (_HANDS * literal for person, literal in by.items() if person != given)
        for slices in self._slices():
            loads = self._loads(self.tasks[slices[0]].block)
            yield from (_EYES * literal for person, literal in self.does[slices[0]].items() if person != loads)

    def _loads(self, block: Block) -> int | None:
        return block.by if block.begun else self.plan.placed[block.index].hands

    # solving

    def solved(self) -> list[Placed] | None:
        """The blocks of the sitting with their people; None where there is no way."""
        for block, by in self.hands.items():
            for person, literal in by.items():
                self.model.add_hint(literal, int(person == self.plan.placed[block].hands))
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = 1
        solver.parameters.max_deterministic_time = _WORK
        if solver.solve(self.model) not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
            return None
        placed = {task.block.index: self.plan.placed[task.block.index] for task in self.tasks}
        for block, by in self.hands.items():
            placed[block] = replace(placed[block], hands=self._chosen(by, solver))
        for slices in self._slices():
            block = self.tasks[slices[0]].block.index
            placed[block] = replace(placed[block], watchers=tuple(self._watchers(slices, solver)))
        return list(placed.values())

    def _watchers(self, slices: list[int], values: Any) -> Iterator[tuple[int, int]]:
        last = -1
        for at in slices:
            person = self._chosen(self.does[at], values)
            if person != last:
                yield person, self.tasks[at].start
            last = person

    def _chosen(self, by: dict[int, Any], values: Any) -> int:
        return next(person for person, literal in by.items() if values.value(literal))
