"""Where the shop's computer is in these tests, and a verifier that trusts the shop's authority and nothing else."""

from datetime import UTC, datetime
from ipaddress import ip_address

from cryptography import x509
from cryptography.x509.verification import PolicyBuilder, Store

from runboard.lan.addresses import Whereabouts
from runboard.lan.trouble import Trouble
from runboard.words.sentences import say

NOW = datetime(2026, 3, 7, 9, 0, tzinfo=UTC)


def at(*addresses: str, host: str = "shop-pc") -> Whereabouts:
    return Whereabouts(host, tuple(ip_address(one) for one in addresses))


HOME = at("192.168.1.20", "fd00::20")


def said(trouble: Trouble | None) -> str:
    """What a person reads of it; '' where there is none."""
    return trouble.said(say) if trouble else ""


def verify(leaf: x509.Certificate, authority: x509.Certificate, subject: str, now: datetime = NOW) -> None:
    """As a browser does; raises ``VerificationError``. Pyca's verifier was written against the web's own rules."""
    try:
        name: x509.GeneralName = x509.IPAddress(ip_address(subject))
    except ValueError:
        name = x509.DNSName(subject)
    policy = PolicyBuilder().store(Store([authority])).time(now)
    policy.build_server_verifier(name).verify(leaf, [])
