"""All that plans beside the server, put together: the planner, who has its figures made, and the compiling of the rule."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import timedelta

from runboard.floor.long_work import KeptWork, LongWork
from runboard.floor.planning.figures import Figuring
from runboard.floor.planning.planner import Planner
from runboard.floor.workshop import Workshop
from runboard.plan.schedule.rule.rule import is_at_hand, is_warm, note_kept, warm
from runboard.plan.search import make_figures


@dataclass
class Warming:
    """Having the dispatch rule compiled by the child that is kept: it compiles and keeps as it comes up, which takes ten seconds
    the first time, and has ``prepared`` whether it could; then ``kept`` is called. Until then plans are made by the same
    rule, more slowly."""

    child: KeptWork
    kept: Callable[[], bool]
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
            self.kept()
        return 1


class Planning:
    """``planner`` makes the plans of a ``workshop`` and says when there is another (``told``). ``seeker`` looks for better
    ones, ``work`` has their figures made, and ``loaded`` is called once this process has the compiled rule.

    That takes half a second and 120 MB, and saves a fifth of a second at every press: so it is loaded at the first press
    that comes once it is kept, and a server that is only looked at does without."""

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
        self._warming = warming = Warming(seeker, note_kept)
        self._kept_at: int | None = None  # the log's last arrival when the rule was kept
        quiet = timedelta(seconds=1)
        self._figuring = Figuring(workshop, work, make_figures, quiet, is_ready=lambda: warming.is_over)

    def turn(self) -> bool:
        """Do what there is to do, and never wait; answers whether there may be more to do at once."""
        has_planned = self.planner.turn() > 0
        self._figuring.turn()
        self._warming.turn()
        self._load()
        return has_planned

    def _load(self) -> None:
        if not self._warming.is_over or is_warm() or not is_at_hand():
            return
        seq = self.planner.workshop.ledger.last_seq
        if self._kept_at is None:
            self._kept_at = seq
        elif seq != self._kept_at:
            self._kept_at = seq  # where it cannot be loaded, not tried at every turn
            if warm():
                self._loaded()
