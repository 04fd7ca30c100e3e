"""Having the dispatch rule compiled: the first time in a child, since that takes ten seconds, then from what is kept."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from runboard.floor.long_work import LongWork


@dataclass
class Warming:
    """``first`` compiles and keeps, in a child of ``work``; ``again`` takes what is kept into this process. Until then
    plans are made by the same rule, more slowly."""

    work: LongWork
    first: Callable[..., Any]
    again: Callable[[], bool]
    _task: str = ""
    _is_over: bool = False

    @property
    def is_over(self) -> bool:
        """Whether nothing is left to do."""
        return self._is_over

    def turn(self) -> int:
        """Do the next step, if there is one; answers how many were done."""
        if self._is_over:
            return 0
        if not self._task:
            task = self.work.start("compile", "", self.first)
            self._task = task.id if task is not None else ""
            return int(bool(self._task))
        task = self.work.look(self._task)
        if task is not None and not task.is_over:
            return 0
        self._is_over = True
        if task is not None and task.result:
            self.again()
        return 1
