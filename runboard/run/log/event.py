"""One event of the log: the envelope, read from JSON and written back."""

import json
from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from typing import Any

# 2: a run ends only when nothing of it runs, is in hands or is asked about; 1 ended at once.
VERSION = 2
BASES = ("tapped", "sensor", "paper", "assumed")


@dataclass(frozen=True)
class Event:
    """The envelope. ``at`` is the phone's own moment, aware UTC; ``moment`` the corrected one.

    ``seq`` is the order of arrival, 0 until stored. ``operation`` is a step: the operation's key, with its pass after
    a colon where it has several (``sand:120``).
    """

    id: str
    kind: str
    at: datetime
    run: str = ""
    load: str = ""
    tray: str = ""
    operation: str = ""
    revision: int = 0
    station: str = ""
    person: str = ""
    device: str = ""
    offset_ms: int = 0
    seen: int = 0
    basis: str = "tapped"
    body: Mapping[str, Any] | None = None
    v: int = VERSION
    seq: int = 0
    entered_by: str = ""

    @property
    def moment(self) -> datetime:
        return self.at + timedelta(milliseconds=self.offset_ms)

    @property
    def order(self) -> tuple[datetime, str]:
        """The fold reads by this."""
        return (self.moment, self.id)

    def get(self, field: str, default: Any = None) -> Any:
        return default if self.body is None else self.body.get(field, default)


_MOST_EXACT = 2.0**53
_TEXT_FIELDS = ("run", "load", "tray", "operation", "station", "person", "device", "entered_by")


def parse_moment(text: str) -> datetime:
    """An aware UTC moment from ISO 8601, in whole milliseconds as the log keeps them; ValueError where the text is none
    or names no zone."""
    moment = datetime.fromisoformat(text)
    if moment.tzinfo is None:
        raise ValueError("a moment needs its zone")
    return moment.replace(microsecond=moment.microsecond // 1000 * 1000).astimezone(UTC)


def write_moment(moment: datetime) -> str:
    """ISO 8601 in UTC with milliseconds and Z, as JavaScript's ``toISOString`` writes it."""
    # Not strftime: it writes the year 1 as '1', which nobody could read again.
    return moment.astimezone(UTC).isoformat(timespec="milliseconds").removesuffix("+00:00") + "Z"


def event_from_json(record: Mapping[str, Any]) -> Event:
    """An event from its JSON record, already checked for form by ``form.check_form``."""
    fields = {name: str(record.get(name) or "") for name in _TEXT_FIELDS}
    return Event(
        id=record["id"],
        kind=record["kind"],
        at=parse_moment(record["at"]),
        revision=int(record.get("revision") or 0),
        offset_ms=int(record.get("offset_ms") or 0),
        seen=int(record.get("seen") or 0),
        basis=record.get("basis") or "tapped",
        body=_with_whole_numbers(record.get("body") or {}),
        v=int(record.get("v") or VERSION),
        seq=int(record.get("seq") or 0),
        **fields,
    )


def event_to_json(event: Event) -> dict[str, Any]:
    """The JSON record of an event; empty fields are left out."""
    record: dict[str, Any] = {"id": event.id, "v": event.v, "kind": event.kind, "at": write_moment(event.at)}
    for name in (*_TEXT_FIELDS, "revision", "offset_ms", "seen", "seq"):
        value = getattr(event, name)
        if value:
            record[name] = value
    record["basis"] = event.basis
    record["body"] = dict(event.body or {})
    return record


def read_body(text: str) -> Any:
    """A body from its stored JSON."""
    return json.loads(text, parse_float=lambda number: _whole(float(number)))


def _with_whole_numbers(value: Any) -> Any:
    """The value with 5.0 as 5: JSON knows no difference, and five pieces are counted."""
    if isinstance(value, Mapping):
        return {name: _with_whole_numbers(part) for name, part in value.items()}
    if isinstance(value, list):
        return [_with_whole_numbers(part) for part in value]
    return _whole(value) if isinstance(value, float) else value


def _whole(number: float) -> float:
    return int(number) if number.is_integer() and abs(number) < _MOST_EXACT else number


def amended(event: Event, changes: Event) -> Event:
    """``event`` with what an 'event amended' says: another moment, which nobody measured, or another body."""
    at = changes.get("at")
    body = changes.get("body")
    if at is not None:
        event = replace(event, at=parse_moment(at), offset_ms=0, basis="assumed")
    if body is not None:
        event = replace(event, body={**(event.body or {}), **body})
    return event


def body_text(event: Event) -> str:
    """The body as stored JSON."""
    return json.dumps(dict(event.body or {}), separators=(",", ":"), ensure_ascii=False)
