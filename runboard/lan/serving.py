"""The secure door of the server: uvicorn listens with TLS on one more port, and a renewed leaf needs no restart."""

import asyncio
import socket
import ssl
from collections import Counter
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import Any, cast

import uvicorn

from runboard.lan.addresses import Whereabouts
from runboard.lan.authority import AuthorityLost, Certificates, KeptCertificates
from runboard.lan.trouble import Trouble

LOOK_EVERY = 60.0  # seconds
# A phone that leaves the Wi-Fi opens a connection and says nothing more; a slow one answers within a few seconds.
HANDSHAKE_WITHIN = 15.0
MOST_HANDSHAKES = 64


class SecureDoor:
    """The shop's certificates and the ``SSLContext`` that shows them.

    ``kept`` is what was found or made last, ``context`` is the same object for good, and ``trouble`` is about
    the last look, where it failed: then what was shown before goes on being shown.
    """

    def __init__(
        self, certificates: Certificates, now: Callable[[], datetime], where: Callable[[], Whereabouts]
    ) -> None:
        """Make or read the certificates. Raises ``AuthorityLost``, or ``OSError`` if the disk or the system refuses:
        then serve without this door, and say so."""
        self._certificates = certificates
        self._now = now
        self._where = where
        self.trouble: Trouble | None = None
        self.whereabouts = where()
        self.kept: KeptCertificates = certificates.keep(now(), self.whereabouts)
        self.context = context_for(self.kept.file)

    @property
    def troubles(self) -> tuple[Trouble, ...]:
        """All that a person should see now."""
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
            self.trouble = why.trouble if isinstance(why, AuthorityLost) else _could_not_renew(why)
            return False
        self.kept, self.trouble = kept, None
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

    server.servers.append(cast(Any, Handshakes(listening, context, answer)))  # of an asyncio server, what uvicorn calls


class Handshakes:
    """A listening socket whose peers shake hands before ``answer`` makes the protocol that speaks to them. Nobody knows
    of a connection before that, so how many there are is held here: beyond ``MOST_HANDSHAKES`` the oldest of the address
    that has the most is let go."""

    def __init__(
        self, listening: socket.socket, context: ssl.SSLContext, answer: Callable[[], asyncio.Protocol]
    ) -> None:
        listening.setblocking(False)
        self._listening, self._context, self._answer = listening, context, answer
        self._shaking: dict[asyncio.Task[None], tuple[str, socket.socket]] = {}
        self._accepting = asyncio.create_task(self._accept())

    def close(self) -> None:
        """Let nobody in any more."""
        self._accepting.cancel()
        for task in list(self._shaking):
            self._let_go(task)

    async def wait_closed(self) -> None:
        """Until nothing is under way."""
        await asyncio.gather(self._accepting, *self._shaking, return_exceptions=True)

    async def _accept(self) -> None:
        loop = asyncio.get_running_loop()
        while True:
            try:
                peer, (address, *_) = await loop.sock_accept(self._listening)
            except OSError:  # the peer is gone again, or the system has no room for one more
                await asyncio.sleep(0.1)
                continue
            task = asyncio.create_task(self._shake(peer))
            self._shaking[task] = (address, peer)
            task.add_done_callback(lambda done: self._shaking.pop(done, None))
            if len(self._shaking) > MOST_HANDSHAKES:
                (most, _), *_ = Counter(at for at, _ in self._shaking.values()).most_common(1)
                self._let_go(next(task for task, (at, _) in self._shaking.items() if at == most))

    async def _shake(self, peer: socket.socket) -> None:
        loop = asyncio.get_running_loop()
        try:
            await loop.connect_accepted_socket(
                self._answer, peer, ssl=self._context, ssl_handshake_timeout=HANDSHAKE_WITHIN, ssl_shutdown_timeout=2.0
            )
        except OSError:  # it speaks no TLS, trusts nobody, says nothing or is gone: as often as there are strangers
            pass

    def _let_go(self, task: asyncio.Task[None]) -> None:
        # Not cancelled: a handshake that asyncio has not begun yet would go on all the same.
        _, peer = self._shaking.pop(task)
        try:
            peer.shutdown(socket.SHUT_RDWR)
        except OSError:  # it is gone already
            pass


def _could_not_renew(why: OSError) -> Trouble:
    return Trouble("not looked after", {"why": why.strerror or str(why)})
