"""How alerts climb, and where they go outside the building: settings, each with the check of what is typed in."""

import secrets
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import timedelta

from runboard.floor.letting_in.devices import tidy_name
from runboard.floor.workshop import KeptSettings, Workshop
from runboard.run.calls.climb import Steps
from runboard.run.refusal import Refused

STEPS_KEY, CHANNELS_KEY = "climb", "outside"
MOST_MINUTES = 600
MOST_CHANNELS = 12
LONGEST_ADDRESS = 2000
_STAGES = ("louder", "outside", "computer")


@dataclass(frozen=True)
class Channel:
    """A way out of the building: an Apprise address, which may hold a password, and what the shop calls it."""

    id: str
    name: str
    url: str


def read_steps(settings: KeptSettings, usual: Steps) -> Steps:
    """The steps as they are set; ``usual`` where nobody set any."""
    record = settings.get(STEPS_KEY)
    if not record:
        return usual
    return Steps(*(None if record.get(name) is None else timedelta(minutes=record[name]) for name in _STAGES))


def set_steps(workshop: Workshop, settings: KeptSettings, minutes: Mapping[str, float | None]) -> None:
    """Set after how many minutes each stage begins, None for never. Refused 'climb minutes', 'climb order'."""
    given = [minutes.get(name) for name in _STAGES]
    known = [minute for minute in given if minute is not None]
    if not all(0 < minute <= MOST_MINUTES for minute in known):
        raise Refused("climb minutes", most=MOST_MINUTES)
    if known != sorted(known):
        raise Refused("climb order")
    settings.put(STEPS_KEY, dict(zip(_STAGES, given, strict=True)))
    with workshop.lock:
        workshop.steps = read_steps(settings, workshop.steps)
        workshop.kept.pop("texts", None)


def channels(settings: KeptSettings) -> list[Channel]:
    """The ways out, in order of adding."""
    return [
        Channel(channel["id"], channel["name"], channel["url"])
        for channel in settings.get(CHANNELS_KEY).get("channels", [])
    ]


def add_channel(settings: KeptSettings, name: str, url: str, is_readable: Callable[[str], bool]) -> Channel:
    """Add a way out. Refused 'channel unreadable', 'channels many'."""
    url = url.strip()
    if not url.isprintable() or len(url) > LONGEST_ADDRESS or not is_readable(url):
        raise Refused("channel unreadable")
    held = channels(settings)
    if len(held) >= MOST_CHANNELS:
        raise Refused("channels many", most=MOST_CHANNELS)
    channel = Channel(secrets.token_hex(4), tidy_name(name) or url.split(":")[0], url)
    _keep(settings, [*held, channel])
    return channel


def remove_channel(settings: KeptSettings, channel_id: str) -> None:
    """Take a way out away. Refused 'channel unknown'."""
    find_channel(settings, channel_id)
    _keep(settings, [channel for channel in channels(settings) if channel.id != channel_id])


def find_channel(settings: KeptSettings, channel_id: str) -> Channel:
    """The way out of that id. Refused 'channel unknown'."""
    found = next((channel for channel in channels(settings) if channel.id == channel_id), None)
    if found is None:
        raise Refused("channel unknown")
    return found


def _keep(settings: KeptSettings, held: list[Channel]) -> None:
    settings.put(CHANNELS_KEY, {"channels": [vars(channel) for channel in held]})
