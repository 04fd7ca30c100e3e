"""Nothing that a fuzzer types into a form leaves this computer, and no program is started by it."""

import socket
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any
from unittest.mock import patch

_HERE = ("127.", "::1", "localhost")


@contextmanager
def staying_at_home() -> Iterator[None]:
    """Whatever wants to connect elsewhere, or to look up a name, finds no network; the loudspeaker is dumb."""
    connect, look_up = socket.socket.connect, socket.getaddrinfo

    def connect_here(self: socket.socket, address: Any) -> None:
        if isinstance(address, tuple) and not str(address[0]).startswith(_HERE):
            raise OSError("no network in a test")
        connect(self, address)

    def look_up_here(host: Any, *more: Any, **named: Any) -> Any:
        if not str(host).startswith(_HERE):
            raise socket.gaierror("no network in a test")
        return look_up(host, *more, **named)

    with (
        patch.object(socket.socket, "connect", connect_here),
        patch.object(socket, "getaddrinfo", look_up_here),
        patch("runboard.alerts.speaker.Speaker.play", lambda self: None),
    ):
        yield
