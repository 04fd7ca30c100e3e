"""Telling the shop's network by mDNS (RFC 6762, RFC 6763) that runboard is here, under a name that phones find."""

import asyncio
import errno
import os
import socket
import threading
from collections.abc import Callable
from dataclasses import dataclass
from ipaddress import IPv4Address

from zeroconf import ServiceInfo
from zeroconf.asyncio import AsyncZeroconf

from runboard.lan.addresses import Whereabouts
from runboard.lan.trouble import Trouble

_STOP_WITHIN = 2.0  # seconds; saying goodbye takes 0.3
_LABEL = 63
_GROUP, _PORT = "224.0.0.251", 5353  # RFC 6762


@dataclass(frozen=True)
class Announced:
    """What is told: where the computer is, and the ports of its plain and its secure pages (0 for none)."""

    whereabouts: Whereabouts
    http_port: int = 0
    https_port: int = 0


class Announcer:
    """Announces from a thread of its own. Whatever goes wrong becomes ``trouble``, and stops nothing else."""

    def __init__(self, interfaces: tuple[str, ...] | None = None) -> None:
        """``interfaces`` are addresses to announce from; without them, those of the whereabouts."""
        self.trouble: Trouble | None = None
        self._interfaces = interfaces
        self._told: Announced | None = None
        self._voice: _Voice | None = None

    def announce(self, told: Announced) -> bool:
        """Announce this from now on, instead of what was announced; answers whether there was a change. Returns at
        once: others hear it within two seconds."""
        if told == self._told:
            return False
        self.stop()
        self._told = told
        addresses = [str(address) for address in told.whereabouts.addresses if isinstance(address, IPv4Address)]
        if not addresses:
            self.trouble = Trouble("no network")
            return True
        services = _services(told, addresses)
        self._voice = _Voice(list(self._interfaces or addresses), services, self._failed)
        self._voice.begin()
        return True

    def stop(self) -> None:
        """Say goodbye and end the thread, in half a second as a rule."""
        voice, self._voice, self._told, self.trouble = self._voice, None, None, None
        if voice:
            voice.end()

    def _failed(self, why: BaseException, voice: "_Voice") -> None:
        if self._voice is voice:
            self.trouble = Trouble("not announced", {"why": str(why)})


def _services(told: Announced, addresses: list[str]) -> list[ServiceInfo]:
    """One for each port. Only IPv4: that is what the server listens on."""
    where = told.whereabouts
    name = f"runboard on {where.host.split('.')[0]}"[:_LABEL]
    ports = {"_http._tcp.local.": told.http_port, "_https._tcp.local.": told.https_port}
    return [
        ServiceInfo(
            kind,
            f"{name}.{kind}",
            port=port,
            properties={"path": "/"},
            server=f"{where.announced_name}.",
            parsed_addresses=addresses,
        )
        for kind, port in ports.items()
        if port
    ]


def _that_can_speak(interfaces: list[str]) -> list[str]:
    """Those of the addresses from which the group can be joined, sharing the port with the system's own mDNS. Tried here,
    as zeroconf leaves its sockets open where it fails half-way. Raises ``OSError`` if there is none."""
    able: list[str] = []
    why = OSError(errno.EADDRNOTAVAIL, os.strerror(errno.EADDRNOTAVAIL))
    for interface in interfaces:
        try:
            with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as trial:
                trial.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
                if hasattr(socket, "SO_REUSEPORT"):
                    trial.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEPORT, 1)
                trial.bind(("", _PORT))
                group = socket.inet_aton(_GROUP) + socket.inet_aton(interface)
                trial.setsockopt(socket.IPPROTO_IP, socket.IP_ADD_MEMBERSHIP, group)
            able.append(interface)
        except OSError as problem:
            why = problem
    if not able:
        raise why
    return able


class _Voice:
    """One announcement: a thread with an event loop of its own, until ``end``."""

    def __init__(
        self, interfaces: list[str], services: list[ServiceInfo], failed: "Callable[[BaseException, _Voice], None]"
    ) -> None:
        self._interfaces = interfaces
        self._services = services
        self._failed = failed
        self._began = threading.Event()
        self._loop: asyncio.AbstractEventLoop | None = None
        self._ending: asyncio.Event | None = None
        self._thread = threading.Thread(target=self._run, name="announce", daemon=True)

    def begin(self) -> None:
        self._thread.start()

    def end(self) -> None:
        self._began.wait(_STOP_WITHIN)
        try:
            if self._loop and self._ending:
                self._loop.call_soon_threadsafe(self._ending.set)
        except RuntimeError:  # it has ended already
            pass
        self._thread.join(_STOP_WITHIN)

    def _run(self) -> None:
        try:
            asyncio.run(self._speak())
        except Exception as why:  # noqa: BLE001 – whatever fails in here is no reason for anything else to stop
            self._failed(why, self)
        finally:
            self._began.set()

    async def _speak(self) -> None:
        self._loop, self._ending = asyncio.get_running_loop(), asyncio.Event()
        self._began.set()
        network = AsyncZeroconf(interfaces=_that_can_speak(self._interfaces))
        try:
            # Ended by an event, not by cancelling: zeroconf closes nothing for a task that is being cancelled.
            await network.zeroconf.async_wait_for_start()
            telling = asyncio.create_task(self._tell(network))
            ending = asyncio.create_task(self._ending.wait())
            await asyncio.wait({telling, ending}, return_when=asyncio.FIRST_COMPLETED)
            if telling.done():
                telling.result()
                await ending
            telling.cancel()
            await asyncio.wait({telling})
        finally:
            await network.async_close()  # says goodbye first

    async def _tell(self, network: AsyncZeroconf) -> None:
        """Each first asks whether its name is free, and takes another if it is not; then it is told three times."""
        asking = [network.async_register_service(service, allow_name_change=True) for service in self._services]
        await asyncio.gather(*await asyncio.gather(*asking))
