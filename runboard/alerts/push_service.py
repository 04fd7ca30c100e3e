"""One message to one push service: encrypted and signed by pywebpush, sent to nothing that lies in the house; and the key
pair by which the services know this shop (VAPID, RFC 8292), made once and kept in the data folder."""

import base64
import hashlib
import hmac
import ipaddress
import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from threading import Lock

import ifaddr
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.serialization import (
    Encoding,
    NoEncryption,
    PrivateFormat,
    PublicFormat,
    load_pem_private_key,
)

from runboard.run.calls.push import Subscription, is_outside
from runboard.run.refusal import NotStored
from runboard.words.sentences import say

FILE_NAME = "push-key.pem"

# A phone that is off gets it when it comes back, but not what is long answered.
KEPT_SECONDS = 15 * 60
CONNECT_SECONDS, ANSWER_SECONDS = 5.0, 10.0
# Who sends, for a service's operator: a maker of browsers has no business with who owns the shop.
CONTACT = "mailto:runboard@example.org"
_GONE = (404, 410)
_LONGEST_WHY = 160


@dataclass
class PushKey:
    """The key in ``folder``. ``write_first`` puts a file there that nobody else can read, unless there is one already."""

    folder: Path
    write_first: Callable[[Path, bytes], bool]
    _key: ec.EllipticCurvePrivateKey | None = None
    _lock: Lock = field(default_factory=Lock)

    def public(self) -> str:
        """The public half as a browser wants it: 65 bytes, base64url. Raises ``NotStored`` where none can be made."""
        point = self.private().public_key().public_bytes(Encoding.X962, PublicFormat.UncompressedPoint)
        return base64.urlsafe_b64encode(point).rstrip(b"=").decode()

    def private(self) -> ec.EllipticCurvePrivateKey:
        """The private half, made when it is first asked for: a shop that never sends has none."""
        with self._lock:
            if self._key is None:
                self._key = self._read_or_make()
            return self._key

    def _read_or_make(self) -> ec.EllipticCurvePrivateKey:
        path = self.folder / FILE_NAME
        try:
            if not path.exists():
                fresh = ec.generate_private_key(ec.SECP256R1())
                self.write_first(path, fresh.private_bytes(Encoding.PEM, PrivateFormat.PKCS8, NoEncryption()))
            found = load_pem_private_key(path.read_bytes(), None)
        except OSError as error:
            raise NotStored("failing") from error
        if not isinstance(found, ec.EllipticCurvePrivateKey):
            raise ValueError(f"{path} holds no key for push services; move it away, and phones ask anew")
        return found


def post(key: PushKey, subscription: Subscription, message: Mapping[str, str], near: bool = False) -> tuple[str, str]:
    """(code, why) of one try: 'sent', 'ended' where the service knows the phone no more, 'silent', 'failed' with why."""
    import requests  # imported late, with all that pywebpush brings: most shops send nothing
    from py_vapid import Vapid
    from pywebpush import WebPushException, webpush

    from runboard.alerts.push_session import session_outside

    try:
        with session_outside(lambda address: may_reach(address, near)) as session:
            webpush(
                {"endpoint": subscription.endpoint, "keys": {"p256dh": subscription.p256dh, "auth": subscription.auth}},
                json.dumps(message, ensure_ascii=False),
                vapid_private_key=Vapid(key.private()),
                vapid_claims={"sub": CONTACT},
                headers={"Urgency": "high", "Topic": topic(subscription, message["id"])},
                ttl=KEPT_SECONDS,
                timeout=(CONNECT_SECONDS, ANSWER_SECONDS),
                requests_session=session,
            )
    except WebPushException as error:
        status = error.status_code
        if status in _GONE:
            return "ended", ""
        return "failed", say("push", "why answered", {"status": str(status)}) if status else str(error.message)[
            :_LONGEST_WHY
        ]
    except requests.Timeout:
        return "silent", ""
    except requests.RequestException as error:
        return "failed", _said(error)
    return "sent", ""


def topic(subscription: Subscription, alert: str) -> str:
    """By which a message replaces an earlier one of the same alert at the service (RFC 8030, 5.4). What it is about
    cannot be guessed from it."""
    digest = hmac.new(subscription.auth.encode(), alert.encode("utf-8", "surrogatepass"), hashlib.sha256).digest()
    return base64.urlsafe_b64encode(digest[:24]).decode()


def _said(error: Exception) -> str:
    if "is not outside" in str(error):
        return say("push", "why inside")
    return say("push", "why unreached")


def may_reach(address: str, near: bool = False) -> bool:
    """Whether a message may go to this address: one outside, and in no network that this computer is part of."""
    if near and address == "127.0.0.1":
        return True
    return is_outside(address) and not any(ipaddress.ip_address(address) in network for network in own_networks())


def own_networks() -> list[ipaddress.IPv4Network | ipaddress.IPv6Network]:
    """The networks of this computer's own addresses."""
    found = []
    for adapter in ifaddr.get_adapters():
        for ip in adapter.ips:
            address = ip.ip if isinstance(ip.ip, str) else ip.ip[0]
            found.append(ipaddress.ip_network(f"{address.partition('%')[0]}/{ip.network_prefix}", strict=False))
    return found
