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
    guests = [one for one in devices if one.access == GUEST]
    here = [one for one in guests if (one.run, one.tray) == at]
    heard = [one for one in here if one.revoked_at is None and now - (one.seen_at or one.paired_at) < HOUR]
    fresh = [one for one in guests if now - one.paired_at < HOUR]
    at_tray = sum((one.run, one.tray) == at for one in fresh)
    if len(heard) >= MOST_AT_A_TRAY or at_tray >= MOST_AN_HOUR_AT_A_TRAY or len(fresh) >= MOST_AN_HOUR:
        raise NotForGuest("guest too many")
