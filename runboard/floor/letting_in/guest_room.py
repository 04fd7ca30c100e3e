"""How many phones a tray's card lets in: as many as can work at a tray, and as come in an hour."""

from collections.abc import Iterable
from datetime import datetime, timedelta

from runboard.floor.letting_in.guest_rights import NotForGuest
from runboard.floor.pressing.access import GUEST
from runboard.run.calls.device import Device

HOUR = timedelta(hours=1)
# A phone that was not heard of for an hour makes room: nobody is at the tray with it.
MOST_AT_A_TRAY = 12
MOST_AN_HOUR_AT_A_TRAY = 30
MOST_AN_HOUR = 100


def check_room(devices: Iterable[Device], at: tuple[str, str], now: datetime) -> None:
    """Refused 'guest too many' where a phone that nobody knows may not come to the tray ``at`` (run, tray) now."""
    guests = [device for device in devices if device.access == GUEST]
    here = [device for device in guests if (device.run, device.tray) == at]
    heard = [
        device for device in here if device.revoked_at is None and now - (device.seen_at or device.paired_at) < HOUR
    ]
    fresh = [device for device in guests if now - device.paired_at < HOUR]
    at_tray = sum((device.run, device.tray) == at for device in fresh)
    if len(heard) >= MOST_AT_A_TRAY or at_tray >= MOST_AN_HOUR_AT_A_TRAY or len(fresh) >= MOST_AN_HOUR:
        raise NotForGuest("guest too many")
