"""By which names and addresses this computer is reached on the shop's own network."""

import re
import socket
from collections.abc import Iterable
from dataclasses import dataclass
from ipaddress import IPv4Address, IPv4Network, IPv6Address, IPv6Network, ip_address

import ifaddr

Address = IPv4Address | IPv6Address
Network = IPv4Network | IPv6Network

# This computer's own names, which lead to it from nowhere else.
HOSTS = frozenset({"localhost", "127.0.0.1", "[::1]"})
LOOPBACK = IPv4Network("127.0.0.0/8")
# RFC 1918 and RFC 4193: what a router at home gives out.
PRIVATE: tuple[Network, ...] = (
    IPv4Network("10.0.0.0/8"),
    IPv4Network("172.16.0.0/12"),
    IPv4Network("192.168.0.0/16"),
    IPv6Network("fc00::/7"),
)
# Networks inside this computer (containers, virtual machines) and tunnels out of it: no phone in the shop is there.
_NOT_THE_SHOPS = re.compile(
    r"(docker|br-|veth|virbr|vnet|vmnet|vbox|lxc|lxd|podman|cni|flannel|cali|kube|tun|tap|utun|wg|zt|tailscale|ppp)"
    r"|.*(vethernet|virtualbox|vmware|hyper-v|wsl|tap-windows|wireguard|wintun)",
    re.IGNORECASE,
)
_LABEL = 63  # RFC 1035: a label of a name is no longer


@dataclass(frozen=True)
class Whereabouts:
    """Where the shop's computer is. Compare two of them to notice a change.

    ``host`` is its own name in lower case. ``addresses`` are those that a phone can reach, the likeliest first.
    """

    host: str
    addresses: tuple[Address, ...] = ()

    @property
    def local_name(self) -> str:
        """The name that the computer's own system answers to by mDNS, if it does: ``workshop.local``."""
        return f"{self._first_label}.local"

    @property
    def announced_name(self) -> str:
        """The name that runboard announces itself. Another than ``local_name``, which belongs to the computer's system:
        two that announce one name make the system take another for itself."""
        label = f"runboard-{self._first_label}"[:_LABEL].rstrip("-")
        return f"{label}.local"

    @property
    def _first_label(self) -> str:
        return self.host.split(".")[0]

    @property
    def names(self) -> tuple[str, ...]:
        """Every name, without doubles: those by mDNS, its own, and ``localhost`` last."""
        return tuple(dict.fromkeys((self.local_name, self.announced_name, self.host, "localhost")))


def whereabouts() -> Whereabouts:
    """Where this computer is now: about a millisecond, so it can be asked at every tick of a clock.

    Raises ``OSError`` if the system does not tell its addresses.
    """
    return Whereabouts(host_name(socket.gethostname()), reachable(ifaddr.get_adapters()))


def host_name(told: str) -> str:
    """A computer's name as it can stand in a certificate and a URL: lower case, letters, digits and hyphens. Without its
    ``.local``; ``runboard`` where nothing is left."""
    ascii_only = re.sub(r"[^a-z0-9.-]+", "-", told.lower().removesuffix(".").removesuffix(".local"))
    labels = [label.strip("-")[:_LABEL].rstrip("-") for label in ascii_only.split(".")]
    name = ".".join(label for label in labels if label)
    # A longer name, or one that reads as an address, is of no use as a name.
    return name if name and len(name) <= 200 and not name.replace(".", "").isdigit() else "runboard"


def reachable(adapters: Iterable[ifaddr.Adapter]) -> tuple[Address, ...]:
    """The addresses that a phone in the shop can reach. Left out: this computer's own, link-local ones, public IPv6 (it
    changes by the day), and networks of containers, virtual machines and tunnels."""
    found = {
        ip_address(told.ip if isinstance(told.ip, str) else told.ip[0])
        for adapter in adapters
        if not _NOT_THE_SHOPS.match(adapter.name) and not _NOT_THE_SHOPS.match(adapter.nice_name)
        for told in adapter.ips
    }
    return tuple(sorted(filter(_is_for_phones, found), key=_likeliest_first))


def urls(where: Whereabouts, scheme: str, port: int) -> tuple[str, ...]:
    """Where a browser finds the server, the surest first: addresses work on every phone, names need mDNS, which came
    late to Android. IPv6 is left out, as the server listens on IPv4."""
    addresses = [str(address) for address in where.addresses if isinstance(address, IPv4Address)]
    return tuple(f"{scheme}://{host}:{port}/" for host in (*addresses, where.announced_name, where.local_name))


def is_private(address: Address) -> bool:
    """Whether a router at home gives out such addresses."""
    return any(address in network for network in PRIVATE)


def _is_for_phones(address: Address) -> bool:
    if address.is_loopback or address.is_link_local or address.is_multicast or address.is_unspecified:
        return False
    return address.version == 4 or is_private(address)


def _likeliest_first(address: Address) -> tuple[bool, int, int]:
    return not is_private(address), address.version, int(address)
