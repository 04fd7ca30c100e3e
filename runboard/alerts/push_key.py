"""The key pair by which push services know this shop (VAPID, RFC 8292): made once, kept in the data folder."""

import base64
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from threading import Lock

from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.serialization import (
    Encoding,
    NoEncryption,
    PrivateFormat,
    PublicFormat,
    load_pem_private_key,
)

from runboard.run.refusal import NotStored

FILE_NAME = "push-key.pem"


@dataclass
class PushKey:
    """The key in ``folder``. ``write_first`` puts a file there that nobody else can read, unless there is one already."""

    folder: Path
    write_first: Callable[[Path, bytes], bool]
    _key: ec.EllipticCurvePrivateKey | None = None
    _lock: Lock = field(default_factory=Lock)

    def public(self) -> str:
        """The public half as a browser wants it: 65 bytes, base64url. Raises ``NotStored`` where none can be made."""
        point = self.private().public_key().public_bytes(Encoding.X962, PublicFormat.UncompressedPoint)
        return base64.urlsafe_b64encode(point).rstrip(b"=").decode()

    def private(self) -> ec.EllipticCurvePrivateKey:
        """The private half, made when it is first asked for: a shop that never sends has none."""
        with self._lock:
            if self._key is None:
                self._key = self._read_or_make()
            return self._key

    def _read_or_make(self) -> ec.EllipticCurvePrivateKey:
        path = self.folder / FILE_NAME
        try:
            if not path.exists():
                fresh = ec.generate_private_key(ec.SECP256R1())
                self.write_first(path, fresh.private_bytes(Encoding.PEM, PrivateFormat.PKCS8, NoEncryption()))
            found = load_pem_private_key(path.read_bytes(), None)
        except OSError as error:
            raise NotStored("failing") from error
        if not isinstance(found, ec.EllipticCurvePrivateKey):
            raise ValueError(f"{path} holds no key for push services; move it away, and phones ask anew")
        return found
