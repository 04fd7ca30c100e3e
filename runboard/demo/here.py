"""Which time zone this computer is in, so that the demo's times of day are those on its reader's wall."""

import os
from pathlib import Path
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

LINK = Path("/etc/localtime")


def zone_here(link: Path = LINK) -> str:
    """The zone's name from TZ or from where the system's own link points; UTC where neither says."""
    for name in (os.environ.get("TZ", "").lstrip(":"), _linked(link)):
        if name and _is_zone(name):
            return name
    return "UTC"


def _linked(link: Path) -> str:
    """``Europe/Berlin`` from a link to /usr/share/zoneinfo/Europe/Berlin."""
    try:
        return str(link.resolve(strict=True)).partition("zoneinfo/")[2]
    except OSError:
        return ""


def _is_zone(name: str) -> bool:
    try:
        ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        return False
    return True
