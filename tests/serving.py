"""A real server on a free port: on a thread of this process, or a process of its own where that is what a test is about."""

import itertools
import os
import re
import signal
import socket
import subprocess
import sys
import threading
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from pathlib import Path
from typing import TypeVar
from unittest.mock import patch

import uvicorn

from runboard.app import build, served
from runboard.background import pauses
from runboard.commands.serve import CERTIFICATES
from runboard.floor.planning import planning
from runboard.floor.pressing.access import LEAD
from runboard.house import House, Settings
from runboard.lan.network import Network, here_only
from runboard.opening import WallClock
from runboard.store.closed import make_folder
from runboard.store.holding import hold
from runboard.web.door.serve import Beside, listen, serve
from runboard.words.sentences import say
from tests.pairing import paired

ROOT = Path(__file__).parents[1]
_ADDRESS = re.compile(r"http://127\.0\.0\.1:\d+/")

# The servers that this process started, by address: a phone pairs itself with the one that it is made for.
_SERVED: dict[str, "Served"] = {}


@dataclass
class Served:
    """A server that listens. ``address`` ends in a slash; ``data`` is the folder that it serves to paired devices, None
    where it asks nobody to pair."""

    address: str
    data: Path | None = None

    def pair(self, access: str = LEAD) -> str:
        """The secret of a new device's session; '' where nobody has to pair."""
        return paired(self.data, access) if self.data else ""


@dataclass
class Running(Served):
    """The same as a process. ``said`` are the lines that it printed."""

    process: "subprocess.Popen[str]" = field(kw_only=True)
    said: list[str] = field(kw_only=True)

    def interrupt(self) -> float:
        """Press Ctrl-C; answers how many seconds it took to end."""
        began = time.monotonic()
        self.process.send_signal(signal.SIGINT)
        self.process.wait(timeout=10)
        return time.monotonic() - began

    def kill(self) -> None:
        """As a power cut does."""
        self.process.kill()
        self.process.wait(timeout=10)


_FIRST_PORT, _PORTS = 20_000, 500
_asked = itertools.count(os.getpid())  # another session begins elsewhere
_One = TypeVar("_One", bound=Served)

# on a thread


class Clock(WallClock):
    """The time of day, which a test can move on."""

    def __init__(self) -> None:
        self.ahead = timedelta()

    def now(self) -> datetime:
        return super().now() + self.ahead


@dataclass
class Here(Served):
    """A shop that is served on a thread of this process."""

    house: House = field(kw_only=True, repr=False)
    clock: Clock = field(kw_only=True)

    def forward(self, **span: float) -> datetime:
        """So many ``seconds``, ``hours``, … pass for the server; answers its new moment."""
        self.clock.ahead += timedelta(**span)
        self.house.alerts.wake()
        return self.clock.now()


@contextmanager
def serving(data: Path, port: int = 0, *, planner: bool = False) -> Iterator[Here]:
    """The shop in that folder, served to this computer alone as ``runboard serve --local`` does, until the end of the
    block. Without a ``planner`` what comes first is the greedy rule's, at once."""
    with listen(port) as plain, listen(0) as secure:
        make_folder(data)
        clock = Clock()
        network = Network(data / CERTIFICATES, clock.now, plain.getsockname()[1], secure, say, where=here_only)
        settings = Settings(data, clock, hosts=network.hosts, ways=network, plans=planner)
        with hold(data), on_a_thread(settings, plain, network) as house:
            yield _remembered(Here(_address(plain), data, house=house, clock=clock))


@contextmanager
def serving_demo(data: Path, *, planner: bool = False) -> Iterator[Served]:
    """The demo in that folder, as ``runboard demo`` serves one that was served before."""
    settings = Settings(data, demo=True, open_to_all=True, plans=planner)
    with listen(0) as plain, hold(data), on_a_thread(settings, plain):
        yield _remembered(Served(_address(plain)))


