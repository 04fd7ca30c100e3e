"""Having the dispatch rule compiled: the first time by the child that is kept, since that takes ten seconds, then from what is
kept on the disk."""

from collections.abc import Callable
from dataclasses import dataclass

from runboard.floor.long_work import KeptWork


@dataclass
class Warming:
    """``child`` compiles and keeps as it comes up, and has ``prepared`` whether it could; ``again`` takes what is kept into
    this process. Until then plans are made by the same rule, more slowly."""

    child: KeptWork
    again: Callable[[], bool]
    _is_over: bool = False

    @property
    def is_over(self) -> bool:
        """Whether nothing is left to do."""
        return self._is_over

    def turn(self) -> int:
        """Do the next step, if there is one; answers how many were done."""
        if self._is_over:
            return 0
        self.child.begin()
        if self.child.prepared is None:
            return 0
        self._is_over = True
        if self.child.prepared:
            self.again()
        return 1
