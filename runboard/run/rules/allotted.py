"""Who gets what: which good pieces are whose, and what became of each order line.

A piece that carries a text is its line's. The others are allotted late, to the earliest due first, as everywhere a run is looked
at as a whole (``run/fold/record.py``): until something is handed over it does not matter whose it is.
"""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

from runboard.run.fold.state import OrderLine, RunState, Ticked, Tray
from runboard.run.refusal import Refused

TICKS = ("packed", "collected", "paid")


@dataclass(frozen=True)
class LineNow:
    """An order line, how many of its pieces are ``ready``, and its ticks."""

    order: OrderLine
    ready: int
    ticks: Mapping[str, Ticked]

    @property
    def is_for_now(self) -> bool:
        """Whether something of it can be handed over."""
        return self.ready > self.done("collected")

    @property
    def is_over(self) -> bool:
        """Whether all of it is collected."""
        return self.done("collected") >= self.order.pieces

    def done(self, tick: str) -> int:
        """Of how many of its pieces that is ticked."""
        ticked = self.ticks.get(tick)
        return 0 if ticked is None else min(ticked.pieces or self.order.pieces, self.order.pieces)

    def taken_by(self, tick: str, some: bool) -> int:
        """How many pieces a press of that tick stands for; 0: for all. Refused 'none ready' where nothing more is there, and
        'some ready' where not all are and nobody said that ``some`` will do. It is paid for whenever somebody pays."""
        if tick == "paid" or self.ready >= self.order.pieces:
            return 0
        if self.ready <= self.done(tick):
            raise Refused("none ready", ready=self.ready, pieces=self.order.pieces)
        if not some:
            raise Refused("some ready", ready=self.ready, pieces=self.order.pieces)
        return self.ready


def lines_of(run: RunState) -> list[LineNow]:
    """The order lines: those of which something can be handed over first, then those still made, then those that are
    collected; the earliest due first."""
    ready = allotted(run)
    found = [LineNow(order, ready[order.line], run.ticks.get(order.line, {})) for order in run.by_due]
    return sorted(found, key=lambda line: (not line.is_for_now, line.is_over))


def allotted(run: RunState) -> dict[str, int]:
    """How many good pieces each order line has, the earliest due first."""
    wanted = {order.line: order.pieces for order in run.by_due}
    found = dict.fromkeys(wanted, 0)
    free = sum(_own(tray, wanted, found) for tray in run.trays.values())
    for line, pieces in wanted.items():
        more = min(free, pieces - found[line])
        found[line] += more
        free -= more
    return found


def _own(tray: Tray, wanted: Mapping[str, int], found: dict[str, int]) -> int:
    """Allots a tray's good pieces to the lines whose text they carry; answers how many may be anybody's. While some are not
    through, nobody says which ones are: the earliest due are taken to be."""
    carried = Counter(line for line, text in tray.places.values() if text)
    left = tray.good
    for line, pieces in wanted.items():
        own = min(left, carried[line], pieces - found[line])
        found[line] += own
        left -= own
        carried[line] -= own
    return max(0, left - carried.total())  # what carries the text of a line that is no more is nobody's
