"""What a device is given to trust, read by others than the code that wrote it."""

import plistlib
import shutil
import subprocess
from pathlib import Path

import pytest
from cryptography import x509

from runboard.lan import trust
from runboard.lan.issue import make_authority
from tests.lan.places import NOW


@pytest.fixture(scope="module")
def certificate() -> x509.Certificate:
    return make_authority("shop-pc", NOW).certificate


def test_the_file_for_android_and_computers_is_the_certificate(certificate: x509.Certificate) -> None:
    assert x509.load_der_x509_certificate(trust.der(certificate)) == certificate


def test_the_profile_for_ios_holds_the_certificate_and_says_what_it_is_for(certificate: x509.Certificate) -> None:
    told = plistlib.loads(trust.profile(certificate, "Runboard of Ann's shop", "It can vouch only for that computer."))
    (root,) = told["PayloadContent"]

    assert (told["PayloadType"], root["PayloadType"]) == ("Configuration", "com.apple.security.root")
    assert told["PayloadDisplayName"] == "Runboard of Ann's shop"
    assert told["PayloadDescription"] == "It can vouch only for that computer."
    assert x509.load_der_x509_certificate(root["PayloadContent"]) == certificate
    assert len({told["PayloadUUID"], root["PayloadUUID"]}) == 2


def test_the_profile_is_the_same_every_time_so_that_it_replaces_itself(certificate: x509.Certificate) -> None:
    other = make_authority("shop-pc", NOW).certificate

    assert trust.profile(certificate, "Shop", "") == trust.profile(certificate, "Shop", "")
    assert trust.profile(other, "Shop", "") != trust.profile(certificate, "Shop", "")


def test_the_fingerprint_is_the_one_that_openssl_shows(certificate: x509.Certificate, tmp_path: Path) -> None:
    openssl = shutil.which("openssl")
    assert openssl, "openssl is missing: apt-get install openssl"
    file = tmp_path / "runboard.cer"
    file.write_bytes(trust.der(certificate))

    command = [openssl, "x509", "-inform", "DER", "-in", str(file), "-noout", "-fingerprint", "-sha256"]
    said = subprocess.run(command, capture_output=True, text=True, check=True).stdout

    assert said.strip().split("=")[1] == trust.fingerprint(certificate)


def test_the_fingerprint_can_be_read_aloud(certificate: x509.Certificate) -> None:
    lines = trust.fingerprint_lines(certificate)

    assert len(lines) == 4
    assert {len(line) for line in lines} == {25}
    assert ":".join(" ".join(lines).split()) == trust.fingerprint(certificate)


def test_a_device_lists_it_under_the_shops_computer(certificate: x509.Certificate) -> None:
    assert trust.common_name(certificate) == "Runboard of shop-pc, 2026-03-07"
