"""The authority vouches for the shop and for nothing else, as an independent verifier sees it."""

from datetime import timedelta
from ipaddress import ip_address

import pytest
from cryptography import x509
from cryptography.x509.oid import ExtendedKeyUsageOID
from cryptography.x509.verification import VerificationError

from runboard.lan.addresses import Address
from runboard.lan.issue import Pair, make_authority, make_leaf
from runboard.lan.scope import subjects
from tests.lan.places import HOME, NOW, at, verify

INSIDE = [
    "shop-pc",
    "shop-pc.local",
    "runboard-shop-pc.local",
    "localhost",
    "bench.home.arpa",
    "10.3.2.1",
    "172.16.0.9",
    "172.31.255.1",
    "192.168.1.20",
    "127.0.0.1",
    "fd12:3456::1",
    "fe80::1",
]
OUTSIDE = [
    "example.com",
    "shop-pc.com",
    "other-pc",
    "notlocal",
    "arpa",
    "8.8.8.8",
    "172.32.0.1",
    "192.169.0.1",
    "100.64.0.1",
    "169.254.1.1",
    "2001:db8::1",
]


@pytest.fixture(scope="module")
def authority() -> Pair:
    return make_authority("shop-pc", NOW)


def leaf_for(authority: Pair, *subject: str) -> Pair:
    names: list[str] = []
    addresses: list[Address] = []
    for one in subject:
        try:
            addresses.append(ip_address(one))
        except ValueError:
            names.append(one)
    return make_leaf(authority, names or ["localhost"], addresses, NOW)


@pytest.mark.parametrize("subject", INSIDE)
def test_a_leaf_for_the_shop_is_trusted(authority: Pair, subject: str) -> None:
    leaf = leaf_for(authority, subject)

    verify(leaf.certificate, authority.certificate, subject)


@pytest.mark.parametrize("subject", OUTSIDE)
def test_a_leaf_for_the_world_is_refused_though_the_authority_signed_it(authority: Pair, subject: str) -> None:
    leaf = leaf_for(authority, subject)

    with pytest.raises(VerificationError, match=r"name constraint|permitted"):
        verify(leaf.certificate, authority.certificate, subject)


def test_one_foreign_name_spoils_the_whole_leaf(authority: Pair) -> None:
    leaf = leaf_for(authority, "shop-pc.local", "example.com")

    with pytest.raises(VerificationError):
        verify(leaf.certificate, authority.certificate, "shop-pc.local")


def test_so_what_the_authority_may_not_vouch_for_is_left_out(authority: Pair) -> None:
    where = at("192.168.1.20", "203.0.113.7", host="new-pc.example.com")

    names, addresses, left_out = subjects(authority.certificate, where)

    assert names == ["new-pc.local", "runboard-new-pc.local", "localhost"]
    assert addresses == [ip_address("192.168.1.20"), ip_address("127.0.0.1")]
    assert left_out == ["new-pc.example.com", "203.0.113.7"]


@pytest.mark.parametrize(("host", "outside"), [("shop", "evil.shop"), ("studio", "evil.studio"), ("com", "bank.com")])
def test_a_host_called_like_a_part_of_the_internet_opens_no_door_to_it(host: str, outside: str) -> None:
    authority = make_authority(host, NOW)
    leaf = leaf_for(authority, outside)

    with pytest.raises(VerificationError):
        verify(leaf.certificate, authority.certificate, outside)
    assert subjects(authority.certificate, at(host=host))[2] == [host]


def test_every_name_and_address_is_in_the_one_leaf(authority: Pair) -> None:
    names, addresses, left_out = subjects(authority.certificate, HOME)
    leaf = make_leaf(authority, names, addresses, NOW)

    for subject in [*names, *map(str, addresses)]:
        verify(leaf.certificate, authority.certificate, subject)
    assert left_out == []
    assert {"shop-pc.local", "192.168.1.20", "fd00::20", "localhost"} <= {*names, *map(str, addresses)}


def test_a_leaf_cannot_sign_another(authority: Pair) -> None:
    leaf = leaf_for(authority, "shop-pc.local")
    below = make_leaf(leaf, ["localhost"], [], NOW)

    with pytest.raises(VerificationError):
        verify(below.certificate, leaf.certificate, "localhost")


def test_the_authority_says_what_it_is(authority: Pair) -> None:
    certificate = authority.certificate
    basic = certificate.extensions.get_extension_for_class(x509.BasicConstraints)
    usage = certificate.extensions.get_extension_for_class(x509.KeyUsage)
    constraints = certificate.extensions.get_extension_for_class(x509.NameConstraints)

    assert (basic.value.ca, basic.value.path_length) == (True, 0)
    assert usage.value.key_cert_sign and not usage.value.digital_signature
    assert basic.critical and usage.critical and constraints.critical
    lasts = certificate.not_valid_after_utc - certificate.not_valid_before_utc
    assert timedelta(days=3650) <= lasts <= timedelta(days=3653)


def test_the_leaf_says_what_it_is(authority: Pair) -> None:
    certificate = leaf_for(authority, "shop-pc.local").certificate
    extensions = certificate.extensions
    issuer = extensions.get_extension_for_class(x509.AuthorityKeyIdentifier).value
    key_of_issuer = authority.certificate.extensions.get_extension_for_class(x509.SubjectKeyIdentifier).value

    assert not extensions.get_extension_for_class(x509.BasicConstraints).value.ca
    assert list(extensions.get_extension_for_class(x509.ExtendedKeyUsage).value) == [ExtendedKeyUsageOID.SERVER_AUTH]
    assert issuer.key_identifier == key_of_issuer.digest
    assert certificate.not_valid_after_utc - certificate.not_valid_before_utc < timedelta(days=397)
