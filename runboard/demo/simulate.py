"""Several people at work side by side: each goes on when their time has come, and the clock goes with them."""

from collections.abc import Sequence
from datetime import datetime, timedelta
from heapq import heapify, heappop, heappush

from runboard.demo.phone import Shopfloor
from runboard.demo.worker import Spans

# A press takes a second of the clock, and one turn may be some presses.
_LAST_TURN_BEFORE = timedelta(seconds=10)


def play(floor: Shopfloor, comings: Sequence[tuple[datetime, Spans]], until: datetime | None = None) -> None:
    """Let everybody work from when they come until they have gone, or until a moment: then they stay as they are."""
    queue = [(moment, number, spans) for number, (moment, spans) in enumerate(comings)]
    heapify(queue)
    while queue and (until is None or queue[0][0] < until - _LAST_TURN_BEFORE):
        moment, number, spans = heappop(queue)
        floor.clock.moment = max(floor.clock.moment, moment)
        span = next(spans, None)
        if span is not None:
            heappush(queue, (floor.now + span, number, spans))
    if until is not None:
        floor.clock.moment = max(floor.clock.moment, until)