@contextmanager
def on_a_thread(settings: Settings, listening: socket.socket, beside: Beside | None = None) -> Iterator[House]:
    """The house of these settings, served until the end of the block. ``beside`` begins and ends with it."""
    with _as_a_guest():
        house, watched = build(settings), _Watched(beside)
        arguments = (served(house), listening, False, lambda address: "", watched)
        thread = threading.Thread(target=serve, args=arguments, name="server")
        thread.start()
        assert watched.listens.wait(60), "the server never came up"
        try:
            yield house
        finally:
            watched.end_it()
            thread.join(timeout=20)
            assert not thread.is_alive(), "the server never ended"


def _address(listening: socket.socket) -> str:
    return f"http://127.0.0.1:{listening.getsockname()[1]}/"


class _Watched:
    """Says when the server listens, and how it is stopped."""

    def __init__(self, beside: Beside | None) -> None:
        self.listens = threading.Event()
        self._beside = beside
        self._server: uvicorn.Server | None = None

    async def begin(self, server: uvicorn.Server) -> None:
        self._server = server
        if self._beside:
            await self._beside.begin(server)
        self.listens.set()

    async def end(self) -> None:
        if self._beside:
            await self._beside.end()

    def end_it(self) -> None:
        """As SIGTERM does."""
        if self._server:
            self._server.should_exit = True


@contextmanager
def _as_a_guest() -> Iterator[None]:
    """The collector and the threads' turns stay the test process's own, and the rule is compiled in a planner's child only:
    the compiler is much to load."""
    as_they_are = {"keep_short": lambda: None, "leave_be": lambda: None, "as_usual": lambda: None}
    with patch.multiple(pauses, **as_they_are), patch.object(planning, "warm", lambda: False):
        yield


# as a process


@contextmanager
def running(
    *command: str,
    python: Sequence[str] = (sys.executable, "-m", "runboard.cli"),
    port: str = "0",
    https_port: str = "0",
    planner: bool = False,
) -> Iterator[Running]:
    """``runboard COMMAND`` on a free port or the one that is given, until the end of the block. A shop is served to this
    computer alone: no test listens to the network, or announces anything there. Where a test is not about plans, none are
    made: what comes first is then the greedy rule's, at once, and two cores are enough."""
    https = ["--https-port", https_port] if https_port else []
    here = ["--local", *https] if command[0] == "serve" else []
    quiet = () if planner else ("--no-planner",)
    process = subprocess.Popen(
        [*python, *command, "--port", port, *here, "--no-open", *quiet],
        cwd=ROOT,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )
    said: list[str] = []
    found = threading.Event()
    reader = threading.Thread(target=_read, args=(process, said, found), daemon=True)
    reader.start()
    try:
        found.wait(timeout=60)
        address = next((match[0] for line in said if (match := _ADDRESS.search(line))), "")
        assert address, "the server never came up:\n" + "".join(said)
        yield _remembered(Running(address, _data(command), process=process, said=said))
    finally:
        if process.poll() is None:
            process.terminate()
            try:
                process.wait(timeout=5)
            except subprocess.TimeoutExpired:
                process.kill()
                process.wait()
        reader.join(timeout=5)
        if process.stdout:
            process.stdout.close()


def free_port() -> int:
    """A port that is free now, and again once its server has gone: from below those that the system hands out, and from
    a range of this worker's own."""
    first = _FIRST_PORT + _PORTS * int(os.environ.get("PYTEST_XDIST_WORKER", "gw0").removeprefix("gw"))
    for port in (first + next(_asked) % _PORTS for _ in range(_PORTS)):
        with suppress(OSError), socket.create_server(("127.0.0.1", port)):
            return port
    raise AssertionError(f"no port is free from {first} on")


def served_at(address: str) -> Served | None:
    """The server that was started here last under that address."""
    return _SERVED.get(address)


def _remembered(one: _One) -> _One:
    _SERVED[one.address] = one
    return one


def _data(command: Sequence[str]) -> Path | None:
    return Path(command[command.index("--data") + 1]) if command[0] == "serve" else None


def _read(process: "subprocess.Popen[str]", said: list[str], found: threading.Event) -> None:
    """Keep reading, so that the pipe never fills; the address, or the end, lets the test go on."""
    for line in process.stdout or ():
        said.append(line)
        if _ADDRESS.search(line):
            found.set()
    found.set()
