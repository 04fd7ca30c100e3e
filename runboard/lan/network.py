"""The server on the shop's network: the names it answers to, its secure door, and what it announces; kept up to date."""

import asyncio
import logging
import socket
from collections.abc import Callable
from datetime import datetime
from ipaddress import IPv4Address
from pathlib import Path

import uvicorn

from runboard.lan import trust
from runboard.lan.addresses import HOSTS, Whereabouts, host_name, urls, whereabouts
from runboard.lan.announce import Announced, Announcer
from runboard.lan.authority import AuthorityLost, Certificates
from runboard.lan.serving import LOOK_EVERY, SecureDoor, listen_too
from runboard.lan.trouble import Say, Trouble

_log = logging.getLogger("runboard")


def here_only() -> Whereabouts:
    """Where a server is that listens to this computer alone: on no network."""
    return Whereabouts(host_name(socket.gethostname()))


class Network:
    """The shop's network, as the pages ask for it too. ``hosts`` are the names and addresses that the server answers to: the
    same set for good, brought up to date when the computer's addresses change."""

    def __init__(
        self,
        certificates: Path,
        now: Callable[[], datetime],
        http_port: int,
        secure: socket.socket | None,
        say: Say,
        *,
        where: Callable[[], Whereabouts] = whereabouts,
        announcer: Announcer | None = None,
        trouble: Trouble | None = None,
    ) -> None:
        """Make or read the certificates. Without a ``secure`` socket, or where they cannot be used, there is no secure
        page, and ``troubles`` says why, by ``say``. Without an ``announcer`` nothing is announced."""
        self.http_port = http_port
        self.hosts: set[str] = set()
        self._where = where
        self._secure = secure
        self._say = say
        self._announcer = announcer
        self._trouble = trouble
        self._logged: set[str] = set()
        self._watching: asyncio.Task[None] | None = None
        self._door = self._open_door(certificates, now) if secure else None
        self._look()

    def _open_door(self, certificates: Path, now: Callable[[], datetime]) -> SecureDoor | None:
        try:
            return SecureDoor(Certificates(certificates), now, self._where)
        except AuthorityLost as why:
            self._trouble = Trouble("no https authority", {"why": why.trouble})
        except OSError as why:
            self._trouble = Trouble("no https disk", {"why": why.strerror or str(why)})
        return None

    @property
    def https_port(self) -> int:
        """The port of the secure pages; 0 where there are none."""
        return int(self._secure.getsockname()[1]) if self._secure and self._door else 0

    @property
    def troubles(self) -> tuple[str, ...]:
        """Every sentence that a person should see now."""
        of_door = self._door.troubles if self._door else ()
        found = (self._trouble, *of_door, self._announcer.trouble if self._announcer else None)
        return tuple(trouble.said(self._say) for trouble in found if trouble)

    @property
    def vouched(self) -> frozenset[str]:
        """The names and addresses that the certificate is good for."""
        return frozenset(self.hosts.difference(self._door.kept.left_out)) if self._door else frozenset()

    @property
    def trusted(self) -> trust.Trusted | None:
        """What a device is given to trust; None where there is no certificate."""
        # By the computer's name, not the shop's: whoever is on the network may look at it.
        if self._door is None:
            return None
        title = self._said("profile", host=self.whereabouts.host)
        return trust.given(self._door.kept.authority, title, self._said("profile about"))

    def pages(self, scheme: str) -> tuple[str, ...]:
        """Where a phone finds the server, the surest first; nothing while the computer is on no network."""
        port = self.http_port if scheme == "http" else self.https_port
        if not port or not self.whereabouts.addresses:
            return ()
        good_for = self.hosts if scheme == "http" else self.vouched
        found = urls(self.whereabouts, scheme, port)
        return tuple(url for url in found if url.removeprefix(f"{scheme}://").rpartition(":")[0] in good_for)

    def told(self) -> str:
        """The lines that are printed when the server listens."""
        plain, secure = self.pages("http"), self.pages("https")
        lines = [self._said("at", pages=self._either(plain))] if plain else []
        if self.https_port:
            at = self._either(secure or (f"https://localhost:{self.https_port}/",))
            how = plain[0] if plain else f"http://127.0.0.1:{self.http_port}/"
            lines += [self._said("at https", pages=at), self._said("trust", page=f"{how}welcome")]
        self._logged.update(self.troubles)
        return "".join(f"{line}\n" for line in (*lines, *self.troubles))

    def _either(self, pages: tuple[str, ...]) -> str:
        return self._said("either", first=pages[0], second=pages[1]) if len(pages) > 1 else pages[0]

    def _said(self, code: str, **facts: str) -> str:
        return self._say("lan", code, facts)

    async def begin(self, server: uvicorn.Server) -> None:
        """Open the secure door of a server that has started, announce it, and look after both from now on."""
        if self._secure and self._door:
            await listen_too(server, self._secure, self._door.context)
        self._announce()
        self._watching = asyncio.create_task(self._watch())

    async def end(self) -> None:
        """Say goodbye, and look no more."""
        if self._watching:
            self._watching.cancel()
        if self._announcer:
            await asyncio.to_thread(self._announcer.stop)

    async def look(self) -> None:
        """See whether names, addresses or the certificate's time have changed. On the server's own loop only."""
        if self._door:
            self._door.look()
        self._look()
        await asyncio.to_thread(self._announce)
        new = set(self.troubles) - self._logged
        self._logged = set(self.troubles)
        for sentence in new:
            _log.warning("%s", sentence)

    def _look(self) -> None:
        try:
            self.whereabouts = self._door.whereabouts if self._door else self._where()
        except OSError:  # the system does not tell: then this computer alone finds the server
            self.whereabouts = here_only()
        known = {str(address) for address in self.whereabouts.addresses if isinstance(address, IPv4Address)}
        known |= {*HOSTS, *self.whereabouts.names}
        # Never empty for a moment: requests are answered meanwhile.
        self.hosts.update(known)
        self.hosts.intersection_update(known)

    def _announce(self) -> None:
        if self._announcer:
            self._announcer.announce(Announced(self.whereabouts, self.http_port, self.https_port))

    async def _watch(self) -> None:
        while True:
            await asyncio.sleep(LOOK_EVERY)
            await self.look()
