"""The dispatch rule on one problem: priorities and knobs in, a plan out. Compiled once ``warm`` was called, plain till then."""

from collections.abc import Callable, Iterable, Sequence
from copy import copy
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.rule.kernel import layout, replicate
from runboard.plan.schedule.rule.kernel.compiled import compiled
from runboard.plan.schedule.rule.kernel.plain import as_estimated, plan_in, without_place
from runboard.plan.schedule.rule.kernel.state import fresh_state
from runboard.plan.schedule.rule.kernel.tables import tables

# The rule as it is called: ``replicate``, plain, or compiled for rows that are arrays.
Replicate = Callable[..., None]
# As ``map`` does: a function over each of some things.
Map = Callable[[Callable[[Any], Any], Iterable[Any]], Iterable[Any]]

_PLAIN: Replicate = replicate.replicate
_WARM: list[Replicate] = []


class NoPlace(Exception):
    """No plan was found that holds ``blocks``: they fit in nobody's hours, or not beside what is begun."""

    def __init__(self, blocks: tuple[int, ...]) -> None:
        super().__init__(blocks)
        self.blocks = blocks


@dataclass(frozen=True)
class Knobs:
    """``stay`` is what a tick of walking costs beside priorities; ``others_watch`` lets whoever is in the room watch rather
    than who loaded; ``late_wet`` keeps wet finishes for so many ticks before the end of a session, where dust is to come."""

    stay: int = 0
    others_watch: bool = False
    late_wet: int = 0


@dataclass(frozen=True)
class Cores:
    """Where goes may be worked at the same time: so ``many``, by a ``map`` over threads. By itself the core has none."""

    many: int = 1
    map: Map = map


def warm() -> bool:
    """Have the rule compiled from now on. Half a second where it was compiled before, ten where not; False where
    there is no compiler, and all goes on in plain Python."""
    if not _WARM and (made := compiled()) is not None:
        _WARM.append(made)
    return bool(_WARM)


def is_warm() -> bool:
    """Whether the rule is compiled."""
    return bool(_WARM)


def plain() -> Replicate:
    """The rule as plain Python, whatever was compiled."""
    return _PLAIN


class Rule:
    """The rule on one problem. Its rows are built once; each go leaves its plan in ``state`` until the next."""

    def __init__(self, problem: Problem, replicate_: Replicate | None = None) -> None:
        self.problem = problem
        self.replicate = replicate_ or (_WARM[0] if _WARM else _PLAIN)
        self.is_compiled = self.replicate is not _PLAIN
        table = tables(problem)
        self.real = as_estimated(table)
        self.table, self.fresh = self.row(table), self.row(fresh_state(table))
        self.state = copy(self.fresh)
        self._found = self.row([0])
        self._estimated, self._real = self.row(self.real), self.row(self.real)
        self.last_finish = -1

    def row(self, values: Any) -> Any:
        """Values as the rule reads them: a list, or an array of 32-bit numbers where it is compiled."""
        if not self.is_compiled:
            return list(values)
        import numpy

        return numpy.ascontiguousarray(values, dtype=numpy.int32)

    def finish(self, priority: Sequence[int], knobs: Knobs | None = None) -> int:
        """The tick at which all is done by these priorities, lower ones first; -1 where something found no place."""
        by, turned = self.row(priority), self._turned(knobs or Knobs())
        self._go(self.state, self._estimated, self._real, by, turned, by, 0, self._found, 1)
        self.last_finish = int(self._found[0])
        return self.last_finish

    def ends(
        self, reals: Any, priority: Sequence[int], knobs: Knobs, marks: Sequence[int], cores: Cores | None = None
    ) -> Any:
        """For each row of ``reals`` (how long stretches and setups take) the finish and the end of each marked block: the
        same whatever the number of ``cores``."""
        cores = cores or Cores()
        each = max(1, -(-len(reals) // cores.many))
        rows = self.row(priority), self._turned(knobs), self.row(marks)

        def part(from_: int) -> Any:
            return self._part(reals[from_ : from_ + each], *rows)

        parts = list(cores.map(part, range(0, len(reals), each)))
        if not self.is_compiled:
            return [row for found in parts for row in found]
        import numpy

        return numpy.concatenate(parts)

    def _part(self, reals: Any, priority: Any, turned: Any, marks: Any) -> Any:
        """Some of the goes, one after another, in a state of their own."""
        goes, width = len(reals), 1 + len(marks)
        flat = reals.reshape(-1) if self.is_compiled else [length for row in reals for length in row]
        found = self.row([0] * (goes * width))
        state, real = self.fresh.copy(), self.row(self.real)
        self._go(state, self.row(flat), real, priority, turned, marks, len(marks), found, goes)
        return (
            found.reshape(goes, width)
            if self.is_compiled
            else [found[at : at + width] for at in range(0, goes * width, width)]
        )

    def _go(
        self, s: Any, reals: Any, real: Any, by: Any, knobs: Any, marks: Any, many: int, found: Any, goes: int
    ) -> None:
        self.replicate(self.table, s, self.fresh, reals, real, len(self.real), by, knobs, marks, many, found, goes)

    def end(self, block: int) -> int:
        """When a block ends in the last go."""
        return int(self.state[self.state[layout.END] + block])

    def all_ends(self) -> list[int]:
        """When each block ends in the last go."""
        start = int(self.state[layout.END])
        return [int(one) for one in self.state[start : start + len(self.problem.blocks)]]

    def walks(self) -> int:
        """How often somebody goes from a room to another in the last go."""
        import numpy

        state, blocks = self.state, len(self.problem.blocks)
        start, by, watched = (int(state[at]) for at in (layout.START, layout.BY_HANDS, layout.WATCHERS))
        count = int(state[layout.WATCHER_COUNT])
        hands = numpy.asarray(state[by : by + blocks])
        seen = numpy.asarray(state[watched : watched + 3 * count]).reshape(-1, 3)
        known = [at for at, person in enumerate(self.problem.people) if person.room >= 0]
        room = numpy.concatenate(
            (
                [self.problem.people[at].room for at in known],
                self._rooms[hands >= 0],
                self._rooms[seen[:, 0].astype(int)],
            )
        )
        person = numpy.concatenate((known, hands[hands >= 0], seen[:, 1]))
        begins = numpy.asarray(state[start : start + blocks])[hands >= 0]
        order = numpy.lexsort((numpy.concatenate(([-1] * len(known), begins, seen[:, 2])), person))
        room, person = room[order], person[order]
        return int(((room[1:] != room[:-1]) & (person[1:] == person[:-1])).sum())

    @cached_property
    def _rooms(self) -> Any:
        import numpy

        return numpy.array([self.problem.stations[one.station].room for one in self.problem.blocks], dtype=int)

    def plan(self, source: str = "greedy") -> Plan:
        """The plan of the last go. Raises ``NoPlace`` where it is not whole."""
        if self.last_finish < 0:
            raise NoPlace(without_place(self.table, self.state))
        return plan_in(self.table, self.state, source)

    def _turned(self, knobs: Knobs) -> Any:
        return self.row([knobs.stay, int(knobs.others_watch), knobs.late_wet])
