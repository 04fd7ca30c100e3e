"""What a sensor's word means: a station runs, or it looks ended. A sensor asks; only a person's answer changes a load.

A paused laser looks ended, and a jammed cutter looks running: so nothing here ends or starts anything.
"""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any

from runboard.run.fold.state import Load, ShopState
from runboard.run.log.event import parse_moment
from runboard.run.refusal import Refused
from runboard.shop.json_text import read_json_text
from runboard.shop.problem import Unreadable

# What a token may do: say that a machine runs, or press for whose hands are at its station.
SIGNALS, PRESSES = "signal", "press"
MOST_WATTS = 100_000.0
MOST_BYTES = 4000


@dataclass(frozen=True)
class Sensor:
    """A smart plug, a sensor or a button at one station. ``hash`` is that of a token which only it has; ``does`` says what
    the token is good for, and it is good for nothing else."""

    id: str
    station: str
    name: str
    hash: str
    made_at: datetime
    does: str = SIGNALS


@dataclass(frozen=True)
class SignalLimits:
    """Below ``watts`` for so long, a station looks ended."""

    watts: float = 20.0
    for_: timedelta = timedelta(seconds=30)


@dataclass(frozen=True)
class SensorReading:
    """What a sensor says once: that it is on or off, or how much power is drawn."""

    on: bool | None = None
    watts: float | None = None


@dataclass(frozen=True)
class Heard:
    """What a sensor said last. From ``quiet_at`` on its station looks ended; without it, it runs.

    ``low_since`` is since when the power has been below the limit.
    """

    at: datetime
    watts: float | None = None
    low_since: datetime | None = None
    quiet_at: datetime | None = None

    def runs(self, now: datetime) -> bool | None:
        """Whether the station runs; None where its power is low, but not for long enough to say so."""
        if self.quiet_at is None:
            return True
        return False if now >= self.quiet_at else None


def read_payload(payload: bytes) -> object:
    """What a message holds: JSON, else a bare word. Refused 'signal form' where it is too long."""
    if len(payload) > MOST_BYTES:
        raise Refused("signal form")
    text = payload.decode("utf-8", "replace")
    try:
        return read_json_text(payload, "what was said")
    except Unreadable:
        return text


def read_signal(raw: object, place: str = "") -> SensorReading:
    """The reading that a message says: a number is watts, on or off a word, or an object holds ``watts`` or ``on``.

    ``place`` names where in an object the value stands: ``power`` or ``ENERGY.Power``. Refused 'signal form'.
    """
    value = raw
    for name in filter(None, place.split(".")):
        value = value.get(name) if isinstance(value, Mapping) else None
    if isinstance(value, Mapping):
        value = value["watts"] if "watts" in value else value.get("on")
    return _reading(value)


_WORDS = {"on": True, "true": True, "running": True, "off": False, "false": False, "stopped": False}


def _reading(value: Any) -> SensorReading:
    if isinstance(value, bool):
        return SensorReading(on=value)
    if isinstance(value, str):
        word = value.strip().lower()
        if word in _WORDS:
            return SensorReading(on=_WORDS[word])
        try:
            value = float(word)
        except ValueError:
            raise Refused("signal form") from None
    if isinstance(value, (int, float)) and math.isfinite(value) and 0 <= value <= MOST_WATTS:
        return SensorReading(watts=float(value))
    raise Refused("signal form")


def hear(before: Heard | None, reading: SensorReading, limits: SignalLimits, now: datetime) -> Heard:
    """What is known of a station after one reading more."""
    if reading.watts is None:
        return Heard(now, quiet_at=None if reading.on else now)
    if reading.watts >= limits.watts:
        return Heard(now, reading.watts)
    low_since = before.low_since if before is not None and before.low_since is not None else now
    return Heard(now, reading.watts, low_since, low_since + limits.for_)


def looks_ended(state: ShopState) -> Iterator[tuple[Load, datetime]]:
    """Every running load whose station a sensor saw stop since it was started, and when."""
    for station in state.stations.values():
        if station.signal is None or station.signal["on"] or station.load is None:
            continue
        run, key = station.load
        load = state.runs[run].loads.get(key) if run in state.runs else None
        stopped_at = parse_moment(station.signal["at"])
        if load is not None and load.state == "running" and load.phase_at is not None and stopped_at > load.phase_at:
            yield load, stopped_at
