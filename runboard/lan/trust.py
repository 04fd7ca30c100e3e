"""The authority's certificate in the forms that devices take, and what people compare before they trust it."""

import plistlib
import uuid
from dataclasses import dataclass

from cryptography import x509
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.serialization import Encoding
from cryptography.x509.oid import NameOID

DER_TYPE = "application/x-x509-ca-cert"
PROFILE_TYPE = "application/x-apple-aspen-config"
# Made once for this name space (RFC 9562, version 5), so that the same authority gets the same ids every time.
_IDS = uuid.UUID("1b0e6a3c-6f5e-4b8e-9a55-0d0f3c7d5a11")


@dataclass(frozen=True)
class Trusted:
    """What a device is given to trust: the shop's certificate, by the name under which a device lists it, as a file for
    Android and computers, as a profile for iPhones, and in lines that two people compare."""

    name: str
    der: bytes
    profile: bytes
    fingerprint: tuple[str, ...]


def given(certificate: x509.Certificate, title: str, about: str) -> Trusted:
    """All of it, for a device that installs it; ``title`` and ``about`` are what an iPhone says of it."""
    return Trusted(
        common_name(certificate), der(certificate), profile(certificate, title, about), fingerprint_lines(certificate)
    )


def fingerprint(certificate: x509.Certificate) -> str:
    """SHA-256 of the certificate as phones and browsers show it: ``A1:B2:…``, 32 pairs. The whole of it: a short form
    could be matched by trying keys."""
    return certificate.fingerprint(SHA256()).hex(":").upper()


def fingerprint_lines(certificate: x509.Certificate) -> tuple[str, ...]:
    """The same for two people to read to each other: four lines of eight pairs, in two groups of four."""
    pairs = fingerprint(certificate).split(":")
    groups = [" ".join(pairs[at : at + 4]) for at in range(0, len(pairs), 4)]
    return tuple("   ".join(groups[at : at + 2]) for at in range(0, len(groups), 2))


def der(certificate: x509.Certificate) -> bytes:
    """For Android and computers: the certificate in DER, a file ``runboard.cer`` of type ``DER_TYPE``. Android 11 and
    later install it only from the settings pages (Encryption and credentials, Install a certificate, CA certificate),
    which list files by that ending; Windows, macOS and Firefox open it too."""
    return certificate.public_bytes(Encoding.DER)


def profile(certificate: x509.Certificate, title: str, about: str) -> bytes:
    """For iPhone and iPad: a configuration profile, a file ``runboard.mobileconfig`` of type ``PROFILE_TYPE``.

    iOS would take the DER as well. The profile is used because it names the shop (``title``) and says what it is for
    (``about``) on the page where iOS asks, and because its lasting identifier lets a second installation replace the first instead of standing
    beside it. It is not signed, and iOS says so. Either way full trust has to be switched on afterwards under
    General, About, Certificate Trust Settings.
    """
    print_of_it = fingerprint(certificate)
    outer, inner = (str(uuid.uuid5(_IDS, f"{what} {print_of_it}")).upper() for what in ("profile", "certificate"))
    identifier = f"runboard.{print_of_it.replace(':', '').lower()[:16]}"
    root = {
        "PayloadType": "com.apple.security.root",
        "PayloadVersion": 1,
        "PayloadIdentifier": f"{identifier}.authority",
        "PayloadUUID": inner,
        "PayloadDisplayName": common_name(certificate),
        "PayloadCertificateFileName": "runboard.cer",
        "PayloadContent": der(certificate),
    }
    return plistlib.dumps(
        {
            "PayloadType": "Configuration",
            "PayloadVersion": 1,
            "PayloadIdentifier": identifier,
            "PayloadUUID": outer,
            "PayloadDisplayName": title,
            "PayloadDescription": about,
            "PayloadContent": [root],
        }
    )


def common_name(certificate: x509.Certificate) -> str:
    """The name under which a device lists it."""
    return str(certificate.subject.get_attributes_for_oid(NameOID.COMMON_NAME)[0].value)
