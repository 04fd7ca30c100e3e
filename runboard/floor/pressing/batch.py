"""A batch of presses as it arrives from a phone: its form, and when each press really was."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any

from runboard.run.change import replace
from runboard.run.log.event import Event, parse_moment
from runboard.run.refusal import Refused

MOST_TAPS = 2000
# How long a batch may be on its way, in milliseconds; and by how much two measures of one clock differ.
SLOWEST_MS, JITTER_MS = 15 * 60_000, 2_000


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


def by_the_shops_clock(record: object, sent_at: datetime | None, now: datetime) -> object:
    """The record with the offset of the sender's clock: what the time of sending says, whatever its size, for an old tablet
    may be years off and have measured nothing. What it did measure stands where a slow way here explains the difference:
    a server that was frozen would add its whole freeze to each press, and bring them out of their order. Without a time
    of sending the record's own word stands."""
    if sent_at is None or not isinstance(record, Mapping):
        return record
    by_sending, measured = round((now - sent_at) / timedelta(milliseconds=1)), record.get("offset_ms")
    if isinstance(measured, int) and -JITTER_MS <= by_sending - measured <= SLOWEST_MS:
        return record
    return {**record, "offset_ms": by_sending}


def corrected(events: Sequence[Event], now: datetime) -> list[Event]:
    """The events as they come, none of them later than now: what says so was pressed now.

    Each is judged by itself. Those that the batch has at one moment follow each other a millisecond apart.
    """
    found: list[Event] = []
    for event in events:
        moment = min(event.moment, now)
        if found and _follows(event, found[-1], moment):
            moment = found[-1].moment + timedelta(milliseconds=1)
        found.append(event if moment == event.moment else _moved(event, moment))
    return found


def _follows(event: Event, before: Event, moment: datetime) -> bool:
    """Whether the order of the batch is all that says which of two came first."""
    was_ahead = moment < event.moment
    return moment == before.moment or event.at == before.at or (was_ahead and moment <= before.moment)


def _moved(event: Event, moment: datetime) -> Event:
    return replace(event, offset_ms=round((moment - event.at) / timedelta(milliseconds=1)))
