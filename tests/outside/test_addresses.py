"""Addresses to which no alert may be sent, since they lie in somebody's house, by the RFCs that set them apart."""

from runboard.run.calls.push import is_outside, is_service
from tests.outside.said import from_memory

INSIDE = {
    "10.0.0.2": False,  # RFC 1918
    "172.16.0.1": False,
    "172.31.255.254": False,
    "192.168.1.20": False,
    "100.64.0.1": False,  # RFC 6598, shared by a provider's customers
    "127.0.0.1": False,  # RFC 1122
    "169.254.1.1": False,  # RFC 3927, link-local
    "192.0.2.1": False,  # RFC 5737, for documentation
    "224.0.0.251": False,  # RFC 6762, multicast
    "fd12:3456:789a::1": False,  # RFC 4193
    "fe80::1": False,  # RFC 4291, link-local
    "::1": False,
    "::ffff:192.168.1.20": False,  # RFC 4291, 2.5.5.2: an IPv4 address inside
    "2002:c0a8:0114::1": False,  # RFC 3056, 6to4: 192.168.1.20 inside
}
OUTSIDE = {"172.32.0.1": True, "192.169.0.1": True, "100.128.0.1": True, "2606:4700::1111": True}


@from_memory("RFC 1918, 1122, 3056, 3927, 4193, 4291, 5737, 6598, 6762", INSIDE | OUTSIDE)
def test_an_address_is_one_of_the_internet_at_large(address: str) -> bool:
    return is_outside(address)


@from_memory(
    "RFC 6762 (.local), 6761 (localhost), 8375 (home.arpa); RFC 8030, 8: a push service is reached by https",
    {
        "https://push.example.net/x": True,
        "http://push.example.net/x": False,
        "https://printer.local/x": False,
        "https://localhost/x": False,
        "https://nas.home.arpa/x": False,
        "https://192.168.1.20/x": False,
    },
)
def test_a_push_service_is_reached_by_https_outside_the_house(endpoint: str) -> bool:
    return is_service(endpoint)
