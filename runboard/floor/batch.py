"""A batch of presses as it arrives from a phone: its form, and when each press really was."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any

from runboard.run.change import replace
from runboard.run.event import Event, parse_moment
from runboard.run.refusal import Refused

MOST_TAPS = 2000


@dataclass(frozen=True)
class Batch:
    """What arrived: from which device, when it was sent by its own clock, and the records."""

    device: str
    sent_at: datetime | None
    taps: tuple[Any, ...]


def read_batch(raw: object, device: str = "") -> Batch:
    """The batch that a JSON object says, of the ``device`` that sent it; of the one that it names where nobody knows.

    Refused 'batch form' where it is none.
    """
    if not isinstance(raw, Mapping):
        raise Refused("batch form", what="an object with device, sent_at and taps is wanted")
    taps, sender, sent = raw.get("taps"), device or raw.get("device"), raw.get("sent_at")
    if not isinstance(taps, list) or len(taps) > MOST_TAPS:
        raise Refused("batch form", what=f"taps must be a list of at most {MOST_TAPS}")
    if not isinstance(sender, str) or not 0 < len(sender) <= 80:
        raise Refused("batch form", what="device must name the device, in at most 80 characters")
    try:
        sent_at = parse_moment(sent) if sent is not None else None
    except (TypeError, ValueError, OverflowError):
        raise Refused("batch form", what="sent_at must be a moment with its zone, in ISO 8601") from None
    return Batch(sender, sent_at, tuple(taps))


def corrected(
    events: list[Event], raw: list[Mapping[str, Any]], sent_at: datetime | None, now: datetime
) -> list[Event]:
    """The events with the clock's offset in them: the phone's own, else what the time of sending says.

    Nothing was pressed in the future: if a moment comes out later than now, the whole batch moves back by that much,
    so that its order stays.
    """
    guessed = round((now - sent_at) / timedelta(milliseconds=1)) if sent_at is not None else 0
    placed = [
        event if record.get("offset_ms") is not None else replace(event, offset_ms=guessed)
        for event, record in zip(events, raw, strict=True)
    ]
    ahead = max((event.moment - now for event in placed), default=timedelta(0))
    if ahead > timedelta(0):
        back = -(-ahead // timedelta(milliseconds=1))
        placed = [replace(event, offset_ms=event.offset_ms - back) for event in placed]
    return _in_order(placed)


def _in_order(events: list[Event]) -> list[Event]:
    """Presses of the very same moment keep the batch's order: each comes a millisecond after the one before."""
    found: list[Event] = []
    for event in events:
        if (found and event.moment == found[-1].moment) or (found and event.at == found[-1].at):
            later = (found[-1].moment - event.moment) // timedelta(milliseconds=1) + 1
            event = replace(event, offset_ms=event.offset_ms + later)
        found.append(event)
    return found
