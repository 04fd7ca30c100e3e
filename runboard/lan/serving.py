"""The secure door of the server: uvicorn listens with TLS on one more port, and a renewed leaf needs no restart."""

import asyncio
import socket
import ssl
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import Any

import uvicorn

from runboard.lan.addresses import Whereabouts
from runboard.lan.authority import AuthorityLost, Certificates, Kept

LOOK_EVERY = 60.0  # seconds
# A phone that leaves the Wi-Fi opens a connection and says nothing more; a slow one answers within a few seconds.
HANDSHAKE_WITHIN = 15.0


class SecureDoor:
    """The shop's certificates and the ``SSLContext`` that shows them.

    ``kept`` is what was found or made last, ``context`` is the same object for good, and ``trouble`` is a sentence about
    the last look that failed: then what was shown before goes on being shown.
    """

    def __init__(
        self, certificates: Certificates, now: Callable[[], datetime], where: Callable[[], Whereabouts]
    ) -> None:
        """Make or read the certificates. Raises ``AuthorityLost``, or ``OSError`` if the disk or the system refuses:
        then serve without this door, and say so."""
        self._certificates = certificates
        self._now = now
        self._where = where
        self.trouble = ""
        self.whereabouts = where()
        self.kept: Kept = certificates.keep(now(), self.whereabouts)
        self.context = context_for(self.kept.file)

    @property
    def troubles(self) -> tuple[str, ...]:
        """Every sentence that a person should see now."""
        return (*self.kept.troubles, *([self.trouble] if self.trouble else []))

    def look(self) -> bool:
        """Renew the leaf if it is time or an address has changed, and show the new one to whoever connects next;
        answers whether it was. To be called on the event loop's own thread, where no handshake is half-way."""
        try:
            self.whereabouts = self._where()
            kept = self._certificates.keep(self._now(), self.whereabouts)
            is_new = kept.leaf != self.kept.leaf
            if is_new:
                show(self.context, kept.file)
        except (AuthorityLost, OSError) as why:
            self.trouble = str(why) if isinstance(why, AuthorityLost) else _could_not_renew(why)
            return False
        self.kept, self.trouble = kept, ""
        return is_new

    async def watch(self, seen: Callable[[], None] = lambda: None, every: float = LOOK_EVERY) -> None:
        """Look now and then until cancelled; ``seen`` is called after each look (to announce what has changed)."""
        while True:
            await asyncio.sleep(every)
            self.look()
            seen()


def context_for(file: Path) -> ssl.SSLContext:
    """A server's context, TLS 1.2 or later, that shows the certificate in the file (with its key, PEM)."""
    context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    context.minimum_version = ssl.TLSVersion.TLSv1_2
    context.set_alpn_protocols(["http/1.1"])  # all that the server speaks
    context.load_cert_chain(file)
    return context


def show(context: ssl.SSLContext, file: Path) -> None:
    """Let the same context show another certificate in every handshake from now on; open connections keep theirs.
    Raises ``OSError`` (``ssl.SSLError``) for a damaged file, and leaves the context as it was."""
    context_for(file)  # tried apart: a load that fails half-way would leave a certificate without its key
    context.load_cert_chain(file)


async def listen_too(server: uvicorn.Server, listening: socket.socket, context: ssl.SSLContext) -> None:
    """Let a running uvicorn server, one app with one lifespan, answer on this socket too, over TLS.

    To be awaited in ``startup`` after uvicorn's own; what it opens is closed by uvicorn's ``shutdown``.
    """
    protocol: Any = server.config.http_protocol_class

    def answer() -> asyncio.Protocol:
        made: asyncio.Protocol = protocol(
            config=server.config, server_state=server.server_state, app_state=server.lifespan.state
        )
        return made

    loop = asyncio.get_running_loop()
    door = await loop.create_server(answer, sock=listening, ssl=context, ssl_handshake_timeout=HANDSHAKE_WITHIN)
    server.servers.append(door)


def _could_not_renew(why: OSError) -> str:
    return f"The server's certificate could not be looked after ({why.strerror or why}). The one in use goes on."
