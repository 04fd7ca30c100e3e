"""The nouns of a run that can be replayed: what its work really took, who was there, in which order its loads were begun."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any

from runboard.plan.schedule.problem.nouns import Block
from runboard.plan.schedule.told.forecast import Scatter, usual_spread
from runboard.review.held.going import Order
from runboard.review.sent import packed, unpacked
from runboard.run.fold.route import Step
from runboard.run.fold.state import RunState, ShopState
from runboard.shop.book import Book
from runboard.shop.hours import Span
from runboard.shop.parts import Part
from runboard.shop.product import ZERO

# So long after a run's end everybody is there round the clock: whatever was done finds a place.
AT_LAST = timedelta(weeks=4)


@dataclass(frozen=True)
class Lengths:
    """How long a part of a load took: the mean of what the run itself measured, by (step, kind); where it measured nothing,
    what is known now. An estimate as a problem asks for it; it can be sent to a child process."""

    known: Mapping[tuple[str, str], timedelta]

    def __call__(self, run: RunState, step: Step, part: Part) -> timedelta:
        guess: timedelta = getattr(step.pass_, part.kind, ZERO)
        known = self.known.get((step.key, part.kind))
        return part.length if known is None or not guess else part.length * (known / guess)


@dataclass(frozen=True)
class Scatters:
    """How much a time element scatters, by (step, kind); as usual where nobody knows."""

    known: Mapping[tuple[str, str], Scatter]

    def __call__(self, block: Block, kind: str) -> Scatter:
        return self.known.get((block.step, kind)) or usual_spread(block, kind)


@dataclass(frozen=True)
class Replayable:
    """A run that can be replayed; it can be sent to a child process.

    ``state`` has the run as it was opened; ``book`` is the shop's with everybody who worked on the run, round the clock: their
    real hours are in ``there``, those of stations in ``free``. ``order`` says when each load was begun.
    ``finished`` is when the last thing was done; None where the run is open. ``longer`` is by how much everybody is there longer
    each time (``fitted``).
    """

    run: str
    state: ShopState
    book: Book
    opened_at: datetime
    ended_at: datetime
    finished: datetime | None
    lengths: Lengths
    spread: Scatters
    there: Mapping[str, list[Span]]
    free: Mapping[str, list[Span]]
    order: Order
    longer: timedelta = ZERO

    def __reduce__(self) -> Any:
        return _unpacked, (packed(vars(self)),)


def _unpacked(found: bytes) -> Replayable:
    return Replayable(**unpacked(found))
