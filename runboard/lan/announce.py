"""Telling the shop's network by mDNS (RFC 6762, RFC 6763) that runboard is here, under a name that phones find."""

import asyncio
import threading
from collections.abc import Callable
from dataclasses import dataclass
from ipaddress import IPv4Address

from zeroconf import Error, ServiceInfo
from zeroconf.asyncio import AsyncZeroconf

from runboard.lan.addresses import Whereabouts

_STOP_WITHIN = 2.0  # seconds; saying goodbye takes 0.3
_LABEL = 63


@dataclass(frozen=True)
class Announced:
    """What is told: where the computer is, and the ports of its plain and its secure pages (0 for none)."""

    whereabouts: Whereabouts
    http_port: int = 0
    https_port: int = 0


class Announcer:
    """Announces from a thread of its own. Whatever goes wrong becomes ``trouble``, a sentence, and stops nothing else."""

    def __init__(self, interfaces: tuple[str, ...] | None = None) -> None:
        """``interfaces`` are addresses to announce from; without them, those of the whereabouts."""
        self.trouble = ""
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
        addresses = [str(one) for one in told.whereabouts.addresses if isinstance(one, IPv4Address)]
        if not addresses:
            self.trouble = "This computer is on no network now, so it announces itself to no phone."
            return True
        services = _services(told, addresses)
        self._voice = _Voice(list(self._interfaces or addresses), services, self._failed)
        self._voice.start()
        return True

    def stop(self) -> None:
        """Say goodbye and end the thread, in half a second as a rule."""
        voice, self._voice, self._told, self.trouble = self._voice, None, None, ""
        if voice:
            voice.end()

    def _failed(self, why: BaseException, voice: "_Voice") -> None:
        if self._voice is voice:
            self.trouble = (
                f"This computer could not announce itself on the network ({why}). Its address works as before."
            )


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


class _Voice(threading.Thread):
    def __init__(
        self, interfaces: list[str], services: list[ServiceInfo], failed: "Callable[[BaseException, _Voice], None]"
    ) -> None:
        super().__init__(name="announce", daemon=True)
        self._loop: asyncio.AbstractEventLoop | None = None
        self._task: asyncio.Task[None] | None = None
        self._interfaces = interfaces
        self._services = services
        self._failed = failed
        self._ready = threading.Event()

    def run(self) -> None:
        try:
            asyncio.run(self._speak())
        except asyncio.CancelledError:
            pass
        except (Error, OSError) as why:
            self._failed(why, self)
        except Exception as why:  # noqa: BLE001 – a fault in here is no reason for anything else to stop
            self._failed(why, self)
        finally:
            self._ready.set()

    def end(self) -> None:
        self._ready.wait(_STOP_WITHIN)
        try:
            if self._loop and self._task:
                self._loop.call_soon_threadsafe(self._task.cancel)
        except RuntimeError:  # it has ended already
            pass
        self.join(_STOP_WITHIN)

    async def _speak(self) -> None:
        self._loop, self._task = asyncio.get_running_loop(), asyncio.current_task()
        self._ready.set()
        network = AsyncZeroconf(interfaces=self._interfaces)
        try:
            # Each first asks whether the name is free, and takes another if it is not; then it is told three times.
            registering = [network.async_register_service(one, allow_name_change=True) for one in self._services]
            await asyncio.gather(*await asyncio.gather(*registering))
            await asyncio.Event().wait()
        finally:
            await network.async_close()  # says goodbye first
