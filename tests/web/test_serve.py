"""The socket that the server listens on, and how it ends."""

import signal
import socket
import sys
from contextlib import ExitStack
from pathlib import Path
from urllib.parse import urlsplit

import pytest

from runboard.web.door.serve import CannotListen, listen
from runboard.web.door.sessions import COOKIE
from tests.pairing import paired
from tests.serving import running
from tests.web.serving_here import everything, request, until


def test_an_answer_in_two_parts_is_not_held_back() -> None:
    """asyncio switches Nagle off only on sockets that name their protocol; else every answer takes 40 ms more."""
    with listen(0) as listening, socket.create_connection(listening.getsockname()):
        accepted, _ = listening.accept()
        with accepted:
            assert accepted.proto == socket.IPPROTO_TCP


def test_only_this_computer_is_listened_to() -> None:
    with listen(0) as listening:
        assert listening.getsockname()[0] == "127.0.0.1"


def test_a_port_is_given_out_once() -> None:
    with listen(0) as listening, pytest.raises(CannotListen):
        listen(listening.getsockname()[1])


def test_the_server_ends_though_requests_are_half_sent_streams_open_and_one_is_never_answered(tmp_path: Path) -> None:
    cookie = f"Cookie: {COOKIE}={paired(tmp_path)}\r\n"
    with (
        running(str(tmp_path), python=(sys.executable, "-m", "tests.web.stuck")) as server,
        ExitStack() as open_,
    ):
        place = urlsplit(server.address)

        def connect(said: str) -> socket.socket:
            one = socket.create_connection((place.hostname, place.port), timeout=20)
            one.sendall(said.encode())
            return open_.enter_context(one)

        half = [connect(request("POST", "/taps", cookie, "{", length=9)) for _ in range(10)]
        streams = [connect(request("GET", "/stream", cookie)) for _ in range(3)]
        silent = [connect(said) for said in ("", "GET / HT")]
        stuck = connect(request("GET", "/stuck", cookie))
        assert all(one.recv(5) == b"HTTP/" for one in streams)
        assert until(lambda: "stuck\n" in server.said)

        server.process.send_signal(signal.SIGTERM)
        server.process.wait(timeout=20)

        assert [everything(one)[:12] for one in (*half, stuck)] == ["HTTP/1.1 503"] * 11
        assert [everything(one) for one in silent] == [""] * 2
