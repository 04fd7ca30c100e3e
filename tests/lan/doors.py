"""A real uvicorn with a plain and a secure door, as the project's own server has them."""

import asyncio
import gc
import socket
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import uvicorn

from runboard.lan.addresses import Whereabouts
from runboard.lan.serving import SecureDoor, listen_too
from tests.lan.places import HOME


class Place:
    """Where the computer is, until a test moves it."""

    def __init__(self) -> None:
        self.where: Whereabouts = HOME

    def now(self) -> Whereabouts:
        return self.where


async def app(scope: dict[str, Any], receive: Any, send: Any) -> None:
    """Says by which scheme it was asked; its lifespan is counted."""
    if scope["type"] == "lifespan":
        for answer in ("startup", "shutdown"):
            LIVED.append((await receive())["type"])
            await send({"type": f"lifespan.{answer}.complete"})
        return
    await send(
        {
            "type": "http.response.start",
            "status": 200,
            "headers": [(b"content-length", b"5"), (b"content-type", b"text/html")],
        }
    )
    await send({"type": "http.response.body", "body": scope["scheme"].ljust(5).encode()})


LIVED: list[str] = []


class Server(uvicorn.Server):
    """As the project's own: the secure door opens after uvicorn's."""

    def __init__(self, door: SecureDoor, secure: socket.socket) -> None:
        super().__init__(uvicorn.Config(app, log_level="warning", lifespan="on", timeout_graceful_shutdown=1))
        self.door = door
        self.secure = secure
        self.loop: asyncio.AbstractEventLoop | None = None

    async def startup(self, sockets: Any = None) -> None:
        await super().startup(sockets)
        await listen_too(self, self.secure, self.door.context)
        self.loop = asyncio.get_running_loop()


@contextmanager
def serving(door: SecureDoor) -> Iterator[tuple[Server, int, int]]:
    with socket.create_server(("127.0.0.1", 0)) as plain, socket.create_server(("127.0.0.1", 0)) as secure:
        server = Server(door, secure)
        thread = threading.Thread(target=server.run, kwargs={"sockets": [plain]})
        thread.start()
        until = time.monotonic() + 10
        while server.loop is None and time.monotonic() < until:
            time.sleep(0.01)
        try:
            yield server, plain.getsockname()[1], secure.getsockname()[1]
        finally:
            server.should_exit = True
            thread.join(timeout=10)
    gc.collect()
