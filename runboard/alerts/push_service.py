"""One message to one push service: encrypted and signed by pywebpush, sent to nothing that lies in the house."""

import base64
import hashlib
import hmac
import ipaddress
import json
from collections.abc import Mapping

import ifaddr

from runboard.alerts.push_key import PushKey
from runboard.run.calls.push import Subscription, is_outside

# A phone that is off gets it when it comes back, but not what is long answered.
KEPT_SECONDS = 15 * 60
CONNECT_SECONDS, ANSWER_SECONDS = 5.0, 10.0
# Who sends, for a service's operator: a maker of browsers has no business with who owns the shop.
CONTACT = "mailto:runboard@example.org"
_GONE = (404, 410)
_LONGEST_WHY = 160


def post(key: PushKey, one: Subscription, message: Mapping[str, str], near: bool = False) -> tuple[str, str]:
    """(code, why) of one try: 'sent', 'ended' where the service knows the phone no more, 'silent', 'failed' with why."""
    import requests  # imported late, with all that pywebpush brings: most shops send nothing
    from py_vapid import Vapid
    from pywebpush import WebPushException, webpush

    from runboard.alerts.push_session import session_outside

    try:
        with session_outside(lambda address: may_reach(address, near)) as session:
            webpush(
                {"endpoint": one.endpoint, "keys": {"p256dh": one.p256dh, "auth": one.auth}},
                json.dumps(message, ensure_ascii=False),
                vapid_private_key=Vapid(key.private()),
                vapid_claims={"sub": CONTACT},
                headers={"Urgency": "high", "Topic": topic(one, message["id"])},
                ttl=KEPT_SECONDS,
                timeout=(CONNECT_SECONDS, ANSWER_SECONDS),
                requests_session=session,
            )
    except WebPushException as error:
        status = error.status_code
        if status in _GONE:
            return "ended", ""
        return "failed", f"the service answered {status}" if status else str(error.message)[:_LONGEST_WHY]
    except requests.Timeout:
        return "silent", ""
    except requests.RequestException as error:
        return "failed", _said(error)
    return "sent", ""


def topic(one: Subscription, alert: str) -> str:
    """By which a message replaces an earlier one of the same alert at the service (RFC 8030, 5.4). What it is about
    cannot be guessed from it."""
    digest = hmac.new(one.auth.encode(), alert.encode("utf-8", "surrogatepass"), hashlib.sha256).digest()
    return base64.urlsafe_b64encode(digest[:24]).decode()


def _said(error: Exception) -> str:
    if "is not outside" in str(error):
        return "its address lies in the shop's own network"
    return "the service cannot be reached"


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
