"""Where machines are heard by MQTT, and buttons: the broker, and each station's topics. Off until somebody switches it on."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from runboard.floor.keeping.buttons import press_button
from runboard.floor.keeping.signals import Ears, take_signal, who_speaks
from runboard.run.calls.signals import PRESSES, read_payload, read_signal
from runboard.run.refusal import Refused

KEY = "mqtt"
PORT = 1883
_LONGEST = 400


@dataclass(frozen=True)
class Broker:
    """``topics`` says for each station where it is heard; ``places`` where in a JSON message its value stands; ``presses``
    where its button is."""

    on: bool = False
    host: str = ""
    port: int = PORT
    tls: bool = False
    user: str = ""
    password: str = ""
    topics: Mapping[str, str] = field(default_factory=dict)
    places: Mapping[str, str] = field(default_factory=dict)
    presses: Mapping[str, str] = field(default_factory=dict)


def read_broker(ears: Ears) -> Broker:
    """The broker as it is set."""
    return Broker(**ears.settings.get(KEY))


def with_kept_password(typed: Broker, before: Broker) -> Broker:
    """An empty password keeps the one that is there, which is never shown. Refused 'broker password' where that would
    send it somewhere else."""
    if typed.password or not typed.user or not before.password:
        return typed
    if (typed.host, typed.port, typed.tls, typed.user) != (before.host, before.port, before.tls, before.user):
        raise Refused("broker password")
    return replace(typed, password=before.password)


def set_broker(ears: Ears, broker: Broker) -> None:
    """Set it. Refused 'broker host', 'broker port', 'broker topic'."""
    if broker.on and (not broker.host or any(sign.isspace() or sign == "/" for sign in broker.host)):
        raise Refused("broker host")
    if not 1 <= broker.port <= 65535:
        raise Refused("broker port")
    for topic in (*broker.topics.values(), *broker.presses.values()):
        if any(sign in topic for sign in "#+\0") or not topic.isprintable() or len(topic) > _LONGEST:
            raise Refused("broker topic", topic=topic)
    by_station = {name: dict(getattr(broker, name)) for name in ("topics", "places", "presses")}
    ears.settings.put(KEY, {**vars(broker), **by_station})


def _token(payload: bytes) -> str:
    said = read_payload(payload)
    token = said.get("token") if isinstance(said, Mapping) else said
    return token.strip() if isinstance(token, str) else ""


def take_message(ears: Ears, broker: Broker, topic: str, payload: bytes) -> list[str]:
    """Take one message; answers the stations that are heard there. Refused where it is no reading, or a button's without its
    token, which is the message or stands in it as ``token``."""
    for station in (station for station, known in broker.presses.items() if known == topic):
        who_speaks(ears, _token(payload), station, topic, PRESSES)
        press_button(ears, station)
    stations = [station for station, known in broker.topics.items() if known == topic]
    for station in stations:
        take_signal(ears, station, read_signal(read_payload(payload), broker.places.get(station, "")), "mqtt")
    return stations
