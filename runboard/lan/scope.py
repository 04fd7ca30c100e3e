"""What the shop's authority may vouch for: its own names and private addresses, never the rest of the world."""

import re
from ipaddress import IPv4Address, IPv4Network, IPv6Address, IPv6Network

from cryptography import x509

from runboard.lan.addresses import LOOPBACK, PRIVATE, Address, Whereabouts

LINK_LOCAL = IPv6Network("fe80::/10")
# RFC 6762 (mDNS), RFC 8375 (names at home), RFC 6761: never names on the internet.
HOME_NAMES = ("local", "home.arpa", "localhost")
_LETTERS_ONLY = re.compile(r"[a-z]+")


def name_constraints(host: str) -> x509.NameConstraints:
    """The constraint that stands in the authority (RFC 5280, 4.2.1.10): whoever steals its key can still not pretend
    to be a bank.

    A name of letters only ('shop', 'studio') is left out: a permitted name takes in all names below it, and such a
    name is, or may become, one of the internet's top level. ``shop.local`` serves instead.
    """
    names = [*HOME_NAMES, *([] if _LETTERS_ONLY.fullmatch(host) else [host])]
    networks = [*PRIVATE, LOOPBACK, LINK_LOCAL]
    permitted = [*map(x509.DNSName, names), *map(x509.IPAddress, networks)]
    return x509.NameConstraints(permitted_subtrees=permitted, excluded_subtrees=None)


def subjects(authority: x509.Certificate, whereabouts: Whereabouts) -> tuple[list[str], list[Address], list[str]]:
    """The names and addresses that a leaf can be made for, and those it cannot, as text. One name outside the
    constraint would make phones refuse the whole leaf."""
    trees = authority.extensions.get_extension_for_class(x509.NameConstraints).value.permitted_subtrees or []
    names = [tree.value for tree in trees if isinstance(tree, x509.DNSName)]
    networks = [tree.value for tree in trees if isinstance(tree, x509.IPAddress)]

    fit_names = [name for name in whereabouts.names if any(_is_below(name, above) for above in names)]
    asked = [*whereabouts.addresses, IPv4Address("127.0.0.1")]
    fit_addresses = [address for address in asked if any(_is_in(address, network) for network in networks)]
    left_out = [name for name in whereabouts.names if name not in fit_names]
    left_out += [str(address) for address in asked if address not in fit_addresses]
    return fit_names, fit_addresses, left_out


def _is_below(name: str, above: str) -> bool:
    return name == above or name.endswith(f".{above}")


def _is_in(address: Address, network: IPv4Address | IPv6Address | IPv4Network | IPv6Network) -> bool:
    return isinstance(network, IPv4Network | IPv6Network) and address in network
