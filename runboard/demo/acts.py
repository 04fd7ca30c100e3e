"""What every act of the story has: order lines for house numbers, and sessions of people who work side by side."""

from collections.abc import Iterator, Sequence
from datetime import UTC, datetime, timedelta
from heapq import heapify, heappop, heappush
from typing import Any
from zoneinfo import ZoneInfo

from runboard.demo.phone import Shopfloor
from runboard.run.log.event import write_moment

# How long until somebody does the next thing, one after the other.
Spans = Iterator[timedelta]

DAY, HOUR, MINUTE = timedelta(days=1), timedelta(hours=1), timedelta(minutes=1)
# A press takes a second of the clock, and one turn may be some presses.
_LAST_TURN_BEFORE = timedelta(seconds=10)
SESSION = timedelta(hours=2, minutes=50)
STREETS = ("Mill Lane", "Harbour Street", "Quarry Road", "Orchard Way", "Station Road", "Bridge End")


def house_numbers(floor: Shopfloor, lines: int, pieces: int, dues: Sequence[datetime]) -> list[dict[str, Any]]:
    """Order lines: a house number each, for a street, the first of them due first."""
    numbers = floor.chance.sample(range(2, 98), lines)
    return [
        {
            "line": str(line),
            "pieces": pieces,
            "for": STREETS[line % len(STREETS)],
            "text": str(number),
            "due": write_moment(dues[(line - 1) * len(dues) // lines]),
        }
        for line, number in enumerate(numbers, 1)
    ]


def for_the_post(moment: datetime, zone: str) -> datetime:
    """The next five o'clock in the afternoon, when the post goes."""
    local = moment.astimezone(ZoneInfo(zone))
    today = local.replace(hour=17, minute=0, second=0, microsecond=0)
    return (today if today >= local else today + DAY).astimezone(UTC)


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
