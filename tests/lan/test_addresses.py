"""Which of a computer's many addresses a phone in the shop can use."""

import ifaddr
import pytest

from runboard.lan.addresses import Whereabouts, host_name, reachable, urls, whereabouts
from tests.lan.places import HOME, at


def adapter(name: str, *addresses: str, nice: str = "") -> ifaddr.Adapter:
    ips = [
        ifaddr.IP((one, 0, 0), 64, nice or name) if ":" in one else ifaddr.IP(one, 24, nice or name)
        for one in addresses
    ]
    return ifaddr.Adapter(name, nice or name, ips)


def texts(*adapters: ifaddr.Adapter) -> list[str]:
    return [str(one) for one in reachable(adapters)]


def test_the_routers_addresses_are_kept_and_come_first() -> None:
    assert texts(adapter("eth0", "100.64.0.7", "fd00::20", "192.168.1.20"), adapter("wlan0", "10.0.0.5")) == [
        "10.0.0.5",
        "192.168.1.20",
        "fd00::20",
        "100.64.0.7",
    ]


@pytest.mark.parametrize("address", ["127.0.0.1", "::1", "169.254.3.4", "fe80::1", "2001:db8::5", "0.0.0.0"])
def test_what_no_phone_can_use_is_left_out(address: str) -> None:
    assert texts(adapter("eth0", address)) == []


@pytest.mark.parametrize(
    ("name", "nice"),
    [
        ("docker0", ""),
        ("br-5d2f0a", ""),
        ("veth12ab", ""),
        ("virbr0", ""),
        ("tun0", ""),
        ("utun3", ""),
        ("tailscale0", ""),
        ("{4D36E972}", "vEthernet (WSL)"),
        ("{4D36E973}", "VirtualBox Host-Only Ethernet Adapter"),
    ],
)
def test_networks_inside_the_computer_are_left_out(name: str, nice: str) -> None:
    assert texts(adapter(name, "172.17.0.1", nice=nice)) == []


@pytest.mark.parametrize("name", ["eth0", "enp3s0", "wlan0", "wlp2s0", "en0", "br0", "bridge100", "Wi-Fi", "bond0"])
def test_networks_of_the_shop_are_kept(name: str) -> None:
    assert texts(adapter(name, "192.168.1.20")) == ["192.168.1.20"]


@pytest.mark.parametrize(
    ("told", "name"),
    [
        ("Shop-PC", "shop-pc"),
        ("Anns-MacBook.local", "anns-macbook"),
        ("shop_pc", "shop-pc"),
        ("pc.shop.lan.", "pc.shop.lan"),
        ("Bénch", "b-nch"),
        ("", "runboard"),
        ("localhost-", "localhost"),
        ("192.168.1.20", "runboard"),
        ("x" * 80, "x" * 63),
    ],
)
def test_a_computers_name_becomes_one_for_urls(told: str, name: str) -> None:
    assert host_name(told) == name


def test_the_names_are_those_of_the_first_label_by_mdns() -> None:
    assert at(host="pc.shop.lan").names == ("pc.local", "runboard-pc.local", "pc.shop.lan", "localhost")


def test_a_long_name_still_fits_in_a_label() -> None:
    announced = at(host="x" * 63).announced_name

    assert len(announced.removesuffix(".local")) == 63


def test_a_page_is_found_by_address_first() -> None:
    assert urls(HOME, "https", 8443) == (
        "https://192.168.1.20:8443/",
        "https://runboard-shop-pc.local:8443/",
        "https://shop-pc.local:8443/",
    )


def test_a_change_is_a_difference() -> None:
    assert at("192.168.1.20") == at("192.168.1.20")
    assert at("192.168.1.20") != at("192.168.1.21")
    assert at("192.168.1.20") != at("192.168.1.20", host="bench")


def test_looking_says_where_this_computer_is() -> None:
    found = whereabouts()

    assert isinstance(found, Whereabouts)
    assert found.host == host_name(found.host)
