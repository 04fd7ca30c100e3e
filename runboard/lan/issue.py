"""Making certificates: the shop's own authority, and the leaf that its server shows. Pure but for chance."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from cryptography import x509
from cryptography.exceptions import UnsupportedAlgorithm
from cryptography.hazmat.primitives import hashes
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.serialization import Encoding, NoEncryption, PrivateFormat, load_pem_private_key
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID

from runboard.lan.addresses import Address
from runboard.lan.scope import name_constraints

AUTHORITY_LASTS = timedelta(days=3652)
# Read in Apple's list of requirements: no more than 398 days. One less than allowed, as both ends count.
LEAF_LASTS = timedelta(days=397)
# A phone whose clock is behind would find a certificate made this minute not valid yet.
BACKDATED = timedelta(days=1)
RENEW_BEFORE_END = timedelta(days=30)


class NotAPair(ValueError):
    """A file holds no certificate with the key that belongs to it; ``code`` says what is wrong with it."""

    def __init__(self, code: str) -> None:
        super().__init__(code)
        self.code = code


@dataclass(frozen=True)
class Pair:
    """A certificate with its private key."""

    certificate: x509.Certificate
    key: ec.EllipticCurvePrivateKey

    def pem(self) -> bytes:
        """Both in one text: what is written in one step cannot be half of a pair."""
        key = self.key.private_bytes(Encoding.PEM, PrivateFormat.PKCS8, NoEncryption())
        return key + self.certificate.public_bytes(Encoding.PEM)


def read_pair(pem: bytes) -> Pair:
    """What ``Pair.pem`` wrote. Raises ``NotAPair`` for anything else."""
    try:
        certificate = x509.load_pem_x509_certificate(pem)
        key = load_pem_private_key(pem, password=None)
    except (ValueError, TypeError, UnsupportedAlgorithm) as problem:
        raise NotAPair("file damaged") from problem
    if not isinstance(key, ec.EllipticCurvePrivateKey) or key.public_key() != certificate.public_key():
        raise NotAPair("file other key")
    return Pair(certificate, key)


def make_authority(host: str, now: datetime) -> Pair:
    """A new authority for ten years: P-256, constrained to the shop, able to make leaves and no further authority."""
    key = ec.generate_private_key(ec.SECP256R1())
    begins = _whole_second(now - BACKDATED)
    name = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, f"Runboard of {host}, {now:%Y-%m-%d}"[:64])])
    public = key.public_key()
    builder = (
        _builder(name, name, public, begins, begins + AUTHORITY_LASTS)
        .add_extension(x509.BasicConstraints(ca=True, path_length=0), critical=True)
        .add_extension(_usage(key_cert_sign=True, crl_sign=True), critical=True)
        .add_extension(name_constraints(host), critical=True)
        .add_extension(x509.AuthorityKeyIdentifier.from_issuer_public_key(public), critical=False)
    )
    return Pair(builder.sign(key, hashes.SHA256()), key)


def make_leaf(authority: Pair, names: list[str], addresses: list[Address], now: datetime) -> Pair:
    """A new key and certificate for a server of these names and addresses, at most 397 days and never beyond its
    authority's end. What the authority may vouch for, the caller has looked at (``scope.subjects``)."""
    key = ec.generate_private_key(ec.SECP256R1())
    signer = authority.certificate
    begins = max(_whole_second(now - BACKDATED), signer.not_valid_before_utc)
    ends = min(begins + LEAF_LASTS - timedelta(seconds=1), signer.not_valid_after_utc)
    name = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, f"Runboard at {names[0]}"[:64])])
    builder = (
        _builder(name, signer.subject, key.public_key(), begins, ends)
        .add_extension(x509.BasicConstraints(ca=False, path_length=None), critical=True)
        .add_extension(_usage(digital_signature=True), critical=True)
        .add_extension(x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH]), critical=False)
        .add_extension(_alternative_names(names, addresses), critical=False)
        .add_extension(
            x509.AuthorityKeyIdentifier.from_issuer_subject_key_identifier(
                signer.extensions.get_extension_for_class(x509.SubjectKeyIdentifier).value
            ),
            critical=False,
        )
    )
    return Pair(builder.sign(authority.key, hashes.SHA256()), key)


def why_renew(
    leaf: x509.Certificate, authority: x509.Certificate, names: list[str], addresses: list[Address], now: datetime
) -> str:
    """Why the leaf must be made anew: ``authority``, ``clock``, ``ends`` or ``subjects``; empty if it serves."""
    if not _is_signed_by(leaf, authority):
        return "authority"
    if now < leaf.not_valid_before_utc:  # made while the clock was ahead
        return "clock"
    can_be_longer = leaf.not_valid_after_utc < authority.not_valid_after_utc
    if leaf.not_valid_after_utc - now < RENEW_BEFORE_END and can_be_longer:
        return "ends"
    told = leaf.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
    same = set(told) == set(_alternative_names(names, addresses))
    return "" if same else "subjects"


def is_authority(certificate: x509.Certificate) -> bool:
    """Whether it is one of ours: an authority, and constrained."""
    try:
        constraints = certificate.extensions.get_extension_for_class(x509.BasicConstraints).value
        certificate.extensions.get_extension_for_class(x509.NameConstraints)
        certificate.extensions.get_extension_for_class(x509.SubjectKeyIdentifier)
    except (x509.ExtensionNotFound, ValueError):
        return False
    return constraints.ca


def _is_signed_by(leaf: x509.Certificate, authority: x509.Certificate) -> bool:
    try:
        leaf.verify_directly_issued_by(authority)
        leaf.extensions.get_extension_for_class(x509.SubjectAlternativeName)
    except Exception:  # noqa: BLE001 – whatever is wrong with it, it is no leaf of this authority
        return False
    return True


def _builder(
    subject: x509.Name, issuer: x509.Name, key: ec.EllipticCurvePublicKey, begins: datetime, ends: datetime
) -> x509.CertificateBuilder:
    return (
        x509.CertificateBuilder()
        .subject_name(subject)
        .issuer_name(issuer)
        .public_key(key)
        .serial_number(x509.random_serial_number())
        .not_valid_before(begins)
        .not_valid_after(ends)
        .add_extension(x509.SubjectKeyIdentifier.from_public_key(key), critical=False)
    )


def _alternative_names(names: list[str], addresses: list[Address]) -> x509.SubjectAlternativeName:
    return x509.SubjectAlternativeName([*map(x509.DNSName, names), *map(x509.IPAddress, addresses)])


def _usage(*, digital_signature: bool = False, key_cert_sign: bool = False, crl_sign: bool = False) -> x509.KeyUsage:
    return x509.KeyUsage(
        digital_signature=digital_signature,
        content_commitment=False,
        key_encipherment=False,
        data_encipherment=False,
        key_agreement=False,
        key_cert_sign=key_cert_sign,
        crl_sign=crl_sign,
        encipher_only=False,
        decipher_only=False,
    )


def _whole_second(moment: datetime) -> datetime:
    return moment.replace(microsecond=0)
