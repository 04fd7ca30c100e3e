"""One data folder, served: its ports, who may reach them, and what is printed when it listens."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from socket import socket

from runboard.app import Settings, WallClock, build, served
from runboard.floor.letting_in.devices import CODE_LASTS, Door, has_lead, make_console_code
from runboard.lan import qr
from runboard.lan.addresses import whereabouts
from runboard.lan.announce import Announcer
from runboard.network import Network, here_only
from runboard.run.refusal import NotStored
from runboard.store.closed import make_folder
from runboard.store.holding import hold
from runboard.web.door.serve import ALL_INTERFACES, HOST, CannotListen, listen, serve

CODE_MINUTES = int(CODE_LASTS.total_seconds() // 60)
CERTIFICATES = "certificates"  # in the data folder
_LAST_PORT = 65535


class CannotMake(Exception):
    """The data folder is not there and cannot be made; the text says why."""

    def __init__(self, folder: Path, why: str) -> None:
        super().__init__(why)
        self.folder = folder


@dataclass(frozen=True)
class Asked:
    """How a folder is to be served: on which ports (0 for any that is free, ``https_port`` None for the next one), to
    this computer alone or to the shop's network; with a planner beside it or without."""

    data: Path
    port: int
    https_port: int | None = None
    local: bool = False
    open_browser: bool = True
    planner: bool = True


def serve_demo(asked: Asked, *, was_served: bool) -> None:
    """Serve a made-up shop until Ctrl-C: to this computer alone, and nobody has to pair. Raises ``CannotListen``."""
    with listen(asked.port) as plain, hold(asked.data):
        house = build(Settings(asked.data, demo=True, was_served=was_served, open_to_all=True, plans=asked.planner))
        serve(served(house), plain, asked.open_browser)


def serve_shop(asked: Asked) -> None:
    """Serve a shop until Ctrl-C, to devices that are paired. Raises ``CannotListen`` before the folder is made, and
    ``CannotMake``."""
    host = HOST if asked.local else ALL_INTERFACES
    with listen(asked.port, host) as plain, _listen_securely(asked, plain, host) as (secure, trouble):
        _make(asked.data)
        with hold(asked.data):
            clock = WallClock()
            network = Network(
                asked.data / CERTIFICATES,
                clock.now,
                plain.getsockname()[1],
                secure,
                where=here_only if asked.local else whereabouts,
                announcer=None if asked.local else Announcer(),
                trouble=trouble,
            )
            house = build(Settings(asked.data, clock, hosts=network.hosts, ways=network, plans=asked.planner))

            def more(address: str) -> str:
                found = network.pages("http")
                return network.told() + _first_code(house.door, found[0] if found else address)

            serve(served(house), plain, asked.open_browser, more, network)


def _make(data: Path) -> None:
    try:
        make_folder(data)
    except OSError as why:
        raise CannotMake(data, why.strerror or str(why)) from why


@contextmanager
def _listen_securely(asked: Asked, plain: socket, host: str) -> Iterator[tuple[socket | None, str]]:
    """The second socket. The port that nobody named may be taken: then there is none, and a sentence says so. Another
    free one would not do, since an installed page belongs to its port."""
    following = plain.getsockname()[1] + 1
    usual = following if asked.port and following <= _LAST_PORT else 0
    try:
        secure = listen(usual if asked.https_port is None else asked.https_port, host)
    except CannotListen as problem:
        if asked.https_port is not None:
            raise
        told = (
            f"There is no https page: port {problem.port} cannot be used ({problem}). Name another with --https-port."
        )
        yield None, told
        return
    with secure:
        yield secure, ""


def _first_code(door: Door, address: str) -> str:
    """How the first phone pairs, to be printed once the server listens; nothing where a lead's phone is paired."""
    if has_lead(door):
        return ""
    try:
        code, _ = make_console_code(door)
    except NotStored as failed:
        return f"No phone is paired yet, and none can be: the disk takes nothing ({failed.why}).\n"
    address = f"{address}pair?code={code}"
    picture = qr.terminal(address, colours=True) if sys.stdout.isatty() and _can_print("▀▄█") else ""
    return (
        f"No lead's phone is paired yet. Pair one with the code {code}, once, within {CODE_MINUTES} minutes:\n"
        f"{address}\n{picture}Later, 'runboard pair' makes another code.\n"
    )


def _can_print(signs: str) -> bool:
    try:
        signs.encode(sys.stdout.encoding or "ascii")
    except UnicodeEncodeError:
        return False
    return True
