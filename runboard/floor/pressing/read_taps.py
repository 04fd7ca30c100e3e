"""What a batch says: of each record the event with its moment corrected, or why it is none. Nothing is looked up for it."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from runboard.floor.pressing.batch import Batch, by_the_shops_clock, corrected
from runboard.run.change import replace
from runboard.run.fold.record import dump
from runboard.run.log.event import VERSION, Event
from runboard.run.log.form import check_form
from runboard.run.refusal import Refused

MOST_SIGNS = 64_000
LONG_KINDS = ("run opened", "route revised", "orders changed", "event amended")


@dataclass(frozen=True)
class Tap:
    """One record as it came, its id ('' where it has none), and the event that it says, or why it says none."""

    record: object
    id: str
    said: Event | Refused


def read_taps(batch: Batch, now: datetime) -> list[Tap]:
    """Each record of the batch in its order, read at ``now``."""
    read = [_read(record, batch, now) for record in batch.taps]
    placed = iter(corrected([tap.said for tap in read if isinstance(tap.said, Event)], now))
    return [replace(tap, said=next(placed)) if isinstance(tap.said, Event) else tap for tap in read]


def _read(record: object, batch: Batch, now: datetime) -> Tap:
    named = record.get("id") if isinstance(record, Mapping) else None
    id_ = named if isinstance(named, str) else ""
    try:
        _check_size(record)
        event = check_form(by_the_shops_clock(record, batch.sent_at, now))
        return Tap(record, id_, replace(event, device=batch.device, seq=0, v=VERSION))
    except Refused as refusal:
        return Tap(record, id_, refusal)


def _check_size(record: object) -> None:
    """Refused 'press too large'. What a run is may be long; a press is not."""
    is_long = isinstance(record, Mapping) and record.get("kind") in LONG_KINDS
    if not is_long and len(dump(record)) > MOST_SIGNS:
        raise Refused("press too large", most=MOST_SIGNS)
