"""The dispatch rule on one problem: priorities and knobs in, a plan out. Compiled once ``warm`` was called, plain till then."""

from collections.abc import Callable, Iterable, Sequence
from contextlib import suppress
from copy import deepcopy
from dataclasses import dataclass
from typing import Any

from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.rule.kernel.dispatch import replicate
from runboard.plan.schedule.rule.kernel.shop import plan_of, shop_of

# The rule as it is called: ``replicate``, plain, or compiled for records that are arrays.
Replicate = Callable[..., None]
# As ``map`` does: a function over each of some things.
Map = Callable[[Callable[[Any], Any], Iterable[Any]], Iterable[Any]]

_PLAIN: Replicate = replicate
_WARM: list[Replicate] = []
_KEPT: list[bool] = []


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
    there is no compiler, or it fails, and all goes on in plain Python."""
    if not _WARM:
        with suppress(Exception):  # whatever another version of the compiler says: plans are made without it, too
            from runboard.plan.schedule.rule.kernel.compiled import compiled

            _WARM.append(compiled())
    return bool(_WARM)


def is_new() -> bool:
    """Whether ``warm`` would compile the rule for the first time, which takes some ten seconds."""
    with suppress(Exception):
        from runboard.plan.schedule.rule.kernel.compiled import is_kept

        return not _WARM and not is_kept()
    return False


def is_warm() -> bool:
    """Whether the rule is compiled."""
    return bool(_WARM)


def note_kept() -> bool:
    """Know from now on that the compiled rule is kept on the disk, from where a process has it in half a second."""
    _KEPT.append(True)
    return True


def is_at_hand() -> bool:
    """Whether a process that asks much of the rule can have it compiled at once."""
    return bool(_WARM or _KEPT)


def plain() -> Replicate:
    """The rule as plain Python, whatever was compiled."""
    return _PLAIN


class Rule:
    """The rule on one problem. Its records are made once; each go leaves its plan in ``shop`` until the next."""

    def __init__(self, problem: Problem, replicate_: Replicate | None = None) -> None:
        self.problem = problem
        self.replicate = replicate_ or (_WARM[0] if _WARM else _PLAIN)
        self.is_compiled = self.replicate is not _PLAIN
        shop = shop_of(problem)
        if self.is_compiled:
            from runboard.plan.schedule.rule.kernel.compiled import as_arrays
        self.shop: Any
        self.given: Any
        self.shop, self.given = as_arrays(shop) if self.is_compiled else (shop, shop)
        lengths = [stretch.length for stretch in shop.stretches] + [block.setup for block in shop.blocks]
        self._estimated, self._found, self._no_marks = self.rows([lengths]), self.rows([[0]]), self.row([])
        self.last_finish = -1

    def row(self, values: Any) -> Any:
        """Values as the rule reads them: a list, or an array of whole numbers where it is compiled."""
        if not self.is_compiled:
            return list(values)
        import numpy

        return numpy.ascontiguousarray(values, dtype=numpy.int64)

    def rows(self, values: Any) -> Any:
        """The same of rows of them."""
        return self.row(values) if self.is_compiled else [list(value) for value in values]

    def finish(self, priority: Sequence[int], knobs: Knobs | None = None) -> int:
        """The tick at which all is done by these priorities, lower ones first; -1 where something found no place."""
        self._turn(self.shop, knobs or Knobs())
        self.replicate(self.given, self.row(priority), self._estimated, self._no_marks, self._found)
        self.last_finish = int(self._found[0][0])
        return self.last_finish

    def ends(
        self, reals: Any, priority: Sequence[int], knobs: Knobs, marks: Sequence[int], cores: Cores | None = None
    ) -> Any:
        """For each row of ``reals`` (how long stretches and setups take) the finish and the end of each marked block: the
        same whatever the number of ``cores``."""
        cores = cores or Cores()
        each = max(1, -(-len(reals) // cores.many))
        row, marked = self.row(priority), self.row(marks)

        if self.is_compiled:
            from runboard.plan.schedule.rule.kernel.compiled import copied

        def part(from_: int) -> Any:
            lengths = self.rows(reals[from_ : from_ + each])
            found = self.rows([[0] * (1 + len(marks))] * len(lengths))
            shop, given = copied(self.shop) if self.is_compiled else (deepcopy(self.shop),) * 2
            self._turn(shop, knobs)
            self.replicate(given, row, lengths, marked, found)
            return found

        parts = list(cores.map(part, range(0, len(reals), each)))
        if not self.is_compiled:
            return [row for found in parts for row in found]
        import numpy

        return numpy.concatenate(parts)

    def end(self, block: int) -> int:
        """When a block ends in the last go."""
        return int(self.shop.blocks[block].end)

    def all_ends(self) -> list[int]:
        """When each block ends in the last go."""
        if not self.is_compiled:
            return [block.end for block in self.shop.blocks]
        ends: list[int] = self.shop.blocks["end"].tolist()
        return ends

    def begun(self) -> tuple[Any, Any]:
        """When each block starts in the last go, and who puts hands to it, or -1: as arrays."""
        import numpy

        blocks = self.shop.blocks
        if self.is_compiled:
            return blocks["start"].copy(), blocks["hands"].copy()
        return numpy.array([block.start for block in blocks]), numpy.array([block.hands for block in blocks])

    def walks(self) -> int:
        """How often somebody goes from a room to another in the last go."""
        return int(self.shop.go.walks)

    def sum_of_ends(self) -> int:
        """The sum of the ticks at which blocks end in the last go."""
        return int(self.shop.go.sum_of_ends)

    def plan(self, source: str = "greedy") -> Plan:
        """The plan of the last go. Raises ``NoPlace`` where it is not whole."""
        if self.last_finish < 0:
            raise NoPlace(tuple(at for at, block in enumerate(self.shop.blocks) if block.start < 0))
        return plan_of(self.shop, source)

    def _turn(self, shop: Any, knobs: Knobs) -> None:
        shop.go.stay, shop.go.others_watch, shop.go.late_wet = knobs.stay, int(knobs.others_watch), knobs.late_wet
