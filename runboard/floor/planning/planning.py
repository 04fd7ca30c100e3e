"""All that plans beside the server, put together: the planner, who has its figures made, and the compiling of the rule."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import timedelta

from runboard.floor.long_work import KeptWork, LongWork
from runboard.floor.planning.figures import Figuring
from runboard.floor.planning.planner import Planner
from runboard.floor.workshop import Workshop
from runboard.plan.schedule.rule.rule import warm
from runboard.plan.search import make_figures


@dataclass
class Warming:
    """Having the dispatch rule compiled: the first time by the child that is kept, since that takes ten seconds, then from what
    is kept on the disk. ``child`` compiles and keeps as it comes up, and has ``prepared`` whether it could; ``again`` takes what is kept into
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


class Planning:
    """``planner`` makes the plans of a ``workshop`` and says when there is another (``told``). ``seeker`` looks for better
    ones, ``work`` has their figures made, and ``loaded`` is called once the compiled rule is there."""

    def __init__(
        self,
        workshop: Workshop,
        seeker: KeptWork,
        work: LongWork,
        told: Callable[[int], None],
        loaded: Callable[[], None],
    ) -> None:
        self.planner = Planner(workshop, seeker, told)
        self._loaded = loaded
        self._warming = warming = Warming(seeker, warm)
        quiet = timedelta(seconds=1)
        self._figuring = Figuring(workshop, work, make_figures, quiet, is_ready=lambda: warming.is_over)

    def turn(self) -> bool:
        """Do what there is to do, and never wait; answers whether there may be more to do at once."""
        has_planned = self.planner.turn() > 0
        self._figuring.turn()
        if self._warming.turn() and self._warming.is_over:
            self._loaded()
        return has_planned
