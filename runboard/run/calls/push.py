"""A phone that is told of alerts while it is locked, through the push service of its browser's maker (RFC 8030)."""

import base64
import binascii
import ipaddress
from dataclasses import dataclass
from datetime import datetime
from typing import Any
from urllib.parse import urlsplit

from runboard.run.calls.climb import LOUDER, PHONES, Steps, is_asked_of_all, stages
from runboard.run.calls.dues import Due
from runboard.run.refusal import Refused

LONGEST_ENDPOINT = 2000
# An uncompressed point of P-256, and the secret that only the phone and its shop know (RFC 8291, 3.1 and 3.2).
_POINT_BYTES, _SECRET_BYTES = 65, 16
_HOUSE_NAMES = ("local", "localhost", "lan", "home", "internal", "intranet", "arpa")


@dataclass(frozen=True)
class Subscription:
    """Where a device's browser fetches its messages, and the keys, as base64url, by which only it can read them."""

    device: str
    endpoint: str
    p256dh: str
    auth: str
    made_at: datetime


def read_subscription(record: Any, device: str, at: datetime, near: bool = False) -> Subscription:
    """What a browser says of its subscription (``PushSubscription.toJSON()``).

    Refused 'push form'; 'push address' for what is no https address outside the shop. ``near`` allows this computer.
    """
    if not isinstance(record, dict) or not isinstance(record.get("keys"), dict):
        raise Refused("push form")
    texts = [record.get("endpoint"), record["keys"].get("p256dh"), record["keys"].get("auth")]
    if not all(isinstance(text, str) and 0 < len(text) <= LONGEST_ENDPOINT and text.isascii() for text in texts):
        raise Refused("push form")
    endpoint, p256dh, auth = texts
    point = _bytes(p256dh)
    if len(point) != _POINT_BYTES or point[0] != 4 or len(_bytes(auth)) != _SECRET_BYTES:
        raise Refused("push form")
    if not is_service(endpoint, near):
        raise Refused("push address")
    return Subscription(device, endpoint, p256dh, auth, at)


def is_service(endpoint: str, near: bool = False) -> bool:
    """Whether it may be the address of a push service: https, a name or address that is not one of a house's own.

    A name may still lead into the house: ``is_outside`` is asked again of what it leads to, when something is sent.
    """
    try:
        parts = urlsplit(endpoint)
        host, port = parts.hostname or "", parts.port
    except ValueError:
        return False
    if not endpoint.isprintable() or " " in endpoint or "@" in parts.netloc or "\\" in endpoint or port == 0:
        return False
    if near and host == "127.0.0.1":
        return parts.scheme in ("http", "https")
    return parts.scheme == "https" and _is_outside_name(host)


def is_outside(address: str) -> bool:
    """Whether an address is one of the internet at large."""
    try:
        found = ipaddress.ip_address(address.partition("%")[0])
    except ValueError:
        return False
    inner = getattr(found, "ipv4_mapped", None) or getattr(found, "sixtofour", None)
    return found.is_global and not found.is_multicast and (inner is None or inner.is_global)


def pushings(due: Due, steps: Steps, now: datetime) -> int:
    """How often phones should have been sent it by ``now``: when it falls due, when it grows louder, and a look when it
    is missed and everybody is asked."""
    begins = stages(due, steps)
    missed = due.kind == "watch check" and is_asked_of_all(due, now)
    return sum(stage in begins and begins[stage] <= now for stage in (PHONES, LOUDER)) + missed


def _is_outside_name(host: str) -> bool:
    if ":" in host:  # an address in brackets: no push service has one
        return False
    if host.replace(".", "").isdigit():
        return is_outside(host)
    labels = host.split(".")
    return len(labels) > 1 and all(labels) and labels[-1][0].isalpha() and labels[-1] not in _HOUSE_NAMES


def _bytes(text: str) -> bytes:
    try:
        return base64.b64decode(text.rstrip("=") + "=" * (-len(text.rstrip("=")) % 4), altchars=b"-_", validate=True)
    except (binascii.Error, ValueError):
        return b""
