"""A server on a thread of the test's own process, with bounds that a test can wait for; and senders that behave badly."""

import gc
import socket
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import uvicorn

from runboard.app import build, served
from runboard.house import House, Settings
from runboard.opening import WallClock
from runboard.web.door.bounds import Bounds
from runboard.web.door.serve import listen, serve
from runboard.web.door.sessions import COOKIE
from tests.pairing import paired


class Beside:
    """Says when the server listens, and how it is stopped."""

    def __init__(self) -> None:
        self.began = threading.Event()
        self.server: uvicorn.Server | None = None

    async def begin(self, server: uvicorn.Server) -> None:
        self.server = server
        self.began.set()

    async def end(self) -> None:
        pass


@dataclass
class Here:
    """A shop that is served at ``port``."""

    house: House
    served: Any
    port: int
    thread: threading.Thread
    beside: Beside

    def pair(self) -> str:
        """A lead's session, as a request's line."""
        return f"Cookie: {COOKIE}={paired(self.house.settings.data)}\r\n"

    def connect(self, said: str = "", at: str = "127.0.0.1") -> socket.socket:
        """A connection from that address that has said so much and nothing more."""
        one = socket.create_connection(("127.0.0.1", self.port), timeout=10, source_address=(at, 0))
        one.sendall(said.encode())
        return one

    def ask(self, said: str, at: str = "127.0.0.1") -> str:
        """The whole answer to what is said; '' where the connection is closed without one."""
        with self.connect(said, at) as one:
            return everything(one)

    def connections(self) -> int:
        """How many are open."""
        assert self.beside.server
        return len(self.beside.server.server_state.connections)

    def stop(self) -> None:
        """As SIGTERM does, until it has ended."""
        assert self.beside.server
        self.beside.server.should_exit = True
        self.thread.join(timeout=20)


def everything(one: socket.socket) -> str:
    """All that comes until the other side closes."""
    found = b""
    try:
        while part := one.recv(65536):
            found += part
    except ConnectionResetError:
        pass
    return found.decode()


def request(method: str, path: str, more: str = "", body: str = "", length: int | None = None) -> str:
    """One request, after which the server closes; its body may be said to be longer than it is."""
    said = len(body) if length is None else length
    long = f"Content-Length: {said}\r\nContent-Type: application/json\r\n" if said or method == "POST" else ""
    return f"{method} {path} HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n{more}{long}\r\n{body}"


@contextmanager
def serving_here(folder: Path, bounds: Bounds, change: Callable[[House], None] = lambda house: None) -> Iterator[Here]:
    """Until the end of the block; ``change`` may add pages to the house before it is served."""
    house = build(Settings(folder, WallClock(), plans=False))
    change(house)
    beside, asgi = Beside(), served(house, bounds)
    with listen(0) as listening:
        arguments = (asgi, listening, False, lambda address: "", beside)
        thread = threading.Thread(target=serve, args=arguments)
        thread.start()
        assert beside.began.wait(10)
        here = Here(house, asgi, listening.getsockname()[1], thread, beside)
        try:
            yield here
        finally:
            here.stop()
            assert not thread.is_alive()
    gc.collect()


def until(happens: Callable[[], bool], within: float = 10) -> bool:
    """Whether it comes about."""
    ends = time.monotonic() + within
    while not happens() and time.monotonic() < ends:
        time.sleep(0.01)
    return happens()
