"""The server process: listens, says its address once it does, ends quickly and cleanly."""

import os
import socket
import sys
import threading
import webbrowser
from collections.abc import Callable
from functools import partial
from typing import Any, Protocol, cast

import uvicorn

from runboard.web.door.asgi import Served
from runboard.web.door.connections import Connection, DoorConnections
from runboard.words.sentences import sentence

ENDS_WITHIN = 2.5  # seconds from Ctrl-C or SIGTERM
DESCRIPTORS = 4096  # four times what ``Bounds`` lets in
HOST, ALL_INTERFACES = "127.0.0.1", "0.0.0.0"  # noqa: S104 - phones are to reach it; guard.py looks at who asks


class Beside(Protocol):
    """What begins on the server's loop once it listens, and ends with it."""

    async def begin(self, server: uvicorn.Server) -> None: ...
    async def end(self) -> None: ...


class CannotListen(Exception):
    """The port is taken, or not ours to take. ``port`` is the one that was asked for."""

    def __init__(self, port: int, why: str) -> None:
        super().__init__(why)
        self.port = port


def listen(port: int, host: str = HOST) -> socket.socket:
    """A listening socket, on this computer only unless ``host`` says otherwise; port 0 takes any that is free. Raises
    ``CannotListen``."""
    # With the protocol named: asyncio switches off the wait for acknowledgements (Nagle) only on sockets that say they
    # are TCP. Without it every answer in two parts takes 44 ms instead of 1.
    listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM, socket.IPPROTO_TCP)
    try:
        if os.name == "posix":  # elsewhere the option means that two servers may share a port
            listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        listening.bind((host, port))
        listening.listen(128)
    except OSError as error:
        listening.close()
        raise CannotListen(port, error.strerror or str(error)) from error
    return listening


def _nothing_more(address: str) -> str:
    return ""


def serve(
    served: Served,
    listening: socket.socket,
    open_browser: bool,
    more: Callable[[str], str] = _nothing_more,
    beside: Beside | None = None,
) -> None:
    """Serve until Ctrl-C or SIGTERM. Once it listens, and ``beside`` has begun, its address is printed, and what ``more``
    says of that address."""
    config = uvicorn.Config(
        served,
        http=cast(Any, partial(Connection, among=DoorConnections(served.bounds))),  # more than one door makes them
        lifespan="on",
        log_level="warning",
        access_log=False,
        ws="none",
        server_header=False,
        proxy_headers=False,
        timeout_graceful_shutdown=1,
        backlog=512,  # so many are accepted at once, before any is read
    )
    _room_for_descriptors()
    address = f"http://{HOST}:{listening.getsockname()[1]}/"
    try:
        _Server(config, served, address, open_browser, more, beside).run(sockets=[listening])
    except KeyboardInterrupt:  # uvicorn raises the signal again once everything is closed
        pass


class _Server(uvicorn.Server):
    def __init__(
        self,
        config: uvicorn.Config,
        served: Served,
        address: str,
        open_browser: bool,
        more: Callable[[str], str],
        beside: Beside | None,
    ) -> None:
        super().__init__(config)
        self._more = more
        self._beside = beside
        self._served = served
        self._address = address
        self._open_browser = open_browser

    async def startup(self, sockets: Any = None) -> None:
        await super().startup(sockets)
        if self.started:
            if self._beside:
                await self._beside.begin(self)
            more = self._more(self._address)  # before anybody who reads the address can pair
            print(sentence("serve-at", {"address": self._address}), more, sep="\n", end="", flush=True)
            if self._open_browser and _has_a_screen():
                webbrowser.open(self._address)

    async def shutdown(self, sockets: Any = None) -> None:
        if threading.current_thread() is threading.main_thread():
            _end_within(ENDS_WITHIN)
        # uvicorn waits for open answers before it tells the app to end; a stream never ends by itself.
        self._served.end()
        if self._beside:
            await self._beside.end()
        await super().shutdown(sockets)


def _room_for_descriptors() -> None:
    """As many as the system allows, where it gives fewer at first: connections need them, and so do database and files."""
    try:
        import resource  # not on Windows, which has no such limit
    except ImportError:
        return
    soft, hard = resource.getrlimit(resource.RLIMIT_NOFILE)
    wanted = DESCRIPTORS if hard == resource.RLIM_INFINITY else min(hard, DESCRIPTORS)
    if soft != resource.RLIM_INFINITY and soft < wanted:
        resource.setrlimit(resource.RLIMIT_NOFILE, (wanted, hard))


def _end_within(seconds: float) -> None:
    """Whatever does not let go of the process by then is ended with it: a request that is worked on for minutes, a thread
    that waits for the disk. Every write is one transaction, so nothing is half stored; child processes go with this one."""

    def end() -> None:
        print(sentence("serve-ended"), flush=True)
        os._exit(0)

    last = threading.Timer(seconds, end)
    last.daemon = True  # it keeps nobody: where everything ends by itself, it is never heard of
    last.start()


def _has_a_screen() -> bool:
    """Without one, ``webbrowser`` would start a browser for the terminal in the middle of ours."""
    return sys.platform in ("darwin", "win32") or bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))
