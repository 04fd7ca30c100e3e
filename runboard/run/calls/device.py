"""The devices that may ask, as records: a device, its session, a code that pairs one. A person works, a device records."""

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True)
class Device:
    """A phone, a tablet or a computer. Its id is for good: pairing again keeps it, so what it still has to send fits.

    ``access`` is lead, crew or guest; a guest's ``run`` and ``tray`` say which one it may work.
    """

    id: str
    name: str
    access: str
    paired_at: datetime
    seen_at: datetime | None = None
    revoked_at: datetime | None = None
    run: str = ""
    tray: str = ""


@dataclass(frozen=True)
class Session:
    """What lets a device in until ``ends_at``. ``hash`` is that of a secret which only the device has.

    ``way`` is the one by which it came: ``https``, ``here`` from the server's own computer, or ``http``, where others may
    have read the secret along; '' while that is not known.
    """

    hash: str
    device: Device
    renewed_at: datetime
    ends_at: datetime
    way: str = ""


@dataclass(frozen=True)
class PairingCode:
    """The hash of a code that pairs one device, once, until ``ends_at``: a new one, or the ``device`` that it names."""

    hash: str
    access: str
    ends_at: datetime
    device: str = ""
