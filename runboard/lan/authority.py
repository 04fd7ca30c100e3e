"""The shop's certificates in their folder: the authority is made once and never replaced, the leaf whenever it must be."""

from dataclasses import dataclass
from datetime import date, datetime, timedelta
from pathlib import Path

from cryptography import x509

from runboard.lan import private_file
from runboard.lan.addresses import Address, Whereabouts
from runboard.lan.issue import NotAPair, Pair, is_authority, make_authority, make_leaf, read_pair, why_renew
from runboard.lan.scope import subjects
from runboard.lan.trouble import Trouble

AUTHORITY_FILE = "authority.pem"
LEAF_FILE = "leaf.pem"
SAY_AUTHORITY_ENDS = timedelta(days=180)


class AuthorityLost(Exception):
    """The authority cannot be used; ``trouble`` says why and what to do. A new one is never made in its place by itself:
    no phone would trust it, and nobody would know why."""

    def __init__(self, code: str, **facts: str | date | Trouble) -> None:
        super().__init__(code)
        self.trouble = Trouble(code, facts)


@dataclass(frozen=True)
class KeptCertificates:
    """What ``Certificates.keep`` found or made.

    ``file`` holds the leaf with its key, in PEM (mode 600): give it to ``SSLContext.load_cert_chain``.
    ``made`` is true if the leaf is new. ``left_out`` are names and addresses that the authority may not vouch for.
    ``troubles`` are for a person to see.
    """

    file: Path
    authority: x509.Certificate
    leaf: x509.Certificate
    made: bool
    left_out: tuple[str, ...] = ()
    troubles: tuple[Trouble, ...] = ()


class Certificates:
    """The folder that holds the shop's authority and leaf (mode 700; ``authority.pem`` and ``leaf.pem``, mode 600)."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    def keep(self, now: datetime, whereabouts: Whereabouts) -> KeptCertificates:
        """See to it that there is an authority and a leaf that serves: made if there is none, renewed when less than
        30 days are left or when names or addresses have changed. Where nothing is to be done it costs two reads, so it
        may be asked every minute. Raises ``AuthorityLost``, or ``OSError`` if the disk does not take it."""
        private_file.make_folder(self.folder)
        authority = self._authority(now, whereabouts.host)
        names, addresses, left_out = subjects(authority.certificate, whereabouts)
        troubles = [*self._closed(), *_troubles_of(authority.certificate, now)]

        leaf, trouble = self._read_leaf()
        if trouble:
            troubles.append(trouble)
        made = leaf is None or _must_renew(leaf.certificate, authority.certificate, names, addresses, now)
        if leaf is None or made:
            leaf = make_leaf(authority, names, addresses, now)
            private_file.write(self._leaf_file, leaf.pem())
        return KeptCertificates(
            self._leaf_file, authority.certificate, leaf.certificate, made, tuple(left_out), tuple(troubles)
        )

    def authority(self) -> x509.Certificate | None:
        """The authority's certificate, for phones to trust; nothing where none has been made. Raises
        ``AuthorityLost``."""
        found = self._read_authority()
        return found.certificate if found else None

    @property
    def _authority_file(self) -> Path:
        return self.folder / AUTHORITY_FILE

    @property
    def _leaf_file(self) -> Path:
        return self.folder / LEAF_FILE

    def _authority(self, now: datetime, host: str) -> Pair:
        found = self._read_authority()
        if found is None:
            private_file.write_first(self._authority_file, make_authority(host, now).pem())
            found = self._read_authority()
        if found is None:
            raise AuthorityLost("authority taken away", file=str(self._authority_file))
        if now >= found.certificate.not_valid_after_utc:
            day = found.certificate.not_valid_after_utc.date()
            raise AuthorityLost("authority ended", file=str(self._authority_file), folder=str(self.folder), day=day)
        return found

    def _read_authority(self) -> Pair | None:
        try:
            found = read_pair(self._authority_file.read_bytes())
        except FileNotFoundError as problem:
            if self._leaf_file.exists():
                raise self._lost("file gone") from problem
            return None
        except NotAPair as problem:
            raise self._lost(problem.code) from problem
        if not is_authority(found.certificate):
            raise self._lost("file no authority")
        return found

    def _lost(self, why: str) -> AuthorityLost:
        file, folder = str(self._authority_file), str(self.folder)
        return AuthorityLost("authority unusable", file=file, folder=folder, why=Trouble(why))

    def _read_leaf(self) -> tuple[Pair | None, Trouble | None]:
        try:
            return read_pair(self._leaf_file.read_bytes()), None
        except FileNotFoundError:
            return None, None
        except NotAPair as problem:
            return None, Trouble("leaf unusable", {"file": str(self._leaf_file), "why": Trouble(problem.code)})

    def _closed(self) -> list[Trouble]:
        opened = [file for file in (self._authority_file, self._leaf_file) if file.exists()]
        return [Trouble("key was open", {"file": str(file)}) for file in opened if private_file.close_to_others(file)]


def _must_renew(
    leaf: x509.Certificate, authority: x509.Certificate, names: list[str], addresses: list[Address], now: datetime
) -> bool:
    if now < authority.not_valid_before_utc:  # the clock is wrong, and a leaf made by it would not serve
        return False
    return bool(why_renew(leaf, authority, names, addresses, now))


def _troubles_of(authority: x509.Certificate, now: datetime) -> list[Trouble]:
    if now < authority.not_valid_before_utc:
        return [Trouble("clock behind", {"day": now.date()})]
    if authority.not_valid_after_utc - now < SAY_AUTHORITY_ENDS:
        return [Trouble("authority ends", {"day": authority.not_valid_after_utc.date()})]
    return []
