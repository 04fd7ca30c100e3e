"""What machines say through sensors: who may say it, what it means, and what of it is written in the log.

The log gets a line where a station starts or stops, not one for each reading. Nothing here ever switches anything.
"""

import secrets
import threading
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Any, Protocol

from runboard.floor.changing.runs import new_event
from runboard.floor.letting_in.devices import digest_of, tidy_name
from runboard.floor.letting_in.tries import Tries
from runboard.floor.pressing.taps import record_events
from runboard.floor.warm import catch_up
from runboard.floor.workshop import KeptSettings, Workshop
from runboard.run.calls.signals import MOST_WATTS, PRESSES, SIGNALS, Heard, Sensor, SensorReading, SignalLimits, hear
from runboard.run.refusal import Refused

KEY = "signals"
MOST_SECONDS = 3600
_UNNAMED = {SIGNALS: "Sensor", PRESSES: "Button"}


class Sensors(Protocol):
    """Where sensors are kept; each call is one transaction."""

    def sensors(self) -> list[Sensor]: ...
    def by_hash(self, hash_: str) -> Sensor | None: ...
    def put(self, sensor: Sensor) -> None: ...
    def revoke(self, sensor_id: str, now: datetime) -> bool: ...


@dataclass
class Ears:
    """What the floor needs to hear machines. ``heard`` is what each station's sensor said last, in memory only."""

    workshop: Workshop
    sensors: Sensors
    settings: KeptSettings
    tries: Tries = field(default_factory=Tries)
    heard: dict[str, Heard] = field(default_factory=dict)
    sources: dict[str, str] = field(default_factory=dict)
    lock: threading.Lock = field(default_factory=threading.Lock)


def make_sensor(ears: Ears, station: str, name: str, does: str = SIGNALS) -> tuple[str, Sensor]:
    """(token, sensor) for one station, or with ``does`` a button. The token is kept nowhere, so it is shown once. Refused
    'station unknown'."""
    _known(ears.workshop, station)
    token, now = secrets.token_urlsafe(24), ears.workshop.clock.now()
    sensor = Sensor(secrets.token_hex(6), station, tidy_name(name) or _UNNAMED[does], digest_of(token), now, does)
    ears.sensors.put(sensor)
    return token, sensor


def revoke_sensor(ears: Ears, sensor_id: str) -> None:
    """Hear a sensor no more, from now on. Refused 'sensor unknown'."""
    if not ears.sensors.revoke(sensor_id, ears.workshop.clock.now()):
        raise Refused("sensor unknown")


def who_speaks(ears: Ears, token: str, station: str, address: str, does: str = SIGNALS) -> Sensor:
    """The sensor of that station whose token this is, or with ``does`` the button.

    Refused 'signal token', and 'signal too often' where an address brings one wrong token after another.
    """
    now = ears.workshop.clock.now()
    if minutes := ears.tries.minutes_to_wait(address, now):
        raise Refused("signal too often", minutes=minutes)
    sensor = ears.sensors.by_hash(digest_of(token)) if token else None
    if sensor is None or (sensor.station, sensor.does) != (station, does):
        ears.tries.note_wrong(address, now)
        raise Refused("signal token")
    return sensor


def take_signal(ears: Ears, station: str, reading: SensorReading, source: str) -> bool | None:
    """Take one reading of a station. Answers whether it runs; None where that is not settled yet.

    Refused 'station unknown'.
    """
    _known(ears.workshop, station)
    now = ears.workshop.clock.now()
    with ears.lock:
        heard = hear(ears.heard.get(station), reading, limits_of(ears, station), now)
        ears.heard[station] = heard
        ears.sources[station] = source
    _note(ears, station, heard, now)
    return heard.runs(now)


def settle_signals(ears: Ears) -> int:
    """Write down what has been quiet for long enough by now; answers how many stations that were."""
    now = ears.workshop.clock.now()
    with ears.lock:
        heard = dict(ears.heard)
    return sum(_note(ears, station, last, now) for station, last in heard.items())


def _note(ears: Ears, station: str, heard: Heard, now: datetime) -> bool:
    """Whether it was news, and so was written in the log."""
    runs = heard.runs(now)
    if runs is None:
        return False
    workshop = ears.workshop
    with workshop.lock:
        catch_up(workshop)
        if workshop.book.station(station) is None or _last_said(workshop, station) is runs:
            return False
        body: dict[str, Any] = {"on": runs, "source": ears.sources.get(station, "")}
        if heard.watts is not None:
            body["value"] = heard.watts
        event = new_event(workshop, "signal received", body, station=station, device="sensor", basis="sensor")
        record_events(workshop, [event])
        return True


def _last_said(workshop: Workshop, station: str) -> bool | None:
    known = workshop.ledger.state.stations.get(station)
    return None if known is None or known.signal is None else bool(known.signal["on"])


def limits_of(ears: Ears, station: str) -> SignalLimits:
    """Below which power, and for how long, a station looks ended."""
    record = ears.settings.get(KEY).get(station) or {}
    usual = SignalLimits()
    seconds = record.get("seconds")
    return SignalLimits(record.get("watts", usual.watts), usual.for_ if seconds is None else timedelta(seconds=seconds))


def set_limits(ears: Ears, station: str, watts: float, seconds: float) -> None:
    """Set them. Refused 'station unknown', 'signal limits'."""
    _known(ears.workshop, station)
    if not (0 < watts <= MOST_WATTS and 0 <= seconds <= MOST_SECONDS):
        raise Refused("signal limits", watts=round(MOST_WATTS), seconds=MOST_SECONDS)
    record = ears.settings.get(KEY)
    ears.settings.put(KEY, {**record, station: {"watts": watts, "seconds": seconds}})


def _known(workshop: Workshop, station: str) -> None:
    if workshop.books.latest().station(station) is None:
        raise Refused("station unknown", station=station)
