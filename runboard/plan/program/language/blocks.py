"""The blocks of a program, as they are found: arrays that grow."""

from collections.abc import Sequence
from typing import Any

from runboard.plan.program.language.limits import MOST_BLOCKS
from runboard.plan.program.moves import NO_ARC, no_moves
from runboard.run.refusal import Refused


class Blocks:
    """``arrays`` by the names of ``Moves``, of which the first ``count`` entries are filled."""

    def __init__(self, room: int) -> None:
        self.arrays: dict[str, Any] = no_moves(max(room, 16))
        self.count = 0

    @property
    def room(self) -> int:
        return len(self.arrays["kind"])

    def have_room(self, more: int, line: int) -> None:
        """For so many more blocks. Refused: a program of more than ``MOST_BLOCKS``."""
        if self.count + more > MOST_BLOCKS:
            raise Refused("program-blocks", line=line, most=MOST_BLOCKS)
        if self.count + more > self.room:
            grown = no_moves(min(MOST_BLOCKS, max(self.count + more, 2 * self.room)))
            for name, array in self.arrays.items():
                grown[name][: self.count] = array[: self.count]
            self.arrays = grown

    def add(
        self,
        kind: int,
        line: int,
        to: Sequence[float],
        speed: float,
        tool: int,
        exact: bool,
        arc: tuple[int, float, float, float] | None = None,
    ) -> None:
        """One block; ``arc`` is its plane, centre and sweep."""
        self.have_room(1, line)
        at, arrays = self.count, self.arrays
        arrays["kind"][at], arrays["line"][at], arrays["to"][at] = kind, line, to
        arrays["speed"][at], arrays["tool"][at], arrays["exact"][at] = speed, tool, exact
        arrays["plane"][at] = NO_ARC
        if arc:
            arrays["plane"][at], arrays["sweep"][at] = arc[0], arc[3]
            arrays["centre"][at] = arc[1:3]
        self.count += 1

    def begin_at(self, axis: int, place: float) -> None:
        """All before stood there along an axis, as it turns out."""
        self.arrays["to"][: self.count, axis] = place

    def filled(self) -> dict[str, Any]:
        """The arrays, no longer than they are filled."""
        few = self.count < 0.8 * self.room
        return {name: array[: self.count].copy() if few else array[: self.count] for name, array in self.arrays.items()}
