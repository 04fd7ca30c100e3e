"""The dispatch rule on one problem: priorities and knobs in, a plan out. Compiled once ``warm`` was called, plain till then."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

from runboard.plan.schedule.kernel import dispatch, layout, replicate
from runboard.plan.schedule.kernel.compiled import compiled
from runboard.plan.schedule.kernel.plain import as_estimated, plan_in, without_place
from runboard.plan.schedule.kernel.state import fresh_state
from runboard.plan.schedule.kernel.tables import tables
from runboard.plan.schedule.problem import Block, Plan, Problem, Station, Stretch, Worker

Functions = dict[str, Callable[..., Any]]

_PLAIN: Functions = {"dispatch": dispatch.dispatch, "replicate": replicate.replicate}
_WARM: list[Functions] = []


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


def warm() -> bool:
    """Have the rule compiled from now on. Half a second where it was compiled before, half a minute where not; False where
    there is no compiler, and all goes on in plain Python."""
    if not _WARM and (functions := compiled()) is not None:
        tiny = Rule(_TINY, functions)
        tiny.finish([0])
        tiny.ends([tiny.real], [0], Knobs(), [0])
        _WARM.append(functions)
    return bool(_WARM)


def is_warm() -> bool:
    """Whether the rule is compiled."""
    return bool(_WARM)


def plain_functions() -> Functions:
    """The rule as plain Python, whatever was compiled."""
    return _PLAIN


class Rule:
    """The rule on one problem. Its rows are built once; each go leaves its plan in ``state`` until the next."""

    def __init__(self, problem: Problem, functions: Functions | None = None) -> None:
        self.problem = problem
        self.functions = functions or (_WARM[0] if _WARM else _PLAIN)
        self.is_compiled = self.functions is not _PLAIN
        table = tables(problem)
        fresh = fresh_state(table)
        self.real = as_estimated(table)
        self.table, self.fresh, self.state = self.row(table), self.row(fresh), self.row(fresh)
        self._estimated = self.row(self.real)
        self.last_finish = -1

    def row(self, values: Sequence[int]) -> Any:
        """Values as the rule reads them: a list, or an array where it is compiled."""
        if not self.is_compiled:
            return list(values)
        import numpy

        return numpy.array(values, dtype=numpy.int64)

    def finish(self, priority: Sequence[int], knobs: Knobs | None = None) -> int:
        """The tick at which all is done by these priorities, lower ones first; -1 where something found no place."""
        turned = self._turned(knobs or Knobs())
        one_go = self.functions["dispatch"]
        rows = self.table, self.state, self.fresh, self._estimated, self.row(priority), turned
        self.last_finish = int(one_go(*rows))
        return self.last_finish

    def ends(self, reals: Any, priority: Sequence[int], knobs: Knobs, marks: Sequence[int]) -> Any:
        """For each row of ``reals`` (how long stretches and setups take) the finish and the end of each marked block."""
        goes = len(reals)
        if self.is_compiled:
            import numpy

            reals = numpy.array(reals, dtype=numpy.int64)
            found: Any = numpy.zeros((goes, 1 + len(marks)), dtype=numpy.int64)
        else:
            found = [[0] * (1 + len(marks)) for _ in range(goes)]
        rows = (
            self.table,
            self.state,
            self.fresh,
            reals,
            self.row(priority),
            self._turned(knobs),
            self.row(marks),
            found,
        )
        self.functions["replicate"](*rows, goes, len(marks))
        return found

    def end(self, block: int) -> int:
        """When a block ends in the last go."""
        return int(self.state[self.state[layout.END] + block])

    def all_ends(self) -> list[int]:
        """When each block ends in the last go."""
        start = int(self.state[layout.END])
        return [int(one) for one in self.state[start : start + len(self.problem.blocks)]]

    def plan(self, source: str = "greedy") -> Plan:
        """The plan of the last go. Raises ``NoPlace`` where it is not whole."""
        if self.last_finish < 0:
            raise NoPlace(without_place(self.table, self.state))
        return plan_in(self.table, self.state, source)

    def _turned(self, knobs: Knobs) -> Any:
        return self.row([knobs.stay, int(knobs.others_watch), knobs.late_wet])


# The least problem that has a part of everything, to compile the rule on.
_TINY = Problem(
    datetime(2000, 1, 1, tzinfo=UTC),
    (Station("s", "S", 0),),
    (Worker("p", "P", ((0, 9),), 0),),
    (),
    ("r",),
    ((0,),),
    (Block(0, "r", "l", "s", "o", ("1",), 1, 0, (Stretch("hand", 0, 1, "hands-on"),), (0,)),),
)
